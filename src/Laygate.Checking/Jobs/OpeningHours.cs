using Laygate.Model.Measures;
using Laygate.Model.Plans;
using Laygate.Rules.Definitions;
using Laygate.Rules.Results;

namespace Laygate.Checking.Jobs;

/// <summary>The hours for which what a shift has laid is to stay closed.</summary>
internal static class OpeningHours
{
    private const string Quantity = "opening.time_after_laying";

    /// <summary>The longest of what its plan states and what its rules ask as a requirement; what the mat itself needs is judged apart. Null where nothing is asked.</summary>
    /// <param name="plan">Plan of the shift.</param>
    /// <param name="report">Its report.</param>
    public static IMeasure? Asked(Plan plan, Report report) => report.Findings
        .Where(finding => string.Equals(finding.Quantity, Quantity, StringComparison.Ordinal) && finding is { Outcome: not Outcome.NotApplicable, Limit.Basis: Basis.Requirement })
        .Select(finding => Measured(finding.Limit!.Low)).Append(plan.Opening?.After).OfType<IMeasure>().MaxBy(hours => hours.Si);

    private static Measure<Duration>? Measured(ShownValue? limit) =>
        limit is { Number: { } number } && UnitTable.Find(limit.Unit) is { Dimension: Dimension.Duration } unit ? new Measure<Duration>(number, unit) : null;
}
