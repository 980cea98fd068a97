using NJsonSchema;

namespace Laygate.Reading.Schema;

/// <summary>A schema that documents can be checked against. Holds no state of a check; may be used by several at once.</summary>
public sealed class LoadedSchema
{
    private readonly Lazy<KeyPlaces> _places;

    internal LoadedSchema(SchemaNode root, IReadOnlyDictionary<string, SchemaNode> definitions)
    {
        Root = root;
        Validator = new ValidatorModel(definitions).Build(root);
        Patterns = definitions.Values.Append(root).SelectMany(SchemaTree.Parts)
            .SelectMany(node => new[] { node.Pattern, node.KeyPattern }).OfType<SchemaPattern>()
            .Select(pattern => pattern.DotNet).Distinct(StringComparer.Ordinal).ToList();
        _places = new Lazy<KeyPlaces>(() => new KeyPlaces(root));
    }

    /// <summary>What a document of this schema is called: the title of the schema, such as <c>plan</c>.</summary>
    public string DocumentName => Root.Title ?? "document";

    /// <summary>Every pattern as it runs in .NET; a test holds each to a time limit.</summary>
    public IReadOnlyList<string> Patterns { get; }

    internal SchemaNode Root { get; }

    internal JsonSchema Validator { get; }

    internal KeyPlaces Places => _places.Value;
}
