using System.CommandLine;

namespace Laygate.Cli.Arguments;

/// <summary>The command <c>verify</c>: runs verification cases.</summary>
internal sealed class VerifyCommand : Verb
{
    private readonly Argument<string[]> files = new("FILES") { Arity = ArgumentArity.ZeroOrMore };
    private readonly Option<string> format = new("--format");

    public VerifyCommand()
        : base("verify")
    {
        Add(files);
        Add(format);
        format.CompletionSources.Add("console", "json", "markdown");
    }

    /// <inheritdoc/>
    public override string Summary => "compare the computation with published results";

    /// <inheritdoc/>
    public override string Help => """
        Runs verification cases: what the program computes, beside published results,
        exact solutions and worked examples. There is no setting that `check` has not.

        Usage
          laygate verify [FILES…] [--format console|json|markdown]

        Without FILES the cases that ship with the program are run.

        Exit codes
          0  every check is within its tolerance
          1  a check is off
          2  a file could not be read

        """;

    /// <inheritdoc/>
    public override Func<Host, int> Read(ParseResult parsed, TimeProvider clock)
    {
        var named = parsed.GetValue(files) ?? [];
        var form = parsed.GetValue(format) ?? "console";
        return form is "console" or "json" or "markdown"
            ? host => new VerifyRun(host.Streams, host.Version).Run(named, form)
            : throw new ArgumentProblem($"--format takes console, json or markdown, not `{form}`.");
    }
}
