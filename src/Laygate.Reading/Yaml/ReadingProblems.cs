using System.Globalization;

namespace Laygate.Reading.Yaml;

/// <summary>The wording of problems that more than one reader part reports.</summary>
internal static class ReadingProblems
{
    /// <summary>Problems in file order, each once, at most as many as are listed for a file; what several documents leave out is counted together.</summary>
    public static List<ReadingProblem> InOrder(IEnumerable<ReadingProblem> problems)
    {
        var parts = problems.ToLookup(problem => problem.Unlisted > 0);
        var ordered = parts[false]
            .DistinctBy(problem => (problem.Position, problem.Message))
            .OrderBy(problem => problem.Position).ThenBy(problem => problem.Message, StringComparer.Ordinal)
            .ToList();
        if (ordered.Count <= ReadingLimits.Problems)
        {
            return [.. ordered, .. parts[true]];
        }

        var unlisted = ordered.Count - ReadingLimits.Problems + parts[true].Sum(problem => problem.Unlisted);
        var more = string.Create(CultureInfo.InvariantCulture, $"{unlisted:N0} more problems are not listed.");
        return [.. ordered.Take(ReadingLimits.Problems), new ReadingProblem(more, ordered[ReadingLimits.Problems].Position) { Unlisted = unlisted }];
    }

    public static ReadingProblem TooManyNodes(TextSpan span) => new(
        string.Create(CultureInfo.InvariantCulture, $"The file holds more than {ReadingLimits.Nodes:N0} keys and values, aliases counted as often as they are used."),
        span,
        "Use fewer or smaller aliases, or split the file.");

    public static ReadingProblem TooDeep(TextSpan span) => new(
        string.Create(CultureInfo.InvariantCulture, $"Lists and groups are nested more than {ReadingLimits.Depth} levels deep here."),
        span,
        "Check for brackets that are never closed.");

    public static ReadingProblem TooManyAliases(TextSpan span) => new(
        string.Create(CultureInfo.InvariantCulture, $"The file uses more than {ReadingLimits.Aliases} aliases."),
        span,
        "Write the values out.");

    public static ReadingProblem Tag(TextSpan span) => new(
        "A type tag (a word that begins with `!`) is not accepted; types follow from the key.",
        span,
        "Remove the tag, or put quotes around a text that begins with `!`.");

    public static ReadingProblem MergeKey(TextSpan span) => new(
        "The merge key `<<` is not accepted: it hides which value is meant.",
        span,
        "Write the keys out, or give the alias to a key of its own (`key: *name`).");

    public static ReadingProblem DuplicateKey(ScalarToken key, TextSpan first) => new(
        string.Create(CultureInfo.InvariantCulture, $"The key {TokenNames.Quote(key.Text)} stands here for the second time; the first is at line {first.Line}, column {first.Column}."),
        key.Span,
        "Keep one of the two.");

    public static ReadingProblem Tab(int line, int column) => new(
        "A tab stands in the indentation of this line.", new TextSpan(line, column, line, column + 1), "Indent with blanks.");

    public static ReadingProblem MissingKey(TextSpan span) => new(
        "The key before the colon is missing.", span, "Write `key: value`.");
}
