using System.Text.Json;
using System.Text.Json.Nodes;
using Laygate.Reading.Schema;
using static Laygate.ConformanceTests.Schema.PlanSchemaFile;

namespace Laygate.ConformanceTests.Schema;

/// <summary>
/// NJsonSchema, as it is filled by the schema loader, against JsonSchema.Net 8.0.5, an independent validator that follows the standard.
/// Known and wanted differences are not met by the changed plans: a whole number written as 1.0, a line feed behind a value, and <c>1</c> beside <c>"1"</c> in a list without repetition.
/// </summary>
public class SchemaVerdictTests
{
    private const int Count = 200;
    private const int Seed = 20261125;
    private const int LeastValid = 60;

    private static readonly Lazy<IReadOnlyList<Mutant>> Mutants = new(() => PlanMutants.Make([.. PlanPaths.Where(IsSound).Select(File.ReadAllText)], Count, Seed));

    public static TheoryData<string> Plans => [.. PlanPaths.Select(path => Path.GetRelativePath(Root, path))];

    [Theory]
    [MemberData(nameof(Plans))]
    public void Both_validators_accept_a_plan(string path)
    {
        var document = Read(File.ReadAllText(Path.Combine(Root, path)));

        Assert.True(SecondVerdict(document));
        Assert.True(FirstVerdict(document));
    }

    [Fact]
    public void Both_validators_agree_on_every_changed_plan()
    {
        Assert.All(Mutants.Value, mutant =>
        {
            var document = Read(mutant.Text);
            Assert.Equal((mutant.IsValid, mutant.IsValid), (FirstVerdict(document), SecondVerdict(document)));
            Assert.Equal(mutant.IsValid, SchemaChecker.Check(document, Loaded).Count == 0);
        });
        Assert.Equal(Count, Mutants.Value.Select(mutant => mutant.Text).Distinct(StringComparer.Ordinal).Count());
        Assert.InRange(Mutants.Value.Count(mutant => mutant.IsValid), LeastValid, Count - LeastValid);
    }

    // The second validator lets `$` match before a last line feed, as .NET does; the standard (ECMA 262) and this schema do not.
    [Fact]
    public void A_line_feed_behind_a_value_is_refused_although_the_second_validator_lets_it_pass()
    {
        var document = Read("""{ "format": 1, "plan": { "id": "p\n", "stage": "concept" }, "courses": [{ "id": "c", "mix": "m", "thickness": "45 mm" }] }""");

        Assert.False(FirstVerdict(document));
        Assert.True(SecondVerdict(document));
    }

    [Fact]
    public void Each_required_key_has_a_plan_that_lacks_exactly_it() =>
        Breaks(site => site.IsRequired, site => site.Parent.AsObject().Remove(site.Key!), "required", Required());

    [Fact]
    public void Each_list_of_words_has_a_plan_that_breaks_exactly_it() =>
        Breaks(site => site.Schema.TryGetProperty("enum", out _), site => site.Value = "no-such-word", "enum", With("enum"));

    [Fact]
    public void Each_pattern_has_a_plan_that_breaks_exactly_it() =>
        Breaks(site => site.Schema.TryGetProperty("pattern", out _), site => site.Value = "-", "pattern", With("pattern"));

    [Fact]
    public void Each_least_length_of_a_list_has_a_plan_that_breaks_exactly_it() =>
        Breaks(site => site.Schema.TryGetProperty("minItems", out _), site => site.Value!.AsArray().Clear(), "minItems", With("minItems"));

    private static void Breaks(Func<Site, bool> choose, Action<Site> change, string keyword, IReadOnlySet<string> all)
    {
        var text = File.ReadAllText(EveryKeyPath);
        var broken = new HashSet<string>(StringComparer.Ordinal);
        var chosen = Site.Of(ToJson(Read(text).Root)!).Index()
            .Where(place => choose(place.Item) && broken.Add(place.Item.SchemaPath + (keyword is "required" ? $" {place.Item.Key}" : string.Empty)))
            .Select(place => place.Index).ToList();
        foreach (var index in chosen)
        {
            var plan = ToJson(Read(text).Root)!;
            var site = Site.Of(plan).ElementAt(index);
            change(site);
            var document = Read(plan.ToJsonString());
            Assert.False(FirstVerdict(document), site.SchemaPath);
            Assert.Single(SchemaChecker.Check(document, Loaded));
            Assert.Equal(keyword, Assert.Single(Errors(document)));
        }

        Assert.Equal(all.Order(StringComparer.Ordinal), broken.Order(StringComparer.Ordinal));
    }

    // The keywords that the second validator reports as broken; what merely holds them is left out.
    private static List<string> Errors(Laygate.Reading.Yaml.YamlDocument document) =>
        [.. (Evaluate(document, Json.Schema.OutputFormat.List).Details ?? []).SelectMany(detail => detail.Errors?.Keys ?? Enumerable.Empty<string>()).Where(key => key is not ("" or "allOf" or "properties" or "items"))];

    private static bool IsSound(string path) => SecondVerdict(Read(File.ReadAllText(path)));

    private static HashSet<string> With(string keyword) => Places().Where(place => place.Schema.TryGetProperty(keyword, out _)).Select(place => place.Path).ToHashSet(StringComparer.Ordinal);

    private static HashSet<string> Required() => Places()
        .Where(place => place.Schema.TryGetProperty("required", out _))
        .SelectMany(place => place.Schema.GetProperty("required").EnumerateArray().Select(key =>
        {
            var own = place.Schema.GetProperty("properties").GetProperty(key.GetString()!);
            return $"{(Definition(own) is { } name ? $"#/{name}" : $"{place.Path}/{key.GetString()}")} {key.GetString()}";
        })).ToHashSet(StringComparer.Ordinal);

    private static IEnumerable<(string Path, JsonElement Schema)> Places() =>
        Walk("#", Parsed).Concat(Parsed.GetProperty("definitions").EnumerateObject().SelectMany(definition => Walk($"#/{definition.Name}", definition.Value)));

    private static IEnumerable<(string Path, JsonElement Schema)> Walk(string path, JsonElement schema)
    {
        yield return (path, schema);
        if (schema.TryGetProperty("items", out var item))
        {
            foreach (var place in Walk($"{path}/items", item))
            {
                yield return place;
            }
        }

        if (!schema.TryGetProperty("properties", out var properties))
        {
            yield break;
        }

        foreach (var property in properties.EnumerateObject())
        {
            foreach (var place in Walk($"{path}/{property.Name}", property.Value))
            {
                yield return place;
            }
        }
    }
}
