using Laygate.Rules.Comparing;

namespace Laygate.UnitTests.Rules;

/// <summary>Which plans of two runs on one file belong together.</summary>
public sealed class ReportPairsTests
{
    [Theory]
    [InlineData("a", "b", "a>b")] // One plan on each side is one plan that got another id.
    [InlineData("", "a", ">a")]
    [InlineData("a", "", "a>")]
    [InlineData("a b", "b", "b>b a>")]
    [InlineData("a", "b a", ">b a>a")]
    [InlineData("a b c", "c d a", "c>c >d a>a b>")]
    [InlineData("a a", "a a", "a>a a>a")]
    public void Plans_are_paired_by_their_id_in_the_order_of_the_later_run_and_those_that_are_gone_come_last(string old, string now, string pairs) =>
        Assert.Equal(pairs, string.Join(' ', ReportPairs.Of(Ids(old), Ids(now), id => id).Select(pair => $"{pair.Old}>{pair.New}")));

    private static string[] Ids(string text) => text.Split(' ', StringSplitOptions.RemoveEmptyEntries);
}
