using Laygate.Engineering.Measured;
using Laygate.Exchange;
using Laygate.Exchange.Records;
using Laygate.Reporting.Json;
using Laygate.Reporting.Text;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Records;

/// <summary>Measured against computed temperatures for programs, as <c>schemas/measured.schema.json</c> describes it.</summary>
public static class MeasuredJson
{
    /// <summary>Writes it as UTF-8 with a line feed at the end.</summary>
    /// <param name="found">The shifts.</param>
    /// <param name="version">Version of the program.</param>
    /// <param name="output">Where to write.</param>
    public static void Write(MeasuredRun found, string version, Stream output) => JsonOutput.Write(
        output,
        new MeasuredShape(MeasuredShape.Version, "laygate", version, [.. found.Shifts.Select(Of)], found.Learnt is { } learnt ? Of(learnt, found.LearntFile!) : null, RecordShapes.Of(found.NotCounted)),
        Shapes.Default.MeasuredShape,
        JsonOutput.Options);

    private static MeasuredShiftShape Of(MeasuredReport report) => new(
        new RecordedPlanShape(report.PlanId, report.PlanTitle, report.Revision, report.PlanHash), RecordShapes.Of(report.Record), report.Comparison.Places, report.Comparison.WithMeasuredLoads, report.Comparison.WithMeasuredWeather,
        [.. report.Comparison.Groups.Select(Of)], [.. report.Comparison.Compared.Select(Of)], [.. report.Comparison.Left.Select(left => new NotComparedShape(left.Reason, left.Count, MeasuredLines.Reason(left.Reason)))], RecordShapes.Of(report.Refused), [.. report.Learnt.Select(one => one.Entry)]);

    private static MeasuredGroupShape Of(TemperatureGroup group) => new(
        group.IsSkin, Math.Max(0, group.From) / 60, double.IsFinite(group.To) ? group.To / 60 : null, group.Readings, group.Places, new OnwardBandShape(group.Inside.Expected, group.Inside.Low, group.Inside.High), group.Bias, group.Deviation);

    private static MeasuredReadingShape Of(ComparedTemperature one) => new(
        new RowShape(one.Row.Place.File, one.Row.Place.Line), one.Course, 1000 * one.Row.Depth, one.Age / 60, one.Row.Value, one.Expected, one.Low, one.High, one.IsInside);

    private static LearntShape Of(LearnReport report, string file) =>
        new(report.Id, report.Values is not null, [.. LearnLines.Of(report, file).Select(line => line.Text.Trim().Replace(PlainText.Glue, ' '))]);
}
