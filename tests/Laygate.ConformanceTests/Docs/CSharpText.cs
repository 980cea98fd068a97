using System.Text;

namespace Laygate.ConformanceTests.Docs;

/// <summary>The text of a C# file, comments and code apart. Each character keeps its place; what belongs to the other side is a blank.</summary>
internal sealed record CSharpText(string Code, string Comments)
{
    /// <summary>Reads a file: comments of both kinds, strings of all kinds, characters.</summary>
    public static CSharpText Of(string text)
    {
        var (code, comments) = (new StringBuilder(text.Length), new StringBuilder(text.Length));
        for (var at = 0; at < text.Length;)
        {
            var (end, isComment) = Piece(text, at);
            foreach (var sign in text[at..end])
            {
                code.Append(isComment && sign != '\n' ? ' ' : sign);
                comments.Append(isComment || sign == '\n' ? sign : ' ');
            }

            at = end;
        }

        return new CSharpText(code.ToString(), comments.ToString());
    }

    // Where the comment, string, character or single sign that begins here ends.
    private static (int End, bool IsComment) Piece(string text, int at)
    {
        if (Has(text, at, "//"))
        {
            return (After(text, at, "\n", keep: true), true);
        }

        if (Has(text, at, "/*"))
        {
            return (After(text, at + 2, "*/", keep: false), true);
        }

        if (text[at] == '\'')
        {
            return (After(text, text[at + 1] == '\\' ? at + 3 : at + 2, "'", keep: false), false);
        }

        if (text[at] != '"')
        {
            return (at + 1, false);
        }

        var quotes = text.AsSpan(at).IndexOfAnyExcept('"');
        if (quotes >= 3)
        {
            return (After(text, at + quotes, new string('"', quotes), keep: false), false);
        }

        return (Quoted(text, at + 1, isVerbatim: at > 0 && (text[at - 1] == '@' || Has(text, at - 2, "@$"))), false);
    }

    private static int Quoted(string text, int at, bool isVerbatim)
    {
        while (at < text.Length && text[at] != '"')
        {
            at += !isVerbatim && text[at] == '\\' ? 2 : 1;
        }

        return Math.Min(at + 1, text.Length);
    }

    private static bool Has(string text, int at, string part) => at >= 0 && text.AsSpan(at).StartsWith(part, StringComparison.Ordinal);

    private static int After(string text, int from, string mark, bool keep)
    {
        var found = from < text.Length ? text.IndexOf(mark, from, StringComparison.Ordinal) : -1;
        return found < 0 ? text.Length : keep ? found : found + mark.Length;
    }
}
