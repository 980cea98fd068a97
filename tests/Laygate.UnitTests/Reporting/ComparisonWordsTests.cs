using Laygate.Engineering.Quantities;
using Laygate.Reporting.Comparing;
using Laygate.Rules.Comparing;
using Laygate.Rules.Results;

namespace Laygate.UnitTests.Reporting;

/// <summary>What a comparison says where both sentences read the same.</summary>
public sealed class ComparisonWordsTests
{
    [Fact]
    public void A_value_that_moved_behind_the_digits_shown_is_shown_with_more_digits()
    {
        var old = Samples.Finding() with { Value = new ShownValue(3.20041, string.Empty), Origin = Origin.Computed };
        Assert.Equal("the same in the digits shown (3.2, then 3.201)", Now(old, old with { Value = new ShownValue(3.20081, string.Empty) }));
    }

    [Fact]
    public void What_is_no_longer_stated_is_named_on_both_sides()
    {
        var old = Samples.Finding() with { Outcome = Outcome.NotAssessed, Status = Status.Warn, Value = null, Missing = [new InputReference("weather", "wind")] };
        var now = Now(old, old with { Missing = [new InputReference("weather", "wind"), new InputReference("weather", "air")] });
        Assert.EndsWith("Not stated: weather.wind, weather.air.", now, StringComparison.Ordinal);
    }

    [Fact]
    public void A_limit_that_comes_from_elsewhere_says_from_where()
    {
        var old = Samples.Finding();
        var other = old with { Limit = old.Limit! with { Source = old.Limit.Source with { Clause = "9.9" } } };
        Assert.StartsWith("the same, but the limit comes from ", Now(old, other), StringComparison.Ordinal);
        Assert.Contains("9.9", Now(old, other), StringComparison.Ordinal);
    }

    private static string Now(Finding old, Finding now)
    {
        var (before, after) = (Samples.Report() with { Findings = [old] }, Samples.Report() with { Findings = [now] });
        var plan = new PlanComparison(before, after, ReportComparer.Findings(before, after), [], []);
        return Assert.Single(Assert.Single(ComparisonWords.Parts(plan)).Entries).Rows.Single(row => row.Label is "now").Text;
    }
}
