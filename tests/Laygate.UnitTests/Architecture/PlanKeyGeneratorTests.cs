using System.Collections.Immutable;
using System.Text.Json.Nodes;
using Laygate.PlanKeys;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.Diagnostics;
using Microsoft.CodeAnalysis.Text;

namespace Laygate.UnitTests.Architecture;

/// <summary>What is written from the plan schema: a key that is added there needs no line of code.</summary>
public class PlanKeyGeneratorTests
{
    private static readonly string Schema = File.ReadAllText(Path.Combine(SourceTree.Root, "schemas", "plan.schema.json"));

    [Fact]
    public void A_flag_that_is_added_to_the_conditions_of_a_site_is_held_listed_and_read()
    {
        var schema = Changed(definitions => definitions["site_conditions"]!["properties"]!["snow_left"] = JsonNode.Parse(
            """{ "description": "Snow lies beside the works.", "allOf": [{ "$ref": "#/definitions/flag" }], "examples": ["no"] }"""));

        var records = Code("records", schema);
        Assert.Contains("/// <summary>Snow lies beside the works.</summary>\n    public bool? SnowLeft { get; init; }\n", records, StringComparison.Ordinal);
        Assert.Contains("new(\"snow_left\", \"Snow lies beside the works.\", of => of.SnowLeft),\n", records, StringComparison.Ordinal);
        Assert.Contains("SnowLeft = at.Flag(\"snow_left\"),\n", Code("mapping", schema), StringComparison.Ordinal);
    }

    [Fact]
    public void A_group_and_a_list_of_words_that_are_added_are_a_record_and_an_enumeration()
    {
        var schema = Changed(definitions =>
        {
            definitions["rubbish"] = JsonNode.Parse("""
                { "description": "What is left, in `t`.", "type": "object", "required": ["kind"], "properties": {
                  "kind": { "$ref": "#/definitions/rubbish_kind" },
                  "masses": { "description": "Loads.", "type": "array", "items": { "$ref": "#/definitions/rubbish_kind" } },
                  "mass": { "description": "How much.", "allOf": [{ "$ref": "#/definitions/mass" }] } } }
                """);
            definitions["rubbish_kind"] = JsonNode.Parse("""{ "description": "Kind.", "enum": ["old-mix", "wood"], "enumDescriptions": ["Mix.", "Wood."] }""");
        });

        var records = Code("records", schema);
        Assert.Contains("/// <summary>What is left, in <c>t</c>.</summary>\npublic sealed partial record Rubbish\n", records, StringComparison.Ordinal);
        Assert.Contains("    /// <summary>Kind.</summary>\n    public required RubbishKind Kind { get; init; }\n", records, StringComparison.Ordinal);
        Assert.Contains("public IReadOnlyList<RubbishKind> Masses { get; init; } = [];\n", records, StringComparison.Ordinal);
        Assert.Contains("public Measure<Mass>? Mass { get; init; }\n", records, StringComparison.Ordinal);
        Assert.Contains("public enum RubbishKind\n{\n    /// <summary>Mix.</summary>\n    OldMix,\n", records, StringComparison.Ordinal);
        var mapping = Code("mapping", schema);
        Assert.Contains("Kind = at.RequiredWord<RubbishKind>(\"kind\"),\n        Masses = at.WordList<RubbishKind>(\"masses\"),\n        Mass = at.Measure<Mass>(\"mass\"),\n", mapping, StringComparison.Ordinal);
    }

    [Fact]
    public void A_number_whose_sort_is_named_is_held_against_what_is_usual()
    {
        var schema = Changed(definitions =>
        {
            definitions["length.hole"] = JsonNode.Parse("""{ "description": "Width of a hole.", "allOf": [{ "$ref": "#/definitions/length" }], "examples": ["1 m"] }""");
            definitions["obstacle"]!["properties"]!["hole"] = JsonNode.Parse("""{ "description": "Its hole.", "allOf": [{ "$ref": "#/definitions/length.hole" }], "examples": ["1 m"] }""");
        });

        var numbers = Code("numbers", schema);
        Assert.Contains("        \"hole\",\n", numbers, StringComparison.Ordinal);
        Assert.Contains("Add(at, \"hole\", of.Hole, \"hole\");\n", numbers, StringComparison.Ordinal);
        Assert.Contains("foreach (var entry in of.Obstacles) Add(entry, $\"{at}obstacles.{Name(entry.Id)}.\");\n", numbers, StringComparison.Ordinal);
        Assert.DoesNotContain("of.Obstacles", Code("numbers", Schema), StringComparison.Ordinal);
        Assert.Contains("public Measure<Length>? Hole { get; init; }\n", Code("records", schema), StringComparison.Ordinal);
    }

    [Fact]
    public void The_same_schema_gives_the_same_bytes() => Assert.Equal(Code("records", Schema), Code("records", Schema));

    [Fact]
    public void What_nothing_reads_is_named()
    {
        var run = Run("records", Changed(definitions => definitions["site"]!["properties"]!["use"]!["$ref"] = "#/definitions/nothing"));

        Assert.Contains("no definition `nothing`", Assert.Single(run.Diagnostics).GetMessage(System.Globalization.CultureInfo.InvariantCulture), StringComparison.Ordinal);
    }

    private static string Changed(Action<JsonNode> change)
    {
        var schema = JsonNode.Parse(Schema)!;
        change(schema["definitions"]!);
        return schema.ToJsonString();
    }

    private static string Code(string part, string schema)
    {
        var run = Run(part, schema);
        Assert.Empty(run.Diagnostics);
        return string.Concat(run.GeneratedTrees.Select(tree => tree.ToString()));
    }

    private static GeneratorDriverRunResult Run(string part, string schema) => CSharpGeneratorDriver
        .Create([new PlanKeyGenerator().AsSourceGenerator()], [new SchemaText(schema)], optionsProvider: new Options(part))
        .RunGenerators(CSharpCompilation.Create("keys"))
        .GetRunResult();

    private sealed class SchemaText(string text) : AdditionalText
    {
        public override string Path => "schemas/plan.schema.json";

        public override SourceText GetText(CancellationToken cancellationToken = default) => SourceText.From(text);
    }

    private sealed class Options(string part) : AnalyzerConfigOptionsProvider
    {
        public override AnalyzerConfigOptions GlobalOptions { get; } = new Values(ImmutableDictionary<string, string>.Empty
            .Add("build_property.PlanKeys", part).Add("build_property.RootNamespace", "Room"));

        public override AnalyzerConfigOptions GetOptions(SyntaxTree tree) => GlobalOptions;

        public override AnalyzerConfigOptions GetOptions(AdditionalText textFile) => GlobalOptions;
    }

    private sealed class Values(ImmutableDictionary<string, string> values) : AnalyzerConfigOptions
    {
        public override bool TryGetValue(string key, out string value) => values.TryGetValue(key, out value!);
    }
}
