using System.Text.Json;
using Laygate.Model.Plans;
using Laygate.Rules.Definitions;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Json;

/// <summary>One plan's report as JSON.</summary>
internal static class JsonReport
{
    private const int FlushAt = 32 << 10;

    public static void Write(Utf8JsonWriter json, Report report)
    {
        json.WriteStartObject();
        json.WriteString("plan", report.PlanId);
        json.WriteString("title", report.PlanTitle);
        json.WriteString("revision", report.Revision);
        json.WriteNumber("document", report.Document);
        json.WriteString("plan_hash", report.PlanHash);
        json.WriteString("jurisdiction", report.Jurisdiction);
        json.WriteString("stage", Words.Of(report.Stage));
        JsonParts.Day(json, "judged_for", report.JudgedFor);
        json.WriteBoolean("judged_for_shift", report.JudgedForShift);
        Layers(json, report.Layers);
        json.WriteString("book_hash", report.BookHash);
        json.WriteString("settings", report.Settings);
        json.WriteBoolean("quick", report.IsQuick);
        Counts(json, report.Counts);
        Baseline(json, report.Baseline);
        json.WriteStartArray("findings");
        foreach (var finding in report.Findings)
        {
            JsonFinding.Write(json, finding);
            if (json.BytesPending > FlushAt)
            {
                // Over a stream the writer would hold everything in one block that it doubles again and again.
                json.Flush();
            }
        }

        json.WriteEndArray();
        JsonOutlook.Write(json, report.Outlook);
        JsonDeparture.List(json, report.Departures);
        JsonParts.Assumptions(json, report.Assumptions);
        JsonParts.Notes(json, report.Notes);
        json.WriteEndObject();
    }

    private static void Layers(Utf8JsonWriter json, IReadOnlyList<BookLayer> layers)
    {
        json.WriteStartArray("layers");
        foreach (var layer in layers)
        {
            json.WriteStartObject();
            json.WriteString("name", layer.Name);
            json.WriteString("title", layer.Title);
            json.WriteString("edition", layer.Edition);
            json.WriteString("status", layer.Status);
            json.WriteString("layer", Words.Of(layer.Layer));
            json.WriteString("jurisdiction", layer.Jurisdiction);
            json.WriteString("coverage", layer.Coverage);
            Clauses(json, layer.Clauses);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Clauses(Utf8JsonWriter json, IReadOnlyList<ClauseCoverage> clauses)
    {
        json.WriteStartArray("clauses");
        foreach (var clause in clauses)
        {
            json.WriteStartObject();
            json.WriteString("number", clause.Number);
            json.WriteString("subject", clause.Subject);
            json.WriteString("status", Words.Of(clause.Status));
            json.WriteStartArray("rules");
            foreach (var rule in clause.Rules)
            {
                json.WriteStringValue(rule);
            }

            json.WriteEndArray();
            json.WriteString("note", clause.Note);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Counts(Utf8JsonWriter json, Counts counts)
    {
        json.WriteStartObject("counts");
        json.WriteNumber("failed", counts.Failed);
        json.WriteNumber("warned", counts.Warned);
        json.WriteNumber("not_assessed", counts.NotAssessed);
        json.WriteNumber("needs_person", counts.NeedsPerson);
        json.WriteNumber("open", counts.Open);
        json.WriteNumber("departed", counts.Departed);
        json.WriteNumber("passed", counts.Passed);
        json.WriteNumber("not_applicable", counts.NotApplicable);
        json.WriteNumber("departure_warnings", counts.DepartureWarnings);
        json.WriteNumber("known_failed", counts.KnownFailed);
        json.WriteNumber("known_warned", counts.KnownWarned);
        json.WriteNumber("known_not_assessed", counts.KnownNotAssessed);
        json.WriteEndObject();
    }

    private static void Baseline(Utf8JsonWriter json, BaselineUse? use)
    {
        if (use is null)
        {
            json.WriteNull("baseline");
            return;
        }

        json.WriteStartObject("baseline");
        json.WriteString("file", use.File);
        JsonParts.Day(json, "written", use.Written);
        json.WriteNumber("known", use.Known);
        json.WriteNumber("worse", use.Worse);
        json.WriteNumber("gone", use.Gone);
        json.WriteEndObject();
    }
}
