using System.Globalization;
using System.Text;
using Laygate.Reporting.Comparing;
using Laygate.Reporting.Language;
using Laygate.Reporting.Runs;
using Laygate.Reporting.Sheet;

namespace Laygate.Reporting.Markdown;

/// <summary>Markdown for a review comment. Text of a plan is shown as it was written, never as markup, link or HTML.</summary>
public static class MarkdownWriter
{
    /// <summary>Most letters: code hosts refuse a comment of more than 65,536.</summary>
    public const int Longest = 60_000;

    /// <summary>Writes a run as UTF-8 without a byte-order mark.</summary>
    public static void Write(ReportedRun run, Stream output)
    {
        var text = new StringBuilder("# Plan check\n\n");
        foreach (var problem in run.AllProblems)
        {
            var at = problem.Position is { } position ? string.Create(CultureInfo.InvariantCulture, $":{position.Line}:{position.Column}") : string.Empty;
            text.Append(CultureInfo.InvariantCulture, $"- **Cannot be read:** {MarkdownText.Of(problem.File)}{at}: {MarkdownText.Of(problem.Message)} {MarkdownText.Of(problem.Hint)}\n");
        }

        if (run.AllProblems.Any())
        {
            text.Append('\n');
        }

        foreach (var report in run.Reports)
        {
            new MarkdownReport(text, report, EarlierState.Of(run, report)).Write();
            text.Append('\n');
        }

        Cut(text);
        text.Append("### Before you rely on this\n\n");
        foreach (var sentence in Caution.Sentences)
        {
            text.Append(CultureInfo.InvariantCulture, $"{MarkdownText.Of(sentence)}\n\n");
        }

        output.Write(Encoding.UTF8.GetBytes(text.ToString().TrimEnd() + "\n"));
    }

    // What is left out is said; the worst stands first and stays.
    private static void Cut(StringBuilder text)
    {
        if (text.Length <= Longest - 3000)
        {
            return;
        }

        var end = Longest - 3000;
        while (text[end - 1] != '\n')
        {
            end--;
        }

        text.Length = end;
        text.Append("\n**More was found than fits into a comment: see the report in another form.**\n\n");
    }
}
