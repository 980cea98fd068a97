using System.Globalization;
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
        yield return new TerminalLine([new TextSpan(TextStyle.Heading, Place(problem)), new TextSpan(TextStyle.Plain, ": " + PlainText.Show(problem.Message))]);
        if (problem.Hint is { Length: > 0 } hint)
        {
            yield return new TerminalLine([new TextSpan(TextStyle.Plain, "  " + PlainText.Show(hint))]);
        }
    }

    private static string Place(Problem problem) => problem.Position is { } position
        ? string.Create(CultureInfo.InvariantCulture, $"{PlainText.Show(problem.File)}:{position.Line}:{position.Column}")
        : PlainText.Show(problem.File);
}
