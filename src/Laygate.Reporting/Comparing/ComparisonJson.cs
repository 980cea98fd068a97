using Laygate.Exchange;
using Laygate.Exchange.Comparisons;
using Laygate.Exchange.Reports;
using Laygate.Reporting.Json;
using Laygate.Reporting.Language;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Comparing;

/// <summary>Comparisons for programs, as <c>schemas/comparison.schema.json</c> describes them.</summary>
public static class ComparisonJson
{
    /// <summary>Writes all comparisons of one run as UTF-8 with a line feed at the end.</summary>
    public static void Write(Stream output, string programVersion, IReadOnlyList<ComparisonResult> results) => JsonOutput.Write(
        output,
        new ComparisonShape(ComparisonShape.Version, RunShape.Name, programVersion, results.Select(Of), Caution.Sentences),
        Shapes.Default.ComparisonShape,
        JsonOutput.Options);

    private static PairShape Of(ComparisonResult result) => new(result.OldFile, result.NewFile, result.Plans.Select(Of), PartShapes.Of(result.Problems));

    private static PlanShape Of(PlanComparison plan) => new(
        State(plan.Old),
        State(plan.New),
        plan.Counts,
        plan.Findings.Where(change => change.Kind != ChangeKind.Unchanged).Select(Of),
        plan.Quantities,
        Of(plan.Text));

    private static StateShape? State(Report? report) => report is null ? null : new(report.PlanId, report.Revision, report.PlanHash, report.BookHash);

    private static FindingChangeShape Of(FindingChange change) => new(
        change.Kind,
        change.Direction,
        change.Either.Rule,
        change.Either.Address,
        change.Either.Title,
        change.Old is { } old ? FindingShapes.Of(old) : null,
        change.New is { } later ? FindingShapes.Of(later) : null,
        Of(change.Behind));

    private static IReadOnlyList<TextChangeShape> Of(IReadOnlyList<TextChange> changes) =>
        [.. changes.Select(change => new TextChangeShape(change.Path, change.Old, change.New, change.OldPosition?.Line, change.NewPosition?.Line, change.OldPosition?.File, change.NewPosition?.File))];
}
