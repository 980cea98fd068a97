using System.Globalization;
using System.Text;

namespace Laygate.Reporting.Text;

/// <summary>Makes text that comes from a plan or a rule file harmless on a terminal: what could move the cursor, change colours or turn the reading direction is shown as its code.</summary>
public static class PlainText
{
    /// <summary>A blank at which a line is not broken.</summary>
    internal const char Glue = '\u00A0';

    /// <summary>The text on one line, with control, formatting and broken characters shown as <c>\u{…}</c>; a line feed becomes a blank.</summary>
    public static string Show(string text)
    {
        if (IsHarmless(text))
        {
            return text;
        }

        var shown = new StringBuilder(text.Length + 16);
        foreach (var rune in text.EnumerateRunes())
        {
            Append(shown, rune);
        }

        return shown.ToString();
    }

    private static bool IsHarmless(string text)
    {
        foreach (var letter in text)
        {
            if (letter is < ' ' or > '~')
            {
                return false;
            }
        }

        return true;
    }

    private static void Append(StringBuilder shown, Rune rune)
    {
        if (rune.Value is '\n' or '\r' or '\t')
        {
            shown.Append(' ');
        }
        else if (IsHidden(Rune.GetUnicodeCategory(rune)))
        {
            shown.Append(CultureInfo.InvariantCulture, $"\\u{{{rune.Value:X4}}}");
        }
        else
        {
            shown.Append(rune.ToString());
        }
    }

    private static bool IsHidden(UnicodeCategory category) => category is
        UnicodeCategory.Control or UnicodeCategory.Format or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator
        or UnicodeCategory.Surrogate or UnicodeCategory.PrivateUse or UnicodeCategory.OtherNotAssigned;
}
