using Laygate.Engineering.Quantities;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Text;

/// <summary>The numbers of one finding, rounded together so that value and limit stand to each other as they really do: a value that misses never looks equal to its limit.</summary>
internal sealed class Figures
{
    private readonly Finding finding;
    private readonly RoundingKind valueKind;
    private readonly double band;
    private readonly int level;

    private Figures(Finding finding)
    {
        this.finding = finding with { Value = Rounding.Kept(finding.Value) };
        valueKind = KindOf(this.finding.Value, finding);
        band = BandOf(this.finding.Value);
        while (level < Rounding.FinestLevel && !LooksRight(Kept(finding.Limit), level))
        {
            level++;
        }
    }

    /// <summary>Rounds the numbers of a finding.</summary>
    public static Figures Of(Finding finding) => new(finding);

    /// <summary>The value with unit and band, for example <c>15 min (10 to 20)</c>; null when there is none.</summary>
    public string? Value()
    {
        if (finding.Value is not { } value)
        {
            return null;
        }

        return value.Number is { } number
            ? WithUnit(Rounding.Text(number, valueKind, level, band), value.Unit) + BandText(value)
            : PlainText.Show(value.Text ?? string.Empty);
    }

    /// <summary>One end of a limit with unit, or its words.</summary>
    public string End(ShownValue end, ShownLimit limit) => Rounding.Kept(end) is { Number: { } number } kept
        ? WithUnit(Rounding.Text(number, LimitKind(limit, kept), level, BandOf(kept)), end.Unit)
        : PlainText.Show(end.Text ?? string.Empty);

    /// <summary>A number with its unit; a blank that does not break keeps the two on one line.</summary>
    public static string WithUnit(string number, string unit) =>
        unit.Length == 0 ? number : $"{number}{PlainText.Glue}{PlainText.Show(unit).Replace(' ', PlainText.Glue)}";

    private string BandText(ShownValue value)
    {
        if (value.Low is not { } low || value.High is not { } high)
        {
            return string.Empty;
        }

        var expected = Rounding.Text(value.Number ?? 0, valueKind, level, band);
        var lowText = Rounding.Text(low, valueKind, level, band);
        var highText = Rounding.Text(high, valueKind, level, band);
        var (lowSame, highSame) = (string.Equals(lowText, expected, StringComparison.Ordinal), string.Equals(highText, expected, StringComparison.Ordinal));
        var text = (lowSame, highSame) switch
        {
            (true, true) => string.Empty,

            // "under 1 % (under 1 to 1)" would say one end twice.
            (true, false) when valueKind == RoundingKind.Probability && IsOpen(highText, "under") => $" ({highText})",
            (true, false) when valueKind == RoundingKind.Probability && IsOpen(expected, "under") && !IsOpen(highText, "over") => $" (at most {highText})",
            (false, true) when valueKind == RoundingKind.Probability && IsOpen(lowText, "over") => $" ({lowText})",
            (false, true) when valueKind == RoundingKind.Probability && IsOpen(expected, "over") && !IsOpen(lowText, "under") => $" (at least {lowText})",
            _ => $" ({lowText} to {highText})",
        };
        return text.Length == 0 ? text : " " + text[1..].Replace(' ', PlainText.Glue);
    }

    private static bool IsOpen(string text, string side) => text.StartsWith(side, StringComparison.Ordinal);

    private bool LooksRight(ShownLimit? limit, int digits)
    {
        if (limit is null || finding.Value is not { Number: { } number } value)
        {
            return true;
        }

        return ((double?[])[number, value.Low, value.High]).OfType<double>().Where(double.IsFinite).All(one =>
            EndLooksRight(one, limit, limit.Low, limit.LowExclusive, 1, digits)
            && EndLooksRight(one, limit, limit.High, limit.HighExclusive, -1, digits));
    }

    // direction 1: the value must not be below the end; -1: not above it.
    private bool EndLooksRight(double number, ShownLimit limit, ShownValue? end, bool exclusive, int direction, int digits)
    {
        if (end?.Number is not { } bound || !double.IsFinite(bound))
        {
            return true;
        }

        var real = Compare(number, bound) * direction;
        var shown = Compare(
            Rounding.Round(number, valueKind, digits, band),
            Rounding.Round(bound, LimitKind(limit, end), digits, BandOf(end))) * direction;
        return real switch
        {
            0 => shown == 0,
            < 0 => shown < 0 || (shown == 0 && IsMetWithinTolerance(number, bound)),
            _ => exclusive ? shown > 0 : shown >= 0,
        };
    }

    // The rules forgive rounding noise; what they call met may then look met.
    private bool IsMetWithinTolerance(double number, double bound) =>
        finding.Outcome == Outcome.Met && Math.Abs(number - bound) <= 1e-6 * Math.Abs(bound);

    // Beyond the twelve digits that are ever shown, two numbers are one.
    private static int Compare(double left, double right)
    {
        var difference = left - right;
        return Math.Abs(difference) <= 1e-11 * Math.Max(Math.Abs(left), Math.Abs(right)) ? 0 : Math.Sign(difference);
    }

    private RoundingKind LimitKind(ShownLimit limit, ShownValue end) =>
        limit.Quantity is null && limit.Stated is null ? RoundingKind.Exact : ByUnit(end, finding.Quantity);

    private static RoundingKind KindOf(ShownValue? value, Finding finding) =>
        value is null || (finding.Origin == Origin.Stated && value.Low is null)
            ? RoundingKind.Exact
            : ByUnit(value, finding.Quantity);

    private static RoundingKind ByUnit(ShownValue value, string quantity) => value.Unit switch
    {
        "min" => value.Low is null ? RoundingKind.PlainMinutes : RoundingKind.Minutes,
        "°C" or "C" or "°F" or "F" or "K" => RoundingKind.Temperature,
        "%" when IsChance(quantity) => RoundingKind.Probability,
        "" when value.Low is null && value.Number is { } number && double.IsInteger(number) => RoundingKind.Exact,
        _ => RoundingKind.General,
    };

    private static bool IsChance(string quantity) =>
        quantity.Contains("chance", StringComparison.Ordinal) || quantity.Contains("probability", StringComparison.Ordinal);

    private static ShownLimit? Kept(ShownLimit? limit) => limit is null ? null : limit with { Low = Rounding.Kept(limit.Low), High = Rounding.Kept(limit.High) };

    private static double BandOf(ShownValue? value) =>
        value is { Low: { } low, High: { } high } ? Math.Abs(high - low) : 0;
}
