using System.Globalization;

namespace Laygate.Reading.Yaml;

/// <summary>Refuses what escapes in quotes can smuggle in: control characters and halves of characters.</summary>
internal static class ScalarChecks
{
    public static void Check(string text, TextSpan span, List<ReadingProblem> problems)
    {
        for (var at = 0; at < text.Length; at++)
        {
            if (char.IsHighSurrogate(text[at]) && at + 1 < text.Length && char.IsLowSurrogate(text[at + 1]))
            {
                at++;
            }
            else if (IsRefused(text[at]))
            {
                problems.Add(new ReadingProblem(
                    string.Create(CultureInfo.InvariantCulture, $"This text contains the character U+{(int)text[at]:X4}, which cannot be shown."),
                    span,
                    "Remove the escape that makes it."));
                return;
            }
        }
    }

    private static bool IsRefused(char letter) => letter switch
    {
        '\t' or '\n' => false,
        < ' ' or (>= '\u007F' and <= '\u009F') or '\u2028' or '\u2029' or '\uFEFF' or '\uFFFE' or '\uFFFF' => true,
        _ => char.IsSurrogate(letter),
    };
}
