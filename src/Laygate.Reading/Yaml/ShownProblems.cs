using Laygate.Rules.Results;

namespace Laygate.Reading.Yaml;

/// <summary>Turns what is wrong with a file into what a person reads: in file order, no more of it than is listed, and no more of a text than a message can bear.</summary>
internal static class ShownProblems
{
    private const char Mark = '`';

    /// <summary>Longest text between back-ticks; what readers quote themselves is shorter (<see cref="TokenNames.Quote"/>), what they advise to write may be this long.</summary>
    private const int LongestQuote = 200;

    /// <summary>Longest stretch of a message without a back-tick; only a text that holds one itself makes such a stretch.</summary>
    private const int LongestProse = 600;

    private const int Kept = 60;

    /// <summary>The problems of one file.</summary>
    /// <param name="file">Name as it is to be shown.</param>
    /// <param name="problems">The problems, in any order.</param>
    public static IReadOnlyList<Problem> Of(string file, IEnumerable<ReadingProblem> problems) =>
        [.. ReadingProblems.InOrder(problems).Select(problem => new Problem(problem.Position.File ?? file, Short(problem.Message), problem.Hint is { } hint ? Short(hint) : null, Spans.Of(problem.Position with { File = null })))];

    /// <summary>A message in which texts that somebody made long are cut.</summary>
    public static string Short(string message)
    {
        if (message.Length <= LongestQuote)
        {
            return message;
        }

        var parts = message.Split(Mark);
        return string.Join(Mark, parts.Select((part, index) => part.Length > (index % 2 == 0 ? LongestProse : LongestQuote) ? Cut(part) : part));
    }

    private static string Cut(string text) => string.Concat(text.AsSpan(0, char.IsHighSurrogate(text[Kept - 1]) ? Kept - 1 : Kept), "…");
}
