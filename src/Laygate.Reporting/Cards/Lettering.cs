using System.Collections.Frozen;

namespace Laygate.Reporting.Cards;

/// <summary>How much room text takes in print: advance widths of the widest of the fonts that the style sheet names (DejaVu Sans), rounded outward.</summary>
internal static class Lettering
{
    private const double Usual = 0.64;
    private const double Capital = 0.7;
    private const double Sign = 0.9;

    /// <summary>How much wider bold letters are.</summary>
    public const double Bold = 1.11;

    private static readonly FrozenDictionary<char, double> Widths = new Dictionary<char, double>
    {
        [' '] = 0.32,
        ['\u00A0'] = 0.32,
        ['.'] = 0.32,
        [','] = 0.32,
        [':'] = 0.34,
        [';'] = 0.34,
        ['\''] = 0.28,
        ['i'] = 0.28,
        ['j'] = 0.28,
        ['l'] = 0.28,
        ['I'] = 0.3,
        ['f'] = 0.36,
        ['t'] = 0.4,
        ['r'] = 0.42,
        ['('] = 0.4,
        [')'] = 0.4,
        ['-'] = 0.37,
        ['/'] = 0.34,
        ['s'] = 0.53,
        ['c'] = 0.56,
        ['z'] = 0.53,
        ['k'] = 0.59,
        ['m'] = 0.98,
        ['w'] = 0.82,
        ['M'] = 0.87,
        ['W'] = 1.0,
        ['%'] = 0.96,
        ['_'] = 0.5,
        ['°'] = 0.5,
        ['"'] = 0.47,
        ['–'] = 0.5,
        ['„'] = 0.52,
        ['“'] = 0.52,
        [CardTexts.SoftHyphen] = 0,
    }.ToFrozenDictionary();

    /// <summary>Width of a text in points.</summary>
    /// <param name="text">The text, on one line.</param>
    /// <param name="size">Size of type in points.</param>
    public static double Width(string text, double size)
    {
        var width = 0.0;
        foreach (var letter in text)
        {
            width += Widths.TryGetValue(letter, out var known) ? known : char.IsUpper(letter) ? Capital : letter < '\u0250' ? Usual : Sign;
        }

        return width * size;
    }

    /// <summary>Lines that a text takes in a width, broken between words.</summary>
    /// <param name="text">The text.</param>
    /// <param name="size">Size of type in points.</param>
    /// <param name="width">Width in points.</param>
    public static int Lines(string text, double size, double width)
    {
        var (lines, used, gap) = (1, 0.0, Width(" ", size));
        foreach (var word in text.Split(' ', CardTexts.SoftHyphen))
        {
            var own = Width(word, size);
            if (used > 0 && used + gap + own > width)
            {
                lines++;
                used = own;
            }
            else
            {
                used += own + (used > 0 ? gap : 0);
            }
        }

        return lines;
    }

    /// <summary>Width of the longest part that is not broken.</summary>
    public static double LongestWord(string text, double size) => text.Split(' ', '-', CardTexts.SoftHyphen).Max(word => Width(word, size));
}
