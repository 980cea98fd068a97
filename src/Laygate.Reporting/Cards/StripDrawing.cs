using System.Globalization;
using System.Xml.Linq;
using Laygate.Reporting.Text;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Cards;

/// <summary>The strips of a roller across the mat, in black and white.</summary>
internal static class StripDrawing
{
    private const double Step = 11;
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    /// <summary>The drawing.</summary>
    /// <param name="strips">Strips; at least one.</param>
    /// <param name="title">What it shows.</param>
    /// <param name="numbers">How the card writes numbers.</param>
    public static string Of(IReadOnlyList<SheetStrip> strips, string title, CardNumbers numbers)
    {
        var from = Math.Min(0, strips.Min(strip => strip.From.Number ?? 0));
        var to = strips.Max(strip => strip.To.Number ?? 0);
        double Place(double? across) => 6 + (((across ?? 0) - from) / Math.Max(1e-9, to - from) * 388);
        var bottom = 6 + (strips.Count * Step);
        return new XElement(
            Svg + "svg",
            new XAttribute("class", "strips"), new XAttribute("viewBox", $"0 0 400 {N(bottom + 12)}"), new XAttribute("role", "img"), new XAttribute("aria-label", PlainText.Show(title)),
            strips.Select((strip, i) => Strip(i, Place(strip.From.Number), Place(strip.To.Number), $"{numbers.Local(Tenth(strip.From))} – {numbers.Local(Tenth(strip.To))} {PlainText.Show(strip.To.Unit)}")),
            new XElement(Svg + "path", new XAttribute("d", $"M{N(Place(0))} 0V{N(bottom)}"), new XAttribute("stroke", "#000"), new XAttribute("stroke-dasharray", "4 3")),
            Words(Place(0), bottom + 10, "0", "middle")).ToString(SaveOptions.DisableFormatting);
    }

    private static object[] Strip(int place, double left, double right, string words) =>
    [
        new XElement(
            Svg + "rect", new XAttribute("x", N(left)), new XAttribute("y", N(4 + (place * Step))), new XAttribute("width", N(right - left)), new XAttribute("height", 9.5),
            new XAttribute("fill", "#fff"), new XAttribute("stroke", "#000"), new XAttribute("stroke-width", 1.2)),
        Words((left + right) / 2, 12 + (place * Step), (place + 1).ToString(CultureInfo.InvariantCulture), "middle"),
        (left + right) / 2 < 200 ? Words(right + 4, 12 + (place * Step), words, "start") : Words(left - 4, 12 + (place * Step), words, "end"),
    ];

    private static XElement Words(double x, double y, string words, string anchor) => new(
        Svg + "text", new XAttribute("x", N(x)), new XAttribute("y", N(y)), new XAttribute("text-anchor", anchor), new XAttribute("font-size", 9), words);

    private static string N(double number) => number.ToString("0.#", CultureInfo.InvariantCulture);

    private static string Tenth(ShownValue value) => (value.Number ?? 0).ToString("0.0", CultureInfo.InvariantCulture);
}
