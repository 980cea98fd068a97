using Laygate.Rules.Results;

namespace Laygate.Rules.Held;

/// <summary>Counts what came of the findings of plans.</summary>
public static class RuleFeedbacks
{
    /// <summary>One row for each rule and what it read, by id.</summary>
    /// <param name="reports">What was held in each shift.</param>
    public static IReadOnlyList<RuleFeedback> Of(IEnumerable<HeldReport> reports) =>
    [
        .. reports.SelectMany(report => report.Findings).GroupBy(one => (one.Finding.Rule, one.Quantity.What)).OrderBy(group => group.Key.Rule, StringComparer.Ordinal).ThenBy(group => group.Key.What, StringComparer.Ordinal)
            .Select(group => new RuleFeedback(
                group.Key.Rule, group.Key.What, group.Count(one => HasWarned(one) && IsMissed(one)), group.Count(one => HasWarned(one) && one.Outcome == HeldOutcome.Held),
                group.Count(one => !HasWarned(one) && IsMissed(one)), group.Count(one => !HasWarned(one) && one.Outcome == HeldOutcome.Held),
                group.Count(one => one.Outcome == HeldOutcome.NotDecided), group.Count(one => one.Outcome == HeldOutcome.NotRecorded))),
    ];

    private static bool HasWarned(HeldFinding one) => one.PlanStatus is Status.Warn or Status.Fail;

    // What a departure permitted was beyond the limit all the same.
    private static bool IsMissed(HeldFinding one) => one.Outcome is HeldOutcome.Missed or HeldOutcome.Departed;
}
