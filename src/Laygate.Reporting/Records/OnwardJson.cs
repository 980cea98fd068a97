using Laygate.Engineering.Onward;
using Laygate.Engineering.Supply.Simulation;
using Laygate.Exchange;
using Laygate.Exchange.Records;
using Laygate.Model.Plans;
using Laygate.Reporting.Json;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Records;

/// <summary>The rest of a shift for programs, as <c>schemas/onward.schema.json</c> describes it.</summary>
public static class OnwardJson
{
    /// <summary>Writes it as UTF-8 with a line feed at the end.</summary>
    /// <param name="report">The rest of the shift.</param>
    /// <param name="output">Where to write.</param>
    public static void Write(OnwardReport report, Stream output) => JsonOutput.Write(output, Of(report), Shapes.Default.OnwardShape, JsonOutput.Options);

    private static OnwardShape Of(OnwardReport report)
    {
        var result = report.Result;
        return new OnwardShape(
            OnwardShape.Version, "laygate", report.ProgramVersion, new RecordedPlanShape(report.PlanId, report.PlanTitle, report.Revision, report.PlanHash), RecordShapes.Of(report.Record),
            result.At, result.LastRow, result.Closing, OnwardWords.Says(result), RecordShapes.Figure(result.LengthLeft), Of(result.Forecast), result.SteadyEnd, RecordShapes.Figure(result.AtRisk), Of(result.StopAt),
            result.StopLimit / 60, result.StandsSince, result.JointBy, [.. result.Courses.Select(Of)], result.Change is { } change ? Of(change) : null, [.. result.Tried.Select(Of)],
            [.. result.Facts.Select(fact => new OnwardFactShape(Words.Of(fact.Kind), fact.Of, Words.Of(fact.Basis), RecordShapes.Maybe(fact.Value), fact.At, fact.IsStale))],
            [.. result.Notes.Select(OnwardNotes.Of)], RecordShapes.Of(report.Refused), RecordShapes.Of(report.Remarks),
            [.. result.Phases.Select(phase => new OnwardPhaseShape(phase.Phase, phase.Planned, phase.Rollers, phase.Follows * 60, phase.AtPlannedSpeed))], report.BookHash);
    }

    private static OnwardBandShape Of(Band band, double unit = 1) => new(band.Expected / unit, band.Low / unit, band.High / unit);

    private static OnwardForecastShape Of(OnwardForecast forecast) => new(
        forecast.Shifts, Of(forecast.Finish), new OnwardMomentShape(forecast.End.Expected, forecast.End.Low, forecast.End.High), Of(forecast.LongestStop, 60),
        forecast.OverLimit is { } over ? Of(over) : null, Of(forecast.Stops));

    private static OnwardStopShape? Of(StopAt? stop) => stop is null ? null : new(
        stop.At, stop.IsRain ? "rain" : "closing", RecordShapes.Figure(stop.Left), RecordShapes.Figure(stop.Reached), stop.Place?.Run, stop.Place?.Station,
        [.. stop.StopLoading.Select(group => new OnwardLastLoadShape(group.Group, group.At))]);

    private static OnwardCourseShape Of(OnwardCourse course) => new(
        course.Course, course.Mix, RecordShapes.Figure(course.OnMachine), Of(course.OnSite), Of(course.OnRoad), course.LastsUntil,
        new OnwardCallShape(course.ToCall.Loads, RecordShapes.Figure(course.ToCall.Mass), course.ToCall.First, course.ToCall.Last, RecordShapes.Maybe(course.ToCall.LastMass)),
        [.. course.Windows.Select(window => new OnwardWindowShape(window.At, window.Seconds / 60, window.Low / 60, window.High / 60))], course.RolledWithin / 60,
        [.. course.Passes.Select(one => new OnwardPassesShape(one.Phase, one.Planned, one.Expected, one.Low))]);

    private static OnwardLoadsShape Of(LoadsOut loads) => new(loads.Loads, RecordShapes.Figure(loads.Mass), loads.Oldest / 60, loads.Ticket);

    private static OnwardChangeShape Of(OnwardChange change) => new(Words.Of(change.Lever), change.Of, RecordShapes.Maybe(change.From), RecordShapes.Maybe(change.To), Of(change.Forecast));
}
