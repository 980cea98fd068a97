using System.Text.Json;
using System.Text.RegularExpressions;
using Laygate.Model.Measures;
using Laygate.Model.Plans;
using Laygate.Reading.Schema;
using static Laygate.ConformanceTests.Schema.PlanSchemaFile;

namespace Laygate.ConformanceTests.Schema;

/// <summary>The plan schema is complete, speaks the words of the model and uses only what the validator enforces.</summary>
public class PlanSchemaTests
{
    private const string Number = @"[+-]?(?:0|[1-9][0-9]{0,9})(?:\.[0-9]{1,6})?";

    [Fact]
    public void Every_key_has_a_description_and_an_example() =>
        Assert.All(Nodes().Where(node => node.IsKey), node =>
        {
            // What only one key uses is described where it is defined.
            var schema = node.Schema.TryGetProperty("$ref", out _) ? Resolve(node.Schema) : node.Schema;
            Assert.True(schema.TryGetProperty("description", out var description), node.Path);
            Assert.EndsWith(".", description.GetString(), StringComparison.Ordinal);
            Assert.True(schema.TryGetProperty("examples", out var examples) && examples.GetArrayLength() > 0, node.Path);
        });

    [Fact]
    public void Every_example_fits_the_place_where_it_stands()
    {
        // Each example stands alone behind a key of one schema, whose keys are the places of the examples.
        var places = Nodes().Where(node => node.Path is not "#" && node.Schema.TryGetProperty("examples", out _)).ToList();
        var keys = string.Join(",\n", places.Select((node, index) => $"\"x{index}\": {node.Schema.GetRawText()}"));
        var all = SchemaLoader.Load($$"""{ "type": "object", "properties": { {{keys}} }, "definitions": {{Parsed.GetProperty("definitions").GetRawText()}} }""");
        var wrong = places.SelectMany((node, index) => node.Schema.GetProperty("examples").EnumerateArray().Select(example => example.GetRawText())
            .Where(example => !SchemaChecker.IsValid(Read($$"""{ "x{{index}}": {{example}} }"""), all)).Select(example => $"{node.Path}: {example}")).ToList();

        Assert.Empty(wrong);
    }

    // Work and memory grow with the entries of a list: more than any shift needs is refused where the list begins.
    [Theory]
    [InlineData("courses", "  - { id: c%, mix: m, thickness: 40 mm }", 12)]
    [InlineData("mixes", "  - { id: m% }", 12)]
    [InlineData("measures", "  - { id: x%, kind: first-aid }", 500)]
    public void A_list_longer_than_any_shift_needs_is_refused_at_its_line(string key, string entry, int most)
    {
        string Plan(int count) => $"format: 1\nplan: {{ id: job, stage: concept }}\n{key}:\n{string.Join('\n', Enumerable.Range(0, count).Select(number => entry.Replace("%", number.ToString(System.Globalization.CultureInfo.InvariantCulture), StringComparison.Ordinal)))}\n";
        Assert.DoesNotContain(SchemaChecker.Check(Read(Plan(most)), Loaded), problem => problem.Message.Contains("at most", StringComparison.Ordinal));
        var problem = Assert.Single(SchemaChecker.Check(Read(Plan(most + 1)), Loaded), problem => problem.Message.Contains("at most", StringComparison.Ordinal));
        Assert.Contains($"{most + 1} entries; at most {most} are allowed", problem.Message, StringComparison.Ordinal);
        // By hand: format, plan, then the list.
        Assert.Equal(3, problem.Position.Line);
    }

    [Fact]
    public void The_example_of_a_whole_plan_fits() =>
        Assert.All(Parsed.GetProperty("examples").EnumerateArray(), example => Assert.True(SchemaChecker.IsValid(Read(example.GetRawText()), Loaded)));

    [Fact]
    public void Every_group_refuses_unknown_keys_and_every_list_an_empty_or_endless_one() =>
        Assert.All(Nodes(), node =>
        {
            if (node.Schema.TryGetProperty("properties", out _))
            {
                Assert.Equal(JsonValueKind.False, node.Schema.GetProperty("additionalProperties").ValueKind);
            }

            if (node.Schema.TryGetProperty("items", out _))
            {
                Assert.Equal(1, node.Schema.GetProperty("minItems").GetInt32());
            }

            if (node.Schema.TryGetProperty("items", out _))
            {
                Assert.InRange(node.Schema.GetProperty("maxItems").GetInt32(), 8, 1000);
            }
        });

    [Fact]
    public void Every_word_has_its_meaning() =>
        Assert.All(Nodes().Where(node => node.Schema.TryGetProperty("enum", out _)), node =>
        {
            Assert.Equal(node.Schema.GetProperty("enum").GetArrayLength(), node.Schema.GetProperty("enumDescriptions").GetArrayLength());
            Assert.All(node.Schema.GetProperty("enumDescriptions").EnumerateArray(), text => Assert.EndsWith(".", text.GetString(), StringComparison.Ordinal));
        });

    [Fact]
    public void The_words_of_a_list_are_those_of_the_model()
    {
        var lists = Parsed.GetProperty("definitions").EnumerateObject()
            .Where(definition => definition.Value.TryGetProperty("enum", out _) && definition.Name is not ("flag" or "sieve")).ToList();

        Assert.InRange(lists.Count, 40, 100);
        Assert.All(lists, list => Assert.Equal(Words(list.Name), Listed(list.Value), StringComparer.Ordinal));
        // The table of sieves is a set without an order; the schema may list it in any.
        Assert.Equal(Sieve.Names.Order(StringComparer.Ordinal), Listed(Parsed.GetProperty("definitions").GetProperty("sieve")).Order(StringComparer.Ordinal), StringComparer.Ordinal);
    }

