using System.Text;
using System.Text.Json;
using System.Text.Unicode;
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
    /// <summary>Version of the shape that is read.</summary>
    public const int Version = 2;

    /// <summary>The oldest version of the shape that it reads.</summary>
    public const int Oldest = 1;

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

        try
        {
            using var json = JsonDocument.Parse(text, Options);
            return new ReadReport(RunOf(new JsonPlace(json.RootElement, string.Empty)), null);
        }
        catch (JsonException error)
        {
            return Not(file, "The file is no JSON, so it is no report.", JsonPositions.Of(text.Span, error));
        }
        catch (InvalidOperationException)
        {
            // Half of a surrogate pair, written as its code, is found only when the text is asked for.
            return Not(file, "The report holds text that is no Unicode.", position: null);
        }
        catch (ReportShapeException error)
        {
            return Not(file, error.Message, JsonPositions.Of(text.Span, error.Path));
        }
    }

    private static StoredRun RunOf(JsonPlace root)
    {
        if (!root.IsObject || root.Maybe("program")?.IsText != true || !string.Equals(root.Text("program"), "laygate", StringComparison.Ordinal) || root.Maybe("report_version") is null)
        {
            throw new ReportShapeException(string.Empty, "This is no report of Laygate: it does not begin with `report_version` and `program`.");
        }

        var version = root.Whole("report_version");
        return version is >= Oldest and <= Version
            ? new StoredRun(root.Text("program_version"), root.List("files", file => FileOf(file, root.Text("program_version"))), root.List("problems", ReportParts.Problem))
            : throw new ReportShapeException("report_version", FormattableString.Invariant($"The report has the version {version}, and this program reads {Oldest} to {Version}. Read it with the program that wrote it, or a later one."));
    }

    private static FileResult FileOf(JsonPlace file, string version)
    {
        var name = file.Text("file");
        return new FileResult(name, file.List("reports", report => PlanReports.Of(report, name, version)), file.List("problems", ReportParts.Problem));
    }

    private static ReadReport Not(string file, string message, Position? position) =>
        new(null, new Problem(file, message, "Give the report exactly as `check --format json` or the service wrote it.", position));
}
