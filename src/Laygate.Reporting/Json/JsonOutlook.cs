using System.Globalization;
using System.Text.Json;
using Laygate.Model.Plans;
using Laygate.Reporting.Language;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Json;

/// <summary>Laying hour by hour, or workable weather, as JSON; null when it was not asked for.</summary>
internal static class JsonOutlook
{
    public static void Write(Utf8JsonWriter json, LayingOutlook? outlook)
    {
        if (outlook is null)
        {
            json.WriteNull("outlook");
            return;
        }

        json.WriteStartObject("outlook");
        json.WriteStartArray("rules");
        foreach (var rule in outlook.Rules)
        {
            json.WriteStringValue(rule);
        }

        json.WriteEndArray();
        List(json, "not_judged", outlook.NotJudged, Unjudged);
        List(json, "in_every_hour", outlook.InEveryHour, Margin);
        List(json, "hours", outlook.Hours, Hour);
        List(json, "leads", outlook.Leads, Lead);
        Weather(json, outlook.Weather);
        json.WriteEndObject();
    }

    private static void List<T>(Utf8JsonWriter json, string name, IReadOnlyList<T> items, Action<Utf8JsonWriter, T> write)
    {
        json.WriteStartArray(name);
        foreach (var item in items)
        {
            json.WriteStartObject();
            write(json, item);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Hour(Utf8JsonWriter json, HourOutlook hour)
    {
        json.WriteString("at", Moment(hour.At));
        json.WriteString("verdict", OutlookWords.Of(hour.Verdict));
        json.WriteString("call_by", hour.CallBy is { } by ? Moment(by) : null);
        List(json, "broken", hour.Broken, Broken);
        List(json, "limits", hour.Limits, Margin);
        if (hour.Nearest is not { } nearest)
        {
            json.WriteNull("nearest");
            return;
        }

        json.WriteStartObject("nearest");
        Broken(json, nearest);
        json.WriteEndObject();
    }

    private static void Unjudged(Utf8JsonWriter json, UnjudgedRule rule)
    {
        json.WriteString("rule", rule.Finding.Rule);
        json.WriteString("address", rule.Finding.Address);
        json.WriteString("title", rule.Finding.Title);
        json.WriteString("outcome", Words.Of(rule.Outcome));
        json.WriteString("status", rule.Status == Status.None ? null : Words.Of(rule.Status));
        JsonParts.Missing(json, rule.Missing);
        JsonParts.Notes(json, rule.Notes);
    }

    private static void Margin(Utf8JsonWriter json, LimitMargin margin)
    {
        Broken(json, margin.Limit);
        JsonParts.Value(json, "margin", margin.Margin);
    }

    private static void Broken(Utf8JsonWriter json, BrokenLimit broken)
    {
        json.WriteString("rule", broken.Finding.Rule);
        json.WriteString("address", broken.Finding.Address);
        json.WriteString("title", broken.Finding.Title);
        json.WriteString("status", Words.Of(broken.Status));
        JsonParts.Value(json, "value", broken.Value);
        JsonLimit.WithSource(json, "limit", broken.Limit);
        json.WriteBoolean("on_expected_values_only", broken.OnExpectedValuesOnly);
    }

    private static void Lead(Utf8JsonWriter json, PlantLead lead)
    {
        json.WriteString("trucks", lead.Trucks);
        json.WriteString("plant", lead.Plant);
        JsonParts.Value(json, "lead", lead.Lead);
    }

    private static void Weather(Utf8JsonWriter json, WorkableWeather? weather)
    {
        if (weather is null)
        {
            json.WriteNull("weather");
            return;
        }

        json.WriteStartObject("weather");
        json.WriteBoolean("unknown", weather.IsUnknown);
        List(json, "alone", weather.Alone, Alone);
        List(json, "pairs", weather.Pairs, Pair);
        json.WriteEndObject();
    }

    private static void Alone(Utf8JsonWriter json, AxisLimit axis)
    {
        json.WriteString("axis", Words.Of(axis.Axis));
        JsonParts.Value(json, "stated", axis.Stated);
        JsonParts.Value(json, "all_pass", axis.AllPass);
        JsonParts.Value(json, "no_failure", axis.NoFailure);
        JsonParts.Value(json, "not_beyond", axis.NotBeyond);
        if (axis.BreaksFirst is not { } broken)
        {
            json.WriteNull("breaks_first");
            return;
        }

        json.WriteStartObject("breaks_first");
        Broken(json, broken);
        json.WriteEndObject();
    }

    private static void Pair(Utf8JsonWriter json, PairLimit pair)
    {
        json.WriteString("first", Words.Of(pair.First));
        JsonParts.Value(json, "first_value", pair.FirstValue);
        json.WriteString("second", Words.Of(pair.Second));
        JsonParts.Value(json, "second_value", pair.SecondValue);
        json.WriteString("level", OutlookWords.Of(pair.Level));
    }

    private static string Moment(DateTimeOffset at) => at.ToString("yyyy-MM-dd'T'HH:mm:sszzz", CultureInfo.InvariantCulture);
}
