using Laygate.Cli.Arguments;
using Laygate.Cli.Checking;
using Laygate.Cli.Files;
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
        var results = new List<FileResult>();
        var code = ExitCodes.Clean;
        foreach (var input in new PlanFiles(streams.Input, arguments.StdinName).Find(sessions.Plans()))
        {
            var governed = sessions.For(input);
            if (governed.Session.Check is { } check)
            {
                results.Add(Check(input, check));
                code = Math.Max(code, ExitCodes.Of([results[^1]], governed.FailOn));
            }
        }

        var problems = sessions.Problems;
        WriteProblems([.. problems, .. results.SelectMany(result => result.Problems)]);
        Write(arguments, results, problems);
        return problems.Count > 0 ? ExitCodes.Unreadable : code;
    }

    private static FileResult Check(PlanInput input, Func<string, byte[], FileResult> check)
    {
        var (bytes, problem) = PlanBytes.Read(input);
        return bytes is null ? new FileResult(input.Name, [], [problem!]) : check(input.Name, bytes);
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
