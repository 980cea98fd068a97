using System.CommandLine;
using Laygate.Checking.Baselines;
using Laygate.Cli.Arguments;
using Laygate.Cli.Checking;
using Laygate.Cli.Files;
using Laygate.Cli.Output;
using Laygate.Model.Plans;
using Laygate.Rules.Definitions;
using Laygate.Rules.Results;

namespace Laygate.Cli.Verbs;

/// <summary>The command <c>baseline</c>: records the findings of today, so that they do not count again.</summary>
internal sealed class BaselineCommand : Verb
{
    private const string Words = """
        Records the findings that warn or fail today, so that they do not count again.
        A later `laygate check --baseline FILE`, or `baseline: FILE` in laygate.yaml, shows
        them but counts only findings that are new or have grown worse. What guards lives
        (rules of severity A) is never recorded.

        Usage
          laygate baseline FILES… --output FILE [options]

        Without FILES the plans are taken that the nearest `laygate.yaml` names. Run it again
        to leave out what has been mended.

        Options
          --output FILE          the baseline; it names plans by relative path
          --rules NAME|PATH      add a specification, as for `laygate check`
          --departures FILE      departures, as for `laygate check`
          --stage STAGE          stage, as for `laygate check`
          --date YYYY-MM-DD      day of checking; usually today
          --help                 show this

        Example
          laygate baseline 'jobs/**/*.yaml' --output baseline.json

        """;

    private readonly Argument<string[]> files = new("FILES") { Arity = ArgumentArity.ZeroOrMore };
    private readonly Option<string[]> rules = Values.Rules();
    private readonly Option<string[]> departures = new("--departures") { Arity = ArgumentArity.OneOrMore, AllowMultipleArgumentsPerToken = false };
    private readonly Option<string> stage = new("--stage");
    private readonly Option<string> output = new("--output");
    private readonly Option<string> date = new("--date");

    public BaselineCommand()
        : base("baseline", Words)
    {
        Add(files);
        foreach (var option in (Option[])[rules, departures, stage, output, date])
        {
            Add(option);
        }
    }

    /// <inheritdoc/>
    public override Request Read(ParseResult parsed, TimeProvider clock)
    {
        var path = Values.Needed("--output", parsed.GetValue(output));
        var arguments = new CheckArguments
        {
            Files = parsed.GetValue(files) ?? [],
            Rules = Values.NotEmpty("--rules", parsed.GetValue(rules)),
            Departures = Values.NotEmpty("--departures", parsed.GetValue(departures)),
            Stage = Values.Word<Stage>("--stage", parsed.GetValue(stage)),
            Outputs = [],
            Date = Values.Day(parsed.GetValue(date)) ?? Values.Today(clock),
            All = false,
            Remedies = false,
            WithoutBaseline = true,
            StdinName = "standard input",
        };
        return new Request.Do(host => Run(host, arguments, path));
    }

    private static int Run(Host host, CheckArguments arguments, string path)
    {
        var sessions = new CheckSessions(host.Pipeline, arguments, host.Version);
        var plans = GovernedPlans.Of(sessions, arguments, host.Streams);
        ResultOutput.KeepApart(path, plans.Where(plan => plan.Input.Read is not null).Select(plan => plan.Input.Name));
        var (problems, counts) = (sessions.Problems.ToList(), (Plans: 0, Known: 0, Lives: 0));
        using var spool = new Spool(Path.GetTempPath());
        using var baseline = new BaselineWriter(spool, arguments.Date);
        InOrder.Run(plans.Count, number => plans[number].Check().Result, (_, result) =>
        {
            problems.AddRange(result.Problems);
            foreach (var report in result.Reports)
            {
                var lives = report.Findings.Count(finding => finding is { Status: Status.Warn or Status.Fail, Severity: Severity.A });
                counts = (counts.Plans + 1, counts.Known + baseline.Add(BaselinePaths.Of(path, report.File), report), counts.Lives + lives);
            }
        });
        if (problems.Count > 0)
        {
            return host.Streams.Refuse(problems);
        }

        baseline.End();
        ResultOutput.WriteFile(path, spool);
        host.Streams.Text(FormattableString.Invariant($"{counts.Known} findings of {counts.Plans} plans are recorded in {path}.\n")
            + (counts.Lives > 0 ? FormattableString.Invariant($"{counts.Lives} findings guard lives (severity A): they are not recorded and go on counting.\n") : string.Empty));
        return ExitCodes.Clean;
    }
}
