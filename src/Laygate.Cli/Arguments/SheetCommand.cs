using System.CommandLine;
using System.Globalization;

namespace Laygate.Cli.Arguments;

/// <summary>What <c>laygate sheet</c> was asked to do.</summary>
/// <param name="File">The plan, or <c>-</c> for standard input.</param>
/// <param name="Rules">Names or paths of specifications.</param>
/// <param name="Draft">Whether to make it as a draft, also of a plan that fails.</param>
/// <param name="Output">File to write to; null: standard output.</param>
/// <param name="Date">Date of checking and of the sheet.</param>
internal sealed record SheetArguments(string File, IReadOnlyList<string> Rules, bool Draft, string? Output, DateOnly Date);

/// <summary>The command <c>sheet</c>: its options, and their values turned into <see cref="SheetArguments"/>.</summary>
internal sealed class SheetCommand : Verb
{
    private readonly Argument<string[]> files = new("PLAN") { Arity = ArgumentArity.ZeroOrMore };
    private readonly Option<string[]> rules = new("--rules") { Arity = ArgumentArity.OneOrMore, AllowMultipleArgumentsPerToken = false };
    private readonly Option<bool> draft = new("--draft") { Arity = ArgumentArity.Zero };
    private readonly Option<string> output = new("--output");
    private readonly Option<string> date = new("--date");

    public SheetCommand()
        : base("sheet")
    {
        Add(files);
        foreach (var option in (Option[])[rules, draft, output, date])
        {
            Add(option);
        }
    }

    /// <inheritdoc/>
    public override string Summary => "make the site sheet of a plan";

    /// <inheritdoc/>
    public override string Help => HelpText.Sheet;

    /// <inheritdoc/>
    public override Func<Host, int> Read(ParseResult parsed, TimeProvider clock)
    {
        var arguments = Values(parsed, clock);
        return host => new SheetRun(host.Pipeline, host.Streams, host.Version).Run(arguments);
    }

    private SheetArguments Values(ParseResult parsed, TimeProvider clock)
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
            [.. (parsed.GetValue(rules) ?? []).Select(rule => OptionValues.NotEmpty("--rules", rule)!)],
            parsed.GetValue(draft),
            OptionValues.NotEmpty("--output", parsed.GetValue(output)),
            OptionValues.Day(parsed.GetValue(date)) ?? DateOnly.FromDateTime(clock.GetLocalNow().DateTime));
    }
}

/// <summary>Values that several commands read alike.</summary>
internal static class OptionValues
{
    /// <summary>A day; null where none is given.</summary>
    /// <exception cref="ArgumentProblem">It is no day.</exception>
    public static DateOnly? Day(string? text)
    {
        if (text is null)
        {
            return null;
        }

        return DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day)
            ? day
            : throw new ArgumentProblem($"--date takes a day such as 2027-05-14, not `{text}`.");
    }

    /// <summary>A name; null where none is given.</summary>
    /// <exception cref="ArgumentProblem">It is empty.</exception>
    public static string? NotEmpty(string option, string? text) => text is null || text.Trim().Length > 0
        ? text
        : throw new ArgumentProblem($"{option} needs a name.");
}
