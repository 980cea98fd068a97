using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Quantities;
using Laygate.Rules.Binding;
using Laygate.Rules.Definitions;
using Laygate.Rules.Results;

namespace Laygate.Rules.Merging;

/// <summary>Builds the merged book: general rules first, then each specification by layer.</summary>
internal sealed class BookMerger
{
    private readonly BookDefinition general;
    private readonly IReadOnlyList<Specification> specifications;
    private readonly AssumptionSet assumptions;
    private readonly BookProblems problems = new();
    private readonly Dictionary<string, Source> sources = new(StringComparer.Ordinal);
    private readonly SortedDictionary<string, Entry> entries = new(StringComparer.Ordinal);
    private readonly HashSet<string> known = new(StringComparer.Ordinal);
    private readonly HashSet<string> specificationNames = new(StringComparer.Ordinal);
    private readonly HashSet<string> names = new(StringComparer.Ordinal);
    private readonly RuleChecker checker;

    public BookMerger(
        BookDefinition general, IReadOnlyList<Specification> specifications, QuantityCatalogue catalogue, AssumptionSet assumptions)
    {
        this.general = general;
        this.specifications = [.. specifications.OrderBy(specification => specification.Layer).ThenBy(specification => specification.Name, StringComparer.Ordinal)];
        this.assumptions = assumptions;
        checker = new RuleChecker(new CheckContext(catalogue, sources, problems));
    }

    public RuleBookResult Merge()
    {
        AddSources(general.Sources, specification: null);
        foreach (var specification in specifications)
        {
            CheckSpecification(specification);
            AddSources(specification.Sources, specification.Name);
        }

        AddRules(general.Rules, Layer.GeneralPractice, specification: null);
        var replaced = new ReplacedAssumptions(assumptions, problems);
        var overlay = new Overlay(entries, known, checker, problems);
        foreach (var specification in specifications)
        {
            AddRules(specification.Rules, specification.Layer, specification.Name);
            overlay.Apply(specification);
            replaced.Apply(specification);
        }

        return problems.Count > 0
            ? new RuleBookResult(null, problems.Found)
            : new RuleBookResult(new RuleBook(Layers(), Rules(), sources, replaced.All), []);
    }

    private void CheckSpecification(Specification specification)
    {
        var place = new BookPlace(specification.Name, null, string.Empty);
        if (specification.Layer == Layer.GeneralPractice)
        {
            problems.Add(place.In("layer"), new BookMistake.GeneralSpecification());
        }

        if (!specificationNames.Add(specification.Name))
        {
            problems.Add(place, new BookMistake.DuplicateSpecification(specification.Name));
        }
    }

    private void AddSources(IReadOnlyList<Source> added, string? specification)
    {
        for (var index = 0; index < added.Count; index++)
        {
            // Two specifications may both list a publication, as long as they say the same about it.
            if (!sources.TryAdd(added[index].Id, added[index]) && (specification is null || sources[added[index].Id] != added[index]))
            {
                problems.Add(
                    new BookPlace(specification, null, string.Empty).In("sources", index), new BookMistake.DuplicateSource(added[index].Id));
            }
        }
    }

    private void AddRules(IReadOnlyList<RuleDefinition> rules, Layer layer, string? specification)
    {
        foreach (var rule in rules)
        {
            var name = $"{rule.Family}/{rule.Name}";
            var place = new BookPlace(specification, name, string.Empty);
            if (!names.Add(name))
            {
                problems.Add(place, new BookMistake.DuplicateName(name));
            }

            if (!known.Add(rule.Id))
            {
                problems.Add(place.In("id"), new BookMistake.DuplicateRule(rule.Id));
            }
            else if (checker.Check(rule, place) is var (quantity, when))
            {
                entries.Add(rule.Id, new Entry
                {
                    Definition = rule,
                    Quantity = quantity,
                    When = when,
                    Layer = layer,
                    AddedBy = specification,
                    Place = place,
                    Bounds = checker.Bounds(rule.Bounds, rule, quantity, layer, specification, place),
                    InForce = !rule.OnDemand && rule.Life.State != LifeState.Gone,
                });
            }
        }
    }

    private List<BookLayer> Layers() =>
    [
        new BookLayer(general.Name, general.Title, general.Edition, null, Layer.GeneralPractice, "none"),
        .. specifications.Select(specification => new BookLayer(
            specification.Name, specification.Title, specification.Edition, specification.Status, specification.Layer, specification.Jurisdiction)
        {
            Coverage = specification.Coverage,
            Clauses = specification.Clauses,
            IsUnread = specification.IsUnread,
            OldWords = specification.OldWords,
        }),
    ];

    private List<MergedRule> Rules() =>
        [.. entries.Values.Select(entry => new MergedRule(entry.ToRule(), entry.InForce, entry.AddedBy, entry.TakenOutBy, entry.TakenOut?.Reason))];
}
