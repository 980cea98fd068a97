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
    /// <summary>Whether the cards are a page for print; otherwise Markdown.</summary>
    public bool IsPage { get; init; }

    /// <summary>Id of the only shift of a job that is wanted; null for all.</summary>
    public string? Shift { get; init; }

    /// <summary>Language of the cards.</summary>
    public string Language { get; init; } = CardTexts.Languages[0];
}

/// <summary>The command <c>sheet</c>: its options, and their values turned into <see cref="SheetArguments"/>.</summary>
internal sealed class SheetCommand : Verb
{
    private readonly Argument<string[]> files = new("PLAN") { Arity = ArgumentArity.ZeroOrMore };
    private readonly Option<string[]> rules = Values.Rules();
    private readonly Option<bool> draft = new("--draft") { Arity = ArgumentArity.Zero };
    private readonly Option<string> output = new("--output");
    private readonly Option<string> shift = new("--shift");
    private readonly Option<string> date = new("--date");
    private readonly Option<string> format = new("--format");
    private readonly Option<string> language = new("--language");

    private const string Markdown = "markdown";
    private const string Html = "html";

    public SheetCommand()
        : base("sheet", HelpText.Sheet)
    {
        Add(files);
        foreach (var option in (Option[])[rules, draft, shift, output, date, format, language])
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
            Shift = Values.NotEmpty("--shift", parsed.GetValue(shift)),
            IsPage = IsPage(parsed.GetValue(format) ?? Markdown),
            Language = Known(parsed.GetValue(language)),
        };
    }

    private static bool IsPage(string format) => format is Markdown or Html ? format is Html : throw Values.NotKnown("--format", format, [Markdown, Html]);

    private static string Known(string? language) => language is null ? CardTexts.Languages[0]
        : CardTexts.Languages.Contains(language, StringComparer.Ordinal) ? language : throw Values.NotKnown("--language", language, CardTexts.Languages);
}
