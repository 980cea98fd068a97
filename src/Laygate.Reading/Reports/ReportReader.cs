using System.Text;
using System.Text.Json;
using System.Text.Unicode;
using Laygate.Exchange;
using Laygate.Exchange.Reports;
using Laygate.Rules.Results;

namespace Laygate.Reading.Reports;

/// <summary>What became of a text that should be a report: the run it tells of, or why it could not be read.</summary>
/// <param name="Run">The run; null when it could not be read.</param>
/// <param name="Problem">Why not; null when it was read.</param>
public sealed record ReadReport(StoredRun? Run, Problem? Problem);

/// <summary>
/// Reads a JSON report, as <c>schemas/report.schema.json</c> describes it, back into the results that it was written from. Left out are what it does not
/// hold: plots, the inputs as read, the place in the plan from which a finding took its position, and the licence of a publication. Keys that it does not
/// know are passed over; those that were added later may be missing.
/// </summary>
public static class ReportReader
{
    private static readonly JsonDocumentOptions Options = new() { AllowDuplicateProperties = false };

    /// <summary>Reads a report.</summary>
    /// <param name="file">Name as it is to be shown in a problem.</param>
    /// <param name="bytes">The report, UTF-8; a byte-order mark is accepted.</param>
    public static ReadReport Read(string file, byte[] bytes)
    {
        var text = bytes.AsMemory(bytes.AsSpan().StartsWith(Encoding.UTF8.Preamble) ? Encoding.UTF8.Preamble.Length : 0);
        if (!Utf8.IsValid(text.Span))
        {
            return Not(file, "The file is no UTF-8 text, so it is no report.", position: null);
        }

        JsonDocument json;
        try
        {
            json = JsonDocument.Parse(text, Options);
        }
        catch (JsonException error)
        {
            return Not(file, "The file is no JSON, so it is no report.", JsonPositions.Of(text.Span, error));
        }

        using (json)
        {
            return Read(file, text.Span, json.RootElement);
        }
    }

    private static ReadReport Read(string file, ReadOnlySpan<byte> text, JsonElement root)
    {
        try
        {
            if (Other(root) is { } other)
            {
                return Not(file, other.What, JsonPositions.Of(text, other.Path));
            }

            if (new ShapeCheck().Of(root, Shapes.Default.RunShape) is { } fault)
            {
                return Not(file, fault.Message, JsonPositions.Of(text, fault.Path));
            }

            var run = root.Deserialize(Shapes.Default.RunShape)!;
            return FindingReports.Unlisted(run) is { } unlisted ? Not(file, unlisted.Message, JsonPositions.Of(text, unlisted.Path)) : new ReadReport(RunOf(run), null);
        }
        catch (Exception error) when (error is InvalidOperationException or JsonException)
        {
            // Half of a surrogate pair, written as its code, is found only when the text is asked for; all else was looked at before.
            return Not(file, "The report holds text that is no Unicode.", position: null);
        }
    }

    // Another text, or a report of another version.
    private static ShapeFault? Other(JsonElement root)
    {
        if (root.ValueKind != JsonValueKind.Object || !root.TryGetProperty("program", out var program) || program.ValueKind != JsonValueKind.String || !program.ValueEquals(RunShape.Name)
            || !root.TryGetProperty("report_version", out var version) || version.ValueKind == JsonValueKind.Null)
        {
            return new ShapeFault(string.Empty, "This is no report of Laygate: it does not begin with `report_version` and `program`.");
        }

        return version.ValueKind == JsonValueKind.Number && version.TryGetInt32(out var number) && number is < RunShape.Oldest or > RunShape.Version
            ? new ShapeFault("report_version", FormattableString.Invariant($"The report has the version {number}, and this program reads {RunShape.Oldest} to {RunShape.Version}. Read it with the program that wrote it, or a later one."))
            : null;
    }

    private static StoredRun RunOf(RunShape run) => new(
        run.ProgramVersion,
        run.Files.Each(file => new FileResult(file.File, file.Reports.Each(report => PlanReports.Of(report, file.File, run.ProgramVersion)), file.Problems.Each(ReportParts.Problem)) { Job = JobOf(file) }),
        run.Problems.Each(ReportParts.Problem));

    // A job without a report for each shift is none that could be shown.
    private static JobSummary? JobOf(FileShape file) => file.Job is { } job && file.Reports.Count == job.Shifts.Count + 1 ? job with { Lots = file.Lots ?? [] } : null;

    private static ReadReport Not(string file, string message, Position? position) =>
        new(null, new Problem(file, message, "Give the report exactly as `check --format json` or the service wrote it.", position));
}
