using System.CommandLine;
using System.CommandLine.Parsing;
using Laygate.Cli.Verbs;
using Laygate.Reading.Schema;

namespace Laygate.Cli.Arguments;

/// <summary>What the program was asked to do.</summary>
internal abstract record Request
{
    /// <summary>Show help.</summary>
    /// <param name="Text">The help.</param>
    internal sealed record Help(string Text) : Request;

    /// <summary>Show the version.</summary>
    internal sealed record Version : Request;

    /// <summary>Check plans.</summary>
    /// <param name="Arguments">How.</param>
    internal sealed record Check(CheckArguments Arguments) : Request;

    /// <summary>Anything else that a command does.</summary>
    /// <param name="Run">Does it and gives the exit code.</param>
    internal sealed record Do(Func<Host, int> Run) : Request;
}

/// <summary>Reads the command line. A token that begins with <c>-</c> is never a file unless it follows <c>--</c>; the library alone would swallow a misspelt option as a file name.</summary>
internal sealed class CommandLine(TimeProvider clock)
{
    private static readonly string[] HelpWords = ["--help", "-h", "-?"];

    private readonly IReadOnlyList<Verb> verbs = All();

    /// <summary>Reads the arguments.</summary>
    /// <exception cref="ArgumentProblem">They cannot be used; the message says why.</exception>
    public Request Read(IReadOnlyList<string> arguments)
    {
        var options = arguments.TakeWhile(argument => argument is not "--").ToList();
        if (options.Exists(HelpWords.Contains))
        {
            return new Request.Help(verbs.FirstOrDefault(verb => options.Contains(verb.Name, StringComparer.Ordinal))?.Help ?? HelpText.Program);
        }

        if (arguments is ["--version"])
        {
            return new Request.Version();
        }

        var chosen = VerbOf(arguments);
        RequireKnownOptions(chosen, options);
        return chosen.Read(Parse(chosen, arguments), clock);
    }

    private static IReadOnlyList<Verb> All()
    {
        Verb[] all = [];
        all =
        [
            new CheckCommand(), new SizeCommand(), new SheetCommand(), new VerifyCommand(), new RulesCommand(), new ExplainCommand(), new SchemaCommand(), new ExpandCommand(), new ImportCommand(), new NewCommand(),
            new RecordCommand(), new LedgerCommand(), new OnwardCommand(), new MeasuredCommand(), new LotsCommand(), new HeldCommand(), new TrialCommand(),
            new ConfirmCommand(), new CompareCommand(), new BaselineCommand(), new CompletionCommand(() => all),
        ];
        return all;
    }

    private Verb VerbOf(IReadOnlyList<string> arguments)
    {
        if (arguments.Count == 0)
        {
            throw new ArgumentProblem("No command is given. Write for example: laygate check plan.yaml");
        }

        if (verbs.FirstOrDefault(verb => string.Equals(verb.Name, arguments[0], StringComparison.Ordinal)) is { } known)
        {
            return known;
        }

        var near = NearestNames.Of(arguments[0], [.. verbs.Select(verb => verb.Name), "--version", "--help"]) is [var meant, ..] ? $" Did you mean `{meant}`?" : string.Empty;
        throw new ArgumentProblem($"There is no command `{arguments[0]}`.{near} Write for example: laygate check plan.yaml");
    }

    private static void RequireKnownOptions(Verb verb, List<string> tokens)
    {
        var known = verb.Options.Select(option => option.Name).Append("--help").ToList();
        foreach (var token in tokens.Where(token => token.Length > 1 && token[0] == '-'))
        {
            var name = token.Split('=', ':')[0];
            if (!known.Contains(name, StringComparer.Ordinal))
            {
                var near = NearestNames.Of(name, known) is [var meant, ..] ? $" Did you mean `{meant}`?" : $" `laygate {verb.Name} --help` lists them.";
                throw new ArgumentProblem($"There is no option `{name}`.{near} A file whose name begins with `-` must follow `--`.");
            }
        }
    }

    private static ParseResult Parse(Verb verb, IReadOnlyList<string> arguments)
    {
        var root = new RootCommand { verb };
        var parsed = root.Parse(arguments, new ParserConfiguration { ResponseFileTokenReplacer = null, EnablePosixBundling = false });
        return parsed.Errors.Count == 0
            ? parsed
            : throw new ArgumentProblem(string.Join(' ', parsed.Errors.Select(error => Words(verb, error))));
    }

    // The library's own sentences are resources that the native program does without.
    private static string Words(Verb verb, ParseError error) => error.SymbolResult is OptionResult option
        ? option.Tokens.Count == 0
            ? $"{option.Option.Name} needs a value."
            : $"{option.Option.Name} may be given only once, with one value."
        : $"The arguments cannot be read; see `laygate {verb.Name} --help`.";
}
