using Laygate.Rules.Definitions;

namespace Laygate.ConformanceTests.RuleBook;

/// <summary>What the rule book must at least hold.</summary>
public sealed class RuleBreadthTests
{
    private static readonly IReadOnlyList<RuleDefinition> Rules = Repository.Book.General!.Rules;

    [Fact]
    public void There_are_at_least_90_rules() => Assert.True(Rules.Count >= 90, $"{Rules.Count} rules");

    [Theory]
    [InlineData("layers", 4)]
    [InlineData("weather", 4)]
    [InlineData("supply", 4)]
    [InlineData("rolling", 4)]
    [InlineData("safety", 4)]
    public void Each_main_subject_has_rules(string family, int atLeast) =>
        Assert.True(Rules.Count(rule => rule.Family == family) >= atLeast, family);

    [Fact]
    public void Every_source_is_used_and_every_use_resolves()
    {
        var known = Repository.Book.General!.Sources.Select(source => source.Id).ToHashSet(StringComparer.Ordinal);
        var used = Rules.SelectMany(rule => rule.Bounds)
            .Concat(Repository.Book.Specifications.SelectMany(specification => specification.Set.SelectMany(set => set.Bounds)))
            .SelectMany(SourcesOf).ToHashSet(StringComparer.Ordinal);
        var ofSpecifications = Repository.Book.Specifications.SelectMany(specification => specification.Sources).Select(source => source.Id);
        Assert.Empty(known.Except(used, StringComparer.Ordinal));
        Assert.Empty(used.Except(known.Concat(ofSpecifications), StringComparer.Ordinal));
    }

    private static IEnumerable<string> SourcesOf(Bound bound) =>
        ((bound.Limit as TableLimit)?.Rows.Select(row => row.Source?.Source).OfType<string>() ?? []).Append(bound.Source.Source).Concat(bound.Also.Select(other => other.Source));
}
