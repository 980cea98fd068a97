using System.Globalization;
using Laygate.Model.Measures;
using Laygate.Rules.Definitions;
using Laygate.Rules.Evaluation;
using Laygate.Rules.Results;

namespace Laygate.Rules.Departures;

/// <summary>Whether the value of a finding lies no further beyond its bound than the value that a departure accepts.</summary>
internal static class AcceptedValues
{
    /// <summary>Compares on expected values, as the outcome does.</summary>
    public static bool IsWithin(AcceptedValue accepted, Finding finding, Dimension dimension) => finding.Value switch
    {
        { Number: { } number } shown => accepted.Si is { } si && Number(Si(number, shown.Unit), si, finding, dimension),
        { Text: { } text } when finding.Check == CheckKind.NotBefore => accepted.Moment is { } moment && !IsEarlier(text, moment),
        { Text: { } text } => string.Equals(text, accepted.Text, StringComparison.Ordinal),
        _ => false,
    };

    private static bool Number(double value, double accepted, Finding finding, Dimension dimension) => finding.Check switch
    {
        CheckKind.AtLeast => NotBelow(value, accepted, dimension),
        CheckKind.AtMost => NotAbove(value, accepted, dimension),
        CheckKind.Between => IsLow(value, finding.Limit, dimension) ? NotBelow(value, accepted, dimension) : NotAbove(value, accepted, dimension),
        _ => LimitComparison.AreEqual(value, accepted, dimension),
    };

    // Outside a band the end that is missed decides, inside it the nearer end, whose unfavourable side is in question.
    private static bool IsLow(double value, ShownLimit? limit, Dimension dimension)
    {
        var low = limit?.Low is { Number: { } from } lower ? Si(from, lower.Unit) : double.NegativeInfinity;
        var high = limit?.High is { Number: { } to } upper ? Si(to, upper.Unit) : double.PositiveInfinity;
        return !LimitComparison.MeetsLow(value, low, exclusive: false, dimension) || value - low < high - value;
    }

    private static bool NotBelow(double value, double accepted, Dimension dimension) =>
        LimitComparison.MeetsLow(value, accepted, exclusive: false, dimension);

    private static bool NotAbove(double value, double accepted, Dimension dimension) =>
        LimitComparison.MeetsHigh(value, accepted, exclusive: false, dimension);

    private static double Si(double number, string unit) => UnitTable.Find(unit) is { } known ? known.ToSi(number) : number;

    // An accepted moment without an offset is a time of the place, as in a plan.
    private static bool IsEarlier(string text, Model.Plans.Moment accepted)
    {
        var value = DateTimeOffset.ParseExact(text, "yyyy-MM-dd'T'HH:mmzzz", CultureInfo.InvariantCulture);
        return accepted.Offset is { } offset ? value < new DateTimeOffset(accepted.Local, offset) : value.DateTime < accepted.Local;
    }
}
