using System.Globalization;
using System.Text;
using Laygate.Checking;
using Laygate.Model.Plans;
using Laygate.Reading;
using Laygate.Rules.Results;

namespace Laygate.ConformanceTests.Examples;

/// <summary>The examples and their approved findings: every finding with a status, one line each.</summary>
/// <remarks>
/// Nothing that moves with its neighbours stands in the approved text: where a finding points to is held by
/// <see cref="ExamplePositionTests"/>, and that the counts are those of the findings by a test of its own.
/// </remarks>
public sealed class ExampleTests
{
    [Theory]
    [MemberData(nameof(ExampleReports.All), MemberType = typeof(ExampleReports))]
    public void Findings_are_as_approved(string example, string rules) =>
        Approved.Match(Text(ExampleReports.Of(example, rules)), $"{example}-{Path.GetFileNameWithoutExtension(rules)}".TrimEnd('-'));

    [Theory]
    [MemberData(nameof(ExampleReports.All), MemberType = typeof(ExampleReports))]
    public void A_line_put_in_changes_no_approved_text(string example, string rules)
    {
        var text = Encoding.UTF8.GetString(Repository.Bytes(Repository.Whole(example)));
        var longer = text.Replace("\nplan:", "\n# A remark.\n\nplan:", StringComparison.Ordinal);
        Assert.NotEqual(text, longer, StringComparer.Ordinal);
        Assert.Equal(Quick(text), Quick(longer), StringComparer.Ordinal);

        string Quick(string plan) => Text(Assert.Single(new PlanCheck(
            Repository.Bound(rules.Length == 0 ? [] : [rules]), new CheckSettings(null, Repository.CheckDate, Repository.Version) { Quick = true })
            .Run("a.yaml", Encoding.UTF8.GetBytes(plan)).Reports));
    }

    [Fact]
    public void An_example_with_parts_finds_what_the_same_plan_finds_as_one_file()
    {
        const string example = "quay-road-hot-on-hot";
        var parts = Repository.Check(ExampleReports.File(example), "us-wa").Reports[0];
        var whole = Repository.Check(Repository.Whole(example), "us-wa").Reports[0];
        Assert.Equal(Sorted(whole), Sorted(parts), StringComparer.Ordinal);
        Assert.True(Encoding.UTF8.GetString(Repository.Bytes(ExampleReports.File(example))).Split('\n').Length <= 150);
        Assert.All(parts.Uses, used => Assert.NotEmpty(used.Parts));

        static IEnumerable<string> Sorted(Report report) => Text(report).Split('\n').Order(StringComparer.Ordinal);
    }

    [Theory]
    [MemberData(nameof(ExampleReports.All), MemberType = typeof(ExampleReports))]
    public void Every_finding_is_counted_once(string example, string rules)
    {
        var report = ExampleReports.Of(example, rules);
        var counts = report.Counts;
        Assert.Equal(
            report.Findings.Count,
            counts.Failed + counts.Warned + counts.Passed + counts.NotAssessed + counts.NeedsPerson + counts.Open + counts.NotApplicable + counts.Departed);
        Assert.Equal(counts.Open, report.Findings.Count(finding => finding.Outcome == Outcome.Open));
        Assert.Equal(counts.NotApplicable, report.Findings.Count(finding => finding.Outcome == Outcome.NotApplicable));
        Assert.Equal(counts.Passed, report.Findings.Count(finding => finding.Status == Status.Pass));
    }

    [Fact]
    public void The_complete_plan_has_nothing_left_to_assess()
    {
        var report = ExampleReports.Of("quay-road-hot-on-hot", "examples/particular/port-of-tamarel.yaml");
        Assert.Equal(0, report.Counts.NotAssessed);
        Assert.Equal(0, report.Counts.Open);
        Assert.Equal(0, report.Counts.Failed);
        Assert.True(report.Counts.Warned > 0, "an honest plan warns");
    }

    [Fact]
    public void The_same_cold_course_fails_where_the_limit_was_read_and_warns_where_it_is_recalled()
    {
        var washington = Find("us-wa", "WEA-001");
        var germany = Find("de", "WEA-002");
        Assert.Equal((Outcome.Missed, Status.Fail), (washington.Outcome, washington.Status));
        Assert.Equal((Outcome.Missed, Status.Warn), (germany.Outcome, germany.Status));

        static Finding Find(string rules, string rule) => ExampleReports.Of("moor-road-thin-overlay", rules)
            .Findings.Single(finding => finding.Rule == rule && finding.Address == "course:surface");
    }

    [Fact]
    public void The_same_input_gives_the_same_findings() =>
        Assert.Equal(
            Text(Repository.Check("examples/quay-road-hot-on-hot.yaml", "de").Reports[0]),
            Text(Repository.Check("examples/quay-road-hot-on-hot.yaml", "de").Reports[0]));

    private static string Text(Report report)
    {
        var text = new StringBuilder();
        foreach (var finding in report.Findings.Where(finding => finding.Status != Status.None || finding.Outcome == Outcome.Open))
        {
            text.AppendLine(CultureInfo.InvariantCulture,
                $"{Words.Of(finding.Status),-6} {Words.Of(finding.Outcome),-12} {finding.Rule} {finding.Address}: {Show(finding.Value)} {Limit(finding.Limit)}{Missing(finding)}{(finding.OnExpectedValuesOnly ? " (on expected values only)" : string.Empty)}");
        }

        return text.ToString();
    }

    private static string Missing(Finding finding) =>
        finding.Missing.Count > 0 ? $" missing {string.Join(", ", finding.Missing.Select(input => $"{input.Address}/{input.Key}"))}" : string.Empty;

    private static string Limit(ShownLimit? limit) => limit is null
        ? "-"
        : $"{Words.Of(limit.Strength)} {Show(limit.Low)}..{Show(limit.High)} [{Words.Of(limit.Source.Evidence)}, {limit.SetBy ?? "general"}]";

    // Few digits where there is a band: more would make approved findings change with the last step of the solver.
    private static string Show(ShownValue? value) => value switch
    {
        null => string.Empty,
        { Text: { } words } => words,
        { Low: { } low, High: { } high } => string.Create(CultureInfo.InvariantCulture, $"{value.Number:G3} ({low:G3} to {high:G3}) {value.Unit}").TrimEnd(),
        _ => string.Create(CultureInfo.InvariantCulture, $"{value.Number:G4} {value.Unit}").TrimEnd(),
    };
}
