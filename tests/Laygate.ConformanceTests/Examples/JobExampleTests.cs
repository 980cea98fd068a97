using System.Globalization;
using System.Text;
using Json.Schema;
using Laygate.Checking;
using Laygate.ConformanceTests.Schema;
using Laygate.Model.Plans;
using Laygate.Reading;
using Laygate.Reading.Reports;
using Laygate.Reporting.Html;
using Laygate.Reporting.Json;
using Laygate.Reporting.Runs;
using Laygate.Reporting.Terminal;
using Laygate.Rules.Results;

namespace Laygate.ConformanceTests.Examples;

/// <summary>The example of a job of several shifts: its approved findings, and every form in which they are shown.</summary>
public sealed class JobExampleTests
{
    private const string Job = "examples/cressing-lane/job.yaml";

    // Checked once for all tests.
    private static readonly Lazy<FileResult> Checked = new(() =>
    {
        var settings = new CheckSettings(null, Repository.CheckDate, Repository.Version) { Parts = new Repository.PartsOfRepository() };
        var result = new PlanCheck(Repository.Bound(), settings).Run(Job, Repository.Bytes(Job));
        Assert.True(result.Problems.Count == 0, string.Join('\n', result.Problems.Select(problem => problem.Message)));
        return result;
    });

    [Fact]
    public void Findings_that_decide_are_as_approved()
    {
        var text = new StringBuilder();
        foreach (var report in Checked.Value.Reports)
        {
            text.AppendLine(CultureInfo.InvariantCulture, $"{report.PlanId}, by the limits of {report.JudgedFor:yyyy-MM-dd}");
            foreach (var finding in report.Findings.Where(finding => finding.Status is Status.Warn or Status.Fail || finding.Rule.StartsWith("JOB-", StringComparison.Ordinal)))
            {
                text.AppendLine(string.Create(CultureInfo.InvariantCulture, $"  {Words.Of(finding.Status),-6} {Words.Of(finding.Outcome),-14} {finding.Rule} {finding.Address}: {finding.Value?.Number:G3} {finding.Value?.Unit}{finding.Value?.Text}").TrimEnd());
            }
        }

        Approved.Match(text.ToString(), "cressing-lane");
    }

    [Fact]
    public void It_passes_or_warns_and_nothing_fails_or_is_not_assessed()
    {
        Assert.Equal(4, Checked.Value.Reports.Count);
        Assert.All(Checked.Value.Reports, report => Assert.Equal((0, 0), (report.Counts.Failed, report.Counts.NotAssessed)));
        Assert.Contains(Checked.Value.Reports, report => report.Counts.Warned > 0);
    }

    [Fact]
    public void What_lies_between_the_shifts_is_judged_by_what_the_shifts_computed()
    {
        var between = Checked.Value.Reports[0];
        // Monday 20:00 to Tuesday 04:00, then 20:30 with 40 min of set-up: 16.5 h and 15.83 h, by hand.
        Assert.Equal(16.5, Value(between, "JOB-006", "job-run:surface-north"), 6);
        Assert.Equal(15.8333, Value(between, "JOB-007", "interval:monday+tuesday"), 4);
        var cooling = between.Findings.Single(finding => finding is { Rule: "JOB-006", Address: "job-run:surface-north" }).Limit!.Low!.Number!.Value;
        // 65 mm on a cold base: some hours, not minutes nor days (common practice, no published source).
        Assert.InRange(cooling, 0.5, 12);
        // 3.7 m + 3.3 m, 800 m, 65 mm at 2.45 t/m3, by hand.
        Assert.Equal(891.8, Checked.Value.Job!.Shifts[0].Mass!.Number!.Value, 6);
    }

    [Fact]
    public void A_finding_points_into_the_file_in_which_its_value_stands()
    {
        var monday = Checked.Value.Reports[1];
        Assert.EndsWith("parts/machines.yaml", monday.Findings.Single(finding => finding is { Rule: "SUP-060", Address: "trucks:binder-tippers" }).Position!.File, StringComparison.Ordinal);
        Assert.Equal(Line("  - id: surface\n"), Checked.Value.Reports[2].Findings.Single(finding => finding is { Rule: "ROL-001", Address: "course:surface" }).Position!.Line);
        Assert.Equal(Line("  - id: tuesday\n") + 1, Checked.Value.Reports[0].Findings.Single(finding => finding is { Rule: "JOB-007", Address: "interval:monday+tuesday" }).Position!.Line);
        Assert.Equal(3, monday.Uses.Count);
    }

    [Fact]
    public void The_console_shows_it_in_sixty_lines()
    {
        var lines = TerminalReport.Lines([Checked.Value], new TerminalSettings(80, All: false)).Select(line => line.Text).ToList();
        Assert.InRange(lines.Count, 20, 60);
        Assert.All(Checked.Value.Job!.Shifts, shift => Assert.Single(lines, line => line.StartsWith($"{shift.Id}, ", StringComparison.Ordinal)));
        Assert.Single(lines, line => line.StartsWith("Between the shifts: ", StringComparison.Ordinal));
        Assert.Single(lines, line => line.StartsWith("Of 3 shifts: 3 warn.", StringComparison.Ordinal));
    }

