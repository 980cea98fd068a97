using Laygate.Cli.Arguments;
using Laygate.Cli.Checking;
using Laygate.Cli.Files;
using Laygate.Cli.Output;
using Laygate.Reporting.Language;
using Laygate.Reporting.Sheet;
using Laygate.Reporting.Terminal;
using Laygate.Reporting.Text;
using Laygate.Rules.Results;

namespace Laygate.Cli;

/// <summary>One run of <c>laygate sheet</c>.</summary>
internal sealed class SheetRun(ICheckPipeline pipeline, Streams streams, string version)
{
    /// <summary>Makes the sheet, or says why there is none.</summary>
    /// <returns>The exit code: 1 when the plan fails and no draft was asked for.</returns>
    /// <exception cref="ArgumentProblem">The output cannot be written.</exception>
    public int Run(SheetArguments arguments)
    {
        var session = pipeline.Open(new CheckRequest(arguments.Rules, null, arguments.Date, version));
        var result = session.Sheet is { } sheet ? Make(arguments, sheet) : null;
        WriteProblems([.. session.Problems, .. result?.Problems ?? []]);
        if (result is null || session.Problems.Count > 0 || result.Problems.Count > 0)
        {
            return ExitCodes.Unreadable;
        }

        if (result.Refused.Count > 0)
        {
            result.Refused.ToList().ForEach(Refuse);
            return ExitCodes.Findings;
        }

        new ResultOutput(streams).Write(arguments.Output, string.Join('\n', result.Sheets.Select(SheetDocument.Write)));
        return ExitCodes.Clean;
    }

    private SheetResult Make(SheetArguments arguments, Func<string, byte[], bool, SheetResult> sheet)
    {
        var inputs = new PlanFiles(streams.Input, "standard input").Find([arguments.File]);
        if (inputs.Count > 1)
        {
            throw new ArgumentProblem("A site sheet is made of one file at a time.");
        }

        var (bytes, problem) = PlanBytes.Read(inputs[0]);
        return bytes is null ? new SheetResult(inputs[0].Name, [], [], [problem!]) : sheet(inputs[0].Name, bytes, arguments.Draft);
    }

    private void Refuse(Report report)
    {
        streams.Error.WriteLine($"{PlainText.Show(report.File)}: no site sheet for plan {PlainText.Show(report.PlanId)}: it fails.");
        foreach (var finding in report.Findings.Where(finding => finding.Status == Status.Fail))
        {
            streams.Error.WriteLine($"  {Wording.Message(finding)} ({PlainText.Show(finding.Rule)}, {PlainText.Show(finding.Address)})");
        }

        streams.Error.WriteLine("  Mend the plan, or add --draft for a sheet whose every card is marked DRAFT.");
    }

    private void WriteProblems(IReadOnlyList<Problem> problems)
    {
        if (problems.Count > 0)
        {
            TerminalWriter.Write(streams.Error, streams.ErrorColour, ProblemLines.Lines(problems));
        }
    }
}
