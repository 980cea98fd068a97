using System.Collections.Frozen;

namespace Laygate.Engineering.Quantities;

/// <summary>All quantities that rules may refer to.</summary>
public sealed class QuantityCatalogue
{
    private readonly FrozenDictionary<string, QuantityDefinition> byName;

    /// <summary>Builds a catalogue from its parts; names must be unique.</summary>
    /// <exception cref="ArgumentException">Two quantities share a name.</exception>
    public QuantityCatalogue(IEnumerable<QuantityDefinition> definitions)
    {
        All = [.. definitions];
        byName = All.ToFrozenDictionary(definition => definition.Name, StringComparer.Ordinal);
    }

    /// <summary>All quantities, in the order of the catalogue.</summary>
    public IReadOnlyList<QuantityDefinition> All { get; }

    /// <summary>Finds a quantity by its name.</summary>
    /// <returns>The quantity, or null.</returns>
    public QuantityDefinition? Find(string name) => byName.GetValueOrDefault(name);
}
