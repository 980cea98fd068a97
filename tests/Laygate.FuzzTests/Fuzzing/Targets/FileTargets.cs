using Laygate.Tests;
using Laygate.Checking;
using Laygate.Checking.Baselines;
using Laygate.Checking.Comparing;
using Laygate.Checking.Verification;
using Laygate.ConformanceTests;
using Laygate.Reading;
using Laygate.Reading.Baselines;
using Laygate.Reading.Departures;
using Laygate.Reading.Reports;
using Laygate.Reading.RuleFiles;
using Laygate.Reporting.CodeQuality;
using Laygate.Reporting.Comparing;
using Laygate.Reporting.Html;
using Laygate.Reporting.JUnit;
using Laygate.Reporting.Markdown;
using Laygate.Reporting.Runs;
using Laygate.Reporting.Sarif;
using Laygate.Reporting.Terminal;
using Laygate.Rules.Baselines;
using static Laygate.FuzzTests.Fuzzing.Refusal;

namespace Laygate.FuzzTests.Fuzzing.Targets;

/// <summary>Departures, read against the rule book and applied to a plan.</summary>
internal sealed class DepartureTarget : Target
{
    private static readonly byte[] Plan = Repository.Bytes(SeedFiles.JudgedPlan);
    private static readonly PlanTools Tools = new();

    /// <inheritdoc/>
    public override string Name => "departures";

    /// <inheritdoc/>
    public override int Share => 45;

    /// <inheritdoc/>
    public override SeedSet Seeds { get; } = SeedFiles.Departures();

    /// <inheritdoc/>
    public override Answer Try(byte[] bytes)
    {
        var book = Repository.Bound("de");
        var read = DepartureFiles.Load(["departures.yaml"], book, new OneFile(bytes));
        if (read.Problems.Count > 0)
        {
            Require(read.Departures.Count == 0, "departures are read in part");
            Refusal.Check(read.Problems, bytes);
            return Answer.Refused;
        }

        var result = new PlanCheck(book, new CheckSettings(null, Repository.CheckDate, Repository.Version) { Quick = true }, read.Departures, Tools).Run("plan.yaml", Plan);
        Require(result.Reports.Count == 1 && result.Reports[0].Departures.Count <= read.Departures.Count, "departures are lost or made");
        if (Choice(bytes, 4) == 0)
        {
            RoundTrips.Of(result);
        }

        return Answer.Accepted;
    }

    private sealed class OneFile(byte[] bytes) : IRuleFiles
    {
        public IRuleFolder? Folder(string path) => null;

        public byte[]? File(string path) => bytes;
    }
}

/// <summary>The settings of a repository.</summary>
internal sealed class SettingsTarget : Target
{
    /// <inheritdoc/>
    public override string Name => "settings";

    /// <inheritdoc/>
    public override int Share => 220;

    /// <inheritdoc/>
    public override SeedSet Seeds { get; } = SeedFiles.RepositorySettings();

    /// <inheritdoc/>
    public override Answer Try(byte[] bytes)
    {
        var (settings, problems) = SettingsFile.Read("laygate.yaml", bytes);
        Require((settings is null) == (problems.Count > 0), "neither settings nor refusal");
        if (settings is not null)
        {
            return Answer.Accepted;
        }

        Refusal.Check(problems, bytes);
        return Answer.Refused;
    }
}

/// <summary>Known findings, laid over a report.</summary>
internal sealed class BaselineTarget : Target
{
    private static readonly Laygate.Rules.Results.Report Report = SeedFiles.QuickReport(SeedFiles.JudgedPlan);

    /// <inheritdoc/>
    public override string Name => "baseline";

    /// <inheritdoc/>
    public override int Share => 90;

    /// <inheritdoc/>
    public override SeedSet Seeds { get; } = SeedFiles.Baselines();

    /// <inheritdoc/>
    public override Answer Try(byte[] bytes)
    {
        var book = Repository.Bound("us-wa");
        var (baseline, problems) = BaselineFile.Read("baseline.json", bytes, book);
        Require((baseline is null) == (problems.Count > 0), "neither a baseline nor a refusal");
        if (baseline is null)
        {
            Refusal.Check(problems, bytes);
            return Answer.Refused;
        }

        var judged = BaselineJudge.Apply(Report, book, baseline, "plan.yaml");
        Require(judged.Findings.Count == Report.Findings.Count, "a baseline makes or hides findings");
        return Answer.Accepted;
    }
}

