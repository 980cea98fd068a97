using System.Reflection;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using Laygate.Exchange;

namespace Laygate.ConformanceTests.Schema;

/// <summary>
/// The schema of a record that is written as JSON: keys, lists and nulls as the source says that System.Text.Json makes for it, closed lists by the words that
/// their tokens write, descriptions from the comments of the records, and what their attributes say.
/// </summary>
/// <param name="other">Name of another schema.</param>
/// <param name="elsewhere">Definitions that stand there.</param>
internal sealed partial class ShapeSchema(string? other = null, IReadOnlySet<string>? elsewhere = null)
{
    private static readonly JsonSerializerOptions Form = new() { WriteIndented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };
    private static readonly Dictionary<string, XElement> Comments = new[] { "Exchange", "Rules", "Engineering", "Model" }
        .SelectMany(room => XDocument.Load(Path.Combine(AppContext.BaseDirectory, $"Laygate.{room}.xml")).Descendants("member"))
        .ToDictionary(member => member.Attribute("name")!.Value, StringComparer.Ordinal);

    private readonly SortedDictionary<string, JsonObject> definitions = new(StringComparer.Ordinal);

    /// <summary>Names of the definitions that it makes.</summary>
    public IReadOnlySet<string> Definitions => definitions.Keys.ToHashSet(StringComparer.Ordinal);

    /// <summary>The schema of one document.</summary>
    public string Of(string title, JsonTypeInfo root)
    {
        Define(root);
        Assert.True(definitions.Remove(Name(root.Type), out var top));
        return Text(title, top!);
    }

    /// <summary>The schema of a document that is one of several.</summary>
    public string OfEither(string title, string description, params JsonTypeInfo[] roots)
    {
        Array.ForEach(roots, Define);
        return Text(title, new JsonObject { ["description"] = description, ["anyOf"] = new JsonArray([.. roots.Select(root => Reference(root.Type))]) });
    }

    private string Text(string title, JsonObject top)
    {
        var schema = new JsonObject { ["$schema"] = "http://json-schema.org/draft-07/schema#", ["title"] = title };
        foreach (var (key, value) in top)
        {
            schema[key] = value!.DeepClone();
        }

        schema["definitions"] = new JsonObject(definitions.Where(one => elsewhere?.Contains(one.Key) != true).Select(one => KeyValuePair.Create(one.Key, (JsonNode?)one.Value)));
        return schema.ToJsonString(Form) + "\n";
    }

    private void Define(JsonTypeInfo type)
    {
        if (!definitions.TryAdd(Name(type.Type), []))
        {
            return;
        }

        // What is never written is no key.
        var written = type.Properties.Where(property => property.Get is not null && !Said(property).OnlyRead).ToList();
        definitions[Name(type.Type)] = new JsonObject
        {
            ["type"] = "object",
            ["description"] = Comment(type.Type),
            ["required"] = new JsonArray([.. written.Where(property => !Said(property).Later).Select(property => JsonValue.Create(property.Name))]),
            ["properties"] = new JsonObject(written.Select(property => KeyValuePair.Create(property.Name, (JsonNode?)Key(type, property)))),
        };
    }

    private JsonObject Key(JsonTypeInfo owner, JsonPropertyInfo property)
    {
        var (type, said) = (owner.Options.GetTypeInfo(Bare(property.PropertyType)), Said(property));
        var nullable = property.IsGetNullable && Member(property).GetCustomAttribute<JsonIgnoreAttribute>() is null;
        var description = Comment(Member(property));
        if (type.Kind == JsonTypeInfoKind.Object)
        {
            Define(type);
            return Referring(type.Type, description, said, nullable);
        }

        var schema = new JsonObject { ["type"] = nullable ? new JsonArray(Kind(type), "null") : Kind(type), ["description"] = description };
        switch (type.Kind)
        {
            case JsonTypeInfoKind.Enumerable:
                List(schema, Inner(type), said);
                break;
            case JsonTypeInfoKind.Dictionary:
                schema["additionalProperties"] = Inner(type);
                break;
            default:
                Value(schema, type, said, nullable);
                break;
        }

        return schema;
    }

