using Laygate.Exchange;
using Laygate.Exchange.Records;
using Laygate.Reporting.Json;
using Laygate.Reporting.Text;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Records;

/// <summary>What a trial length proves, for programs, as <c>schemas/trial.schema.json</c> describes it.</summary>
public static class TrialJson
{
    /// <summary>Writes a report as UTF-8 with a line feed at the end.</summary>
    /// <param name="report">The report.</param>
    /// <param name="version">Version of the program.</param>
    /// <param name="output">Where to write.</param>
    public static void Write(TrialReport report, string version, Stream output) => JsonOutput.Write(output, Of(report, version), Shapes.Default.TrialShape, JsonOutput.Options);

    private static TrialShape Of(TrialReport report, string version)
    {
        var growth = report.Growth;
        return new TrialShape(
            TrialShape.Version, "laygate", version, new RecordedPlanShape(report.PlanId, report.PlanTitle, report.Revision, report.PlanHash), RecordShapes.Of(report.Record), growth.Course.Id,
            [.. TrialWords.Says(report).Select(Plain)], report.SpeaksForPlan, report.GrowthLimit, growth.Reference, growth.Target, growth.Curve?.Pattern, growth.Curve?.Peak, growth.Curve?.Losses ?? [],
            [.. growth.Passes.Select((pass, index) => new TrialPassShape(pass.Number, pass.Rollers, pass.Phase, pass.Places, pass.Density, pass.Share, index == 0 ? null : growth.Curve?.Gains[index - 1], pass.Skin))],
            growth.Offset is { } offset ? new TrialGaugeShape(offset.Pairs, offset.Offset) : null, [.. growth.Covers.Select(cover => new TrialCoverShape(cover.Kind, Plain(TrialWords.Cover(report, cover)), cover.Covers))],
            Plain(TrialWords.Reached(report)), [.. TrialWords.Differences(report).Select(Plain)], RecordShapes.Of(report.Refused));
    }

    private static string Plain(string text) => text.Replace(PlainText.Glue, ' ');
}
