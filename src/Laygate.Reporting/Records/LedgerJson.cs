using Laygate.Engineering.Records;
using Laygate.Exchange;
using Laygate.Exchange.Records;
using Laygate.Model.Plans;
using Laygate.Reporting.Json;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Records;

/// <summary>The ledger for programs, as <c>schemas/ledger.schema.json</c> describes it.</summary>
public static class LedgerJson
{
    /// <summary>Writes a ledger as UTF-8 with a line feed at the end.</summary>
    /// <param name="report">The ledger.</param>
    /// <param name="output">Where to write.</param>
    public static void Write(LedgerReport report, Stream output) => JsonOutput.Write(output, Of(report), Shapes.Default.LedgerShape, JsonOutput.Options);

    private static LedgerShape Of(LedgerReport report) => new(
        LedgerShape.Version, "laygate", report.ProgramVersion, new RecordedPlanShape(report.PlanId, report.PlanTitle, report.Revision, report.PlanHash),
        RecordShapes.Of(report.Record), report.Ledger.At, report.Ledger.LastRow, LedgerWords.Says(report.Ledger), Of(report.Ledger.End), Of(report.Ledger.Stops),
        [.. report.Ledger.Courses.Select(Of)], [.. report.Ledger.Notes.Select(LedgerWords.Note)], RecordShapes.Of(report.Refused), RecordShapes.Of(report.Remarks));

    private static LedgerMomentShape? Of(LedgerMoment? end) => end is null ? null : new(end.Expected, end.Earliest, end.Latest);

    private static LedgerStopsShape Of(StopLedger stops) => new(stops.Count, RecordShapes.Figure(stops.Total), RecordShapes.Maybe(stops.Longest), RecordShapes.Maybe(stops.Limit));

    private static LedgerCourseShape Of(CourseLedger course) => new(
        course.Course, course.Mix, course.Discharged, RecordShapes.Figure(course.Tickets), Of(course.Shift), Of(course.LastLoads), RecordShapes.Figure(course.Laid), RecordShapes.Figure(course.LengthLeft),
        RecordShapes.Figure(course.LeftByPlan), RecordShapes.Figure(course.LeftByYield), RecordShapes.Figure(course.OnHand), RecordShapes.Figure(course.ToOrder), course.LoadsToOrder, RecordShapes.Maybe(course.LastLoad), course.LastLeaves,
        [.. course.UnderWay.Select(load => new LoadUnderWayShape(load.Ticket, RecordShapes.Figure(load.Mass), load.Loaded, load.OnSite))], Of(course.End),
        [.. course.Ends.Select(end => new ReckonedEndShape(Words.Of(end.Basis), RecordShapes.Figure(end.Rate), end.End))], RecordShapes.Steps(course.Working));

    private static LedgerIntervalShape? Of(LedgerInterval? interval) => interval is null ? null : new(
        interval.Loads, interval.From, interval.To, RecordShapes.Figure(interval.Mass), RecordShapes.Figure(interval.Length), RecordShapes.Figure(interval.PerLength), RecordShapes.Figure(interval.PerArea),
        RecordShapes.Figure(interval.Thickness), interval.IsProven, RecordShapes.Steps(interval.Working));
}
