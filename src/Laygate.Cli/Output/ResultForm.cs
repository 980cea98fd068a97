using Laygate.Cli.Arguments;
using Laygate.Reporting.Annotations;
using Laygate.Reporting.CodeQuality;
using Laygate.Reporting.Html;
using Laygate.Reporting.Json;
using Laygate.Reporting.JUnit;
using Laygate.Reporting.Markdown;
using Laygate.Reporting.Runs;
using Laygate.Reporting.Sarif;
using Laygate.Reporting.Terminal;

namespace Laygate.Cli.Output;

/// <summary>One form of a result. What belongs to another form is not touched.</summary>
/// <param name="Format">Form.</param>
/// <param name="Settings">How it is shown on a terminal.</param>
/// <param name="Colour">Whether a terminal shows colour.</param>
internal sealed record ResultForm(OutputFormat Format, TerminalSettings Settings, bool Colour)
{
    /// <summary>Writes a run.</summary>
    public void Write(ReportedRun run, Stream output)
    {
        switch (Format)
        {
            case OutputFormat.Json:
                JsonOutput.Write(output, run.ProgramVersion, run.Results, run.Problems);
                break;
            case OutputFormat.Sarif:
                SarifWriter.Write(run, output);
                break;
            case OutputFormat.Junit:
                JUnitWriter.Write(run, output);
                break;
            case OutputFormat.CodeQuality:
                CodeQualityWriter.Write(run, output);
                break;
            case OutputFormat.Annotations:
                AnnotationWriter.Write(run, output);
                break;
            case OutputFormat.Markdown:
                MarkdownWriter.Write(run, output);
                break;
            case OutputFormat.Html:
                HtmlWriter.Write(run, output);
                break;
            default:
                Terminal(run, output);
                break;
        }
    }

    private void Terminal(ReportedRun run, Stream output)
    {
        using var writer = new StreamWriter(output, Streams.Utf8, bufferSize: 16 << 10, leaveOpen: true) { NewLine = "\n" };
        TerminalWriter.Write(writer, Colour, TerminalReport.Lines(run.Results, Settings));
    }
}
