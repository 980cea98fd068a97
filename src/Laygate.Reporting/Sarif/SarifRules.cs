using System.Globalization;
using System.Text.Json;
using Laygate.Reporting.Language;
using Laygate.Reporting.Runs;

namespace Laygate.Reporting.Sarif;

/// <summary>The rules of a run, each once, by id; also those without a result.</summary>
internal sealed class SarifRules
{
    private readonly List<RuleInForce> rules;
    private readonly Dictionary<string, int> indices;
    private readonly string? pages;

    /// <summary>Lists rules.</summary>
    /// <param name="inForce">The rules that a result may name.</param>
    /// <param name="pages">Absolute address below which their pages stand; null where there is none.</param>
    public SarifRules(IEnumerable<RuleInForce> inForce, string? pages)
    {
        this.pages = pages;
        rules = [.. inForce.DistinctBy(rule => rule.Id, StringComparer.Ordinal).OrderBy(rule => rule.Id, StringComparer.Ordinal)];
        indices = rules.Select((rule, index) => (rule.Id, index)).ToDictionary(pair => pair.Id, pair => pair.index, StringComparer.Ordinal);
        indices.Add(ListedItem.DepartureRule, rules.Count);
    }

    /// <summary>Place of a rule in the list.</summary>
    public int IndexOf(string rule) => indices[rule];

    /// <summary>Writes them.</summary>
    /// <param name="json">Where to.</param>
    /// <param name="withDepartures">Whether a departure that does not hold is among the results.</param>
    public void Write(Utf8JsonWriter json, bool withDepartures)
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

    /// <summary>The rules of reports that came without their book: the finding of a rule that says most is one with a limit, which names its source.</summary>
    public static IEnumerable<RuleInForce> Applied(ReportedRun run) => run.Reports.SelectMany(report => report.Findings)
        .GroupBy(finding => finding.Rule, StringComparer.Ordinal)
        .Select(same => same.FirstOrDefault(finding => finding.Limit is not null) ?? same.First())
        .Select(rule => new RuleInForce(
            rule.Rule, rule.RuleName, rule.Title, rule.Why, rule.Remedy, rule.Local, rule.Limit is { } limit ? [$"{SourceWords.Publication(limit)} ({SourceWords.HowKnown(limit)})"] : []));

    private void Write(Utf8JsonWriter json, RuleInForce rule)
    {
        var (family, name) = rule.Name.Split('/') is [var first, var second] ? (first, second) : (string.Empty, rule.Name);
        var source = rule.Sources.Count > 0 ? $" Source: {string.Join("; ", rule.Sources)}." : string.Empty;
        var local = rule.Local.Length > 0 ? $" Whom to ask: {rule.Local}" : string.Empty;
        Rule(json, rule.Id, Pascal(name), rule.Title, rule.Why, $"{rule.Remedy}{local}{source} {string.Join(' ', Caution.Sentences.Take(3))}", family);
    }

    private void Rule(Utf8JsonWriter json, string id, string name, string title, string why, string help, string family)
    {
        json.WriteStartObject();
        json.WriteString("id", id);
        json.WriteString("name", name);
        SarifText.Description(json, "shortDescription", title);
        SarifText.Description(json, "fullDescription", why);
        SarifText.Message(json, "help", help);
        if (pages is not null && id is not ListedItem.DepartureRule)
        {
            json.WriteString("helpUri", $"{pages.TrimEnd('/')}/{Uri.EscapeDataString(id)}.md");
        }

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
