using Laygate.Reporting.Language;
using Laygate.Reporting.Text;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Terminal;

/// <summary>Why something could not be read: file, line and column, message, and what to do.</summary>
public static class ProblemLines
{
    /// <summary>Lines for problems, in the given order. They are not broken, so that editors can jump to the place.</summary>
    public static IReadOnlyList<TerminalLine> Lines(IEnumerable<Problem> problems) => [.. problems.SelectMany(Lines)];

    private static IEnumerable<TerminalLine> Lines(Problem problem)
    {
        yield return new TerminalLine([new TextSpan(TextStyle.Heading, PlainText.Show(Places.Full(problem.File, problem.Position))), new TextSpan(TextStyle.Plain, ": " + PlainText.Show(problem.Message))]);
        if (problem.Hint is { Length: > 0 } hint)
        {
            yield return new TerminalLine([new TextSpan(TextStyle.Plain, "  " + PlainText.Show(hint))]);
        }
    }
}
