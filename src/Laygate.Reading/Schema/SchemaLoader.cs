using System.Text.Json;

namespace Laygate.Reading.Schema;

/// <summary>
/// Loads the subset of JSON Schema draft-07 that Laygate's schemas are written in: only keywords that the validator really
/// enforces, and annotations. The validator's own text reader costs 0.3 s and cannot be compiled ahead of time.
/// </summary>
public static class SchemaLoader
{
    /// <summary>Loads a schema.</summary>
    /// <param name="json">The text of the schema.</param>
    /// <returns>The schema, ready to check documents.</returns>
    /// <exception cref="SchemaException">The text is no JSON, or uses a keyword outside the subset, or one beside <c>$ref</c>.</exception>
    public static LoadedSchema Load(string json)
    {
        using var document = Parse(json);
        var root = document.RootElement;
        var definitions = ReadDefinitions(root);
        var node = SchemaNodeReader.Read(root, "#", isRoot: true);
        foreach (var part in definitions.Values.Append(node).SelectMany(SchemaTree.Parts).ToList())
        {
            Resolve(part, definitions);
        }

        foreach (var (name, definition) in definitions)
        {
            RefuseLoop(name, definition);
        }

        return new LoadedSchema(node, definitions);
    }

    private static JsonDocument Parse(string json)
    {
        try
        {
            return JsonDocument.Parse(json);
        }
        catch (JsonException error)
        {
            throw new SchemaException($"The schema is not valid JSON: {error.Message}", error);
        }
    }

    private static Dictionary<string, SchemaNode> ReadDefinitions(JsonElement root)
    {
        var definitions = new Dictionary<string, SchemaNode>(StringComparer.Ordinal);
        if (root.ValueKind != JsonValueKind.Object || !root.TryGetProperty("definitions", out var found))
        {
            return definitions;
        }

        foreach (var member in found.EnumerateObject())
        {
            definitions[member.Name] = SchemaNodeReader.Read(member.Value, $"#/definitions/{member.Name}", isRoot: false);
        }

        return definitions;
    }

    private static void Resolve(SchemaNode node, Dictionary<string, SchemaNode> definitions)
    {
        if (node.Reference is not { } name)
        {
            return;
        }

        node.Target = definitions.GetValueOrDefault(name) ?? throw new SchemaException($"There is no definition `{name}`.");
    }

    // What a schema says about the same value, not about a part of it.
    private static IEnumerable<SchemaNode> SamePlace(SchemaNode node) =>
        node.AllOf.Concat(node.AnyOf).Concat(node.OneOf).Concat(new[] { node.Not, node.Target }.OfType<SchemaNode>());

    private static void RefuseLoop(string name, SchemaNode definition)
    {
        var open = new Stack<SchemaNode>(SamePlace(definition));
        var seen = new HashSet<SchemaNode>();
        while (open.TryPop(out var node))
        {
            if (node == definition)
            {
                throw new SchemaException($"The definition `{name}` refers to itself without a key or list between.");
            }

            if (!seen.Add(node))
            {
                continue;
            }

            foreach (var next in SamePlace(node))
            {
                open.Push(next);
            }
        }
    }
}
