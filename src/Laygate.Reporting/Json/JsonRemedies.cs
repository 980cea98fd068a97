using System.Text.Json;
using Laygate.Model.Plans;
using Laygate.Reporting.Remedies;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Json;

/// <summary>What would mend a finding, as JSON; null where it was not looked for or no number can mend it.</summary>
internal static class JsonRemedies
{
    public static void Write(Utf8JsonWriter json, Finding finding)
    {
        if (finding.Remedies is not { } set)
        {
            json.WriteNull("remedies");
            json.WriteNull("cannot_be_mended_by");
            return;
        }

        json.WriteStartArray("remedies");
        foreach (var remedy in set.Found)
        {
            Write(json, finding, remedy);
        }

        json.WriteEndArray();
        json.WriteStartArray("cannot_be_mended_by");
        foreach (var failed in set.CannotBy)
        {
            Write(json, finding, failed);
        }

        json.WriteEndArray();
    }

    private static void Write(Utf8JsonWriter json, Finding finding, Remedy remedy)
    {
        json.WriteStartObject();
        json.WriteString("text", RemedyWords.Found(finding, remedy));
        json.WriteStartArray("changes");
        foreach (var change in remedy.Changes)
        {
            json.WriteStartObject();
            Change(json, change);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        JsonParts.Value(json, "value", remedy.Value);
        JsonLimit.WithSource(json, "limit", remedy.Limit);
        json.WriteString("status", Words.Of(remedy.Status));
        json.WriteBoolean("on_expected_values_only", remedy.OnExpectedValuesOnly);
        json.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter json, Finding finding, FailedRemedy failed)
    {
        json.WriteStartObject();
        json.WriteString("text", RemedyWords.Failed(finding, failed));
        json.WriteStartObject("change");
        Change(json, failed.Change);
        json.WriteEndObject();
        json.WriteString("obstacle", Words.Of(failed.Obstacle));
        JsonParts.Value(json, "value", failed.Value);
        JsonLimit.WithSource(json, "limit", failed.Limit);
        json.WriteStartArray("worsened");
        foreach (var worse in failed.Worsened)
        {
            json.WriteStartObject();
            json.WriteString("rule", worse.Rule);
            json.WriteString("title", worse.Title);
            json.WriteString("address", worse.Address);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void Change(Utf8JsonWriter json, LeverSetting setting)
    {
        json.WriteString("lever", Words.Of(setting.Lever));
        json.WriteString("address", setting.Address);
        json.WriteString("key", setting.Key);
        JsonParts.Value(json, "from", setting.From);
        JsonParts.Value(json, "to", setting.To);
        json.WriteBoolean("by_designer", setting.ByDesigner);
    }
}
