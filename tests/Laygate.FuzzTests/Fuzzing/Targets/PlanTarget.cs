using System.Text;
using Laygate.Checking;
using Laygate.ConformanceTests;
using Laygate.ConformanceTests.Schema;
using Laygate.Reading;
using Laygate.Reading.Reports;
using Laygate.Reading.Yaml;
using Laygate.Reporting.Json;
using Laygate.Rules.Results;
using static Laygate.FuzzTests.Fuzzing.Refusal;

namespace Laygate.FuzzTests.Fuzzing.Targets;

/// <summary>Plans under a quick check, one in a file or several.</summary>
/// <param name="isMany">Whether a file holds several.</param>
/// <param name="seeds">Its seeds.</param>
internal sealed class PlanTarget(bool isMany, SeedSet seeds) : Target
{
    private static readonly string[][] Books = [[], ["us-wa"], ["de"]];
    private static readonly PlanTools Tools = new();

    /// <inheritdoc/>
    public override string Name => isMany ? "plans" : "plan";

    /// <inheritdoc/>
    public override int Share => isMany ? 25 : 180;

    /// <inheritdoc/>
    public override bool IsMany => isMany;

    /// <inheritdoc/>
    public override SeedSet Seeds => seeds;

    /// <inheritdoc/>
    public override Answer Try(byte[] bytes)
    {
        var check = Quick(Books[Choice(bytes, Books.Length)]);
        var result = check.Run("plan.yaml", bytes);
        if (result.Problems.Count > 0)
        {
            Require(result.Reports.Count == 0, "a report of a plan that could not be read");
            Refusal.Check(result.Problems, bytes);
            return Answer.Refused;
        }

        Require(result.Reports.Count > 0, "neither report nor refusal");

        // Both are dearer than the check.
        if (Choice(bytes, 3, salt: 1) == 0)
        {
            RoundTrips.Of(result);
        }
        else if (Choice(bytes, 3, salt: 1) == 1)
        {
            SaysTheSameAsJson(check, bytes, result.Reports);
        }

        return Answer.Accepted;
    }

    /// <summary>A quick check under specifications.</summary>
    public static PlanCheck Quick(params string[] rules) =>
        new(Repository.Bound(rules), new CheckSettings(null, Repository.CheckDate, Repository.Version) { Quick = true }, tools: Tools);

    // JSON is YAML without styles, anchors and comments: what a plan says must not hang on them.
    private static void SaysTheSameAsJson(PlanCheck check, byte[] bytes, IReadOnlyList<Report> reports)
    {
        foreach (var (document, report) in YamlReader.Read(bytes).Documents.Zip(reports))
        {
            var json = Encoding.UTF8.GetBytes(PlanSchemaFile.ToJson(document.Root)!.ToJsonString());
            if (json.Length > ReadingLimits.Bytes)
            {
                continue;
            }

            var again = check.Run("plan.json", json);
            Require(again.Problems.Count == 0, $"the same plan as JSON is refused: {(again.Problems.Count > 0 ? again.Problems[0].Message : string.Empty)}");
            Require(Outcomes(report).SequenceEqual(Outcomes(again.Reports[0])), "the same plan as JSON is judged otherwise");
        }
    }

    private static IEnumerable<object> Outcomes(Report report) =>
        report.Findings.Select(finding => (object)(finding.Rule, finding.Address, finding.Outcome, finding.Status, finding.Value));
}

/// <summary>What is written can be read, and is written again with the same bytes.</summary>
internal static class RoundTrips
{
    /// <summary>Judges the report of one file.</summary>
    public static void Of(FileResult result)
    {
        var written = Json(Repository.Version, [result], []);
        var read = ReportReader.Read("report.json", written);
        Require(read.Problem is null, $"its own report is refused: {read.Problem?.Message}");
        Require(written.AsSpan().SequenceEqual(Json(read.Run!.ProgramVersion, read.Run.Files, read.Run.Problems)), "a report read back is written otherwise");
    }

    /// <summary>The report as the program writes it.</summary>
    public static byte[] Json(string version, IReadOnlyList<FileResult> files, IReadOnlyList<Problem> problems)
    {
        using var bytes = new MemoryStream();
        JsonOutput.Write(bytes, version, files, problems);
        return bytes.ToArray();
    }
}
