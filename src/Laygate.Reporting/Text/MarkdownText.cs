using System.Text;

namespace Laygate.Reporting.Text;

/// <summary>Text of a plan made harmless for Markdown: what would be markup, a link or HTML is shown as it was written.</summary>
internal static class MarkdownText
{
    private const string Marks = "\\`*_[]|~$";

    /// <summary>The text on one line, for a table cell or inside a line that begins with other words.</summary>
    public static string Of(string? text)
    {
        if (string.IsNullOrWhiteSpace(text))
        {
            return string.Empty;
        }

        var safe = new StringBuilder(text.Length + 8);
        foreach (var letter in PlainText.Show(text).Replace(PlainText.Glue, ' ').Trim())
        {
            _ = letter switch
            {
                '<' => safe.Append("&lt;"),
                '>' => safe.Append("&gt;"),
                '&' => safe.Append("&amp;"),
                '@' => safe.Append("&#64;"),
                ':' when safe.Length > 0 && IsScheme(safe) => safe.Append("&#58;"),
                '.' when EndsWithWww(safe) => safe.Append("&#46;"),
                '!' or '#' => safe.Append('\\').Append(letter),
                _ when Marks.Contains(letter, StringComparison.Ordinal) => safe.Append('\\').Append(letter),
                _ => safe.Append(letter),
            };
        }

        return safe.ToString();
    }

    // Renderers turn http://… and www.… into links by themselves; a site sheet has no links that a plan brings along.
    private static bool IsScheme(StringBuilder safe) =>
        EndsWith(safe, "http") || EndsWith(safe, "https") || EndsWith(safe, "ftp") || EndsWith(safe, "mailto");

    private static bool EndsWithWww(StringBuilder safe) => EndsWith(safe, "www");

    private static bool EndsWith(StringBuilder safe, string word)
    {
        if (safe.Length < word.Length)
        {
            return false;
        }

        for (var i = 0; i < word.Length; i++)
        {
            if (char.ToLowerInvariant(safe[safe.Length - word.Length + i]) != word[i])
            {
                return false;
            }
        }

        return true;
    }
}
