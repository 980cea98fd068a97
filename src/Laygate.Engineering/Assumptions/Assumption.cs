using System.Collections.Frozen;
using Laygate.Engineering.Quantities;

namespace Laygate.Engineering.Assumptions;

/// <summary>A value that stands in for something that a plan does not state, or that nobody can state.</summary>
/// <param name="Id">Id: lower case with underscores and points.</param>
/// <param name="Meaning">What it is.</param>
/// <param name="Number">Value in the unit.</param>
/// <param name="Unit">Unit: a spelling of the unit table, or a composed SI unit such as <c>W/(m·K)</c> for properties that no plan states.</param>
/// <param name="Low">Lower end of its range.</param>
/// <param name="High">Upper end of its range.</param>
/// <param name="Source">Where it comes from.</param>
/// <param name="Evidence">How it is known.</param>
public sealed record Assumption(
    string Id, string Meaning, double Number, string Unit, double Low, double High, string Source, Evidence Evidence);

/// <summary>The assumptions in force: the catalogue, with those that a specification replaces.</summary>
public sealed class AssumptionSet
{
    private readonly FrozenDictionary<string, Assumption> byId;
    private readonly Dictionary<string, Assumption> replaced = new(StringComparer.Ordinal);

    /// <summary>Creates a set; a later assumption with the same id replaces an earlier one.</summary>
    public AssumptionSet(IEnumerable<Assumption> assumptions)
    {
        var latest = new Dictionary<string, Assumption>(StringComparer.Ordinal);
        foreach (var assumption in assumptions)
        {
            latest[assumption.Id] = assumption;
        }

        byId = latest.ToFrozenDictionary(StringComparer.Ordinal);
    }

    private AssumptionSet(AssumptionSet basis, IEnumerable<Assumption> replacements)
    {
        byId = basis.byId;
        foreach (var assumption in basis.replaced.Values.Concat(replacements))
        {
            replaced[assumption.Id] = assumption;
        }
    }

    /// <summary>All assumptions by id.</summary>
    public IEnumerable<Assumption> All => byId.Keys.Union(replaced.Keys, StringComparer.Ordinal).Select(id => this[id]).OrderBy(assumption => assumption.Id, StringComparer.Ordinal);

    /// <summary>Finds an assumption.</summary>
    /// <returns>The assumption, or null.</returns>
    public Assumption? Find(string id) => replaced.GetValueOrDefault(id) ?? byId.GetValueOrDefault(id);

    /// <summary>The assumption of an id that this program itself uses.</summary>
    /// <exception cref="ArgumentException">The catalogue lacks it, which is an error of the program.</exception>
    public Assumption this[string id] => Find(id) ?? throw new ArgumentException($"No assumption is called {id}.", nameof(id));

    /// <summary>The same set with a few assumptions replaced; cheap to make.</summary>
    public AssumptionSet With(IEnumerable<Assumption> replacements) => new(this, replacements);
}
