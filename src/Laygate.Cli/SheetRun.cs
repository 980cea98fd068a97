using Laygate.Cli.Arguments;
using Laygate.Cli.Checking;
using Laygate.Cli.Files;
using Laygate.Cli.Output;
using Laygate.Reporting.Cards;
using Laygate.Reporting.Language;
using Laygate.Reporting.Terminal;
using Laygate.Reporting.Text;
using Laygate.Rules.Results;

namespace Laygate.Cli;

/// <summary>One run of <c>laygate sheet</c>.</summary>
internal sealed class SheetRun(ICheckPipeline pipeline, Streams streams, string version)
{
    private const string StdinName = "standard input";

    /// <summary>Makes the sheet, or says why there is none.</summary>
    /// <returns>The exit code: 1 when the plan fails and no draft was asked for.</returns>
    /// <exception cref="ArgumentProblem">The output cannot be written.</exception>
    public int Run(SheetArguments arguments)
    {
        var input = Input(arguments);
        ResultOutput.KeepApart(arguments.Output, [arguments.File]);
        var session = new CheckSessions(pipeline, Checked(arguments), version).For(input, isOnly: false).Session;
        var result = session.Sheet is { } sheet ? Make(input, sheet, arguments) : null;
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

        new ResultOutput(streams).Write(arguments.Output, arguments.IsPage
            ? Cards(result.Sheets, arguments.Language)
            : Streams.Utf8.GetBytes(CardsWriter.Markdown(result.Sheets, arguments.Language)));
        return ExitCodes.Clean;
    }

    private static byte[] Cards(IReadOnlyList<SiteSheet> sheets, string language)
    {
        using var bytes = new MemoryStream();
        CardsWriter.Write(sheets, language, bytes);
        return bytes.ToArray();
    }

    // A sheet is judged as a check would be, settings of the repository included.
    private static CheckArguments Checked(SheetArguments arguments) => new()
    {
        Files = [arguments.File],
        Rules = arguments.Rules,
        Outputs = [],
        Date = arguments.Date,
        All = false,
        Remedies = false,
        StdinName = StdinName,
    };

    private PlanInput Input(SheetArguments arguments) => new PlanFiles(streams.Input, StdinName).Find([arguments.File]) is [var only]
        ? only
        : throw new ArgumentProblem("A site sheet is made of one file at a time.");

    private static SheetResult Make(PlanInput input, Func<string, byte[], bool, string?, SheetResult> sheet, SheetArguments arguments)
    {
        var (bytes, problem) = PlanBytes.Read(input);
        return bytes is null ? new SheetResult(input.Name, [], [], [problem!]) : sheet(input.Name, bytes, arguments.Draft, arguments.Shift);
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
