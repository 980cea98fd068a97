using System.Globalization;
using System.Text.Json;
using Laygate.Reporting.Language;
using Laygate.Reporting.Runs;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Sarif;

/// <summary>The rules that were applied in a run, each once, by id; also those without a result.</summary>
internal sealed class SarifRules
{
    private readonly List<Finding> rules;
    private readonly Dictionary<string, int> indices;
    private readonly bool withDepartures;

    private SarifRules(ReportedRun run)
    {
        // The finding of a rule that says most: one with a limit names its source.
        rules = [.. run.Reports.SelectMany(report => report.Findings)
            .GroupBy(finding => finding.Rule, StringComparer.Ordinal)
            .Select(same => same.FirstOrDefault(finding => finding.Limit is not null) ?? same.First())
            .OrderBy(finding => finding.Rule, StringComparer.Ordinal)];
        indices = rules.Select((rule, index) => (rule.Rule, index)).ToDictionary(pair => pair.Rule, pair => pair.index, StringComparer.Ordinal);
        withDepartures = run.Reports.Any(report => report.Departures.Any(use => use.State != DepartureState.Holds));
        if (withDepartures)
        {
            indices.Add(ListedItem.DepartureRule, rules.Count);
        }
    }

    public static SarifRules Of(ReportedRun run) => new(run);

    /// <summary>Place of a rule in the list.</summary>
    public int IndexOf(string rule) => indices[rule];

    public void Write(Utf8JsonWriter json)
    {
        foreach (var rule in rules)
        {
            Write(json, rule);
        }

        if (withDepartures)
        {
            Rule(json, ListedItem.DepartureRule, "DepartureNotHeld", "A departure does not hold.", "Somebody relies on a permission that has ended, is exceeded or is not used.", "Have it renewed or extended, change the plan, or remove it.", "departures");
        }
    }

    private static void Write(Utf8JsonWriter json, Finding rule)
    {
        var (family, name) = rule.RuleName.Split('/') is [var first, var second] ? (first, second) : (string.Empty, rule.RuleName);
        var source = rule.Limit is { } limit ? $" Source: {SourceWords.Line(limit)}" : string.Empty;
        var local = rule.Local.Length > 0 ? $" Whom to ask: {rule.Local}" : string.Empty;
        Rule(json, rule.Rule, Pascal(name), rule.Title, rule.Why, $"{rule.Remedy}{local}{source} {string.Join(' ', Caution.Sentences.Take(2))}", family);
    }

    private static void Rule(Utf8JsonWriter json, string id, string name, string title, string why, string help, string family)
    {
        json.WriteStartObject();
        json.WriteString("id", id);
        json.WriteString("name", name);
        SarifText.Description(json, "shortDescription", title);
        SarifText.Description(json, "fullDescription", why);
        SarifText.Message(json, "help", help);
        json.WriteStartObject("defaultConfiguration");
        json.WriteString("level", "warning");
        json.WriteEndObject();
        json.WriteStartObject("properties");
        json.WriteStartArray("tags");
        json.WriteStringValue(family);
        json.WriteEndArray();
        json.WriteString("problem.severity", "warning");
        json.WriteEndObject();
        json.WriteEndObject();
    }

    private static string Pascal(string name) =>
        string.Concat(name.Split('-', StringSplitOptions.RemoveEmptyEntries).Where(word => word.Length > 1).Select(word => char.ToUpper(word[0], CultureInfo.InvariantCulture) + word[1..]));
}
