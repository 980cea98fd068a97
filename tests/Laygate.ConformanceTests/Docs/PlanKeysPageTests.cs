using Laygate.Checking;
using Laygate.Checking.Keys;
using Laygate.Reporting.Keys;
using Laygate.Rules.Results;

namespace Laygate.ConformanceTests.Docs;

/// <summary>docs/plan-keys.md is what the schema and the rules say of the keys of plans.</summary>
public sealed class PlanKeysPageTests
{
    private static readonly IReadOnlyList<PlanKey> Keys = PlanKeys.Of(new PlanTools(), Repository.Bound());

    [Fact]
    public void The_page_is_written_from_the_schema_and_the_rules() => Approved.File_holds("docs/plan-keys.md", KeyPage.Of(Keys, Repository.Bound()));

    [Fact]
    public void Every_key_says_what_it_means_what_may_stand_there_and_how_findings_name_it()
    {
        Assert.InRange(Keys.Count, 300, 700);
        Assert.All(Keys, key => Assert.True(key.Meaning.Length > 0 && key.Value.Length > 0 && key.Within.Length > 0, key.Path));
        Assert.Equal(Keys.Count, Keys.Select(key => key.Path).Distinct(StringComparer.Ordinal).Count());
    }

    [Theory]
    [InlineData("courses.laying_temperature.expected", "course:ID", "laying_temperature.expected")]
    [InlineData("site.overhead_lines.away", "overhead-line:ID", "away")]
    [InlineData("rolling.reversal", "plan", "rolling.reversal")]
    [InlineData("plan.date", "plan", "date")]
    [InlineData("weather.hours.air", "weather", "hours.air")]
    public void Findings_name_a_key_by_the_element_that_states_it(string path, string address, string within)
    {
        var key = Assert.Single(PlanKeys.Find(Keys, path));
        Assert.Equal((address, within), (key.Address, key.Within));
    }

    // Which key a rule asks for stands in rules/: BON-005 is about `broken` of a bond coat, SAF-010 applies when `site.night` is yes, LAY-001 divides the thickness by the size of the stones.
    [Theory]
    [InlineData("bond_coats.broken", "BON-005")]
    [InlineData("site.conditions.night", "SAF-010")]
    [InlineData("mixes.aggregate_size", "LAY-001")]
    public void A_rule_is_listed_with_the_key_that_it_asks_for(string path, string rule) =>
        Assert.Contains(Assert.Single(PlanKeys.Find(Keys, path)).Rules, reader => reader.Rule == rule);

    [Fact]
    public void A_condition_is_asked_for_by_every_rule_that_names_it()
    {
        var book = Repository.Bound();
        foreach (var key in Keys.Where(key => key.Within.StartsWith("conditions.", StringComparison.Ordinal)))
        {
            var named = book.InForce.Where(rule => rule.When.Any(match => match.Quantity.Name == $"site.{key.Within["conditions.".Length..]}")).Select(rule => rule.Definition.Id);
            Assert.Empty(named.Except(key.Rules.Select(reader => reader.Rule), StringComparer.Ordinal));
        }
    }

    [Fact]
    public void Keys_of_jobs_and_files_of_parts_are_those_that_no_plan_has()
    {
        var others = PlanKeys.OfOtherFiles(Keys);
        Assert.Empty(others.Select(key => key.Path).Intersect(Keys.Select(key => key.Path), StringComparer.Ordinal));
        Assert.All((string[])["shifts.date", "lots.begins_in", "measures.applies_when"], path => Assert.Contains(others, key => key.Path == path));
        Assert.All(others, key => Assert.Empty(key.Address));
    }

    [Fact]
    public void A_key_is_found_by_its_path_with_or_without_marks_of_lists_and_by_its_last_keys()
    {
        Assert.Equal("courses.thickness", Assert.Single(PlanKeys.Find(Keys, "courses[].thickness")).Path);
        Assert.Equal("site.conditions.night", Assert.Single(PlanKeys.Find(Keys, "conditions.night")).Path);
        Assert.True(PlanKeys.Find(Keys, "thickness").Count > 3);
        Assert.Empty(PlanKeys.Find(Keys, "ickness"));
    }
}
