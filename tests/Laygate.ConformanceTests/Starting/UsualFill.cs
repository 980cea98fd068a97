using System.Text;
using System.Text.RegularExpressions;
using Laygate.Reading.Plans;
using Laygate.Reading.Yaml;

namespace Laygate.ConformanceTests.Starting;

/// <summary>Fills the blanks of a plan as a person would: with an invented value where the table has one, else with what the remark beside it offers.</summary>
internal static class UsualFill
{
    // Invented, and such that they can be true together.
    private static readonly Dictionary<string, string> Values = new(StringComparer.Ordinal)
    {
        ["location.jurisdiction"] = "none",
        ["site.closure.from"] = "2027-06-08T06:00",
        ["site.closure.to"] = "2027-06-09T20:00",
        ["shift.date"] = "2027-06-08",
        ["shift.start"] = "\"09:00\"",
        ["shift.end"] = "\"13:00\"",
        ["shift.zone"] = "\"+02:00\"",
        ["plan.approved.date"] = "2027-06-01",
        ["weather.last_look"] = "2027-06-08T06:00",
        ["weather.hours.at"] = "2027-06-08T09:00",
        ["weather.hours.base"] = "18 °C",
        ["existing.milling.depth"] = "45 mm",
        ["courses.thickness"] = "45 mm",
        ["courses.thickness_lowest"] = "40 mm",
        ["courses.tolerance"] = "5 mm",
        ["mixes.aggregate_size.sieve"] = "11 mm",
        ["mixes.loading.place"] = "in-load",
        ["mixes.delivery.place"] = "in-load",
        ["mixes.refuse_below.place"] = "in-load",
        ["mixes.refuse_below.value"] = "140 °C",
        ["runs.to"] = "900 m",
        ["runs.width"] = "3.6 m",
        ["runs.left_edge"] = "free",
        ["runs.right_edge"] = "existing-cold",
        ["pavers.screeds.width_lowest"] = "2.5 m",
        ["pavers.screeds.width_highest"] = "5 m",
        ["tests.done"] = "2027-05-20",
        ["tests.cores.taken"] = "2027-06-10T08:00",
        ["opening.below.value"] = "40 °C",
        ["bond_coats.applied"] = "yes",
        ["bond_coats.sprayed"] = "2027-06-08T07:00",
    };

    /// <summary>The plan with its blanks filled in.</summary>
    /// <param name="text">The plan as it was begun.</param>
    /// <param name="conditions">What every condition of the site is.</param>
    /// <param name="others">Values that go before those of the table.</param>
    public static string Of(string text, string conditions = "no", IReadOnlyDictionary<string, string>? others = null)
    {
        var lines = text.Split('\n');
        foreach (var (path, line) in Blanks(YamlReader.Read(Encoding.UTF8.GetBytes(text)).Documents[0].Root, string.Empty))
        {
            var value = others?.GetValueOrDefault(path) ?? (path.StartsWith("site.conditions.", StringComparison.Ordinal) ? conditions : Values.GetValueOrDefault(path)) ?? Offered(lines[line - 1]);
            var start = lines[line - 1].IndexOf("TO FILL IN", StringComparison.Ordinal);
            lines[line - 1] = lines[line - 1][..start] + value;
        }

        return string.Join('\n', lines);
    }

    private static string Offered(string line)
    {
        var remark = line[(line.IndexOf("# ", StringComparison.Ordinal) + 2)..].Split("; only where")[0].Split("; where ")[0];
        var such = Regex.Match(remark, "Such as (?<example>.+)$", RegexOptions.ExplicitCapture, Patience.Longest);
        return such.Success ? (such.Groups["example"].Value.Contains(':', StringComparison.Ordinal) && !such.Groups["example"].Value.StartsWith('"') ? $"\"{such.Groups["example"].Value}\"" : such.Groups["example"].Value)
            : remark.StartsWith("yes or no", StringComparison.Ordinal) ? "no" : Regex.Match(remark, "^[a-z0-9-]+", RegexOptions.None, Patience.Longest).Value;
    }

    private static IEnumerable<(string Path, int Line)> Blanks(YamlToken token, string path) => token switch
    {
        ScalarToken scalar when Laygate.Reading.Plans.Blanks.IsBlank(scalar.Text) => [(path, scalar.Span.Line)],
        MapToken map => map.Entries.SelectMany(entry => Blanks(entry.Value, path.Length == 0 ? entry.Key.Text : $"{path}.{entry.Key.Text}")),
        ListToken list => list.Items.SelectMany(item => Blanks(item, path)),
        _ => [],
    };
}
