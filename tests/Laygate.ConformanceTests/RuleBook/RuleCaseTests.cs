using Laygate.Checking.Cases;
using Laygate.ConformanceTests.Specifications;
using Laygate.Tests;
using Laygate.Tests.Figures;

namespace Laygate.ConformanceTests.RuleBook;

/// <summary>The cases of all shipped rules, listed as data: adding a rule adds its test.</summary>
public sealed class RuleCaseTests
{
    // One runner for all: it keeps the books and base plans that the cases share.
    private static readonly CaseRunner Runner = Repository.Cases();
    private static readonly CaseRunner Pinning = Repository.Cases(new CellCases(Repository.Rules));

    public static TheoryData<string> RuleIds => [.. Runner.Rules.Select(rule => rule.Id).Order(StringComparer.Ordinal)];

    public static TheoryData<string> PinnedIds => [.. Runner.Rules.Select(rule => rule.Id).Order(StringComparer.Ordinal).Usual(5)];

    [Fact]
    public void The_rule_book_is_read_without_a_problem() =>
        Assert.Empty(Repository.Book.Problems);

    [Theory]
    [MemberData(nameof(RuleIds))]
    public void Each_case_gives_its_finding_in_full(string id)
    {
        var runner = Runner;
        var wrong = runner.Run(runner.Rules.Single(rule => rule.Id == id)).Where(result => result.Differences.Count > 0);
        Assert.True(!wrong.Any(), string.Join('\n', wrong.Select(result => $"{result.Case}: {string.Join("; ", result.Differences)}")));
    }

    [Theory]
    [MemberData(nameof(PinnedIds))]
    public void Each_figure_is_pinned_by_a_case(string id)
    {
        var runner = Pinning;
        // Figures of specifications are pinned by the cells of their tables as well.
        var unnoticed = runner.Mutate(runner.Rules.Single(rule => rule.Id == id)).Survivors;
        Assert.True(unnoticed.Count == 0, string.Join('\n', unnoticed.Select(survivor => survivor.ToString())));
    }
}
