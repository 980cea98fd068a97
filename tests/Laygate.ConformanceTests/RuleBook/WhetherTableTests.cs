using Laygate.Reporting.Language;
using Laygate.Rules.Definitions;

namespace Laygate.ConformanceTests.RuleBook;

/// <summary>What is not known is asked by a sentence of its own, never by a title that says it is so.</summary>
public sealed class WhetherTableTests
{
    [Fact]
    public void Each_rule_that_compares_has_its_sentence()
    {
        var lacking = Repository.Book.General!.Rules.Where(rule => rule.Check != CheckKind.Present && WhetherTable.Of(rule.Id) is null).Select(rule => $"{rule.Id} {rule.Title}");
        Assert.Empty(lacking);
    }

    [Fact]
    public void Each_sentence_belongs_to_a_rule_and_goes_on_after_whether()
    {
        var ids = Repository.Book.General!.Rules.Select(rule => rule.Id).ToHashSet(StringComparer.Ordinal);
        Assert.All(WhetherTable.Rules, id =>
        {
            Assert.Contains(id, ids);
            var clause = WhetherTable.Of(id)!;
            Assert.True(char.IsLower(clause[0]) && clause[^1] != '.' && !clause.StartsWith("whether", StringComparison.Ordinal), $"{id}: {clause}");
        });
    }
}
