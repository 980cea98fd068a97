using System.Globalization;
using System.Text.Json.Nodes;
using Laygate.ConformanceTests;
using Laygate.ConformanceTests.Schema;
using Laygate.Model.Measures;
using Laygate.Rules.Results;

namespace Laygate.FuzzTests.Metamorphic;

/// <summary>
/// Random plans that can be read: an example, a base of rule cases, a plan with planted faults or the plan with every key, with several of its numbers, words and
/// entries changed at random. What the checks of plans refuse is drawn again.
/// </summary>
internal static class RandomPlan
{
    private static readonly IReadOnlyList<JsonNode> Bases =
    [
        .. PlanSchemaFile.PlanPaths
            .Concat(new[] { "rules/bases/single.yaml", "rules/bases/pair.yaml", "tests/Laygate.ConformanceTests/Faults/plans/county-route-us.yaml", "tests/Laygate.ConformanceTests/Faults/plans/quay-road-hot-on-hot.yaml" }
                .Select(path => Path.Combine(Repository.Root, path)))
            .Select(path => PlanSchemaFile.ToJson(PlanSchemaFile.Read(File.ReadAllText(path)).Root)!),
    ];

    /// <summary>The plan of a number, and what is found in it.</summary>
    public static (JsonNode Plan, FileResult Result) Next(int number)
    {
        var random = new Random(number);
        while (true)
        {
            var plan = Bases[number % Bases.Count].DeepClone();
            for (var changes = random.Next(2, 14); changes > 0; changes--)
            {
                var sites = Site.Of(plan).ToArray();
                Change(sites[random.Next(sites.Length)], random);
            }

            if (Judgement.Of(plan, number) is { Problems.Count: 0 } result)
            {
                return (plan, result);
            }
        }
    }

    private static void Change(Site site, Random random)
    {
        if (site.Value is JsonArray { Count: > 1 } list)
        {
            list.RemoveAt(random.Next(list.Count));
        }
        else if (Measured.Of(site) is { } measured)
        {
            measured.Put(site, measured.Unit.Dimension == Dimension.Temperature ? measured.Number + random.Next(-8, 9) : Math.Round(measured.Number * (decimal)(0.7 + (0.7 * random.NextDouble())), 3));
        }
        else if (site.Schema.TryGetProperty("enum", out var words) && random.Next(2) == 0)
        {
            site.Value = JsonValue.Create(words[random.Next(words.GetArrayLength())].GetString()!);
        }
        else if (site.Definition == "count" && site.Value is JsonValue count)
        {
            site.Value = Math.Max(1, count.GetValue<decimal>() + random.Next(-2, 3));
        }
        else if (site.Key is not null && !site.IsRequired && random.Next(3) == 0)
        {
            site.Parent.AsObject().Remove(site.Key);
        }
    }
}

/// <summary>A number with its unit at a place of a plan.</summary>
/// <param name="Number">The number.</param>
/// <param name="Unit">The unit.</param>
internal sealed record Measured(decimal Number, Unit Unit)
{
    private const decimal Longest = 9_999_999_999m; // A number has at most ten digits before the point and six behind it.

    /// <summary>What stands at a place; null when it is no number with a unit.</summary>
    public static Measured? Of(Site site)
    {
        if (site.Value is not JsonValue value || !site.Schema.TryGetProperty("pattern", out _))
        {
            return null;
        }

        var parts = value.ToString().Split(' ', 2);
        return parts.Length == 2 && UnitTable.Find(parts[1]) is { } unit && decimal.TryParse(parts[0], NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number)
            ? new Measured(number, unit)
            : null;
    }

    /// <summary>The same in another unit; null where the digits that a plan may have do not hold it exactly, or to a millionth.</summary>
    public Measured? In(Unit other, bool exactly)
    {
        var exact = other.FromSi(Unit.ToSi((double)Number));
        if (Math.Abs(exact) > (double)Longest)
        {
            return null;
        }

        var written = Math.Round((decimal)exact, 6);
        var back = other.ToSi((double)written);
        var si = Unit.ToSi((double)Number);
        return Math.Abs(back - si) <= (exactly ? 1e-14 : 1e-6) * Math.Abs(si) ? new Measured(written, other) : null;
    }

    /// <summary>Writes a number at a place, in this unit.</summary>
    public void Put(Site site, decimal number) => site.Value = JsonValue.Create($"{number.ToString("0.######", CultureInfo.InvariantCulture)} {Unit.Spelling}");
}
