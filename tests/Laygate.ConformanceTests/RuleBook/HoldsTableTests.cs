using Laygate.Reporting.Language;

namespace Laygate.ConformanceTests.RuleBook;

/// <summary>Each rule can be said positively: a list of passes never reads like a list of faults.</summary>
public sealed class HoldsTableTests
{
    [Fact]
    public void Every_rule_says_what_holds_in_other_words_than_what_goes_wrong()
    {
        var rules = Repository.Book.General!.Rules;
        Assert.Empty(rules.Where(rule => HoldsTable.Of(rule.Id, rule.Title) is null).Select(rule => $"{rule.Id} {rule.Title}"));
        Assert.All(rules, rule =>
        {
            var holds = HoldsTable.Of(rule.Id, rule.Title)!;
            Assert.NotEqual(rule.Title, holds, StringComparer.Ordinal);
            Assert.Matches("^[A-Z].*[^.]$", holds);
            Assert.DoesNotMatch("^(No |Nobody |Nothing |Not )(?!more |traffic |edge )|must |is asked for$|coat is needed", holds);
        });
    }

    [Fact]
    public void Every_line_belongs_to_a_rule()
    {
        var known = Repository.Book.General!.Rules.Select(rule => rule.Id).ToHashSet(StringComparer.Ordinal);
        Assert.DoesNotContain(HoldsTable.Rules, id => !known.Contains(id));
    }
}
