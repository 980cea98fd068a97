namespace Laygate.Reading.Schema;

/// <summary>Where in a schema each key may stand, in words.</summary>
internal sealed class KeyPlaces
{
    private const int Most = 3;

    private readonly Dictionary<string, List<string>> _places = new(StringComparer.Ordinal);
    private readonly HashSet<SchemaNode> _visited = [];

    public KeyPlaces(SchemaNode root) => Visit(root, "at the top level");

    /// <summary>The places of a key, at most three; empty when no map has it.</summary>
    public IReadOnlyList<string> Of(string key) => _places.GetValueOrDefault(key) is { } found ? found.Take(Most).ToList() : [];

    private void Visit(SchemaNode node, string place)
    {
        var resolved = node.Resolved;
        if (!_visited.Add(resolved))
        {
            return;
        }

        foreach (var (key, value) in resolved.Properties)
        {
            var places = _places.TryGetValue(key, out var found) ? found : _places[key] = [];
            if (!places.Contains(place, StringComparer.Ordinal))
            {
                places.Add(place);
            }

            Visit(value, $"under `{key}`");
            VisitItems(value.Resolved, key);
        }

        foreach (var part in resolved.AllOf.Concat(resolved.AnyOf).Concat(resolved.OneOf))
        {
            Visit(part, place);
        }

        if (resolved.KeyPatternValue is not null)
        {
            Visit(resolved.KeyPatternValue, place);
        }
    }

    private void VisitItems(SchemaNode value, string key)
    {
        foreach (var part in value.Conjuncts.Concat(value.Alternatives.SelectMany(branch => branch.Conjuncts)))
        {
            if (part.Item is not null)
            {
                Visit(part.Item, $"in an entry of `{key}`");
            }
        }
    }
}
