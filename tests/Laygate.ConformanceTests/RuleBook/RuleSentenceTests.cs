using Laygate.Reporting.Language;
using Laygate.Rules.Definitions;

namespace Laygate.ConformanceTests.RuleBook;

/// <summary>A rule says three things: what goes wrong, what is asked where that is not known, and what holds where it is met.</summary>
public sealed class RuleSentenceTests
{
    [Fact]
    public void What_is_not_known_is_asked_never_said_by_a_title_that_says_it_is_so() =>
        Assert.Empty(Rules.Where(rule => rule.Check != CheckKind.Present && rule.Asks is null).Select(rule => $"{rule.Id} {rule.Title}"));

    [Fact]
    public void What_is_asked_goes_on_after_whether() => Assert.All(Rules.Where(rule => rule.Asks is not null), rule =>
    {
        var asks = rule.Asks!;
        Assert.True(char.IsLower(asks[0]) && asks[^1] != '.' && !asks.StartsWith("whether", StringComparison.Ordinal), $"{rule.Id}: {asks}");
    });

    [Fact]
    public void Every_rule_says_what_holds_in_other_words_than_what_goes_wrong()
    {
        Assert.Empty(Rules.Where(rule => Holds(rule) is null).Select(rule => $"{rule.Id} {rule.Title}"));
        Assert.All(Rules, rule =>
        {
            var holds = Holds(rule)!;
            Assert.NotEqual(rule.Title, holds, StringComparer.Ordinal);
            Assert.Matches("^[A-Z].*[^.]$", holds);
            Assert.DoesNotMatch("^(No |Nobody |Nothing |Not )(?!more |traffic |edge )|must |is asked for$|coat is needed", holds);
        });
    }

    private static IReadOnlyList<RuleDefinition> Rules => Repository.Book.General!.Rules;

    private static string? Holds(RuleDefinition rule) => PositiveForm.Of(rule.Title, rule.Asks, rule.Holds);
}
