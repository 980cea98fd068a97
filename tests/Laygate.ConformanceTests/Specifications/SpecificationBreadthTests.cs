using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Quantities;
using Laygate.Rules.Definitions;
using Laygate.Rules.Results;
using Laygate.Tests.Figures;
using MergedBook = Laygate.Rules.Merging.RuleBook;

namespace Laygate.ConformanceTests.Specifications;

/// <summary>What each shipped specification must say about itself, and how far it reaches.</summary>
public sealed class SpecificationBreadthTests
{
    private static readonly IReadOnlyList<Specification> Specifications = Repository.Book.Specifications;

    public static TheoryData<string> Names => [.. Specifications.Select(specification => specification.Name)];

    [Fact]
    public void At_least_twelve_reach_five_figures_that_were_read_or_are_second_hand()
    {
        var reach = Specifications.Where(specification => KnownFigures.Of(specification)
            .Where(figure => figure.Evidence is Evidence.Read or Evidence.SecondHand).Sum(figure => figure.Ends) >= 5);
        Assert.True(reach.Count() >= 12, string.Join(", ", reach.Select(specification => specification.Name)));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Each_binds_and_says_its_edition_status_and_coverage(string name)
    {
        var specification = Find(name);
        Assert.Empty(MergedBook.Build(Repository.Book.General!, [specification], LaygateQuantities.Catalogue(), LaygateAssumptions.Set()).Problems);
        Assert.True(specification.Edition.Length > 0 && specification.Status?.Length > 0);
        Assert.Contains("overs ", specification.Coverage, StringComparison.Ordinal);
        Assert.Contains("oes not cover", specification.Coverage, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Each_is_shown_by_a_case_of_its_own(string name)
    {
        var files = Repository.Rules.Files.Where(file => file.EndsWith("/cases.yaml", StringComparison.Ordinal));
        Assert.Contains(files, file => System.Text.Encoding.UTF8.GetString(Repository.Rules.Read(file)).Contains($"with: [{name}]", StringComparison.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Each_judges_something_otherwise_than_general_practice(string name)
    {
        var cells = TableCells.All.Where(cell => string.Equals(cell.Jurisdiction, name, StringComparison.Ordinal));
        Assert.Contains(cells, cell => !Statuses(cell).SequenceEqual(Statuses(cell with { Jurisdiction = "general" })));
    }

    private static IEnumerable<Status> Statuses(TableCell cell) => CellCheck.Findings(cell, cell.Outside).Select(finding => finding.Status).Order();

    [Theory]
    [MemberData(nameof(Names))]
    public void Each_stands_in_the_tables(string name) =>
        Assert.Contains(TableCells.All, cell => string.Equals(cell.Jurisdiction, name, StringComparison.Ordinal));

    [Theory]
    [MemberData(nameof(Names))]
    public void Each_own_source_is_used(string name)
    {
        var specification = Find(name);
        var used = KnownFigures.SourcesOf(specification.Set.SelectMany(set => set.Bounds)).ToHashSet(StringComparer.Ordinal);
        Assert.Empty(specification.Sources.Select(source => source.Id).Except(used, StringComparer.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Each_figure_of_its_assumptions_is_pinned_by_a_case(string name) => Assert.Empty(Repository.Cases().Mutate(Find(name)).Survivors);

    private static Specification Find(string name) => Specifications.Single(specification => string.Equals(specification.Name, name, StringComparison.Ordinal));
}
