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
        var plans = GovernedPlans.Of(sessions, arguments, streams);
        KeepApart(arguments, plans);
        var done = Check(WithEarlier(arguments, plans));
        var results = Array.ConvertAll(done, one => one.Result);
        var changes = done.Select(one => one.Changes).OfType<ComparisonResult>().ToDictionary(one => one.NewFile, StringComparer.Ordinal);
        var code = plans.Select((plan, index) => ExitCodes.Of([results[index]], plan.Governed.FailOn, plan.Governed.NotAssessedFails)).DefaultIfEmpty(ExitCodes.Clean).Max();
        var strict = plans.Where(plan => plan.Governed.FailOn == FailOn.Warn).Select(plan => plan.Input.Name).ToHashSet(StringComparer.Ordinal);
        var silent = plans.Where(plan => plan.Governed.NotAssessedFails).Select(plan => plan.Input.Name).ToHashSet(StringComparer.Ordinal);
        var problems = sessions.Problems;
        var earlier = changes.Values.SelectMany(one => one.Problems).ToList();
        arguments.RequireExplained(results);
        WriteProblems([.. problems, .. results.SelectMany(result => result.Problems), .. earlier]);
        Write(arguments, new ReportedRun(version, results, problems)
        {
            Include = arguments.Include,
            WarningsFail = strict,
            NotAssessedFail = silent,
            InformationUri = App.Address,
            RulePages = App.RulePages,
            RulesInForce = arguments.Outputs.Any(target => target.Format == OutputFormat.Sarif) ? sessions.RulesInForce() : [],
            Earlier = arguments.Previous is null ? null : changes,
        });
        return problems.Count + earlier.Count > 0 ? ExitCodes.Unreadable : code;
    }

    private static void KeepApart(CheckArguments arguments, IReadOnlyList<GovernedPlan> plans)
    {
        List<string> inputs = [.. plans.Where(plan => plan.Input.Read is not null && plan.Input.Identity is not "-").Select(plan => plan.Input.Name), .. plans.SelectMany(plan => plan.Governed.RestsOn).Distinct(StringComparer.Ordinal)];
        foreach (var target in arguments.Outputs)
        {
            ResultOutput.KeepApart(target.File, inputs);
        }
    }

    private static IReadOnlyList<GovernedPlan> WithEarlier(CheckArguments arguments, IReadOnlyList<GovernedPlan> plans)
    {
        if (arguments.Previous is not { } previous)
        {
            return plans;
        }

        var earlier = new EarlierPlans(previous, plans.Count);
        return [.. plans.Select(plan => plan with { Earlier = earlier.Of(plan.Input) })];
    }

    // Plans are checked side by side and reported in their order.
    private (FileResult Result, ComparisonResult? Changes)[] Check(IReadOnlyList<GovernedPlan> plans)
    {
        var results = new (FileResult Result, ComparisonResult? Changes)[plans.Count];
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

    private static TerminalSettings Settings(CheckArguments arguments, int width) => new(width, arguments.All) { Full = arguments.Full, Explain = arguments.Explain };

    // Every form is made before the first file is written: a run that cannot finish leaves no file behind.
    private void Write(CheckArguments arguments, ReportedRun run)
    {
        foreach (var target in arguments.Outputs.Where(target => target.File is null))
        {
            new ResultForm(target.Format, Settings(arguments, streams.Width), streams.Colour).Write(run, streams.Out);
            streams.Out.Flush();
        }

        var files = new List<(string Path, MemoryStream Bytes)>();
        foreach (var target in arguments.Outputs.Where(target => target.File is not null))
        {
            var bytes = new MemoryStream();
            new ResultForm(target.Format, Settings(arguments, Streams.UsualWidth), Colour: false).Write(run, bytes);
            files.Add((target.File!, bytes));
        }

        files.ForEach(file => ResultOutput.WriteFile(file.Path, file.Bytes.GetBuffer().AsSpan(0, (int)file.Bytes.Length)));
    }
}
