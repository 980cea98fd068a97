using System.Text.Json;
using Laygate.Exchange;
using Laygate.Exchange.Reports;
using Laygate.Reporting.Language;
using Laygate.Reporting.Runs;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Json;

/// <summary>The report for programs, a <see cref="RunShape"/> written file by file: nothing waits.</summary>
public sealed class JsonForm : IRunForm
{
    private readonly RunHead head;
    private readonly Stream output;
    private readonly StreamBuffer buffer;
    private readonly Utf8JsonWriter json;

    /// <summary>Begins a report.</summary>
    /// <param name="head">The run.</param>
    /// <param name="output">Where to write; stays open.</param>
    public JsonForm(RunHead head, Stream output)
    {
        (this.head, this.output, buffer) = (head, output, new StreamBuffer(output));
        json = new Utf8JsonWriter(buffer, JsonOutput.Options);
        json.WriteStartObject();
        json.WriteNumber("report_version", RunShape.Version);
        json.WriteString("program", RunShape.Name);
        json.WriteString("program_version", head.ProgramVersion);
        json.WriteStartArray("files");
    }

    /// <inheritdoc/>
    public void Add(FileResult result, ComparisonResult? changes)
    {
        Shapes.Write(json, ReportShapes.Of(result), Shapes.Default.FileShape);
        Flush();
    }

    /// <inheritdoc/>
    public void End()
    {
        json.WriteEndArray();
        json.WritePropertyName("problems");
        Shapes.Write(json, PartShapes.Of(head.Problems), Shapes.Default.IReadOnlyListProblemShape);
        json.WriteStartArray("caution");
        foreach (var sentence in Caution.Sentences)
        {
            json.WriteStringValue(sentence);
        }

        json.WriteEndArray();
        json.WriteEndObject();
        Flush();
        output.WriteByte((byte)'\n');
    }

    /// <summary>What was begun and not flushed belongs to a run that did not finish.</summary>
    public void Dispose() => json.Dispose();

    private void Flush()
    {
        json.Flush();
        buffer.Flush();
    }
}
