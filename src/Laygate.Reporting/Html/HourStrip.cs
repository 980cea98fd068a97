using System.Globalization;
using Laygate.Model.Plans;
using Laygate.Reporting.Language;
using Laygate.Reporting.Text;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Html;

/// <summary>One hour of one row.</summary>
/// <param name="Verdict">Pass, warn or fail; null where the row says nothing of this hour.</param>
/// <param name="Text">Margin without its unit, or a word.</param>
internal sealed record HourCell(LayingVerdict? Verdict, string Text);

/// <summary>One limit over the hours.</summary>
/// <param name="Rule">Id of the rule; null for the verdict and for calls.</param>
/// <param name="Name">What it says where it is met.</param>
/// <param name="Cells">One for each hour.</param>
internal sealed record HourRow(string? Rule, string Name, IReadOnlyList<HourCell> Cells);

/// <summary>
/// Laying hour by hour as margins: a row for each limit that the weather moves, a column for each hour. The row of the verdict comes first; then what
/// does not pass in some hour, then what comes nearest to its limit.
/// </summary>
internal static class HourStrip
{
    /// <summary>Hours beside each other; a longer shift goes on below.</summary>
    private const int Across = 12;

    /// <summary>Parts of the strip, each at most as many hours wide as a screen and a sheet of paper hold.</summary>
    /// <param name="outlook">The hours.</param>
    /// <param name="findings">Findings of the same report: they say what holds where a limit is met.</param>
    public static IReadOnlyList<(IReadOnlyList<HourOutlook> Hours, IReadOnlyList<HourRow> Rows)> Of(LayingOutlook outlook, IReadOnlyList<Finding> findings)
    {
        var rules = Rules(outlook.Hours);
        return [.. outlook.Hours.Chunk(Across).Select(hours => ((IReadOnlyList<HourOutlook>)hours, Rows(hours, rules, findings)))];
    }

    /// <summary>Hours by verdict, in words.</summary>
    public static string Sum(LayingOutlook outlook) => string.Join(", ", outlook.Hours.GroupBy(hour => hour.Verdict).OrderBy(group => group.Key)
        .Select(group => $"{group.Count().ToString(CultureInfo.InvariantCulture)} {(group.Count() == 1 ? "hour" : "hours")} {OutlookWords.Of(group.Key)}"));

    private static IReadOnlyList<HourRow> Rows(IReadOnlyList<HourOutlook> hours, IReadOnlyList<FindingReference> rules, IReadOnlyList<Finding> findings) =>
    [
        new HourRow(null, "laying", [.. hours.Select(hour => new HourCell(hour.Verdict, OutlookWords.Of(hour.Verdict)))]),
        .. rules.Select(rule => Row(hours, rule, findings)),
        .. hours.Any(hour => hour.CallBy is not null)
            ? [new HourRow(null, "call the plant by", [.. hours.Select(hour => new HourCell(null, hour.CallBy?.ToString("HH:mm", CultureInfo.InvariantCulture) ?? "—"))])]
            : Array.Empty<HourRow>(),
    ];

    private static HourRow Row(IReadOnlyList<HourOutlook> hours, FindingReference rule, IReadOnlyList<Finding> findings)
    {
        var worst = hours.Select(hour => OutlookWords.Least(hour.Limits.Where(limit => Same(limit, rule)))).ToList();
        var unit = worst.Select(limit => OutlookWords.Margin(limit?.Margin)?.Unit).FirstOrDefault(unit => !string.IsNullOrEmpty(unit));
        var finding = findings.FirstOrDefault(one => one.Outcome != Outcome.NotApplicable && string.Equals(one.Rule, rule.Rule, StringComparison.Ordinal));
        var name = PositiveForm.Of(rule.Title, finding?.Asks, finding?.Holds) ?? $"Does not occur: {rule.Title}";
        return new HourRow(rule.Rule, PlainText.Show(unit is null ? name : $"{name} ({unit})"), [.. worst.Select(limit => limit is null
            ? new HourCell(null, "—")
            : new HourCell(Verdict(limit.Limit.Status), OutlookWords.Margin(limit.Margin)?.Text ?? Words.Of(limit.Limit.Status)))]);
    }

    // What is worst in any hour first; among the passes what comes nearest to its limit, as a share of it.
    private static List<FindingReference> Rules(IReadOnlyList<HourOutlook> hours) =>
    [
        .. hours.SelectMany(hour => hour.Limits).GroupBy(limit => limit.Limit.Finding.Rule, StringComparer.Ordinal)
            .OrderByDescending(rule => rule.Max(limit => Verdict(limit.Limit.Status))).ThenBy(rule => rule.Min(limit => limit.Share)).ThenBy(rule => rule.Key, StringComparer.Ordinal)
            .Select(rule => rule.First().Limit.Finding),
    ];

    private static LayingVerdict Verdict(Status status) => status switch
    {
        Status.Fail => LayingVerdict.Fail,
        Status.Warn => LayingVerdict.Warn,
        _ => LayingVerdict.Pass,
    };

    private static bool Same(LimitMargin limit, FindingReference rule) => string.Equals(limit.Limit.Finding.Rule, rule.Rule, StringComparison.Ordinal);
}