    [Fact]
    public void A_review_comment_begins_with_the_shifts_and_its_lots()
    {
        using var bytes = new MemoryStream();
        Laygate.Reporting.Markdown.MarkdownWriter.Write(new ReportedRun(Repository.Version, [Checked.Value], []), bytes);
        var lines = Encoding.UTF8.GetString(bytes.ToArray()).Split('\n').ToList();
        var head = lines.FindIndex(line => line.StartsWith("| shift |", StringComparison.Ordinal));
        Assert.StartsWith("| ---", lines[head + 1], StringComparison.Ordinal);
        Assert.StartsWith("| monday | no failure, but warnings | 0 | 3 | 2027-06-07 20:00 to 04:00 | 7.08 h of 8 h needed | 892 t | binder |", lines[head + 2], StringComparison.Ordinal);
        Assert.StartsWith("| between them |", lines[head + 5], StringComparison.Ordinal);
        Assert.True(head < lines.FindIndex(line => line.Contains("shift monday", StringComparison.Ordinal)));
        Assert.Contains("- Lot surface-lot (surface): open after tuesday with 267 t of 1500 t, 2 of 5 tests left; ends in wednesday with 533 t, no test of 5 left.", lines, StringComparer.Ordinal);
    }

    [Fact]
    public void The_page_begins_with_the_shifts_and_leads_to_each()
    {
        using var bytes = new MemoryStream();
        HtmlWriter.Write(new ReportedRun(Repository.Version, [Checked.Value], []), bytes);
        var page = Encoding.UTF8.GetString(bytes.ToArray());
        Assert.All(Enumerable.Range(1, 4), number =>
        {
            Assert.Contains($"href=\"#p{number}\"", page, StringComparison.Ordinal);
            Assert.Contains($"id=\"p{number}\"", page, StringComparison.Ordinal);
        });
        Assert.True(page.IndexOf("id=\"job\"", StringComparison.Ordinal) < page.IndexOf("id=\"p1\"", StringComparison.Ordinal));
        Assert.Contains("<title>Check of job cressing-lane</title>", page, StringComparison.Ordinal);
        Assert.Contains(", shift tuesday</h2>", page, StringComparison.Ordinal);
        Assert.Contains("7.08 h of 8 h needed", page.Replace("&#xA0;", " ", StringComparison.Ordinal), StringComparison.Ordinal);
    }

    [Fact]
    public void Its_report_has_the_shape_of_the_schema_and_is_read_back()
    {
        using var bytes = new MemoryStream();
        JsonOutput.Write(bytes, Repository.Version, [Checked.Value], []);
        using var json = System.Text.Json.JsonDocument.Parse(bytes.ToArray());
        Assert.True(JsonSchema.FromText(File.ReadAllText(Path.Combine(Repository.Root, "schemas", "report.schema.json"))).Evaluate(json.RootElement).IsValid);
        var job = ReportReader.Read("report.json", bytes.ToArray()).Run!.Files[0].Job!;
        Assert.Equal(Checked.Value.Job!.Shifts.Select(shift => (shift.Id, shift.Plan, shift.Starts)), job.Shifts.Select(shift => (shift.Id, shift.Plan, shift.Starts)));
        Assert.Equal(3, job.Days.Count);
        Assert.Equal("surface-lot", Assert.Single(job.Lots).Id);
        Assert.Equal(Checked.Value.Job.Lots[0].After, job.Lots[0].After);
    }

    [Fact]
    public void An_editor_finds_nothing_wrong_in_it()
    {
        var node = PlanSchemaFile.ToJson(PlanSchemaFile.Read(Encoding.UTF8.GetString(Repository.Bytes(Job))).Root);
        Assert.True(JsonSchema.FromText(EmbeddedSchemas.Find("job")!).Evaluate(System.Text.Json.JsonSerializer.SerializeToElement(node)).IsValid);
        var parts = JsonSchema.FromText(EmbeddedSchemas.Find("parts")!);
        Assert.All(new[] { "machines", "people-and-measures" }, name => Assert.True(parts.Evaluate(System.Text.Json.JsonSerializer.SerializeToElement(
            PlanSchemaFile.ToJson(PlanSchemaFile.Read(Encoding.UTF8.GetString(Repository.Bytes($"examples/cressing-lane/parts/{name}.yaml"))).Root))).IsValid, name));
    }

    private static double Value(Report report, string rule, string address) =>
        report.Findings.Single(finding => finding.Rule == rule && finding.Address == address).Value!.Number!.Value;

    private static int Line(string start)
    {
        var text = Encoding.UTF8.GetString(Repository.Bytes(Job));
        return text[..text.IndexOf(start, StringComparison.Ordinal)].Count(letter => letter == '\n') + 1;
    }
}
