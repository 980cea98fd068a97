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
    /// <summary>Begins to write a run.</summary>
    /// <param name="head">The run.</param>
    /// <param name="output">Where to write.</param>
    /// <param name="folder">Where what must wait may stand.</param>
    public IRunForm Begin(RunHead head, Stream output, string folder) => Format switch
    {
        OutputFormat.Json => new JsonForm(head, output),
        OutputFormat.Sarif => new SarifForm(head, output, new Spool(folder)),
        OutputFormat.Junit => new JUnitForm(head, output, new Spool(folder)),
        OutputFormat.CodeQuality => new CodeQualityForm(head, output, new Spool(folder)),
        OutputFormat.Annotations => new AnnotationForm(head, output, () => new Spool(folder)),
        OutputFormat.Markdown => new MarkdownForm(head, output),
        OutputFormat.Html => new HtmlForm(head, output, new Spool(folder)),
        _ => new TerminalForm(output, Settings, Colour),
    };
}
