using Laygate.Model.Plans;
using Laygate.Reporting.Language;

namespace Laygate.Cli.Arguments;

/// <summary>Where the forms of one result go.</summary>
internal static class OutputTargets
{
    /// <summary>Words of the parts that may be included.</summary>
    public static IReadOnlyList<string> Included { get; } =
        [.. Enum.GetValues<FindingGroup>().Where(group => group is not (FindingGroup.Failed or FindingGroup.Warned)).Select(Words.Of)];

    /// <summary>
    /// Reads <c>--format FORMAT</c> with <c>--output FILE</c>, and <c>--output FORMAT=FILE</c>, which may be repeated. Forms that go to files of
    /// their own leave standard output to the form of <c>--format</c>, or to the console.
    /// </summary>
    /// <exception cref="ArgumentProblem">They do not fit together.</exception>
    public static IReadOnlyList<OutputTarget> Of(OutputFormat? format, IReadOnlyList<string> outputs)
    {
        var pairs = outputs.Select(Pair).ToList();
        var plain = pairs.Where(pair => pair.Format is null).ToList();
        if (plain.Count > 1)
        {
            throw new ArgumentProblem("--output names two files for one form. Write for example: --output sarif=findings.sarif --output html=report.html");
        }

        var first = new OutputTarget(format ?? OutputFormat.Console, plain.Count > 0 ? plain[0].File : null);
        var all = pairs.Where(pair => pair.Format is not null).Select(pair => new OutputTarget(pair.Format!.Value, pair.File)).Prepend(first).ToList();
        if (all.Where(target => target.File is not null).GroupBy(target => Path.GetFullPath(target.File!), StringComparer.Ordinal).FirstOrDefault(same => same.Count() > 1) is { } twice)
        {
            throw new ArgumentProblem($"--output would write `{twice.First().File}` twice: give each form a file of its own.");
        }

        return all;
    }

    /// <summary>Reads the parts to include.</summary>
    /// <exception cref="ArgumentProblem">A word is not known.</exception>
    public static IReadOnlyList<FindingGroup> Include(IReadOnlyList<string> words) => [.. words.Select(word =>
        Included.Contains(word, StringComparer.Ordinal) ? Words.Find<FindingGroup>(word)!.Value : throw Values.NotKnown("--include", word, Included)).Distinct()];

    // A file name that holds `=` is told from a form by what stands before it.
    private static (OutputFormat? Format, string File) Pair(string text)
    {
        var cut = text.IndexOf('=', StringComparison.Ordinal);
        if (cut < 0 || text[..cut].Contains('/', StringComparison.Ordinal) || text[..cut].Contains('\\', StringComparison.Ordinal))
        {
            return (null, text);
        }

        var word = text[..cut];
        if (Words.Find<OutputFormat>(word) is not { } format)
        {
            throw new ArgumentProblem(Values.NotKnown("--output FORMAT=FILE", word, Words.Of<OutputFormat>()).Message + $" A file whose name holds `=` is written `./{text}`.");
        }

        return text.Length > cut + 1 ? (format, text[(cut + 1)..]) : throw new ArgumentProblem($"--output {word}= needs a file.");
    }
}
