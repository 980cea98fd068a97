using System.Globalization;
using System.Text;

namespace Laygate.Reporting.Text;

/// <summary>Columns that text takes on a terminal.</summary>
internal static class TextWidth
{
    /// <summary>Columns of a text: combining marks take none, wide letters and pictures take two.</summary>
    public static int Of(string text)
    {
        var width = 0;
        foreach (var rune in text.EnumerateRunes())
        {
            width += Of(rune);
        }

        return width;
    }

    /// <summary>Columns of one character.</summary>
    public static int Of(Rune rune)
    {
        if (Rune.GetUnicodeCategory(rune) is UnicodeCategory.NonSpacingMark or UnicodeCategory.EnclosingMark)
        {
            return 0;
        }

        return IsWide(rune.Value) ? 2 : 1;
    }

    // Blocks whose letters Unicode Standard Annex 11 (East Asian Width) calls wide or full-width, rounded outward.
    private static bool IsWide(int value) => value is
        (>= 0x1100 and <= 0x115F) or (>= 0x2E80 and <= 0xA4CF) or (>= 0xA960 and <= 0xA97F) or (>= 0xAC00 and <= 0xD7FF)
        or (>= 0xF900 and <= 0xFAFF) or (>= 0xFE30 and <= 0xFE6F) or (>= 0xFF00 and <= 0xFF60) or (>= 0xFFE0 and <= 0xFFE6)
        or (>= 0x1F300 and <= 0x1FAFF) or (>= 0x20000 and <= 0x3FFFD);
}
