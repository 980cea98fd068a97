using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Quantities;
using Laygate.Reporting.RulePages;
using Laygate.Rules.Definitions;
using MergedBook = Laygate.Rules.Merging.RuleBook;

namespace Laygate.ConformanceTests.Specifications;

/// <summary>Each shipped specification lists its clauses, and says of each how far rules cover it.</summary>
public sealed class ClauseTests
{
    public static TheoryData<string> Names => [.. Repository.Book.Specifications.Select(specification => specification.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void Each_limit_belongs_to_a_listed_clause_that_names_its_rule(string name)
    {
        var specification = Find(name);
        var listed = specification.Clauses.ToDictionary(clause => clause.Number, clause => clause.Rules, StringComparer.Ordinal);
        var astray = specification.Set.SelectMany(set => set.Bounds.SelectMany(ClausesOf).Select(clause => (set.Rule, Clause: clause)))
            .Where(limit => !(listed.TryGetValue(limit.Clause, out var rules) && rules.Contains(limit.Rule, StringComparer.Ordinal)));
        Assert.Empty(astray);
        Assert.Empty(specification.BringIn.Concat(specification.Set.Select(set => set.Rule)).Except(specification.Clauses.SelectMany(clause => clause.Rules), StringComparer.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void A_rule_stands_beside_a_clause_only_where_it_is_in_force(string name)
    {
        var specification = Find(name);
        var book = MergedBook.Build(Repository.Book.General!, [specification], LaygateQuantities.Catalogue(), LaygateAssumptions.Set()).Book!;
        var inForce = book.All.Where(rule => rule.InForce).Select(rule => rule.Rule.Definition.Id).ToHashSet(StringComparer.Ordinal);
        Assert.All(specification.Clauses, clause => Assert.Subset(inForce, clause.Rules.ToHashSet(StringComparer.Ordinal)));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void What_no_rule_covers_says_why(string name) => Assert.All(Find(name).Clauses, clause =>
    {
        Assert.Equal(clause.Status is ClauseStatus.Automated or ClauseStatus.Partly, clause.Rules.Count > 0);
        Assert.True(clause.Status == ClauseStatus.Automated || clause.Note?.Length > 0, clause.Number);
    });

    [Theory]
    [MemberData(nameof(Names))]
    public void The_coverage_page_shows_them(string name)
    {
        var specification = Find(name);
        var page = IndexPage.Of(specification);
        Assert.NotEmpty(specification.Clauses);
        Assert.All(specification.Clauses, clause => Assert.Contains(clause.Subject, page, StringComparison.Ordinal));
        Assert.DoesNotContain("not listed yet", page, StringComparison.Ordinal);
    }

    private static IEnumerable<string> ClausesOf(Bound bound) => ((bound.Limit as TableLimit)?.Rows.Select(row => row.Source ?? bound.Source) ?? [bound.Source]).Select(source => source.Clause ?? string.Empty);

    private static Specification Find(string name) => Repository.Book.Specifications.Single(specification => string.Equals(specification.Name, name, StringComparison.Ordinal));
}
