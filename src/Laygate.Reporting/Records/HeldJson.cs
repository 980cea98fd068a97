using Laygate.Engineering.Records.Happened;
using Laygate.Exchange;
using Laygate.Exchange.Records;
using Laygate.Model.Records;
using Laygate.Reporting.Json;
using Laygate.Reporting.Text;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Records;

/// <summary>What became of the limits as JSON, with everything that the page shows.</summary>
public static class HeldJson
{
    /// <summary>Writes a report as UTF-8 with a line feed at the end.</summary>
    /// <param name="report">The report.</param>
    /// <param name="output">Where to write.</param>
    public static void Write(HeldReport report, Stream output) => JsonOutput.Write(output, Of(report), Shapes.Default.HeldShape, JsonOutput.Options);

    private static HeldShape Of(HeldReport report) => new(
        HeldShape.Version, "laygate", report.Plan.ProgramVersion, new RecordedPlanShape(report.Plan.PlanId, report.Plan.PlanTitle, report.Plan.Revision, report.Plan.PlanHash), RecordShapes.Of(report.Record),
        report.Plan.JudgedFor, report.Plan.BookHash, report.SimpleBy, HeldWords.Says(report), report.Gate, report.Counts, [.. report.Findings.Select(one => Of(report, one))], [.. report.HoldPoints.Select(Of)],
        [.. HeldSections.ToRecord(report).Select(Plain)], report.NotSeen, RecordShapes.Of(report.Refused), RecordShapes.Of(report.Remarks));

    private static HeldFindingShape Of(HeldReport report, HeldFinding one) => new(
        one.Finding.Rule, one.Finding.Address, one.Outcome, one.Status, Plain(HeldSections.Line(report, one)), one.Quantity.Quantity, one.Quantity.What, one.Finding.Value, one.Uncertainty,
        PartShapes.Bare(one.Finding.Limit), one.Finding.Limit is { } limit ? PartShapes.Source(limit) : null, one.Because, one.Count,
        one.Worst is { } worst ? Of(new JudgedValue(worst, one.Outcome, one.Number)) : null, [.. one.NotHeld.Select(Of)], [.. one.Lacking.Select(lacking => new LackingShape(lacking.What, Maybe(lacking.Row)))],
        one.Finding.Departure?.Id, one.PlanStatus);

    private static string Plain(string text) => text.Replace(PlainText.Glue, ' ');

    private static HappenedShape Of(JudgedValue value) => new(value.Number, value.Outcome, value.Value.At, value.Value.Station, value.Value.Of, [.. value.Value.Rows.Select(row => new RowShape(row.File, row.Line))]);

    private static HoldPointShape Of(HeldPoint held) => Of(held.Use, held.Outcome);

    private static HoldPointShape Of(HoldPointUse point, HeldOutcome outcome) =>
        new(point.Id, point.State, outcome, point.ReleasedBy, point.Release?.At, point.Release?.By, point.Release?.Evidence, Maybe(point.Release?.Place));

    private static RowShape? Maybe(RowPlace? row) => row is { } place ? new RowShape(place.File, place.Line) : null;
}
