using System.CommandLine;
using Laygate.Model.Plans;
using Laygate.Validation.Schema;

namespace Laygate.Cli.Arguments;

/// <summary>The command <c>check</c>: its options, and their values turned into <see cref="CheckArguments"/>.</summary>
internal sealed class CheckCommand : Verb
{
    private readonly Argument<string[]> files = new("FILES") { Arity = ArgumentArity.ZeroOrMore };
    private readonly Option<string[]> rules = new("--rules") { Arity = ArgumentArity.OneOrMore, AllowMultipleArgumentsPerToken = false };
    private readonly Option<string> stage = new("--stage");
    private readonly Option<string> failOn = new("--fail-on");
    private readonly Option<string> format = new("--format");
    private readonly Option<string> output = new("--output");
    private readonly Option<string> date = new("--date");
    private readonly Option<string> stdinName = new("--stdin-name");
    private readonly Option<bool> outlook = new("--outlook") { Arity = ArgumentArity.Zero };
    private readonly Option<bool> all = new("--all") { Arity = ArgumentArity.Zero };

    public CheckCommand()
        : base("check")
    {
        Add(files);
        foreach (var option in (Option[])[rules, stage, failOn, format, output, date, stdinName, outlook, all])
        {
            Add(option);
        }

        stage.CompletionSources.Add([.. Words.Of<Stage>()]);
        failOn.CompletionSources.Add([.. Words.Of<FailOn>()]);
        format.CompletionSources.Add([.. Words.Of<OutputFormat>()]);
    }

    /// <inheritdoc/>
    public override string Summary => "check plans";

    /// <inheritdoc/>
    public override string Help => HelpText.Check;

    /// <inheritdoc/>
    public override Func<Host, int> Read(ParseResult parsed, TimeProvider clock)
    {
        var arguments = Values(parsed, clock);
        return host => new CheckRun(host.Pipeline, host.Streams, host.Version).Run(arguments);
    }

    private CheckArguments Values(ParseResult parsed, TimeProvider clock)
    {
        var named = parsed.GetValue(files) ?? [];
        if (named.Length == 0)
        {
            throw new ArgumentProblem("No file is named. Write for example: laygate check plan.yaml");
        }

        return new CheckArguments
        {
            Files = named,
            Rules = [.. (parsed.GetValue(rules) ?? []).Select(rule => OptionValues.NotEmpty("--rules", rule)!)],
            Stage = Word<Stage>("--stage", parsed.GetValue(stage)),
            FailOn = Word<FailOn>("--fail-on", parsed.GetValue(failOn)) ?? FailOn.Fail,
            Format = Word<OutputFormat>("--format", parsed.GetValue(format)) ?? OutputFormat.Console,
            Output = OptionValues.NotEmpty("--output", parsed.GetValue(output)),
            Date = OptionValues.Day(parsed.GetValue(date)) ?? DateOnly.FromDateTime(clock.GetLocalNow().DateTime),
            Outlook = parsed.GetValue(outlook),
            All = parsed.GetValue(all),
            StdinName = OptionValues.NotEmpty("--stdin-name", parsed.GetValue(stdinName)) ?? "standard input",
        };
    }

    private static T? Word<T>(string option, string? word)
        where T : struct, Enum
    {
        if (word is null)
        {
            return null;
        }

        var known = Words.Of<T>();
        var near = NearestNames.Of(word, known) is [var meant, ..] ? $" Did you mean {meant}?" : string.Empty;
        return Words.Find<T>(word)
            ?? throw new ArgumentProblem($"{option} takes {string.Join(", ", known.SkipLast(1))} or {known[^1]}, not `{word}`.{near}");
    }
}
