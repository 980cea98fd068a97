using System.Text.Json;
using Laygate.Model.Plans;
using Laygate.Rules.Definitions;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Json;

/// <summary>Limits and their sources as JSON.</summary>
internal static class JsonLimit
{
    /// <summary>A limit with its source inside.</summary>
    public static void WithSource(Utf8JsonWriter json, string name, ShownLimit? limit)
    {
        if (limit is null)
        {
            json.WriteNull(name);
            return;
        }

        json.WriteStartObject(name);
        Fields(json, limit);
        Source(json, limit);
        json.WriteEndObject();
    }

    /// <summary>A limit without its source.</summary>
    public static void Limit(Utf8JsonWriter json, string name, ShownLimit? limit)
    {
        if (limit is null)
        {
            json.WriteNull(name);
            return;
        }

        json.WriteStartObject(name);
        Fields(json, limit);
        json.WriteEndObject();
    }

    private static void Fields(Utf8JsonWriter json, ShownLimit limit)
    {
        json.WriteString("strength", Words.Of(limit.Strength));
        json.WriteString("basis", Words.Of(limit.Basis));
        JsonParts.Value(json, "low", limit.Low);
        JsonParts.Value(json, "high", limit.High);
        json.WriteBoolean("low_exclusive", limit.LowExclusive);
        json.WriteBoolean("high_exclusive", limit.HighExclusive);
        json.WriteString("stated", limit.Stated);
        json.WriteString("quantity", limit.Quantity);
        JsonParts.Number(json, "factor", limit.Factor);
        json.WriteString("layer", Words.Of(limit.Layer));
        json.WriteString("set_by", limit.SetBy);
        json.WriteBoolean("silence_fails", limit.SilenceFails);
    }

    /// <summary>Where a limit comes from.</summary>
    public static void Source(Utf8JsonWriter json, ShownLimit? limit)
    {
        if (limit is null)
        {
            json.WriteNull("source");
            return;
        }

        var source = limit.Source;
        json.WriteStartObject("source");
        json.WriteString("id", source.Source);
        json.WriteString("issuer", limit.Publication?.Issuer);
        json.WriteString("title", limit.Publication?.Title);
        json.WriteString("edition", limit.Publication?.Edition);
        json.WriteString("year", limit.Publication?.Year);
        json.WriteString("carrier", limit.Publication?.Carrier);
        json.WriteString("url", limit.Publication?.Address);
        json.WriteString("clause", source.Clause);
        json.WriteString("evidence", Words.Of(source.Evidence));
        JsonParts.Day(json, "valid_from", source.ValidFrom);
        JsonParts.Day(json, "valid_to", source.ValidTo);
        json.WriteString("successor", source.Successor);
        json.WriteString("remark", source.Remark);
        Confirmation(json, source.Confirmation);
        json.WriteEndObject();
    }

    private static void Confirmation(Utf8JsonWriter json, Confirmation? confirmation)
    {
        if (confirmation is null)
        {
            json.WriteNull("confirmation");
            return;
        }

        json.WriteStartObject("confirmation");
        json.WriteString("by", confirmation.By);
        JsonParts.Day(json, "on", confirmation.On);
        json.WriteString("edition", confirmation.Edition);
        json.WriteString("page", confirmation.Page);
        json.WriteEndObject();
    }
}
