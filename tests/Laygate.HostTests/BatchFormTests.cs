using System.Text;
using Laygate.Tests;
using Laygate.Reporting.Annotations;
using Laygate.Reporting.CodeQuality;
using Laygate.Reporting.Html;
using Laygate.Reporting.JUnit;
using Laygate.Reporting.Markdown;
using Laygate.Reporting.Runs;
using Laygate.Reporting.Sarif;
using Laygate.Rules.Definitions;
using Laygate.Rules.Results;
using Laygate.UnitTests.Reporting;
using Snapshooter.Xunit;

namespace Laygate.HostTests;

/// <summary>
/// Forms of a batch: what each form sorts, counts or says before its first report is right over several files. The approved texts were written by
/// a program that kept every report to the end.
/// </summary>
public sealed class BatchFormTests
{
    private static readonly Dictionary<string, Action<ReportedRun, Stream>> Forms = new(StringComparer.Ordinal)
    {
        ["sarif"] = SarifWriter.Write,
        ["junit"] = WholeRuns.JUnit,
        ["code-quality"] = WholeRuns.CodeQuality,
        ["annotations"] = WholeRuns.Annotations,
        ["markdown"] = MarkdownWriter.Write,
    };

    [Theory]
    [InlineData("sarif")]
    [InlineData("junit")]
    [InlineData("code-quality")]
    [InlineData("annotations")]
    [InlineData("markdown")]
    public void Form_of_a_batch(string form) => Snapshot.Match(Written(Forms[form], Batch()), $"batch-{form}");

    [Theory]
    [InlineData("sarif")]
    [InlineData("junit")]
    [InlineData("code-quality")]
    [InlineData("annotations")]
    [InlineData("markdown")]
    public void Form_of_files_that_cannot_be_read(string form) =>
        Snapshot.Match(Written(Forms[form], Batch() with { Results = [.. Batch().Results.Where(result => result.Problems.Count > 0)] }), $"batch-unread-{form}");

    [Fact]
    public void A_page_holds_every_plan_once_in_order_and_what_could_not_be_read_before_them()
    {
        var page = Written(HtmlWriter.Write, Batch());
        var marks = ((string[])["<nav", "#p1\"", "#p5\"", "id=\"main\"", "cannot be read as a plan", "id=\"p1\"", "id=\"p2\"", "id=\"p3\"", "id=\"p4\"", "id=\"p5\"", "</main>", "Before you rely on this", "</html>"])
            .Select(mark => (mark, At: page.IndexOf(mark, StringComparison.Ordinal))).ToList();
        Assert.All(marks, mark => Assert.True(mark.At >= 0, mark.mark));
        Assert.Equal(marks.OrderBy(mark => mark.At), marks);
        Assert.Equal(5, page.Split("<article class=\"plan\"").Length - 1);
    }

    // Files of one name, plans of one id, a departure that fails in two files, silences, findings of every status, files that cannot be read first, between and last.
    private static ReportedRun Batch()
    {
        var departure = new Departure
        {
            Id = "d1",
            Rule = "LAY-001",
            Address = "course:wearing",
            Reason = "narrow",
            CompensatingMeasure = "rolled twice",
            AskedBy = "A",
            ApprovedBy = "B",
            ApprovedOn = new DateOnly(2031, 1, 1),
            ExpiresOn = new DateOnly(2031, 2, 1),
            File = "departures.yaml",
        };
        var report = Samples.Report();
        IReadOnlyList<Finding> findings =
        [
            .. report.Findings,
            Silence("SAF-001", Severity.A),
            Silence("SAF-002", Severity.A),
            Silence("SAF-003", Severity.B),
            Samples.Finding("LAY-009", "layers/twice") with { Status = Status.Warn },
            Samples.Finding("LAY-009", "layers/twice") with { Status = Status.Warn },
        ];
        report = report with
        {
            Findings = findings,
            Counts = Samples.Count(findings) with { DepartureWarnings = 1 },
            Departures = [new DepartureUse(departure, DepartureState.Expired, Status.Fail, Outcome.Missed, new ShownValue(2, "mm"))],
        };
        return new ReportedRun(
            "0.1.0",
            [
                Unread("first.yaml"),
                Found(report, "one.yaml"),
                Found(report with { BookHash = new string('b', 64) }, "two.yaml"),
                Unread("between.yaml"),
                Found(report with { PlanHash = "other" }, "one.yaml"),
                new FileResult("three.yaml", [report with { File = "three.yaml" }, report with { File = "three.yaml", Document = 2 }], []),
                Unread("last.yaml"),
            ],
            [new Problem("laygate.yaml", "The settings name no rules.", "Name one.", null)]);
    }

    private static Finding Silence(string rule, Severity severity) =>
        Samples.Finding(rule, "safety/silence") with { Severity = severity, Outcome = Outcome.NotAssessed, Status = Status.Fail, Missing = [new Engineering.Quantities.InputReference("site", "measures")] };

    private static FileResult Found(Report report, string file) => new(file, [report with { File = file }], []);

    private static FileResult Unread(string file) => new(file, [], [new Problem(file, "It cannot be read as a plan.", "Begin with `format: 1`.", new Position(1, 1, 1, 2))]);

    private static string Written(Action<ReportedRun, Stream> write, ReportedRun run)
    {
        using var bytes = new MemoryStream();
        write(run, bytes);
        return new UTF8Encoding(false, true).GetString(bytes.ToArray());
    }
}
