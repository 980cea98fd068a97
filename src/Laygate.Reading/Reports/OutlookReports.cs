using Laygate.Exchange.Reports;
using Laygate.Rules.Results;

namespace Laygate.Reading.Reports;

/// <summary>Laying hour by hour, or workable weather, from its shape.</summary>
internal static class OutlookReports
{
    /// <summary>The outlook.</summary>
    public static LayingOutlook Of(OutlookShape shape) => new(
        shape.Hours.Each(Hour),
        shape.Leads ?? [],
        shape.Weather is { } weather ? new WorkableWeather(weather.Alone.Each(Alone), weather.Pairs ?? []) { IsUnknown = weather.Unknown } : null,
        shape.Rules ?? [])
    {
        NotJudged = shape.NotJudged.Each(Unjudged),
        InEveryHour = shape.InEveryHour.Each(Margin),
    };

    private static HourOutlook Hour(HourShape shape) =>
        new(shape.At, shape.Verdict, shape.Broken.Each(Broken), shape.CallBy, MaybeBroken(shape.Nearest)) { Limits = shape.Limits.Each(Margin) };

    private static UnjudgedRule Unjudged(UnjudgedRuleShape shape) => new(
        new FindingReference(shape.Rule, shape.Title, shape.Address),
        shape.Outcome,
        shape.Status ?? Status.None,
        shape.Missing.Each(ReportParts.Input),
        shape.Notes.Each(ReportParts.Note));

    private static LimitMargin Margin(LimitMarginShape shape) => new(
        Broken(new BrokenLimitShape(shape.Rule, shape.Address, shape.Title, shape.Status, shape.Value, shape.Limit, shape.OnExpectedValuesOnly)), shape.Margin);

    private static BrokenLimit? MaybeBroken(BrokenLimitShape? shape) => shape is null ? null : Broken(shape);

    private static BrokenLimit Broken(BrokenLimitShape shape) => new(
        new FindingReference(shape.Rule, shape.Title, shape.Address), shape.Status, shape.Value, ReportParts.MaybeLimit(shape.Limit), shape.OnExpectedValuesOnly);

    private static AxisLimit Alone(AxisLimitShape shape) =>
        new(shape.Axis, shape.Stated, shape.AllPass ?? shape.Go, shape.NoFailure, MaybeBroken(shape.BreaksFirst)) { NotBeyond = shape.NotBeyond };
}
