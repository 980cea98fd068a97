using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using Laygate.Checking;
using Laygate.ConformanceTests.Schema;
using Laygate.Reading;
using Laygate.Rules.Results;

namespace Laygate.ConformanceTests.Plans;

/// <summary>
/// Every list of the plan schema is filled to its limit: the file is refused with a sentence and a place, or checked with work that grows no faster than the list.
/// Work is counted in bytes allocated by the thread of a quick check, which no clock and no other test moves.
/// </summary>
public sealed class FilledListTests
{
    private const int Largest = 1 << 20;
    private const long Slack = 8L << 20; // A first entry of a kind brings rules into force that were silent before.
    private const long MostWork = 600L << 20; // All work of a quick check together, most of it freed at once.
    private static readonly PlanTools Tools = new();
    private static readonly JsonNode Plan = PlanSchemaFile.ToJson(PlanSchemaFile.Read(File.ReadAllText(PlanSchemaFile.EveryKeyPath)).Root)!;

    public static TheoryData<string> Lists => [.. Sites(Plan.DeepClone()).Select(site => site.SchemaPath).Distinct(StringComparer.Ordinal).Usual(4)];

    [Theory]
    [MemberData(nameof(Lists))]
    public void Ten_times_the_entries_cost_at_most_eleven_times_the_work(string list)
    {
        var most = Sites(Plan).First(site => site.SchemaPath == list).Schema.GetProperty("maxItems").GetInt32();
        var (none, few, many) = (Work(Filled(list, 0)), Work(Filled(list, Math.Max(1, most / 10))), Work(Filled(list, most)));
        // Entries beyond the first: 199 to 19 for a list of 200.
        var entries = (most - 1) / Math.Max(1.0, (most / 10) - 1);
        Assert.True(many - none <= (1.1 * entries * Math.Max(0, few - none)) + Slack, $"{most} entries: {none}, {few}, {many} bytes");
        Assert.InRange(many, 1, MostWork);
    }

    [FactOfFullRun]
    public void All_lists_together_within_one_mebibyte()
    {
        var text = new[] { 1.0, 0.5, 0.2, 0.1, 0.05, 0.02 }.Select(share =>
        {
            var plan = Plan.DeepClone();
            foreach (var site in Sites(plan).Reverse().ToList())
            {
                Fill(site, (int)Math.Ceiling(share * site.Schema.GetProperty("maxItems").GetInt32()));
            }

            return plan.ToJsonString();
        }).First(written => Encoding.UTF8.GetByteCount(written) <= Largest);
        Assert.InRange(Work(text), 1, MostWork);
    }

    private static long Work(string text)
    {
        var bytes = Encoding.UTF8.GetBytes(text);
        var check = new PlanCheck(Repository.Bound(), new CheckSettings(null, Repository.CheckDate, Repository.Version) { Quick = true }, tools: Tools);
        var before = GC.GetAllocatedBytesForCurrentThread();
        var result = check.Run("plan.yaml", bytes);
        var work = GC.GetAllocatedBytesForCurrentThread() - before;
        Assert.True(result.Reports.Count == 1 || result.Problems.Count > 0);
        Assert.All(result.Problems, problem => Assert.True(problem is { Message.Length: > 0, Position: not null }));
        return work;
    }

    private static string Filled(string list, int most)
    {
        var plan = Plan.DeepClone();
        if (most > 0)
        {
            Fill(Sites(plan).First(site => site.SchemaPath == list), most);
        }

        return plan.ToJsonString();
    }

    private static IEnumerable<Site> Sites(JsonNode plan) => Site.Of(plan).Where(site => site.Value is JsonArray { Count: > 0 });

    private static void Fill(Site site, int most)
    {
        var list = (JsonArray)site.Value!;
        // Stations and hours stand in order: they are laid out anew, from the first on.
        if (list[0] is JsonObject station && station["at"] is not null)
        {
            while (list.Count > 1)
            {
                list.RemoveAt(list.Count - 1);
            }

            list[0] = Copy(station, 0);
        }

        var first = list[0]!;
        for (var i = list.Count; i < most; i++)
        {
            list.Add(Copy(first, i));
        }
    }

    private static JsonNode Copy(JsonNode entry, int number)
    {
        var copy = entry.DeepClone();
        if (copy is not JsonObject map)
        {
            return copy;
        }

        var n = number.ToString(CultureInfo.InvariantCulture);
        if (map["id"] is { } id && number > 0)
        {
            map["id"] = $"{id}-{n}";
        }

        if (map["depth"] is not null)
        {
            map["depth"] = $"{number * 20} mm";
        }

        if (map["after"] is not null && map["length"] is not null)
        {
            map["after"] = $"{number} min";
        }

        if (map["at"]?.ToString() is { } at)
        {
            map["at"] = at.Contains('T', StringComparison.Ordinal)
            ? DateTime.Parse(at[..16], CultureInfo.InvariantCulture).AddMinutes(10 * number).ToString("yyyy-MM-dd'T'HH:mm", CultureInfo.InvariantCulture)
            : string.Create(CultureInfo.InvariantCulture, $"{number * 0.4:0.###} m");
        }

        return map;
    }
}
