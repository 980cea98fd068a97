using System.Globalization;
using System.Text;
using Laygate.Model.Plans;
using Laygate.Rules.Results;

namespace Laygate.ConformanceTests.Examples;

/// <summary>The examples and their approved findings: every finding with a status, one line each.</summary>
public sealed class ExampleTests
{
    [Theory]
    [InlineData("quay-road-hot-on-hot", "examples/particular/port-of-tamarel.yaml")]
    [InlineData("moor-road-thin-overlay", "us-wa")]
    [InlineData("moor-road-thin-overlay", "de")]
    [InlineData("county-route-us", "us-wa")]
    [InlineData("concept-fifteen-lines", "")]
    public void Findings_are_as_approved(string example, string rules)
    {
        var result = Repository.Check($"examples/{example}.yaml", rules.Length == 0 ? [] : [rules]);
        Assert.Empty(result.Problems);
        var report = Assert.Single(result.Reports);
        Approved.Match(Text(report), $"{example}-{Path.GetFileNameWithoutExtension(rules)}".TrimEnd('-'));
    }

    [Fact]
    public void The_complete_plan_has_nothing_left_to_assess()
    {
        var report = Repository.Check("examples/quay-road-hot-on-hot.yaml", "examples/particular/port-of-tamarel.yaml").Reports[0];
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

        static Finding Find(string rules, string rule) => Repository.Check("examples/moor-road-thin-overlay.yaml", rules).Reports[0]
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
        text.AppendLine(CultureInfo.InvariantCulture, $"{report.Counts}");
        foreach (var finding in report.Findings.Where(finding => finding.Status != Status.None || finding.Outcome == Outcome.Open))
        {
            text.AppendLine(CultureInfo.InvariantCulture,
                $"{Words.Of(finding.Status),-6} {Words.Of(finding.Outcome),-12} {finding.Rule} {finding.Address}: {Show(finding.Value)} {Limit(finding.Limit)} {Place(finding)}{(finding.OnExpectedValuesOnly ? " (on expected values only)" : string.Empty)}");
        }

        return text.ToString();
    }

    private static string Place(Finding finding) =>
        finding.Missing.Count > 0 ? $"missing {string.Join(", ", finding.Missing.Select(input => $"{input.Address}/{input.Key}"))} at line {finding.Position?.Line}" : $"line {finding.Position?.Line}";

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
