using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using Json.Schema;
using Laygate.Reading.Schema;
using Laygate.Reading.Yaml;

namespace Laygate.ConformanceTests.Schema;

/// <summary>The plan schema as the two validators see it, and the plans that they are compared on.</summary>
internal static class PlanSchemaFile
{
    public static string Root { get; } = SourceTree.Root;

    public static string Text { get; } = File.ReadAllText(Path.Combine(Root, "schemas", "plan.schema.json"));

    public static JsonElement Parsed { get; } = JsonDocument.Parse(Text).RootElement;

    public static LoadedSchema Loaded { get; } = SchemaLoader.Load(Text);

    /// <summary>The second, independent validator: JsonSchema.Net 8.0.5.</summary>
    public static JsonSchema Second { get; } = JsonSchema.FromText(Text);

    public static string EveryKeyPath { get; } = Path.Combine(Root, "tests", "Laygate.UnitTests", "Reading", "Plans", "every-key.yaml");

    public static IReadOnlyList<string> PlanPaths { get; } =
    [
        EveryKeyPath,
        .. Directory.Exists(Path.Combine(Root, "examples"))
            ? Directory.EnumerateFiles(Path.Combine(Root, "examples"), "*.yaml", SearchOption.AllDirectories).Where(IsPlan).Order(StringComparer.Ordinal)
            : Enumerable.Empty<string>(),
        Path.Combine(Root, Repository.WholeQuay),
    ];

    public static YamlDocument Read(string text)
    {
        var result = YamlReader.Read(Encoding.UTF8.GetBytes(text));
        Assert.Empty(result.Problems);
        return Assert.Single(result.Documents);
    }

    /// <summary>The document as JSON values: numbers as decimals with the digits that were written.</summary>
    public static JsonNode? ToJson(YamlToken token) => token switch
    {
        MapToken map => new JsonObject(map.Entries.Select(entry => KeyValuePair.Create(entry.Key.Text, ToJson(entry.Value)))),
        ListToken list => new JsonArray([.. list.Items.Select(ToJson)]),
        ScalarToken { Kind: ScalarKind.Null } => null,
        ScalarToken { Kind: ScalarKind.WholeNumber or ScalarKind.DecimalNumber } number => JsonValue.Create(decimal.Parse(number.Text, CultureInfo.InvariantCulture)),
        ScalarToken text => JsonValue.Create(text.Text),
        _ => throw new ArgumentOutOfRangeException(nameof(token)),
    };

    public static bool FirstVerdict(YamlDocument document) => SchemaChecker.IsValid(document, Loaded);

    public static bool SecondVerdict(YamlDocument document) => Evaluate(document, OutputFormat.Flag).IsValid;

    public static EvaluationResults Evaluate(YamlDocument document, OutputFormat format) =>
        Second.Evaluate(JsonSerializer.SerializeToElement(ToJson(document.Root)), new EvaluationOptions { OutputFormat = format });

    /// <summary>A schema with the definition that it refers to in its place.</summary>
    public static JsonElement Resolve(JsonElement schema) =>
        Definition(schema) is { } name ? Parsed.GetProperty("definitions").GetProperty(name) : schema;

    /// <summary>The definition that a schema refers to in the end: a sort of numbers refers to what it measures.</summary>
    public static string? Definition(JsonElement schema) =>
        Referred(schema) is { } name ? Definition(Parsed.GetProperty("definitions").GetProperty(name)) ?? name : null;

    /// <summary>The definition that a schema names.</summary>
    public static string? Referred(JsonElement schema) =>
        (schema.TryGetProperty("allOf", out var all) ? all[0] : schema).TryGetProperty("$ref", out var reference) ? reference.GetString()!.Split('/')[^1] : null;

    // A specification that stands beside the plans has no format version.
    // A plan that uses files of parts has a schema of its own.
    private static bool IsPlan(string path) => Read(File.ReadAllText(path)).Root is MapToken map && map["format"] is not null && map["record"] is null && map["uses"] is null;
}
