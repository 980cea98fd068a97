using System.Globalization;
using System.Text.Json;
using Laygate.Model.Plans;
using Laygate.Reading.Measures;
using Laygate.Rules.Baselines;
using Laygate.Rules.Definitions;
using Laygate.Rules.Results;

namespace Laygate.Checking.Baselines;

/// <summary>Writes a file of known findings, plan by plan: nothing is kept of a report.</summary>
public sealed class BaselineWriter : IDisposable
{
    private static readonly JsonWriterOptions Options = new() { Indented = true, NewLine = "\n", Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    private readonly Stream output;
    private readonly Utf8JsonWriter json;

    /// <summary>Begins.</summary>
    /// <param name="output">Where to write; stays open.</param>
    /// <param name="written">Day of writing.</param>
    public BaselineWriter(Stream output, DateOnly written)
    {
        this.output = output;
        json = new Utf8JsonWriter(output, Options);
        json.WriteStartObject();
        json.WriteNumber("baseline_version", 1);
        json.WriteString("written", written.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));
        json.WriteStartArray("findings");
    }

    /// <summary>Adds the findings of a plan that belong into a baseline.</summary>
    /// <param name="plan">File of the plan, from the folder of the baseline.</param>
    /// <param name="report">Its report.</param>
    /// <returns>How many belong.</returns>
    public int Add(string plan, Report report)
    {
        var known = report.Findings.Where(BaselineJudge.Belongs).ToList();
        known.ForEach(finding => Write(plan, report.PlanId, finding));
        json.Flush();
        return known.Count;
    }

    /// <summary>Writes what closes the file.</summary>
    public void End()
    {
        json.WriteEndArray();
        json.WriteEndObject();
        json.Flush();
        output.WriteByte((byte)'\n');
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        json.Reset(Stream.Null);
        json.Dispose();
    }

    private void Write(string plan, string id, Finding finding)
    {
        json.WriteStartObject();
        json.WriteString("plan", plan);
        json.WriteString("id", id);
        json.WriteString("rule", finding.Rule);
        json.WriteString("address", finding.Address);
        json.WriteString("status", Words.Of(finding.Status));
        if (finding.Check != CheckKind.Present && Text(finding.Value) is { } value)
        {
            json.WriteString("value", value);
        }

        json.WriteEndObject();
    }

    private static string? Text(ShownValue? value) => value switch
    {
        { Number: { } number } when double.IsFinite(number) => $"{MeasureReader.WriteNumber(BaselineJudge.Rounded(number))} {value.Unit}".TrimEnd(),
        { Number: null, Text: { } text } => text,
        _ => null,
    };
}
