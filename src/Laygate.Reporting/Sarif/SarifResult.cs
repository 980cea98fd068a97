using System.Text.Json;
using Laygate.Exchange;
using Laygate.Model.Plans;
using Laygate.Reporting.Json;
using Laygate.Reporting.Language;
using Laygate.Reporting.Runs;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Sarif;

/// <summary>One result.</summary>
internal static class SarifResult
{
    /// <summary>Key of the fingerprint; a new way to make it gets a new number.</summary>
    public const string FingerprintKey = "laygateFinding/v1";

    public static void Write(Utf8JsonWriter json, ListedItem item, int ruleIndex)
    {
        json.WriteStartObject();
        json.WriteString("ruleId", item.Rule);
        json.WriteNumber("ruleIndex", ruleIndex);
        json.WriteString("kind", Kind(item.Group));
        json.WriteString("level", Level(item.Group));
        SarifText.Message(json, "message", item.Text);
        json.WriteStartArray("locations");
        Place(json, item.File, item.Position, item.Address);
        json.WriteEndArray();
        if (item.Report.Baseline is not null)
        {
            json.WriteString("baselineState", "new");
        }

        json.WriteStartObject("partialFingerprints");
        json.WriteString(FingerprintKey, item.Fingerprint);
        json.WriteEndObject();
        Properties(json, item);
        json.WriteEndObject();
    }

    /// <summary>The array <c>locations</c> with one place.</summary>
    public static void Location(Utf8JsonWriter json, string file, Position position, string? address)
    {
        json.WriteStartArray("locations");
        Place(json, file, position, address);
        json.WriteEndArray();
    }

    /// <summary>Kind by SARIF 3.27.9. A silence that fails is a failure of the plan, not a lack of information of the check.</summary>
    public static string Kind(FindingGroup group) => group switch
    {
        FindingGroup.Failed or FindingGroup.Warned => "fail",
        FindingGroup.NotAssessed or FindingGroup.Open => "open",
        FindingGroup.NeedsPerson => "review",
        FindingGroup.Departed => "informational",
        FindingGroup.Passed => "pass",
        _ => "notApplicable",
    };

    /// <summary>Level by SARIF 3.27.10: every kind but fail has the level none.</summary>
    public static string Level(FindingGroup group) => group switch
    {
        FindingGroup.Failed => "error",
        FindingGroup.Warned => "warning",
        _ => "none",
    };

    private static void Place(Utf8JsonWriter json, string file, Position position, string? address)
    {
        json.WriteStartObject();
        json.WriteStartObject("physicalLocation");
        json.WriteStartObject("artifactLocation");
        json.WriteString("uri", FileNames.Uri(file));
        if (!FileNames.IsRooted(FileNames.Plain(file)))
        {
            json.WriteString("uriBaseId", "%SRCROOT%");
        }

        json.WriteEndObject();
        json.WriteStartObject("region");
        json.WriteNumber("startLine", position.Line);
        json.WriteNumber("startColumn", position.Column);
        json.WriteNumber("endLine", position.EndLine);
        json.WriteNumber("endColumn", position.EndColumn);
        json.WriteEndObject();
        json.WriteEndObject();
        if (address is not null)
        {
            json.WriteStartArray("logicalLocations");
            json.WriteStartObject();
            json.WriteString("fullyQualifiedName", address);
            json.WriteString("kind", "element");
            json.WriteEndObject();
            json.WriteEndArray();
        }

        json.WriteEndObject();
    }

    private static void Properties(Utf8JsonWriter json, ListedItem item)
    {
        json.WriteStartObject("properties");
        json.WriteString("plan", item.Report.PlanId);
        json.WriteString("group", Words.Of(item.Group));
        if (item.Finding is { } finding)
        {
            json.WriteString("outcome", Words.Of(finding.Outcome));
            json.WritePropertyName("value");
            Shapes.Write(json, finding.Value, Shapes.Default.ShownValue);
            json.WritePropertyName("limit");
            Shapes.Write(json, PartShapes.Bare(finding.Limit), Shapes.Default.LimitShape);
        }

        json.WriteEndObject();
    }
}
