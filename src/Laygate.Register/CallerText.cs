namespace Laygate.Register;

/// <summary>Texts that callers write. Each has a length, and none holds control characters: one database would refuse them, the other keep them.</summary>
public static class CallerText
{
    /// <summary>Most characters of a comment or a reason.</summary>
    public const int LongestComment = 10_000;

    /// <summary>Most characters of the name of a file.</summary>
    public const int LongestFileName = 255;

    /// <summary>Most characters of the name of a key or of a person.</summary>
    public const int LongestName = 100;

    /// <summary>Most characters of an id.</summary>
    public const int LongestId = 300;

    /// <summary>Most characters of what is searched for.</summary>
    public const int LongestSearch = 200;

    /// <summary>Most characters of the address of a mail or a webhook.</summary>
    public const int LongestTarget = 500;

    private const int LongestIdempotencyKey = 200;
    private const int LongestTitle = 300;

    /// <summary>Whether a text can stand on one line: no control characters, no halves of characters.</summary>
    public static bool IsLine(string text) => IsText(text, static _ => false);

    /// <summary>Whether a text of several lines holds no other control characters than tabs and line ends, and no halves of characters.</summary>
    public static bool IsProse(string text) => IsText(text, static letter => letter is '\t' or '\n' or '\r');

    /// <summary>The name of a person or office as it can be shown: cut to <see cref="LongestName"/>, control characters shown as a replacement mark.</summary>
    public static string Shown(string name) => Cut(name, LongestName);

    internal static void FileName(string text) => Line(text, LongestFileName, "The name of the file");

    internal static void Id(string text) => Line(text, LongestId, "An id");

    internal static void Name(string text) => Line(text, LongestName, "The name of a key");

    internal static void Target(string text) => Line(text, LongestTarget, "The address");

    internal static void Contract(string text) => Line(text, LongestTitle, "The contract");

    internal static void IdempotencyKey(string text) => Line(text, LongestIdempotencyKey, "An idempotency key");

    internal static void Search(string text)
    {
        if (!string.IsNullOrEmpty(text.Trim(' ')))
        {
            Line(text, LongestSearch, "What is searched for");
        }
    }

    /// <summary>A comment or reason without white space around it; null when nothing is said.</summary>
    /// <exception cref="RefusedException">It is too long or holds control characters.</exception>
    internal static string? Prose(string? text, string what)
    {
        // White space around it is no part of what is said, but a control character there is still one.
        var said = text?.Trim() ?? string.Empty;
        return said.Length > LongestComment ? throw Bad(FormattableString.Invariant($"{what} is longer than {LongestComment} characters. Shorten it."))
            : !IsProse(text ?? string.Empty) ? throw Bad($"{what} holds control characters. Take them out.")
            : said.Length > 0 ? said
            : null;
    }

    /// <summary>What a plan calls itself, as a list can show it: cut to a length, control characters shown as a replacement mark.</summary>
    internal static string? Title(string? text) => text is null ? null : Cut(text, LongestTitle);

    private static string Cut(string text, int longest)
    {
        if (text.Length <= longest && IsLine(text))
        {
            return text;
        }

        var shown = string.Create(text.Length, text, static (letters, from) =>
        {
            for (var at = 0; at < letters.Length; at++)
            {
                var pair = at + 1 < from.Length && char.IsSurrogatePair(from[at], from[at + 1]);
                letters[at] = char.IsControl(from[at]) || (char.IsSurrogate(from[at]) && !pair) ? '\uFFFD' : from[at];
                if (pair)
                {
                    letters[at + 1] = from[++at];
                }
            }
        });
        if (shown.Length <= longest)
        {
            return shown;
        }

        var end = char.IsHighSurrogate(shown[longest - 2]) ? longest - 2 : longest - 1;
        return string.Concat(shown.AsSpan(0, end), "…");
    }

    private static void Line(string text, int longest, string what)
    {
        if (string.IsNullOrWhiteSpace(text) || text.Length > longest || !IsLine(text))
        {
            throw Bad(FormattableString.Invariant($"{what} has 1 to {longest} characters, none of them a control character."));
        }
    }

    private static bool IsText(string text, Func<char, bool> also)
    {
        for (var at = 0; at < text.Length; at++)
        {
            if (char.IsSurrogate(text[at]))
            {
                if (at + 1 == text.Length || !char.IsSurrogatePair(text[at], text[at + 1]))
                {
                    return false;
                }

                at++;
            }
            else if (char.IsControl(text[at]) && !also(text[at]))
            {
                return false;
            }
        }

        return true;
    }

    private static RefusedException Bad(string message) => new(Refusal.BadRequest, message);
}