    [Fact]
    public void A_list_of_words_is_a_definition_of_its_own() =>
        Assert.DoesNotContain(Nodes(), node => node.Path.Contains('.', StringComparison.Ordinal) && node.Schema.TryGetProperty("enum", out _));

    [Theory]
    [InlineData("length", Dimension.Length)]
    [InlineData("area", Dimension.Area)]
    [InlineData("temperature", Dimension.Temperature)]
    [InlineData("temperature_difference", Dimension.TemperatureDifference)]
    [InlineData("duration", Dimension.Duration)]
    [InlineData("speed", Dimension.Speed)]
    [InlineData("mass", Dimension.Mass)]
    [InlineData("mass_flow", Dimension.MassFlow)]
    [InlineData("density", Dimension.Density)]
    [InlineData("mass_per_area", Dimension.MassPerArea)]
    [InlineData("spray_rate", Dimension.MassPerArea, Dimension.VolumePerArea)]
    [InlineData("proportion", Dimension.Proportion)]
    [InlineData("frequency", Dimension.Frequency)]
    [InlineData("irradiance", Dimension.Irradiance)]
    [InlineData("voltage", Dimension.Voltage)]
    [InlineData("illuminance", Dimension.Illuminance)]
    [InlineData("concentration", Dimension.Concentration)]
    [InlineData("force_per_length", Dimension.ForcePerLength)]
    [InlineData("acceleration", Dimension.Acceleration)]
    [InlineData("angle", Dimension.Angle)]
    public void A_measure_has_the_units_of_the_unit_table(string definition, params Dimension[] dimensions)
    {
        var units = dimensions.SelectMany(UnitTable.Of).Select(unit => Spellings(unit.Spelling));

        Assert.Equal($"^{Number} (?:{string.Join('|', units)})$", Parsed.GetProperty("definitions").GetProperty(definition).GetProperty("pattern").GetString());
    }

    [Fact]
    public void A_sort_of_numbers_is_called_after_what_it_measures() =>
        Assert.All(Parsed.GetProperty("definitions").EnumerateObject().Where(definition => definition.Name.Contains('.', StringComparison.Ordinal)), definition =>
            Assert.Equal(definition.Name.Split('.')[0], Referred(definition.Value)));

    [Fact]
    public void Every_definition_is_used()
    {
        var used = Nodes().Select(node => Referred(node.Schema)).OfType<string>().ToHashSet(StringComparer.Ordinal);

        Assert.Equal(Parsed.GetProperty("definitions").EnumerateObject().Select(definition => definition.Name).Order(StringComparer.Ordinal), used.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Every_pattern_refuses_a_long_text_at_once()
    {
        // RE2-style matching has no backtracking: what it accepts runs in linear time.
        Assert.NotEmpty(Loaded.Patterns);
        Assert.All(Loaded.Patterns, pattern =>
        {
            var regex = new Regex(pattern.Replace(@"\z", "$", StringComparison.Ordinal), RegexOptions.NonBacktracking | RegexOptions.ExplicitCapture, Patience.Longest);
            Assert.DoesNotMatch(regex, new string('1', 100_000) + "!");
            Assert.DoesNotMatch(regex, string.Concat(Enumerable.Repeat("a-", 50_000)));
        });
        // The engine that runs them backtracks, and must still be quick.
        Assert.All(Loaded.Patterns, pattern =>
        {
            var regex = new Regex(pattern, RegexOptions.ExplicitCapture, Patience.Longest);
            Assert.DoesNotMatch(regex, new string('1', 100_000) + "!");
            Assert.DoesNotMatch(regex, string.Concat(Enumerable.Repeat("a-", 50_000)));
            Assert.DoesNotMatch(regex, string.Concat(Enumerable.Repeat("a", 100_000)) + "_");
        });
    }

    private static string Spellings(string unit) => unit[^1] switch
    {
        '2' => $"{unit[..^1]}[2²]",
        '3' => $"{unit[..^1]}[3³]",
        _ => unit,
    };

    private static IEnumerable<string> Listed(JsonElement list) => list.GetProperty("enum").EnumerateArray().Select(word => word.GetString()!);

    // By the names of the members: the enumeration is called like the definition.
    private static IEnumerable<string> Words(string definition)
    {
        var type = typeof(Plan).Assembly.GetType($"Laygate.Model.Plans.{string.Concat(definition.Split('_').Select(part => $"{char.ToUpperInvariant(part[0])}{part[1..]}"))}")!;
        return Enum.GetNames(type).Select(name => string.Concat(name.Select((letter, at) => char.IsUpper(letter) && at > 0 ? $"-{letter}" : $"{letter}")).ToLowerInvariant());
    }

    private static IEnumerable<(string Path, JsonElement Schema, bool IsKey)> Nodes() =>
        Walk("#", Parsed, isKey: false).Concat(Parsed.GetProperty("definitions").EnumerateObject().SelectMany(definition => Walk(definition.Name, definition.Value, isKey: true)));

    private static IEnumerable<(string Path, JsonElement Schema, bool IsKey)> Walk(string path, JsonElement schema, bool isKey)
    {
        yield return (path, schema, isKey);
        if (schema.TryGetProperty("items", out var item))
        {
            foreach (var node in Walk($"{path}[]", item, isKey: false))
            {
                yield return node;
            }
        }

        if (!schema.TryGetProperty("properties", out var properties))
        {
            yield break;
        }

        foreach (var property in properties.EnumerateObject())
        {
            foreach (var node in Walk($"{path}.{property.Name}", property.Value, isKey: true))
            {
                yield return node;
            }
        }
    }
}
