using Laygate.Exchange;
using Laygate.Exchange.Records;
using Laygate.Reporting.Json;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Records;

/// <summary>Which warnings came true, for programs, as <c>schemas/feedback.schema.json</c> describes it.</summary>
public static class FeedbackJson
{
    /// <summary>Writes a report as UTF-8 with a line feed at the end.</summary>
    /// <param name="report">The report.</param>
    /// <param name="version">Version of the program.</param>
    /// <param name="output">Where to write.</param>
    public static void Write(FeedbackReport report, string version, Stream output) => JsonOutput.Write(
        output,
        new FeedbackShape(
            FeedbackShape.Version, "laygate", version, FeedbackLines.Says(report), [.. report.Records.Select(one => new FeedbackRecordShape(one.Folder, one.PlanId, one.About))],
            [.. report.Rules.Select(one => new FeedbackRuleShape(one.Rule, one.What, one.WarnedMissed, one.WarnedHeld, one.PassedMissed, one.PassedHeld, one.NotDecided, one.NotRecorded))], RecordShapes.Of(report.Problems)),
        Shapes.Default.FeedbackShape,
        JsonOutput.Options);
}
