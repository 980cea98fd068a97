using System.CommandLine;
using Laygate.Model.Plans;
using Laygate.Reporting.Terminal;

namespace Laygate.Cli.Arguments;

/// <summary>The command <c>check</c>: its options, and their values turned into <see cref="CheckArguments"/>.</summary>
internal sealed class CheckCommand : Verb
{
    private readonly Argument<string[]> files = new("FILES") { Arity = ArgumentArity.ZeroOrMore };
    private readonly Option<string[]> rules = Values.Rules();
    private readonly Option<string[]> departures = new("--departures") { Arity = ArgumentArity.OneOrMore, AllowMultipleArgumentsPerToken = false };
    private readonly Option<string> stage = new("--stage");
    private readonly Option<string> failOn = new("--fail-on");
    private readonly Option<string> format = new("--format");
    private readonly Option<string[]> output = new("--output") { Arity = ArgumentArity.OneOrMore, AllowMultipleArgumentsPerToken = false };
    private readonly Option<string[]> include = new("--include") { Arity = ArgumentArity.OneOrMore, AllowMultipleArgumentsPerToken = false };
    private readonly Option<string> date = new("--date");
    private readonly Option<string> stdinName = new("--stdin-name");
    private readonly Option<string> baseline = new("--baseline");
    private readonly Option<string> changedSince = new("--changed-since");
    private readonly Option<string> previous = new("--previous");
    private readonly Option<bool> outlook = new("--outlook") { Arity = ArgumentArity.Zero };
    private readonly Option<bool> quick = new("--quick") { Arity = ArgumentArity.Zero };
    private readonly Option<bool> full = new("--full") { Arity = ArgumentArity.Zero };
    private readonly Option<bool> all = new("--all") { Arity = ArgumentArity.Zero };
    private readonly Option<string> explain = new("--explain");

    public CheckCommand()
        : base("check", HelpText.Check)
    {
        Add(files);
        foreach (var option in (Option[])[rules, departures, stage, failOn, format, output, include, date, baseline, changedSince, previous, stdinName, outlook, quick, full, all, explain])
        {
            Add(option);
        }

        stage.CompletionSources.Add([.. Words.Of<Stage>()]);
        failOn.CompletionSources.Add([.. Words.Of<FailOn>()]);
        format.CompletionSources.Add([.. Words.Of<OutputFormat>()]);
        include.CompletionSources.Add([.. OutputTargets.Included]);
    }

    /// <inheritdoc/>
    public override Request Read(ParseResult parsed, TimeProvider clock) => new Request.Check(Consistent(new CheckArguments
    {
        Files = parsed.GetValue(files) ?? [],
        Rules = Values.NotEmpty("--rules", parsed.GetValue(rules)),
        Departures = Values.NotEmpty("--departures", parsed.GetValue(departures)),
        Stage = Values.Word<Stage>("--stage", parsed.GetValue(stage)),
        FailOn = Values.Word<FailOn>("--fail-on", parsed.GetValue(failOn)),
        Outputs = OutputTargets.Of(Values.Word<OutputFormat>("--format", parsed.GetValue(format)), Values.NotEmpty("--output", parsed.GetValue(output))),
        Include = OutputTargets.Include(parsed.GetValue(include) ?? []),
        Date = Values.Day(parsed.GetValue(date)) ?? Values.Today(clock),
        Outlook = parsed.GetValue(outlook),
        Quick = parsed.GetValue(quick) && parsed.GetValue(outlook)
            ? throw new ArgumentProblem("A quick check makes no outlook. Leave out --quick or --outlook.")
            : parsed.GetValue(quick),
        Full = parsed.GetValue(full),
        All = parsed.GetValue(all),
        Explain = Values.NotEmpty("--explain", parsed.GetValue(explain)) is { } asked ? FindingChoice.Of(asked) : null,
        Baseline = Values.NotEmpty("--baseline", parsed.GetValue(baseline)),
        Previous = Values.NotEmpty("--previous", parsed.GetValue(previous)),
        ChangedSince = Values.NotEmpty("--changed-since", parsed.GetValue(changedSince)),
        StdinName = Values.NotEmpty("--stdin-name", parsed.GetValue(stdinName)) ?? "standard input",
    }));

    // An option that no chosen form shows would be lost without a word.
    private static CheckArguments Consistent(CheckArguments arguments) => arguments switch
    {
        { Previous: not null } when !arguments.Outputs.Any(target => target.Format is OutputFormat.Html or OutputFormat.Markdown) =>
            throw new ArgumentProblem("--previous shows in html and markdown only: add --format or --output for one of them, or use `laygate compare`."),
        { Explain: not null } when !arguments.Outputs.Any(target => target.Format == OutputFormat.Console) =>
            throw new ArgumentProblem("--explain shows on the console only; the other forms hold every finding in full."),
        { Explain: not null } when arguments.Full || arguments.All => throw new ArgumentProblem("--explain shows one finding, --full and --all show all of them: choose one."),
        _ => arguments,
    };
}
