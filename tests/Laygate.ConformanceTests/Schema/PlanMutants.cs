using System.Text.Json;
using System.Text.Json.Nodes;
using Laygate.Model.Measures;
using static Laygate.ConformanceTests.Schema.PlanSchemaFile;

namespace Laygate.ConformanceTests.Schema;

/// <summary>A changed plan.</summary>
/// <param name="Name">What was changed, and where.</param>
/// <param name="Text">The plan as JSON, which is YAML.</param>
/// <param name="IsValid">Whether it should still fit the schema.</param>
internal sealed record Mutant(string Name, string Text, bool IsValid);

/// <summary>One place of a plan with the schema that holds there.</summary>
/// <param name="Parent">The group or list that holds the value.</param>
/// <param name="Key">The key; null in a list.</param>
/// <param name="Index">The index in a list.</param>
/// <param name="Schema">The schema with its definition in place.</param>
/// <param name="Definition">The definition that it refers to.</param>
/// <param name="IsRequired">Whether the key must be there.</param>
/// <param name="SchemaPath">Where the schema stands, with its definitions' names.</param>
internal sealed record Site(JsonNode Parent, string? Key, int Index, JsonElement Schema, string? Definition, bool IsRequired, string SchemaPath)
{
    public JsonNode? Value
    {
        get => Key is null ? Parent[Index] : Parent[Key];
        set
        {
            if (Key is null)
            {
                Parent[Index] = value;
            }
            else
            {
                Parent[Key] = value;
            }
        }
    }

    /// <summary>All places of a plan.</summary>
    public static IEnumerable<Site> Of(JsonNode plan) => Inside(plan, Parsed, "#");

    private static IEnumerable<Site> Inside(JsonNode? node, JsonElement schema, string path)
    {
        if (node is JsonArray list)
        {
            var item = schema.GetProperty("items");
            foreach (var site in list.SelectMany((_, index) => One(list, null, index, item, false, $"{path}/items")))
            {
                yield return site;
            }
        }

        if (node is not JsonObject map)
        {
            yield break;
        }

        var required = schema.TryGetProperty("required", out var names) ? names.EnumerateArray().Select(name => name.GetString()).ToList() : [];
        foreach (var key in map.Select(entry => entry.Key).ToList())
        {
            foreach (var site in One(map, key, 0, schema.GetProperty("properties").GetProperty(key), required.Contains(key), $"{path}/{key}"))
            {
                yield return site;
            }
        }
    }

    private static IEnumerable<Site> One(JsonNode parent, string? key, int index, JsonElement schema, bool isRequired, string path)
    {
        var site = new Site(parent, key, index, Resolve(schema), PlanSchemaFile.Definition(schema), isRequired, PlanSchemaFile.Definition(schema) is { } name ? $"#/{name}" : path);
        yield return site;
        foreach (var inner in Inside(site.Value, site.Schema, site.SchemaPath))
        {
            yield return inner;
        }
    }
}

/// <summary>Makes changed plans.</summary>
internal static class PlanMutants
{
    private static readonly (string Name, Func<Site, Random, bool?> Change)[] Mutators =
    [
        ("drop key", (site, _) => site.Key is null ? null : Drop(site) && !site.IsRequired),
        ("rename key", (site, _) => site.Key is null ? null : Rename(site)),
        ("wrong type", (site, random) => WrongType(site, random)),
        ("out-of-enum word", (site, random) => site.Schema.TryGetProperty("enum", out _) ? Set(site, "no-such-word") : null),
        ("broken pattern", (site, random) => BreakPattern(site, random)),
        ("empty list", (site, _) => site.Value is JsonArray list ? Empty(list) : null),
        ("reorder", (site, random) => site.Value is JsonObject map ? Shuffle(map, random) : null),
        ("other unit", (site, random) => OtherUnit(site, random)),
        ("other word", (site, random) => OtherWord(site, random)),
        ("drop optional", (site, _) => site.Key is null || site.IsRequired ? null : Drop(site)),
    ];

    /// <summary>Mutants in turn of every kind, from a fixed seed.</summary>
    public static IReadOnlyList<Mutant> Make(IReadOnlyList<string> plans, int count, int seed)
    {
        var random = new Random(seed);
        var mutants = new List<Mutant>();
        var originals = plans.Select(plan => ToJson(Read(plan).Root)!).ToList();
        var seen = originals.Select(plan => plan.ToJsonString()).ToHashSet(StringComparer.Ordinal);
        while (mutants.Count < count)
        {
            var (name, change) = Mutators[mutants.Count % Mutators.Length];
            var plan = originals[random.Next(originals.Count)].DeepClone();
            var sites = Site.Of(plan).ToArray();
            var site = sites[random.Next(sites.Length)];
            if (change(site, random) is { } isValid && seen.Add(plan.ToJsonString()))
            {
                mutants.Add(new Mutant($"{name} at {site.SchemaPath}", plan.ToJsonString(), isValid));
            }
        }

        return mutants;
    }

    private static bool Drop(Site site) => site.Parent.AsObject().Remove(site.Key!);

    private static bool Rename(Site site)
    {
        var map = site.Parent.AsObject();
        var value = site.Value;
        map.Remove(site.Key!);
        map[$"{site.Key}_x"] = value;
        return false;
    }

    private static bool? WrongType(Site site, Random random)
    {
        if (site.Value is JsonObject or JsonArray)
        {
            return Set(site, JsonValue.Create("words"));
        }

        return Set(site, random.Next(2) == 0 ? new JsonObject { ["a"] = "b" } : new JsonArray("a"));
    }

    private static bool? BreakPattern(Site site, Random random)
    {
        if (!site.Schema.TryGetProperty("pattern", out _))
        {
            return null;
        }

        var text = site.Value!.ToString();
        string[] broken = [$" {text}", $"{text} x", text.ToUpperInvariant() + "_", "\u0661 mm", "-"];
        return Set(site, broken[random.Next(broken.Length)]);
    }

    private static bool Empty(JsonArray list)
    {
        list.Clear();
        return false;
    }

    private static bool Shuffle(JsonObject map, Random random)
    {
        var entries = map.ToArray();
        map.Clear();
        random.Shuffle(entries);
        foreach (var (key, value) in entries)
        {
            map[key] = value;
        }

        return true;
    }

    private static bool? OtherUnit(Site site, Random random)
    {
        if (site.Value is not JsonValue value || !site.Schema.TryGetProperty("pattern", out _))
        {
            return null;
        }

        var parts = value.ToString().Split(' ', 2);
        if (parts.Length < 2 || UnitTable.Find(parts[1]) is not { } unit)
        {
            return null;
        }

        var units = UnitTable.Of(unit.Dimension).Select(other => other.Spelling).ToArray();
        var spelling = units[random.Next(units.Length)];
        if (random.Next(2) == 0 && spelling.Length > 1)
        {
            spelling = spelling[..^1] + (spelling[^1] switch { '2' => '²', '3' => '³', var letter => letter });
        }

        Set(site, $"{parts[0]} {spelling}");
        return true;
    }

    private static bool? OtherWord(Site site, Random random)
    {
        if (!site.Schema.TryGetProperty("enum", out var words))
        {
            return null;
        }

        Set(site, JsonValue.Create(words[random.Next(words.GetArrayLength())].GetString()!));
        return true;
    }

    private static bool Set(Site site, JsonNode value)
    {
        site.Value = value;
        return false;
    }
}
