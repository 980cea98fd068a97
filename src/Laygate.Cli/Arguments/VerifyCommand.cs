using System.CommandLine;

namespace Laygate.Cli.Arguments;

/// <summary>The command <c>verify</c>: runs verification cases.</summary>
internal sealed class VerifyCommand : Verb
{
    private readonly Argument<string[]> files = new("FILES") { Arity = ArgumentArity.ZeroOrMore };
    private readonly Option<string> format = new("--format");

    public VerifyCommand()
        : base("verify", HelpText.Verify)
    {
        Add(files);
        Add(format);
        format.CompletionSources.Add("console", "json", "markdown");
    }

    /// <inheritdoc/>
    public override Request Read(ParseResult parsed, TimeProvider clock)
    {
        var named = parsed.GetValue(files) ?? [];
        var form = parsed.GetValue(format) ?? "console";
        return form is "console" or "json" or "markdown"
            ? new Request.Do(host => new VerifyRun(host.Streams, host.Version).Run(named, form))
            : throw new ArgumentProblem($"--format takes console, json or markdown, not `{form}`.");
    }
}
