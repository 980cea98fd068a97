using Laygate.Cli.Arguments;
using Laygate.Cli.Checking;
using Laygate.Cli.Files;
using Laygate.Cli.Output;
using Laygate.Reporting.Runs;
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
        var strict = new HashSet<string>(StringComparer.Ordinal);
        var code = ExitCodes.Clean;
        foreach (var input in new PlanFiles(streams.Input, arguments.StdinName).Find(sessions.Plans()))
        {
            var governed = sessions.For(input);
            if (governed.Session.Check is { } check)
            {
                results.Add(Check(input, check));
                code = Math.Max(code, ExitCodes.Of([results[^1]], governed.FailOn));
                if (governed.FailOn == FailOn.Warn)
                {
                    strict.Add(input.Name);
                }
            }
        }

        var problems = sessions.Problems;
        WriteProblems([.. problems, .. results.SelectMany(result => result.Problems)]);
        Write(arguments, new ReportedRun(version, results, problems) { Include = arguments.Include, WarningsFail = strict, InformationUri = App.Address });
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

    // Every form is made before the first file is written: a run that cannot finish leaves no file behind.
    private void Write(CheckArguments arguments, ReportedRun run)
    {
        foreach (var target in arguments.Outputs.Where(target => target.File is null))
        {
            new ResultForm(target.Format, streams.Width, streams.Colour, arguments.All).Write(run, streams.Out);
            streams.Out.Flush();
        }

        var files = new List<(string Path, MemoryStream Bytes)>();
        foreach (var target in arguments.Outputs.Where(target => target.File is not null))
        {
            var bytes = new MemoryStream();
            new ResultForm(target.Format, Streams.UsualWidth, Colour: false, arguments.All).Write(run, bytes);
            files.Add((target.File!, bytes));
        }

        files.ForEach(file => ResultOutput.WriteFile(file.Path, file.Bytes.GetBuffer().AsSpan(0, (int)file.Bytes.Length)));
    }
}
