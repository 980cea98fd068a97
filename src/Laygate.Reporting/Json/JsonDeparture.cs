using System.Text.Json;
using Laygate.Model.Plans;
using Laygate.Reporting.Language;
using Laygate.Rules.Definitions;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Json;

/// <summary>Departures as JSON.</summary>
internal static class JsonDeparture
{
    /// <summary>The departures of a report, each with what became of it.</summary>
    public static void List(Utf8JsonWriter json, IReadOnlyList<DepartureUse> uses)
    {
        json.WriteStartArray("departures");
        foreach (var use in uses)
        {
            json.WriteStartObject();
            Fields(json, use.Departure);
            json.WriteString("state", Words.Of(use.State));
            json.WriteString("message", DepartureWords.Of(use));
            json.WriteString("status", use.Status is { } status ? Words.Of(status) : null);
            json.WriteString("outcome", use.Outcome is { } outcome ? Words.Of(outcome) : null);
            JsonParts.Value(json, "value", use.Value);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Fields(Utf8JsonWriter json, Departure departure)
    {
        json.WriteString("id", departure.Id);
        json.WriteString("rule", departure.Rule);
        json.WriteString("address", departure.Address);
        json.WriteString("plan", departure.Plan);
        json.WriteString("reason", departure.Reason);
        json.WriteString("compensating_measure", departure.CompensatingMeasure);
        json.WriteString("asked_by", departure.AskedBy);
        json.WriteString("approved_by", departure.ApprovedBy);
        JsonParts.Day(json, "approved_on", departure.ApprovedOn);
        JsonParts.Day(json, "expires_on", departure.ExpiresOn);
        json.WriteString("accepted", departure.Accepted?.Text);
        json.WriteString("reference", departure.Reference);
        json.WriteString("file", departure.File);
    }
}
