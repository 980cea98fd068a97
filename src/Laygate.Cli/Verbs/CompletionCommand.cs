using System.CommandLine;
using System.CommandLine.Completions;
using Laygate.Cli.Arguments;

namespace Laygate.Cli.Verbs;

/// <summary>The command <c>completion</c>: a script that lets a shell complete commands, options and words. The script is plain text: nothing is started while one types.</summary>
internal sealed class CompletionCommand : Verb
{
    private const string Words = """
        Prints a script that completes commands, options and their words in a shell.

        Usage
          laygate completion SHELL

        SHELL is bash, zsh or fish.

        Examples
          laygate completion bash > ~/.local/share/bash-completion/completions/laygate
          laygate completion zsh > ~/.zfunc/_laygate
          laygate completion fish > ~/.config/fish/completions/laygate.fish

        """;

    private readonly Argument<string[]> shell = new("SHELL") { Arity = ArgumentArity.ZeroOrMore };
    private readonly Func<IReadOnlyList<Verb>> verbs;

    /// <summary>Makes the command.</summary>
    /// <param name="verbs">All commands; asked only when a script is printed.</param>
    public CompletionCommand(Func<IReadOnlyList<Verb>> verbs)
        : base("completion", Words)
    {
        this.verbs = verbs;
        Add(shell);
    }

    /// <inheritdoc/>
    public override Request Read(ParseResult parsed, TimeProvider clock)
    {
        var listed = verbs().Select(verb => new CompletionWords(
            verb.Name,
            [.. verb.Options.Select(option => new CompletionOption(option.Name, option.Arity.MaximumNumberOfValues > 0, Known(option))), new CompletionOption("--help", false, [])])).ToList();
        var script = parsed.GetValue(shell) switch
        {
            ["bash"] => CompletionScripts.Bash(listed),
            ["zsh"] => CompletionScripts.Zsh(listed),
            ["fish"] => CompletionScripts.Fish(listed),
            _ => throw new ArgumentProblem("Name one shell: bash, zsh or fish."),
        };
        return new Request.Do(host =>
        {
            host.Streams.Text(script);
            return ExitCodes.Clean;
        });
    }

    private static IReadOnlyList<string> Known(Option option) =>
        [.. option.CompletionSources.SelectMany(source => source(CompletionContext.Empty)).Select(item => item.Label).Order(StringComparer.Ordinal)];
}

/// <summary>What can be completed behind one command.</summary>
/// <param name="Name">The command.</param>
/// <param name="Options">Its options.</param>
internal sealed record CompletionWords(string Name, IReadOnlyList<CompletionOption> Options);

/// <summary>An option for completion.</summary>
/// <param name="Name">Its name.</param>
/// <param name="TakesValue">Whether a value follows.</param>
/// <param name="Words">The words it takes; empty: any, files are offered.</param>
internal sealed record CompletionOption(string Name, bool TakesValue, IReadOnlyList<string> Words);
