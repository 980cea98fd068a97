using Laygate.Rules.Results;

namespace Laygate.Reporting.Comparing;

/// <summary>What has changed in one plan of a run since an earlier revision.</summary>
/// <param name="File">The comparison of its file.</param>
/// <param name="Plan">The comparison of the plan; null when the earlier file could not be read.</param>
public sealed record EarlierState(ComparisonResult File, PlanComparison? Plan)
{
    /// <summary>The earlier state of a report's plan; null where nothing was compared.</summary>
    /// <param name="changes">The comparison of its file; null where there is none.</param>
    /// <param name="report">The report.</param>
    public static EarlierState? Of(ComparisonResult? changes, Report report) => changes is { } file
        ? new EarlierState(file, file.Plans.FirstOrDefault(plan => plan.New?.Document == report.Document))
        : null;
}
