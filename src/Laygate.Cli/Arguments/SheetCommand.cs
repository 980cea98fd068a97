using System.CommandLine;
using Laygate.Reporting.Cards;

namespace Laygate.Cli.Arguments;

/// <summary>What <c>laygate sheet</c> was asked to do.</summary>
/// <param name="File">The plan, or <c>-</c> for standard input.</param>
/// <param name="Rules">Names or paths of specifications.</param>
/// <param name="Draft">Whether to make it as a draft, also of a plan that fails.</param>
/// <param name="Output">File to write to; null: standard output.</param>
/// <param name="Date">Date of checking and of the sheet.</param>
internal sealed record SheetArguments(string File, IReadOnlyList<string> Rules, bool Draft, string? Output, DateOnly Date)
{
    /// <summary>Language of cards for print; null: the sheet in Markdown.</summary>
    public string? CardLanguage { get; init; }
}

/// <summary>The command <c>sheet</c>: its options, and their values turned into <see cref="SheetArguments"/>.</summary>
internal sealed class SheetCommand : Verb
{
    private readonly Argument<string[]> files = new("PLAN") { Arity = ArgumentArity.ZeroOrMore };
    private readonly Option<string[]> rules = Values.Rules();
    private readonly Option<bool> draft = new("--draft") { Arity = ArgumentArity.Zero };
    private readonly Option<string> output = new("--output");
    private readonly Option<string> date = new("--date");
    private readonly Option<string> format = new("--format");
    private readonly Option<string> language = new("--language");

    private const string Markdown = "markdown";
    private const string Html = "html";

    public SheetCommand()
        : base("sheet", HelpText.Sheet)
    {
        Add(files);
        foreach (var option in (Option[])[rules, draft, output, date, format, language])
        {
            Add(option);
        }

        format.CompletionSources.Add(Markdown, Html);
        language.CompletionSources.Add([.. CardTexts.Languages]);
    }

    /// <inheritdoc/>
    public override Request Read(ParseResult parsed, TimeProvider clock)
    {
        var arguments = Asked(parsed, clock);
        return new Request.Do(host => new SheetRun(host.Pipeline, host.Streams, host.Version).Run(arguments));
    }

    private SheetArguments Asked(ParseResult parsed, TimeProvider clock)
    {
        var named = parsed.GetValue(files) ?? [];
        if (named.Length != 1)
        {
            throw new ArgumentProblem(named.Length == 0
                ? "No plan is named. Write for example: laygate sheet plan.yaml"
                : "A site sheet is made of one file at a time.");
        }

        return new SheetArguments(
            named[0],
            Values.NotEmpty("--rules", parsed.GetValue(rules)),
            parsed.GetValue(draft),
            Values.NotEmpty("--output", parsed.GetValue(output)),
            Values.Day(parsed.GetValue(date)) ?? Values.Today(clock))
        {
            CardLanguage = Language(parsed.GetValue(format) ?? Markdown, parsed.GetValue(language)),
        };
    }

    private static string? Language(string format, string? language)
    {
        if (format is not (Markdown or Html))
        {
            throw Values.NotKnown("--format", format, [Markdown, Html]);
        }

        if (language is not null && !CardTexts.Languages.Contains(language, StringComparer.Ordinal))
        {
            throw Values.NotKnown("--language", language, CardTexts.Languages);
        }

        return format is Html ? language ?? CardTexts.Languages[0]
            : language is null ? null : throw new ArgumentProblem("--language goes with --format html; the sheet in Markdown is in English.");
    }
}
