using System.Text.RegularExpressions;
using Laygate.Model.Measures;
using Laygate.Reading.Measures;
using Laygate.Reading.Plans;
using static Laygate.ConformanceTests.Schema.PlanSchemaFile;

namespace Laygate.ConformanceTests.Schema;

/// <summary>docs/plan-format.md says what the program does.</summary>
public class PlanFormatPageTests
{
    private static readonly string Page = File.ReadAllText(Path.Combine(Root, "docs", "plan-format.md"));

    public static TheoryData<string> Plans => [.. Page.Split("```yaml\n").Skip(1).Select(block => block[..block.IndexOf("```", StringComparison.Ordinal)]).Where(block => block.StartsWith("format:", StringComparison.Ordinal))];

    [Theory]
    [MemberData(nameof(Plans))]
    public void A_plan_on_the_page_is_read_without_a_problem(string text)
    {
        var document = Read(text);
        Assert.Empty(PlanShape.Check(document, Loaded));
        var mapping = PlanMapper.Map(document);
        Assert.Empty(mapping.Problems);
        Assert.Empty(PlanConsistency.Check(mapping.Plan!, mapping.Positions));
    }

    [Fact]
    public void The_job_on_the_page_is_read_without_a_problem()
    {
        var job = Assert.Single(Page.Split("```yaml\n").Skip(1), block => block.StartsWith("job:", StringComparison.Ordinal));
        var read = new PlanReader().Read("page.yaml", System.Text.Encoding.UTF8.GetBytes(job[..job.IndexOf("```", StringComparison.Ordinal)]), new Laygate.Reading.Parts.NoPartFiles());
        Assert.Empty(read.Problems);
        Assert.Equal("ferry-lane-night-1", read.Plans[0].Plan.Identity.Id);
    }

    [Fact]
    public void The_page_shows_four_plans() => Assert.Equal(4, Plans.Count);

    [Fact]
    public void The_page_lists_every_unit_that_a_plan_may_use()
    {
        // Pressures stand in rule files only, volumes in records.
        var table = Page[Page.IndexOf("| dimension |", StringComparison.Ordinal)..Page.IndexOf("A power may be", StringComparison.Ordinal)];
        var shown = Regex.Matches(table, "`([^`]+)`", RegexOptions.ExplicitCapture | RegexOptions.None, Patience.Longest).Select(match => match.Value.Trim('`')).Where(text => text is not "5 K");

        var units = UnitTable.All.Where(unit => unit.Dimension is not (Dimension.Pressure or Dimension.Volume)).Select(unit => unit.Spelling);

        Assert.Equal(units.Order(StringComparer.Ordinal), shown.Order(StringComparer.Ordinal));
    }

    [Theory]
    [InlineData("1,5 in", "1.5 in", Dimension.Length)]
    [InlineData("45mm", "45 mm", Dimension.Length)]
    [InlineData("45", "45 mm", Dimension.Length)]
    [InlineData("1e3 mm", "1000 mm", Dimension.Length)]
    [InlineData("22 ton", "22 short ton", Dimension.Mass)]
    [InlineData("5 °F", "2.78 K", Dimension.TemperatureDifference)]
    public void A_trap_of_the_page_is_one_and_its_right_form_is_offered(string trap, string right, Dimension dimension)
    {
        Assert.Contains($"| `{trap}`", Page, StringComparison.Ordinal);
        Assert.Contains($"`{right}`", Page, StringComparison.Ordinal);
        Assert.Contains($"`{right}`", MeasureReader.Explain(trap, dimension)!.Hint, StringComparison.Ordinal);
        Assert.Null(MeasureReader.Explain(right, dimension));
    }
}
