using Laygate.Reporting.Text;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Html;

/// <summary>Where the marks of a margin bar stand on a line of 240: what is allowed, the ends of the limit, the value and its band.</summary>
internal sealed record Bar(double AllowedFrom, double AllowedTo, IReadOnlyList<double> Ends, double Value, double? Low, double? High)
{
    private const double Left = 8;
    private const double Right = 232;

    /// <summary>The bar of a finding; null where value or limit is no number, or their units differ.</summary>
    public static Bar? Of(Finding finding)
    {
        if (Rounding.Kept(finding.Value) is not { Number: { } value } shown || finding.Limit is not { } limit || !double.IsFinite(value))
        {
            return null;
        }

        var (low, high) = (End(Rounding.Kept(limit.Low), shown), End(Rounding.Kept(limit.High), shown));
        double[] numbers = [.. ((double?[])[value, shown.Low, shown.High, low, high]).OfType<double>().Where(double.IsFinite)];
        if ((low is null && high is null) || numbers.Max() - numbers.Min() <= 0)
        {
            return low is null && high is null ? null : At(120, low is not null, high is not null);
        }

        var (from, span) = (numbers.Min(), numbers.Max() - numbers.Min());
        double Place(double number) => Left + 24 + ((number - from) / span * (Right - Left - 48));
        return new Bar(
            low is { } a ? Place(a) : Left, high is { } b ? Place(b) : Right,
            [.. ((double?[])[low, high]).OfType<double>().Select(Place)], Place(value),
            shown.Low is { } band ? Place(band) : null, shown.High is { } end ? Place(end) : null);
    }

    // Value and limit are the same number.
    private static Bar At(double place, bool hasLow, bool hasHigh) => new(hasLow ? place : Left, hasHigh ? place : Right, [place], place, null, null);

    private static double? End(ShownValue? end, ShownValue value) =>
        end is { Number: { } number } && double.IsFinite(number) && string.Equals(end.Unit, value.Unit, StringComparison.Ordinal) ? number : null;
}
