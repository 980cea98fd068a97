using System.Text.Json;
using Laygate.Model.Plans;
using Laygate.Rules.Merging;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Rules;

/// <summary>Rules as JSON.</summary>
public static class RuleJson
{
    /// <summary>Writes a list of rules.</summary>
    public static void Write(Stream output, RuleBook book, RuleFilter filter)
    {
        using (var json = new Utf8JsonWriter(output, Json.JsonOutput.Options))
        {
            json.WriteStartObject();
            json.WriteString("book_hash", book.Hash);
            json.WriteStartArray("rules");
            foreach (var merged in filter.Of(book))
            {
                Rule(json, book, merged, []);
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        output.WriteByte((byte)'\n');
    }

    /// <summary>Writes one rule with its cases.</summary>
    public static void Write(Stream output, RuleBook book, MergedRule merged, IReadOnlyList<CaseSummary> cases)
    {
        using (var json = new Utf8JsonWriter(output, Json.JsonOutput.Options))
        {
            Rule(json, book, merged, cases);
        }

        output.WriteByte((byte)'\n');
    }

    private static void Rule(Utf8JsonWriter json, RuleBook book, MergedRule merged, IReadOnlyList<CaseSummary> cases)
    {
        var rule = merged.Rule.Definition;
        json.WriteStartObject();
        json.WriteString("id", rule.Id);
        json.WriteString("family", rule.Family);
        json.WriteString("name", rule.Name);
        json.WriteString("title", rule.Title);
        json.WriteString("why", rule.Why);
        json.WriteString("remedy", rule.Remedy);
        json.WriteString("local", rule.Local);
        json.WriteString("on_site_watch", rule.OnSite?.Watch);
        json.WriteString("on_site_otherwise", rule.OnSite?.Otherwise);
        json.WriteString("applies_to", Words.Of(rule.AppliesTo));
        json.WriteString("looks_at", RuleWords.AppliesTo(merged.Rule));
        json.WriteString("check", Words.Of(rule.Check));
        json.WriteString("quantity", rule.Quantity);
        json.WriteString("from_stage", Words.Of(rule.FromStage));
        json.WriteString("severity", rule.Severity?.ToString());
        json.WriteString("life", Words.Of(rule.Life.State));
        json.WriteBoolean("in_force", merged.InForce);
        json.WriteString("added_by", merged.AddedBy);
        json.WriteString("taken_out_by", merged.TakenOutBy);
        Texts(json, "jurisdictions", merged.Rule.Jurisdictions);
        Texts(json, "not_in", merged.Rule.Definition.NotIn);
        Limits(json, RuleWords.Limits(merged.Rule, book.Sources));
        Cases(json, cases);
        json.WriteEndObject();
    }

    private static void Limits(Utf8JsonWriter json, IReadOnlyList<LimitLine> limits)
    {
        json.WriteStartArray("limits");
        foreach (var limit in limits)
        {
            json.WriteStartObject();
            json.WriteString("for", limit.For);
            json.WriteString("keys", limit.Keys);
            json.WriteString("limit", limit.Limit);
            json.WriteString("strength", limit.Strength);
            json.WriteString("source", limit.Source);
            json.WriteString("known", limit.Known);
            json.WriteString("set_by", limit.SetBy);
            json.WriteString("remark", limit.Remark);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Cases(Utf8JsonWriter json, IReadOnlyList<CaseSummary> cases)
    {
        json.WriteStartArray("cases");
        foreach (var one in cases)
        {
            json.WriteStartObject();
            json.WriteString("case", one.Case);
            json.WriteString("outcome", one.Outcome);
            json.WriteString("status", one.Status);
            Texts(json, "with", one.With);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Texts(Utf8JsonWriter json, string name, IReadOnlyList<string> texts)
    {
        json.WriteStartArray(name);
        foreach (var text in texts)
        {
            json.WriteStringValue(text);
        }

        json.WriteEndArray();
    }
}