    private JsonObject Inner(JsonTypeInfo list)
    {
        var type = list.Options.GetTypeInfo(list.ElementType!);
        if (type.Kind != JsonTypeInfoKind.Object)
        {
            return new JsonObject { ["type"] = Kind(type) };
        }

        Define(type);
        return Reference(type.Type);
    }

    // What stands beside a reference is passed over in this draft.
    private JsonObject Referring(Type type, string description, SchemaAttribute said, bool nullable)
    {
        var schema = said.Inside is { } key ? All(Reference(type), new JsonObject { ["required"] = new JsonArray(key) }) : Reference(type);
        schema = nullable ? new JsonObject { ["oneOf"] = new JsonArray(new JsonObject { ["type"] = "null" }, schema) } : All(schema);
        schema.Insert(0, "description", description);
        return schema;
    }

    private static JsonObject All(params JsonNode?[] schemas) => new() { ["allOf"] = new JsonArray(schemas) };

    private JsonObject Reference(Type type) => new() { ["$ref"] = $"{(elsewhere?.Contains(Name(type)) == true ? other : string.Empty)}#/definitions/{Name(type)}" };

    private static void List(JsonObject schema, JsonObject inner, SchemaAttribute said)
    {
        if (said.MostEntries > 0)
        {
            schema["minItems"] = 1;
            schema["maxItems"] = said.MostEntries;
        }

        if (said.NotEmpty)
        {
            inner["minLength"] = 1;
        }

        schema["items"] = inner;
    }

    private static void Value(JsonObject schema, JsonTypeInfo type, SchemaAttribute said, bool nullable)
    {
        if ((said.Words?.Split(' ') ?? (type.Converter as IToken)?.Words) is { } words)
        {
            schema["enum"] = new JsonArray([.. words.Select(word => JsonValue.Create(word)), .. nullable ? [null] : Array.Empty<JsonNode?>()]);
        }

        if (said.NotEmpty)
        {
            schema["minLength"] = 1;
        }

        if ((type.Type == typeof(DateOnly) ? "^[0-9]{4}-[0-9]{2}-[0-9]{2}$" : said.Pattern) is { } pattern)
        {
            schema["pattern"] = pattern;
        }

        if (said.Only != 0)
        {
            schema["enum"] = new JsonArray(said.Only);
        }
        else if (type.Type == typeof(int))
        {
            schema["minimum"] = said.Least;
        }
    }

    private static string Kind(JsonTypeInfo type) => type.Kind switch
    {
        JsonTypeInfoKind.Enumerable => "array",
        JsonTypeInfoKind.Dictionary => "object",
        _ when type.Type == typeof(int) => "integer",
        _ when type.Type == typeof(double) => "number",
        _ when type.Type == typeof(bool) => "boolean",
        _ => "string",
    };

    private static Type Bare(Type type) => Nullable.GetUnderlyingType(type) ?? type;

    private static SchemaAttribute Said(JsonPropertyInfo property) => Member(property).GetCustomAttribute<SchemaAttribute>() ?? new SchemaAttribute();

    private static MemberInfo Member(JsonPropertyInfo property) => Assert.IsType<MemberInfo>(property.AttributeProvider, exactMatch: false);

    // Records say it in the comment of the record, parameter by parameter.
    private static string Comment(MemberInfo member) => Plain(member is Type type
        ? Comments[$"T:{type.FullName}"].Element("summary")
        : Comments[$"T:{member.DeclaringType!.FullName}"].Elements("param").SingleOrDefault(one => one.Attribute("name")!.Value == member.Name), member);

    private static string Plain(XElement? comment, MemberInfo member)
    {
        Assert.True(comment is not null, $"{member} has no comment.");
        return Spaces().Replace(string.Concat(comment.Nodes().Select(node => node is XElement { Name.LocalName: "c" } code ? $"`{code.Value}`" : node.ToString())), " ").Trim();
    }

    private static string Name(Type type) => Capitals().Replace(Ends().Replace(type.Name, string.Empty), "_$0").ToLowerInvariant();

    [GeneratedRegex(@"\s+", RegexOptions.None, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Spaces();

    [GeneratedRegex("^Shown|^Plant|Shape$|Coverage$|Reference$|Use$", RegexOptions.None, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Ends();

    [GeneratedRegex("(?<!^)[A-Z]", RegexOptions.None, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Capitals();
}
