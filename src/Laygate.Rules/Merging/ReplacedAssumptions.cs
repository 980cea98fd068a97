using Laygate.Engineering.Assumptions;
using Laygate.Rules.Binding;
using Laygate.Rules.Definitions;

namespace Laygate.Rules.Merging;

/// <summary>Assumptions that specifications replace.</summary>
internal sealed class ReplacedAssumptions(AssumptionSet catalogue, BookProblems problems)
{
    private readonly SortedDictionary<string, (Assumption Value, Layer Layer, string By)> replaced = new(StringComparer.Ordinal);

    public IReadOnlyList<Assumption> All => [.. replaced.Values.Select(entry => entry.Value)];

    public void Apply(Specification specification)
    {
        for (var index = 0; index < specification.Assume.Count; index++)
        {
            Apply(specification, specification.Assume[index], new BookPlace(specification.Name, null, string.Empty).In("assume", index));
        }
    }

    private void Apply(Specification specification, Assumption assumption, BookPlace place)
    {
        if (catalogue.Find(assumption.Id) is not { } original)
        {
            problems.Add(place.In("id"), new BookMistake.UnknownAssumption(assumption.Id));
            return;
        }

        if (!string.Equals(original.Unit, assumption.Unit, StringComparison.Ordinal))
        {
            problems.Add(place, new BookMistake.AssumptionUnit(assumption.Id, assumption.Unit, original.Unit));
        }

        if (!(assumption.Low <= assumption.Number && assumption.Number <= assumption.High))
        {
            problems.Add(place, new BookMistake.AssumptionRange(assumption.Id));
        }

        var current = replaced.TryGetValue(assumption.Id, out var earlier) ? earlier.Value : original;
        if (earlier.Value is not null && earlier.Layer == specification.Layer)
        {
            problems.Add(
                place, new BookMistake.TwoSpecificationsDiffer(assumption.Id, earlier.By, specification.Name));
        }
        else if (current == assumption with { Meaning = current.Meaning })
        {
            problems.Add(place, new BookMistake.DeadOverride(assumption.Id, NoEffect.SameValue));
        }

        replaced[assumption.Id] = (assumption with { Meaning = assumption.Meaning.Length > 0 ? assumption.Meaning : original.Meaning }, specification.Layer, specification.Name);
    }
}
