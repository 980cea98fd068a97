using Laygate.Engineering.Quantities;
using Laygate.Reporting.Comparing;
using Laygate.Rules.Comparing;
using Laygate.Rules.Results;

namespace Laygate.UnitTests.Reporting;

/// <summary>What a comparison says where both sentences read the same.</summary>
public sealed class ComparisonWordsTests
{
    [Fact]
    public void What_reads_the_same_in_the_digits_shown_is_counted()
    {
        var old = Samples.Finding() with { Value = new ShownValue(3.20041, string.Empty), Origin = Origin.Computed };
        var part = Assert.Single(Parts([old], [old with { Value = new ShownValue(3.20081, string.Empty) }]));
        Assert.Equal(("The same in the digits shown: 1", 0), (part.Heading, part.Entries.Count));
    }

    [Fact]
    public void Worse_better_new_and_gone_stand_apart_in_this_order()
    {
        var one = Samples.Finding();
        Finding Of(string address, Status status) => one with { Address = address, Status = status, Value = new ShownValue(status == Status.Fail ? 1 : 9, string.Empty), Outcome = status == Status.Fail ? Outcome.Missed : Outcome.Met };
        var parts = Parts(
            [Of("course:a", Status.Pass), Of("course:b", Status.Fail), Of("course:gone", Status.Fail)],
            [Of("course:a", Status.Fail), Of("course:b", Status.Pass), Of("course:new", Status.Pass), Of("course:worse", Status.Fail)]);
        Assert.Equal(["Worse than before: 1", "Better than before: 1", "New: 2", "Gone: 1"], parts.Select(part => part.Heading), StringComparer.Ordinal);
        Assert.Equal([true, false], parts[2].Entries.Select(entry => entry.Title.Contains("course:worse", StringComparison.Ordinal)));
        Assert.Equal(ChangeDirection.Worse, parts[2].Direction);
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

    private static string Now(Finding old, Finding now) =>
        Assert.Single(Assert.Single(Parts([old], [now])).Entries).Rows.Single(row => row.Label is "now").Text;

    private static IReadOnlyList<ComparisonPart> Parts(IReadOnlyList<Finding> old, IReadOnlyList<Finding> now)
    {
        var (before, after) = (Samples.Report() with { Findings = old }, Samples.Report() with { Findings = now });
        return ComparisonWords.Parts(new PlanComparison(before, after, ReportComparer.Findings(before, after), [], []));
    }
}
