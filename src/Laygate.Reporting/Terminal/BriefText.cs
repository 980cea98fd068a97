using Laygate.Reporting.Text;

namespace Laygate.Reporting.Terminal;

/// <summary>Fits text into lines.</summary>
internal static class BriefText
{
    private const int LongestInOnePiece = 32;

    /// <summary>Whether a text fits.</summary>
    public static bool Fits(string text, int columns) => TextWidth.Of(text) <= columns;

    /// <summary>The text, or its beginning with a mark where it does not fit: cut between words where there are any.</summary>
    public static string Clip(string text, int columns)
    {
        if (Fits(text, columns))
        {
            return text;
        }

        var (width, end) = (0, 0);
        foreach (var rune in text.EnumerateRunes())
        {
            width += TextWidth.Of(rune);
            if (width > columns - 1)
            {
                break;
            }

            end += rune.Utf16SequenceLength;
        }

        var blank = text.LastIndexOf(' ', Math.Max(0, end - 1));
        return text[..(blank > end / 2 ? blank : end)].TrimEnd(' ', ',', ';', ':', PlainText.Glue) + "…";
    }

    /// <summary>A label and a list that is broken between its entries; what does not fit into the lines is counted.</summary>
    /// <param name="indent">Column of the label.</param>
    /// <param name="label">What stands before the list.</param>
    /// <param name="entries">The list.</param>
    /// <param name="width">Columns of a line.</param>
    /// <param name="most">Most lines.</param>
    public static IReadOnlyList<TerminalLine> List(int indent, TextSpan label, IReadOnlyList<string> entries, int width, int most)
    {
        var all = Flow(entries.Count);
        if (all.Count <= most)
        {
            return all;
        }

        var (few, many) = (0, entries.Count - 1);
        while (few < many)
        {
            var middle = (few + many + 1) / 2;
            (few, many) = Flow(middle).Count <= most ? (middle, many) : (few, middle - 1);
        }

        return Flow(few);

        IReadOnlyList<TerminalLine> Flow(int count)
        {
            var page = new Page(width, cuts: false);
            var shown = entries.Take(count).Select(entry => entry.Length < LongestInOnePiece ? entry.Replace(' ', PlainText.Glue) : entry).ToList();
            var rest = count == entries.Count ? string.Empty : $"{(count > 0 ? " " : string.Empty)}and {entries.Count - count}{PlainText.Glue}more:{PlainText.Glue}--full";
            page.Flow(indent, indent + 2, [label, new TextSpan(TextStyle.Plain, string.Join(", ", shown) + (rest.Length > 0 && count > 0 ? "," : string.Empty) + rest)]);
            return page.Take();
        }
    }
}
