using System.Text.Json;
using Laygate.Reporting.Language;
using Laygate.Reporting.Runs;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Json;

/// <summary>The report for programs, written file by file: nothing waits.</summary>
public sealed class JsonForm : IRunForm
{
    private readonly RunHead head;
    private readonly Stream output;
    private readonly Utf8JsonWriter json;

    /// <summary>Begins a report.</summary>
    /// <param name="head">The run.</param>
    /// <param name="output">Where to write; stays open.</param>
    public JsonForm(RunHead head, Stream output)
    {
        (this.head, this.output) = (head, output);
        json = new Utf8JsonWriter(output, JsonOutput.Options);
        json.WriteStartObject();
        json.WriteNumber("report_version", JsonOutput.ReportVersion);
        json.WriteString("program", "laygate");
        json.WriteString("program_version", head.ProgramVersion);
        json.WriteStartArray("files");
    }

    /// <inheritdoc/>
    public void Add(FileResult result, ComparisonResult? changes)
    {
        json.WriteStartObject();
        json.WriteString("file", result.File);
        json.WriteStartArray("reports");
        foreach (var report in result.Reports)
        {
            JsonReport.Write(json, report);
        }

        json.WriteEndArray();
        JsonParts.Problems(json, result.Problems);
        json.WriteEndObject();
        json.Flush();
    }

    /// <inheritdoc/>
    public void End()
    {
        json.WriteEndArray();
        JsonParts.Problems(json, head.Problems);
        json.WriteStartArray("caution");
        foreach (var sentence in Caution.Sentences)
        {
            json.WriteStringValue(sentence);
        }

        json.WriteEndArray();
        json.WriteEndObject();
        json.Flush();
        output.WriteByte((byte)'\n');
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        // What was begun and not flushed belongs to a run that did not finish.
        json.Reset(Stream.Null);
        json.Dispose();
    }
}
