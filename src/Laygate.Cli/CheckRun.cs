using Laygate.Cli.Arguments;
using Laygate.Cli.Checking;
using Laygate.Cli.Output;
using Laygate.Reporting.Json;
using Laygate.Reporting.Terminal;
using Laygate.Rules.Results;

namespace Laygate.Cli;

/// <summary>One run of <c>laygate check</c>.</summary>
internal sealed class CheckRun(ICheckPipeline pipeline, Streams streams, string version)
{
    /// <summary>Checks the named plans and writes what was found.</summary>
    /// <returns>The exit code.</returns>
    /// <exception cref="ArgumentProblem">The output cannot be written.</exception>
    public int Run(CheckArguments arguments)
    {
        var sessions = new CheckSessions(pipeline, arguments, version);
        var plans = GovernedPlans.Of(sessions, arguments, streams);
        var results = Check(plans);
        var code = plans.Select((plan, index) => ExitCodes.Of([results[index]], plan.Governed.FailOn, plan.Governed.NotAssessedFails)).DefaultIfEmpty(ExitCodes.Clean).Max();
        var problems = sessions.Problems;
        WriteProblems([.. problems, .. results.SelectMany(result => result.Problems)]);
        Write(arguments, results, problems);
        return problems.Count > 0 ? ExitCodes.Unreadable : code;
    }

    // Plans are checked side by side and reported in their order.
    private FileResult[] Check(IReadOnlyList<GovernedPlan> plans)
    {
        var results = new FileResult[plans.Count];
        using var progress = new Progress(streams, plans.Count);
        if (plans.Count == 1)
        {
            results[0] = plans[0].Check();
            return results;
        }

        Parallel.For(0, plans.Count, index =>
        {
            results[index] = plans[index].Check();
            progress.Step();
        });
        return results;
    }

    private void WriteProblems(IReadOnlyList<Problem> problems)
    {
        if (problems.Count > 0)
        {
            TerminalWriter.Write(streams.Error, streams.ErrorColour, ProblemLines.Lines(problems));
        }
    }

    private void Write(CheckArguments arguments, IReadOnlyList<FileResult> results, IReadOnlyList<Problem> problems)
    {
        if (arguments.Output is not { } path)
        {
            Write(streams.Out, arguments, results, problems, streams.Width, streams.Colour);
            streams.Out.Flush();
            return;
        }

        using var bytes = new MemoryStream();
        Write(bytes, arguments, results, problems, Streams.UsualWidth, colour: false);
        ResultOutput.WriteFile(path, bytes.GetBuffer().AsSpan(0, (int)bytes.Length));
    }

    private void Write(
        Stream output, CheckArguments arguments, IReadOnlyList<FileResult> results, IReadOnlyList<Problem> problems, int width, bool colour)
    {
        if (arguments.Format == OutputFormat.Json)
        {
            JsonOutput.Write(output, version, results, problems);
            return;
        }

        using var writer = new StreamWriter(output, Streams.Utf8, bufferSize: 16 << 10, leaveOpen: true) { NewLine = "\n" };
        TerminalWriter.Write(writer, colour, TerminalReport.Lines(results, new TerminalSettings(width, arguments.All)));
    }
}
