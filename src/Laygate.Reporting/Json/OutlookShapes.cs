using Laygate.Exchange.Reports;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Json;

/// <summary>Laying hour by hour, or workable weather, as programs get it.</summary>
internal static class OutlookShapes
{
    /// <summary>The outlook.</summary>
    public static OutlookShape Of(LayingOutlook outlook) => new(
        outlook.Rules,
        [.. outlook.NotJudged.Select(Of)],
        [.. outlook.InEveryHour.Select(Of)],
        [.. outlook.Hours.Select(Of)],
        outlook.Leads,
        outlook.Weather is { } weather ? new WorkableWeatherShape(weather.IsUnknown, [.. weather.Alone.Select(Of)], weather.Pairs) : null);

    private static UnjudgedRuleShape Of(UnjudgedRule rule) => new(
        rule.Finding.Rule, rule.Finding.Address, rule.Finding.Title, rule.Outcome, PartShapes.Of(rule.Status), PartShapes.Of(rule.Missing), PartShapes.Of(rule.Notes));

    private static HourShape Of(HourOutlook hour) =>
        new(hour.At, hour.Verdict, hour.CallBy, [.. hour.Broken.Select(Of)], [.. hour.Limits.Select(Of)], Maybe(hour.Nearest));

    private static BrokenLimitShape? Maybe(BrokenLimit? broken) => broken is null ? null : Of(broken);

    private static BrokenLimitShape Of(BrokenLimit broken) => new(
        broken.Finding.Rule, broken.Finding.Address, broken.Finding.Title, broken.Status, broken.Value, PartShapes.Of(broken.Limit), broken.OnExpectedValuesOnly);

    private static LimitMarginShape Of(LimitMargin margin) => Of(Of(margin.Limit), margin.Margin);

    private static LimitMarginShape Of(BrokenLimitShape limit, ShownValue? margin) =>
        new(limit.Rule, limit.Address, limit.Title, limit.Status, limit.Value, limit.Limit, limit.OnExpectedValuesOnly, margin);

    private static AxisLimitShape Of(AxisLimit axis) => new(axis.Axis, axis.Stated, axis.AllPass, Go: null, axis.NoFailure, axis.NotBeyond, Maybe(axis.BreaksFirst));
}
