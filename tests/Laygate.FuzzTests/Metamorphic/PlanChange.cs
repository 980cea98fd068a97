using System.Globalization;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Laygate.ConformanceTests.Schema;
using Laygate.Model.Measures;

namespace Laygate.FuzzTests.Metamorphic;

/// <summary>Changes of a plan whose effect on its findings is known beforehand.</summary>
internal static partial class PlanChange
{
    private const string Mark = "zq7-";

    /// <summary>Every number in another unit; numbers that are alike stay alike.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="salt">Chooses the units.</param>
    /// <param name="exactly">Only where six digits behind the point hold the same number in the other unit exactly.</param>
    public static JsonNode OtherUnits(JsonNode plan, int salt, bool exactly) => Changed(plan, site =>
    {
        if (Measured.Of(site) is not { } measured)
        {
            return;
        }

        var others = UnitTable.Of(measured.Unit.Dimension).Select(unit => measured.In(unit, exactly)).OfType<Measured>().ToArray();
        var other = others.Length > 0 ? others[new Random(HashOf(site.Value!.ToString()) + salt).Next(others.Length)] : measured;
        other.Put(site, other.Number);
    });

    /// <summary>Keys, and lists whose order means nothing, in another order.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="random">Draws the order.</param>
    /// <param name="isOrdered">Whether the order of a list means something, by its place in the schema.</param>
    public static JsonNode OtherOrder(JsonNode plan, Random random, Func<string, bool> isOrdered)
    {
        var copy = plan.DeepClone();
        foreach (var site in Site.Of(copy).Reverse().ToList())
        {
            if (site.Value is JsonArray list && !isOrdered(site.SchemaPath))
            {
                var items = list.ToArray();
                list.Clear();
                random.Shuffle(items);
                foreach (var item in items)
                {
                    list.Add(item);
                }
            }
            else if (site.Value is JsonObject map)
            {
                Shuffle(map, random);
            }
        }

        Shuffle(copy.AsObject(), random);
        return copy;
    }

    /// <summary>Every id another, wherever it stands.</summary>
    public static JsonNode OtherIds(JsonNode plan) => Changed(plan, site =>
    {
        if (site.Definition == "id" && site.Value is { } id)
        {
            site.Value = JsonValue.Create(Renamed(id.ToString()));
        }
    });

    /// <summary>A text in which the ids of <see cref="OtherIds"/> are those of before.</summary>
    public static string WithOldIds(string text) => Renaming().Replace(text, string.Empty);

    /// <summary>Air, base and dew point colder by as many kelvin, and more wind.</summary>
    public static JsonNode WorseWeather(JsonNode plan, decimal kelvin, decimal windier) => Changed(plan, site =>
    {
        if (!IsWeather(site) || Measured.Of(site) is not { } measured)
        {
            return;
        }

        if (measured.Unit.Dimension == Dimension.Temperature)
        {
            measured.Put(site, measured.Number - (measured.Unit.Spelling.Contains('F', StringComparison.Ordinal) ? kelvin * 9 / 5 : kelvin));
        }
        else if (measured.Unit.Dimension == Dimension.Speed)
        {
            measured.Put(site, Math.Round(measured.Number * windier, 3));
        }
    });

    /// <summary>One truck less in each group that has more than one.</summary>
    public static JsonNode FewerTrucks(JsonNode plan)
    {
        var copy = plan.DeepClone();
        foreach (var group in (copy["supply"]?["trucks"] as JsonArray ?? []).OfType<JsonObject>())
        {
            if (group["count"] is JsonValue count && count.GetValue<decimal>() > 1)
            {
                group["count"] = count.GetValue<decimal>() - 1;
            }
        }

        return copy;
    }

    private static int HashOf(string text) => text.Aggregate(17, (hash, letter) => unchecked((hash * 31) + letter));

    private static bool IsWeather(Site site) => site.SchemaPath.StartsWith("#/weather", StringComparison.Ordinal) || site.Parent.GetPath().StartsWith("$.weather", StringComparison.Ordinal);

    private static JsonNode Changed(JsonNode plan, Action<Site> change)
    {
        var copy = plan.DeepClone();
        foreach (var site in Site.Of(copy).ToList())
        {
            change(site);
        }

        return copy;
    }

    private static void Shuffle(JsonObject map, Random random)
    {
        var entries = map.ToArray();
        map.Clear();
        random.Shuffle(entries);
        foreach (var (key, value) in entries)
        {
            map[key] = value;
        }
    }

    // The first letter turns the order of names round.
    private static string Renamed(string id) => string.Create(CultureInfo.InvariantCulture, $"{(char)('z' - (id.Sum(letter => letter) % 26))}{Mark}{id}");

    [GeneratedRegex("[a-z]" + Mark, RegexOptions.NonBacktracking)]
    private static partial Regex Renaming();
}