/// <summary>A report that is read back and written in each form.</summary>
internal sealed class ReportTarget : Target
{
    private static readonly Action<ReportedRun, Stream>[] Forms =
    [
        SarifWriter.Write, MarkdownWriter.Write, HtmlWriter.Write, WholeRuns.JUnit, WholeRuns.CodeQuality, (run, _) => TerminalReport.Lines(run.Results, new TerminalSettings(80)),
    ];

    /// <inheritdoc/>
    public override string Name => "report";

    /// <inheritdoc/>
    public override int Share => 190;

    /// <inheritdoc/>
    public override SeedSet Seeds { get; } = SeedFiles.Reports();

    /// <inheritdoc/>
    public override Answer Try(byte[] bytes)
    {
        var read = ReportReader.Read("report.json", bytes);
        Require((read.Run is null) == (read.Problem is not null), "neither a report nor a refusal");
        if (read.Run is not { } run)
        {
            // The text as a whole is meant, or the place is one that the reader of JSON does not tell.
            Refusal.Check([read.Problem!], bytes, problem => problem.Message.Contains("UTF-8", StringComparison.Ordinal) || problem.Message.Contains("no Unicode", StringComparison.Ordinal) || problem.Message.Contains("no JSON", StringComparison.Ordinal));
            return Answer.Refused;
        }

        var written = RoundTrips.Json(run.ProgramVersion, run.Files, run.Problems);
        var again = ReportReader.Read("report.json", written);
        Require(again.Run is not null, $"its own report is refused: {again.Problem?.Message}");
        Require(written.AsSpan().SequenceEqual(RoundTrips.Json(again.Run!.ProgramVersion, again.Run.Files, again.Run.Problems)), "a report read back is written otherwise");
        using var output = new MemoryStream();
        Forms[Choice(bytes, Forms.Length)](ReportedRun.Of(run), output);
        return Answer.Accepted;
    }
}

/// <summary>A plan that is compared with an earlier state.</summary>
/// <param name="seeds">Its seeds.</param>
internal sealed class ComparisonTarget(SeedSet seeds) : Target
{
    private static readonly byte[] Old = Repository.Bytes("examples/concept-fifteen-lines.yaml");

    /// <inheritdoc/>
    public override string Name => "comparison";

    // Two plans that have nothing in common: what stands behind each of some 500 changes is looked up.
    /// <inheritdoc/>
    public override long? MostAllocated => 2L << 30;

    /// <inheritdoc/>
    public override int Share => 6;

    /// <inheritdoc/>
    public override SeedSet Seeds => seeds;

    /// <inheritdoc/>
    public override Answer Try(byte[] bytes)
    {
        var check = PlanTarget.Quick("us-wa");
        var result = new PlanComparer(check, check).Run("old.yaml", Old, "new.yaml", bytes);
        if (result.Problems.Count > 0)
        {
            Refusal.Check(result.Problems, bytes);
            return Answer.Refused;
        }

        using var output = new MemoryStream();
        ComparisonJson.Write(output, Repository.Version, [result]);
        Require(ComparisonLines.Lines([result], new TerminalSettings(80)).Count > 0 && ComparisonMarkdown.Of([result]).Length > 0, "a comparison without words");
        return Answer.Accepted;
    }
}

/// <summary>Cases of the verification manual, run.</summary>
internal sealed class VerificationTarget : Target
{
    /// <inheritdoc/>
    public override string Name => "verification";

    /// <inheritdoc/>
    public override int Share => 20;

    /// <inheritdoc/>
    public override SeedSet Seeds { get; } = SeedFiles.Verification();

    /// <inheritdoc/>
    public override Answer Try(byte[] bytes)
    {
        var file = new VerificationRunner().Run([new VerificationFile("case.yaml", bytes)]).Files[0];
        if (file.Problems.Count > 0)
        {
            Refusal.Check(file.Problems, bytes);
            return Answer.Refused;
        }

        Require(file.Cases.Count > 0, "neither cases nor a refusal");
        return Answer.Accepted;
    }
}
