using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Laygate.Model.Measures;
using Laygate.Model.Plans;

namespace Laygate.Reporting.Records;

/// <summary>The file with what was learnt: a file of parts with one entry, which a plan uses when it names both.</summary>
public static class LearntYaml
{
    /// <summary>The text.</summary>
    /// <param name="values">What was learnt.</param>
    public static string Of(LearntValues values)
    {
        var text = new StringBuilder();
        text.Append("# What recorded shifts taught. Written by `laygate measured --learn`; worked out anew rather than changed by hand.\n");
        text.Append(CultureInfo.InvariantCulture, $"# A plan uses it with `uses: [this file]` and `learnt: [{values.Id}]`. It never loosens a limit: the more careful of this and what is assumed counts.\n");
        text.Append(CultureInfo.InvariantCulture, $"parts: 1\nlearnt:\n  - id: {values.Id}\n");
        Line(text, "mixes", List(values.Mixes));
        Line(text, "plants", List(values.Plants));
        Line(text, "machines", List(values.Machines));
        Line(text, "made", Day(values.Made));
        Line(text, "about", values.About is { } about ? Quoted(about) : null);
        Line(text, "conductivity", values.Conductivity is { } c ? Group(("value", c.Value), ("low", c.Low), ("high", c.High), ("assumed_low", c.AssumedLow), ("assumed_high", c.AssumedHigh)) : null);
        Line(text, "laying", values.Laying is { } l ? Group(("value", l.Value), ("low", l.Low), ("high", l.High), ("assumed_low", l.AssumedLow), ("assumed_high", l.AssumedHigh)) : null);
        Line(text, "shifts", values.Shifts.ToString(CultureInfo.InvariantCulture));
        Line(text, "readings", values.Readings?.ToString(CultureInfo.InvariantCulture));
        Line(text, "held_out", values.HeldOut is { } held ? Group(("inside_before", held.InsideBefore), ("inside_after", held.InsideAfter), ("off_before", held.OffBefore), ("off_after", held.OffAfter)) : null);
        text.Append("    records:\n");
        foreach (var record in values.Records)
        {
            text.Append(CultureInfo.InvariantCulture, $"      - plan: {Quoted(record.Plan ?? string.Empty)}\n");
            Further(text, "date", Day(record.Date));
            Further(text, "plan_hash", record.PlanHash is { } plan ? Quoted(plan) : null);
            Further(text, "record_hash", record.RecordHash is { } hash ? Quoted(hash) : null);
            Further(text, "readings", record.Readings?.ToString(CultureInfo.InvariantCulture));
        }

        return text.ToString();
    }

    private static void Line(StringBuilder text, string key, string? value) => text.Append(value is null ? string.Empty : $"    {key}: {value}\n");

    private static void Further(StringBuilder text, string key, string? value) => text.Append(value is null ? string.Empty : $"        {key}: {value}\n");

    private static string? List(IReadOnlyList<string> names) => names.Count == 0 ? null : $"[{string.Join(", ", names.Select(name => int.TryParse(name, CultureInfo.InvariantCulture, out _) ? Quoted(name) : name))}]";

    private static string? Day(DateOnly? day) => day?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static string Group(params (string Key, IMeasure? Value)[] keys) =>
        $"{{ {string.Join(", ", keys.Where(key => key.Value is not null).Select(key => string.Create(CultureInfo.InvariantCulture, $"{key.Key}: {key.Value!.Number:0.##} {key.Value.Unit.Spelling}")))} }}";

    // A double-quoted text of YAML takes the escapes of JSON.
    private static string Quoted(string text) => $"\"{JsonEncodedText.Encode(text, JavaScriptEncoder.UnsafeRelaxedJsonEscaping)}\"";
}
