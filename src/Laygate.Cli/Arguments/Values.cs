using System.CommandLine;
using System.Globalization;
using Laygate.Model.Plans;
using Laygate.Reading.Schema;

namespace Laygate.Cli.Arguments;

/// <summary>Values of options that several commands have.</summary>
internal static class Values
{
    /// <summary>An option that names specifications.</summary>
    public static Option<string[]> Rules() => new("--rules") { Arity = ArgumentArity.OneOrMore, AllowMultipleArgumentsPerToken = false };

    /// <summary>A word of a closed list.</summary>
    public static T? Word<T>(string option, string? word)
        where T : struct, Enum
    {
        if (word is null)
        {
            return null;
        }

        var known = Words.Of<T>();
        return Words.Find<T>(word) ?? throw NotKnown(option, word, known);
    }

    /// <summary>Refuses a word that is in no list.</summary>
    public static ArgumentProblem NotKnown(string option, string word, IReadOnlyList<string> known)
    {
        var near = NearestNames.Of(word, known) is [var meant, ..] ? $" Did you mean {meant}?" : string.Empty;
        return new ArgumentProblem($"{option} takes {string.Join(", ", known.SkipLast(1))} or {known[^1]}, not `{word}`.{near}");
    }

    /// <summary>A day.</summary>
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

    /// <summary>Today, by the clock of the host.</summary>
    public static DateOnly Today(TimeProvider clock) => DateOnly.FromDateTime(clock.GetLocalNow().DateTime);

    /// <summary>A text that is more than blanks.</summary>
    public static string? NotEmpty(string option, string? text) => text is null || text.Trim().Length > 0
        ? text
        : throw new ArgumentProblem($"{option} needs a name.");

    /// <summary>Several such texts.</summary>
    public static IReadOnlyList<string> NotEmpty(string option, string[]? texts) => [.. (texts ?? []).Select(text => NotEmpty(option, text)!)];

    /// <summary>A text that must be given.</summary>
    public static string Needed(string option, string? text) => NotEmpty(option, text) ?? throw new ArgumentProblem($"{option} is missing.");
}
