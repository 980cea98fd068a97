using Laygate.Reporting.Runs;
using Laygate.Reporting.Terminal;
using Laygate.Rules.Results;

namespace Laygate.Cli.Output;

/// <summary>The report for a person at a terminal, plan by plan.</summary>
internal sealed class TerminalForm(Stream output, TerminalSettings settings, bool colour) : IRunForm
{
    private readonly StreamWriter writer = new(output, Streams.Utf8, bufferSize: 16 << 10, leaveOpen: true) { NewLine = "\n" };
    private readonly TerminalReport report = new(settings);

    /// <inheritdoc/>
    public void Add(FileResult result, ComparisonResult? changes) => TerminalWriter.Write(writer, colour, report.Add(result));

    /// <inheritdoc/>
    public void End() => TerminalWriter.Write(writer, colour, report.End());

    /// <inheritdoc/>
    public void Dispose()
    {
        // Every piece was flushed; what a closed output refused is dropped.
    }
}
