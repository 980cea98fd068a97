using System.Text.Json;
using Laygate.Model.Plans;
using Laygate.Reporting.Language;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Json;

/// <summary>One finding as JSON.</summary>
internal static class JsonFinding
{
    public static void Write(Utf8JsonWriter json, Finding finding)
    {
        json.WriteStartObject();
        json.WriteString("rule", finding.Rule);
        json.WriteString("name", finding.RuleName);
        json.WriteString("status", finding.Status == Status.None ? null : Words.Of(finding.Status));
        json.WriteString("outcome", Words.Of(finding.Outcome));
        json.WriteString("address", finding.Address);
        json.WriteString("departure", finding.Departure?.Id);
        json.WriteBoolean("known", finding.Known);
        json.WriteString("title", finding.Title);
        json.WriteString("message", Wording.Message(finding));
        JsonParts.Value(json, "value", finding.Value);
        JsonLimit.Limit(json, "limit", finding.Limit);
        JsonLimit.Source(json, finding.Limit);
        JsonParts.Position(json, finding.Position);
        Judgement(json, finding);
        Advice(json, finding);
        JsonRemedies.Write(json, finding);
        JsonParts.Missing(json, finding.Missing);
        JsonParts.Notes(json, finding.Notes);
        JsonWorking.Write(json, finding.Working);
        json.WriteEndObject();
    }

    private static void Judgement(Utf8JsonWriter json, Finding finding)
    {
        json.WriteString("check", Words.Of(finding.Check));
        json.WriteString("quantity", finding.Quantity);
        json.WriteString("quantity_meaning", finding.QuantityMeaning);
        json.WriteString("origin", finding.Origin is { } origin ? Words.Of(origin) : null);
        json.WriteBoolean("on_expected_values_only", finding.OnExpectedValuesOnly);
        json.WriteBoolean("favourable_end_meets", finding.FavourableEndMeets);
        json.WriteString("severity", finding.Severity?.ToString());
        JsonLimit.WithSource(json, "other_limit", finding.OtherLimit);
    }

    private static void Advice(Utf8JsonWriter json, Finding finding)
    {
        json.WriteString("why", finding.Why);
        json.WriteString("remedy", finding.Remedy);
        json.WriteString("local", finding.Local);
    }
}
