using System.Globalization;
using Laygate.Engineering.Quantities;
using Laygate.Reporting.Terminal;
using Laygate.Reporting.Text;
using Laygate.Rules.Definitions;
using Laygate.Rules.Results;

namespace Laygate.UnitTests.Reporting;

/// <summary>The short form on hand-made results that no plan would give.</summary>
public class BriefReportTests
{
    private const int Most = 60;

    [Fact]
    public void A_handful_of_findings_is_shown_one_by_one_in_order_of_weight()
    {
        var lines = Lines(Samples.Report());
        Assert.Equal("Harbour road, thin overlay at night", lines[0]);
        Assert.Equal("Stage submission, limits of 2031-10-09 (the shift)", lines[2]);
        Assert.Equal("DOES NOT PASS: 3 fail, 2 warn, 1 not assessed, 1 needs a person, 1 open, 3 pass,", lines[4]);
        Assert.Contains("FAIL LAY-001 jobs/harbour-road.yaml:41 Course too thin for its aggregate", lines, StringComparer.Ordinal);
        Assert.Contains("     Thickness to size 2.27; required: at least 3 (paving-manual, read)", lines, StringComparer.Ordinal);
        Assert.Contains("     12 min, at best 16 min; needed: at least 14 min (paving-manual, derived)", lines, StringComparer.Ordinal);
        Assert.InRange(lines.Count, 20, Most);
    }

    [Theory]
    [InlineData(5)]
    [InlineData(40)]
    [InlineData(150)]
    [InlineData(200)]
    public void No_failure_of_the_contract_or_that_guards_lives_is_left_out(int count)
    {
        var contract = Samples.AtLeast(3) with { Layer = Layer.ParticularSpecification, SetBy = "contract" };
        List<Finding> findings =
        [
            .. Enumerable.Range(1, count).Select(i => Of("LAY", i) with { Limit = contract }),
            .. Enumerable.Range(1, count).Select(i => Of("SAF", i) with { Severity = Severity.A }),
            .. Enumerable.Range(1, count).Select(i => Of("ROL", i) with { Status = Status.Warn }),
        ];
        var lines = Lines(Report(findings));
        Assert.InRange(lines.Count, 10, Most);
        Assert.All(lines, line => Assert.InRange(TextWidth.Of(line), 0, 80));
        var text = string.Join(' ', lines);
        Assert.All(findings.Where(finding => finding.Status == Status.Fail), finding =>
            Assert.True(text.Contains(finding.Rule, StringComparison.Ordinal) || text.Contains($" {finding.Rule[4..]}", StringComparison.Ordinal), finding.Rule));
        Assert.True(text.IndexOf("SAF-", StringComparison.Ordinal) < text.IndexOf("LAY-", StringComparison.Ordinal));
    }

    [Fact]
    public void Findings_of_one_rule_are_grouped_with_count_and_places_when_there_are_many()
    {
        var lines = Lines(Report([.. Enumerable.Range(1, 60).Select(i => Of("LAY", 1) with { Address = $"course:{i}", Status = Status.Warn, Position = new Position(i, 1, i, 2) })]));
        Assert.Contains("WARN LAY-001 (37) Course too thin for its aggregate", lines, StringComparer.Ordinal);
        Assert.Contains("     jobs/harbour-road.yaml:24 (also 25, 26, 27, …)", lines, StringComparer.Ordinal);
    }

    [Fact]
    public void What_a_baseline_knows_and_what_is_permitted_is_listed_apart()
    {
        var known = Of("LAY", 1) with { Known = true };
        var report = Report([known, Of("LAY", 2) with { Status = Status.Departed }]);
        var lines = Lines(report with { Counts = report.Counts with { KnownFailed = 1 }, Baseline = new BaselineUse("baseline.json", new DateOnly(2031, 1, 1), 1, 0, 0) });
        Assert.Contains("1 known earlier, in the baseline; they do not count: LAY-001 (41)", lines, StringComparer.Ordinal);
        Assert.Contains("1 permitted by the approving side: LAY-002 (41)", lines, StringComparer.Ordinal);
        Assert.StartsWith("NO NEW FAILURE: 1 fail", lines.Single(line => line.StartsWith("NO ", StringComparison.Ordinal)), StringComparison.Ordinal);
        Assert.DoesNotContain(lines, line => line.StartsWith("FAIL", StringComparison.Ordinal));
    }

    [Fact]
    public void A_path_is_not_broken_and_leaves_the_title_its_room()
    {
        var path = "jobs/" + new string('x', 90) + ".yaml";
        var lines = Lines(Samples.Report() with { File = path });
        Assert.Contains($"     {path}:41", lines, StringComparer.Ordinal);
        Assert.Contains("FAIL LAY-001 Course too thin for its aggregate", lines, StringComparer.Ordinal);
        Assert.InRange(lines.Count, 20, Most);
    }

    [Fact]
    public void Text_of_a_plan_can_neither_steer_the_terminal_nor_push_the_verdict_away()
    {
        const string Bad = "\u001b[2J\u202Eevil\r\n";
        var endless = new string('重', 5000);
        var finding = Of("LAY", 1) with { Title = Bad + endless, Address = Bad, RuleName = Bad, Rule = Bad, Quantity = Bad, Missing = [new InputReference(Bad, Bad)], Notes = [Note.Of("entry-missing", ("kind", Bad), ("list", Bad), ("fields", Bad))] };
        List<Finding> findings = [.. Enumerable.Range(0, 8).Select(i => finding with { Severity = i > 3 ? Severity.A : null, Outcome = i > 1 ? Outcome.NotAssessed : Outcome.Missed })];
        var lines = Lines(Report(findings) with { PlanTitle = endless, PlanId = Bad, File = Bad, Revision = Bad, BookHash = Bad, Notes = [.. Enumerable.Range(0, 30).Select(_ => Note.Of("jurisdiction-differs", ("plan", Bad), ("book", Bad), ("specification", Bad)))] });
        Assert.InRange(lines.Count, 10, Most);
        Assert.All(lines, line => Assert.DoesNotContain(line, letter => char.IsControl(letter) || letter == '\u202E'));
        Assert.InRange(TextWidth.Of(lines[0]), 70, 80);
    }

    [Fact]
    public void Each_plan_of_a_run_gets_its_own()
    {
        var lines = TerminalReport.Lines([Samples.Result(), Samples.Result()], new TerminalSettings(80)).Select(line => line.Text).ToList();
        var one = Lines(Samples.Report());
        Assert.Equal([.. one, string.Empty, .. one], lines, StringComparer.Ordinal);
    }

    private static Finding Of(string family, int number) => Samples.Finding(string.Create(CultureInfo.InvariantCulture, $"{family}-{number:000}"), "layers/course-too-thin");

    private static Report Report(IReadOnlyList<Finding> findings) => Samples.Report() with { Findings = findings, Counts = Samples.Count(findings), Notes = [], Assumptions = [] };

    private static List<string> Lines(Report report) => [.. TerminalReport.Lines([new FileResult(report.File, [report], [])], new TerminalSettings(80)).Select(line => line.Text)];
}
