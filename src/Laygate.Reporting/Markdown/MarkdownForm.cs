using System.Globalization;
using System.Text;
using Laygate.Reporting.Comparing;
using Laygate.Reporting.Language;
using Laygate.Reporting.Runs;
using Laygate.Reporting.Text;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Markdown;

/// <summary>Markdown file by file. What cannot be read stands first, so that the text waits for the end; no more of it is kept than fits into a comment.</summary>
public sealed class MarkdownForm : IRunForm
{
    private readonly Stream output;
    private readonly List<Problem> problems;
    private readonly StringBuilder plans = new();

    /// <summary>Begins.</summary>
    /// <param name="head">The run.</param>
    /// <param name="output">Where to write; stays open.</param>
    public MarkdownForm(RunHead head, Stream output)
    {
        this.output = output;
        problems = [.. head.Problems];
    }

    /// <inheritdoc/>
    public void Add(FileResult result, ComparisonResult? changes)
    {
        problems.AddRange(result.Problems);
        if (result.Job is { } job)
        {
            MarkdownJob.Write(plans, result, job);
        }

        foreach (var report in result.Reports.TakeWhile(_ => plans.Length <= MarkdownWriter.Longest))
        {
            new MarkdownReport(plans, report, EarlierState.Of(changes, report)).Write();
            plans.Append('\n');
        }
    }

    /// <inheritdoc/>
    public void End()
    {
        var text = new StringBuilder("# Plan check\n\n");
        foreach (var problem in problems)
        {
            var at = problem.Position is { } position ? string.Create(CultureInfo.InvariantCulture, $":{position.Line}:{position.Column}") : string.Empty;
            text.Append(CultureInfo.InvariantCulture, $"- **Cannot be read:** {MarkdownText.Of(problem.File)}{at}: {MarkdownText.Of(problem.Message)} {MarkdownText.Of(problem.Hint)}\n");
        }

        if (problems.Count > 0)
        {
            text.Append('\n');
        }

        text.Append(plans);
        Cut(text);
        text.Append("### Before you rely on this\n\n");
        foreach (var sentence in Caution.Sentences)
        {
            text.Append(CultureInfo.InvariantCulture, $"{MarkdownText.Of(sentence)}\n\n");
        }

        output.Write(Encoding.UTF8.GetBytes(text.ToString().TrimEnd() + "\n"));
    }

    /// <inheritdoc/>
    public void Dispose() => plans.Clear();

    // What is left out is said; the worst stands first and stays.
    private static void Cut(StringBuilder text)
    {
        if (text.Length <= MarkdownWriter.Longest - 3000)
        {
            return;
        }

        var end = MarkdownWriter.Longest - 3000;
        while (text[end - 1] != '\n')
        {
            end--;
        }

        text.Length = end;
        text.Append("\n**More was found than fits into a comment: see the report in another form.**\n\n");
    }
}
