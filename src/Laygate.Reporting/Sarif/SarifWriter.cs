using System.Text.Json;
using Laygate.Reporting.Json;
using Laygate.Reporting.Runs;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Sarif;

/// <summary>
/// SARIF 2.1.0 (OASIS, Errata 01): one run; failures and warnings, and what else the run asks to include. Every result has one location
/// with a full region and a fingerprint that no line goes into. No time of day stands in it: the same input gives the same bytes.
/// </summary>
public static class SarifWriter
{
    private const string Schema = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json";

    /// <summary>Writes a run as UTF-8 with a line feed at the end.</summary>
    public static void Write(ReportedRun run, Stream output)
    {
        var items = Listing.Asked(run);
        var rules = SarifRules.Of(run);
        using (var json = new Utf8JsonWriter(output, JsonOutput.Options))
        {
            json.WriteStartObject();
            json.WriteString("$schema", Schema);
            json.WriteString("version", "2.1.0");
            json.WriteStartArray("runs");
            json.WriteStartObject();
            Tool(json, run, rules);
            Invocation(json, run);
            json.WriteString("columnKind", "utf16CodeUnits");
            json.WriteStartArray("results");
            foreach (var item in items)
            {
                SarifResult.Write(json, item, rules.IndexOf(item.Rule));
            }

            json.WriteEndArray();
            json.WriteEndObject();
            json.WriteEndArray();
            json.WriteEndObject();
        }

        output.WriteByte((byte)'\n');
    }

    private static void Tool(Utf8JsonWriter json, ReportedRun run, SarifRules rules)
    {
        json.WriteStartObject("tool");
        json.WriteStartObject("driver");
        json.WriteString("name", "laygate");
        json.WriteString("semanticVersion", run.ProgramVersion);
        if (run.InformationUri is { } address)
        {
            json.WriteString("informationUri", address);
        }

        json.WriteStartArray("rules");
        rules.Write(json);
        json.WriteEndArray();
        json.WriteStartObject("properties");
        json.WriteStartArray("rule_books");
        foreach (var hash in run.Reports.Select(report => report.BookHash).Distinct(StringComparer.Ordinal))
        {
            json.WriteStringValue(hash);
        }

        json.WriteEndArray();
        json.WriteEndObject();
        json.WriteEndObject();
        json.WriteEndObject();
    }

    private static void Invocation(Utf8JsonWriter json, ReportedRun run)
    {
        json.WriteStartArray("invocations");
        json.WriteStartObject();
        json.WriteBoolean("executionSuccessful", !run.AllProblems.Any());
        json.WriteStartArray("toolExecutionNotifications");
        foreach (var problem in run.AllProblems)
        {
            Notification(json, problem);
        }

        json.WriteEndArray();
        json.WriteEndObject();
        json.WriteEndArray();
    }

    private static void Notification(Utf8JsonWriter json, Problem problem)
    {
        json.WriteStartObject();
        json.WriteString("level", "error");
        SarifText.Message(json, "message", problem.Hint is { Length: > 0 } hint ? $"{problem.Message} {hint}" : problem.Message);
        SarifResult.Location(json, problem.File, problem.Position ?? new Position(1, 1, 1, 2), address: null);
        json.WriteEndObject();
    }
}
