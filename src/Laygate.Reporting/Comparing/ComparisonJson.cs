using System.Text.Json;
using Laygate.Reporting.Json;
using Laygate.Reporting.Language;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Comparing;

/// <summary>Comparisons for programs, as <c>schemas/comparison.schema.json</c> describes them.</summary>
public static class ComparisonJson
{
    /// <summary>Version of the shape; a key may be added without raising it, none is renamed or removed.</summary>
    public const int ComparisonVersion = 1;

    /// <summary>Writes all comparisons of one run as UTF-8 with a line feed at the end.</summary>
    public static void Write(Stream output, string programVersion, IReadOnlyList<ComparisonResult> results)
    {
        using (var json = new Utf8JsonWriter(output, JsonOutput.Options))
        {
            json.WriteStartObject();
            json.WriteNumber("comparison_version", ComparisonVersion);
            json.WriteString("program", "laygate");
            json.WriteString("program_version", programVersion);
            json.WriteStartArray("files");
            foreach (var result in results)
            {
                Write(json, result);
            }

            json.WriteEndArray();
            json.WriteStartArray("caution");
            foreach (var sentence in Caution.Sentences)
            {
                json.WriteStringValue(sentence);
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        output.WriteByte((byte)'\n');
    }

    private static void Write(Utf8JsonWriter json, ComparisonResult result)
    {
        json.WriteStartObject();
        json.WriteString("old_file", result.OldFile);
        json.WriteString("new_file", result.NewFile);
        json.WriteStartArray("plans");
        foreach (var plan in result.Plans)
        {
            Write(json, plan);
        }

        json.WriteEndArray();
        JsonParts.Problems(json, result.Problems);
        json.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter json, PlanComparison plan)
    {
        json.WriteStartObject();
        State(json, "old", plan.Old);
        State(json, "new", plan.New);
        json.WriteStartObject("counts");
        json.WriteNumber("new", plan.Counts.New);
        json.WriteNumber("gone", plan.Counts.Gone);
        json.WriteNumber("changed", plan.Counts.Changed);
        json.WriteNumber("unchanged", plan.Counts.Unchanged);
        json.WriteEndObject();
        json.WriteStartArray("findings");
        foreach (var change in plan.Findings.Where(change => change.Kind != ChangeKind.Unchanged))
        {
            Write(json, change);
        }

        json.WriteEndArray();
        Quantities(json, plan.Quantities);
        Text(json, "text", plan.Text);
        json.WriteEndObject();
    }

    private static void State(Utf8JsonWriter json, string name, Report? report)
    {
        if (report is null)
        {
            json.WriteNull(name);
            return;
        }

        json.WriteStartObject(name);
        json.WriteString("plan", report.PlanId);
        json.WriteString("revision", report.Revision);
        json.WriteString("plan_hash", report.PlanHash);
        json.WriteString("book_hash", report.BookHash);
        json.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter json, FindingChange change)
    {
        json.WriteStartObject();
        json.WriteString("change", Word(change.Kind));
        json.WriteString("direction", change.Direction.ToString().ToLowerInvariant());
        json.WriteString("rule", change.Either.Rule);
        json.WriteString("address", change.Either.Address);
        json.WriteString("title", change.Either.Title);
        Side(json, "old", change.Old);
        Side(json, "new", change.New);
        Text(json, "behind", change.Behind);
        json.WriteEndObject();
    }

    private static void Side(Utf8JsonWriter json, string name, Finding? finding)
    {
        if (finding is null)
        {
            json.WriteNull(name);
            return;
        }

        json.WritePropertyName(name);
        JsonFinding.Write(json, finding);
    }

    private static void Quantities(Utf8JsonWriter json, IReadOnlyList<QuantityChange> changes)
    {
        json.WriteStartArray("quantities");
        foreach (var change in changes)
        {
            json.WriteStartObject();
            json.WriteString("address", change.Address);
            json.WriteString("quantity", change.Quantity);
            json.WriteString("meaning", change.Meaning);
            JsonParts.Value(json, "old", change.Old);
            JsonParts.Value(json, "new", change.New);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Text(Utf8JsonWriter json, string name, IReadOnlyList<TextChange> changes)
    {
        json.WriteStartArray(name);
        foreach (var change in changes)
        {
            json.WriteStartObject();
            json.WriteString("path", change.Path);
            json.WriteString("old", change.Old);
            json.WriteString("new", change.New);
            Line(json, "old_line", change.OldPosition);
            Line(json, "new_line", change.NewPosition);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Line(Utf8JsonWriter json, string name, Position? position)
    {
        if (position is null)
        {
            json.WriteNull(name);
        }
        else
        {
            json.WriteNumber(name, position.Line);
        }
    }

    private static string Word(ChangeKind kind) => kind.ToString().ToLowerInvariant();
}
