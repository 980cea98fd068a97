using System.Globalization;
using System.Text;

namespace Laygate.Service.Replacing;

/// <summary>
/// A text as a reader sees it, each letter with the stretch that it takes in the text as written: escapes of JSON, YAML and Markdown and entities of HTML are undone, blanks of all
/// kinds count as one blank, soft hyphens as nothing. What is found in it can be replaced where it is written. Styles of a page are left out.
/// </summary>
internal sealed class EncodedText
{
    private const char SoftHyphen = '\u00AD';
    private readonly string raw;
    private readonly StringBuilder letters = new();
    private readonly List<(int Start, int End)> stretches = [];

    /// <summary>Reads a text.</summary>
    public EncodedText(string raw)
    {
        this.raw = raw;
        var unescaped = Unescaped(raw);
        for (var at = 0; at < unescaped.Count;)
        {
            var (letter, length) = Entity(unescaped, at);
            Add(letter, unescaped[at].Start, unescaped[at + length - 1].End);
            at += length;
        }

        Seen = letters.ToString();
    }

    /// <summary>The text as it is seen.</summary>
    public string Seen { get; }

    /// <summary>A text as it is looked for: blanks as they are counted here.</summary>
    public static string Plain(string text) => string.Join(' ', text.Replace(SoftHyphen.ToString(), string.Empty, StringComparison.Ordinal).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    /// <summary>The text with other words.</summary>
    /// <param name="words">What is looked for, and what stands in its place; the first that fits counts. Only whole words are found.</param>
    public string With(IReadOnlyList<(string Old, string New)> words)
    {
        var found = new List<(int At, int Until, string New)>();
        var taken = new bool[Seen.Length];
        foreach (var (old, put) in words)
        {
            for (var at = Seen.IndexOf(old, StringComparison.Ordinal); at >= 0; at = Seen.IndexOf(old, at + 1, StringComparison.Ordinal))
            {
                var place = taken.AsSpan(at, old.Length);
                if (IsWhole(at, at + old.Length) && !place.Contains(true))
                {
                    place.Fill(true);
                    found.Add((at, at + old.Length, put));
                }
            }
        }

        if (found.Count == 0)
        {
            return raw;
        }

        var (text, done) = (new StringBuilder(raw.Length), 0);
        foreach (var (at, until, put) in found.OrderBy(one => one.At))
        {
            text.Append(raw, done, stretches[at].Start - done).Append(put);
            done = stretches[until - 1].End;
        }

        return text.Append(raw, done, raw.Length - done).ToString();
    }

    private bool IsWhole(int start, int end) =>
        !(start > 0 && char.IsLetterOrDigit(Seen[start - 1]) && char.IsLetterOrDigit(Seen[start])) && !(end < Seen.Length && char.IsLetterOrDigit(Seen[end]) && char.IsLetterOrDigit(Seen[end - 1]));

    private void Add(char letter, int start, int end)
    {
        if (letter == SoftHyphen)
        {
            return;
        }

        if (!char.IsWhiteSpace(letter))
        {
            letters.Append(letter);
            stretches.Add((start, end));
        }
        else if (letters.Length == 0 || letters[^1] != ' ')
        {
            letters.Append(' ');
            stretches.Add((start, end));
        }
        else
        {
            stretches[^1] = (stretches[^1].Start, end);
        }
    }

    private static List<(char Letter, int Start, int End)> Unescaped(string raw)
    {
        var plain = new List<(char, int, int)>(raw.Length);
        for (var at = 0; at < raw.Length;)
        {
            if (raw[at] == '<' && string.Compare(raw, at, "<style", 0, 6, StringComparison.OrdinalIgnoreCase) == 0 && raw.IndexOf("</style", at, StringComparison.OrdinalIgnoreCase) is >= 0 and var close)
            {
                plain.Add(('<', at, close));
                at = close;
                continue;
            }

            var (letter, length) = Escape(raw, at);
            plain.Add((letter, at, at + length));
            at += length;
        }

        return plain;
    }

    private static (char Letter, int Length) Escape(string raw, int at)
    {
        if (raw[at] != '\\' || at + 1 >= raw.Length)
        {
            return (raw[at], 1);
        }

        return raw[at + 1] switch
        {
            'u' when at + 6 <= raw.Length && ushort.TryParse(raw.AsSpan(at + 2, 4), NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out var code) => ((char)code, 6),
            'n' or 'r' or 't' => (' ', 2),
            var next when !char.IsLetterOrDigit(next) => (next, 2),
            _ => (raw[at], 1),
        };
    }

    // An entity stands for one letter here; what lies outside of the basic plane stays as written, and is not found.
    private static (char Letter, int Length) Entity(List<(char Letter, int Start, int End)> plain, int at)
    {
        const int Longest = 10;
        if (plain[at].Letter != '&')
        {
            return (plain[at].Letter, 1);
        }

        for (var end = at + 1; end < plain.Count && end - at < Longest; end++)
        {
            if (plain[end].Letter == ';')
            {
                var written = string.Concat(plain.Skip(at).Take(end - at + 1).Select(one => one.Letter));
                return System.Net.WebUtility.HtmlDecode(written) is [var letter] ? (letter, end - at + 1) : ('&', 1);
            }
        }

        return ('&', 1);
    }
}
