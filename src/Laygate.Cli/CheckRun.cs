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
    /// <summary>Checks the named plans and writes what was found, each report as soon as those before it are written.</summary>
    /// <returns>The exit code: the highest.</returns>
    /// <exception cref="ArgumentProblem">The output cannot be written.</exception>
    public int Run(CheckArguments arguments)
    {
        var sessions = new CheckSessions(pipeline, arguments, version);
        var plans = GovernedPlans.Of(sessions, arguments, streams);
        KeepApart(arguments, plans);
        plans = WithEarlier(arguments, plans);
        var problems = sessions.Problems;
        WriteProblems(problems);
        using var forms = new ResultForms(arguments, Head(arguments, sessions, plans), streams);
        var explained = arguments.Explain is { } choice ? new ExplainedFinding(choice) : null;
        var (code, earlier) = Check(plans, forms, explained);
        explained?.Require();
        WriteProblems(earlier);
        forms.End();
        return problems.Count + earlier.Count > 0 ? ExitCodes.Unreadable : code;
    }

    private RunHead Head(CheckArguments arguments, CheckSessions sessions, IReadOnlyList<GovernedPlan> plans) => new(version, sessions.Problems)
    {
        Include = arguments.Include,
        WarningsFail = plans.Where(plan => plan.Governed.FailOn == FailOn.Warn).Select(plan => plan.Input.Name).ToHashSet(StringComparer.Ordinal),
        NotAssessedFail = plans.Where(plan => plan.Governed.NotAssessedFails).Select(plan => plan.Input.Name).ToHashSet(StringComparer.Ordinal),
        InformationUri = App.Address,
        RulePages = App.RulePages,
        RulesInForce = arguments.Outputs.Any(target => target.Format == OutputFormat.Sarif) ? sessions.RulesInForce() : [],
        IsCompared = arguments.Previous is not null,
        SharedNames = RunHead.SharedAmong(plans.Select(plan => plan.Input.Name)),
    };

    private static void KeepApart(CheckArguments arguments, IReadOnlyList<GovernedPlan> plans)
    {
        List<string> inputs = [.. plans.Where(plan => plan.Input.Read is not null && plan.Input.Identity is not "-").Select(plan => plan.Input.Name), .. plans.SelectMany(plan => plan.Governed.RestsOn).Distinct(StringComparer.Ordinal),
            .. arguments.Outputs.Any(target => target.File is not null) ? plans.SelectMany(plan => plan.Uses).Distinct(StringComparer.Ordinal) : []];
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

    // Plans are checked side by side and reported in their order; nothing is kept of a report that is written.
    private (int Code, IReadOnlyList<Problem> Earlier) Check(IReadOnlyList<GovernedPlan> plans, ResultForms forms, ExplainedFinding? explained)
    {
        var code = ExitCodes.Clean;
        var earlier = new List<Problem>();
        using var progress = new Progress(streams, plans.Count);
        InOrder.Run(
            plans.Count,
            number =>
            {
                var done = plans[number].Check();
                progress.Step();
                return done;
            },
            (number, done) => progress.Aside(() =>
            {
                WriteProblems(done.Result.Problems);
                forms.Add(done.Result, done.Changes);
                explained?.Look(done.Result);
                earlier.AddRange(done.Changes?.Problems ?? []);
                code = Math.Max(code, ExitCodes.Of(done.Result, plans[number].Governed.FailOn, plans[number].Governed.NotAssessedFails));
            }));
        return (code, earlier);
    }

    private void WriteProblems(IReadOnlyList<Problem> problems)
    {
        if (problems.Count > 0)
        {
            TerminalWriter.Write(streams.Error, streams.ErrorColour, ProblemLines.Lines(problems));
        }
    }
}
