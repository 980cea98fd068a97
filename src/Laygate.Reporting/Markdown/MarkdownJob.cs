using System.Globalization;
using System.Text;
using Laygate.Reporting.Language;
using Laygate.Reporting.Text;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Markdown;

/// <summary>A job of several shifts for a review comment: one row for each shift and one for what lies between them, before the reports on each.</summary>
internal static class MarkdownJob
{
    /// <summary>Writes the head of a job.</summary>
    /// <param name="text">Where to write.</param>
    /// <param name="result">Its file, with a report on what lies between the shifts and one for each of them.</param>
    /// <param name="job">The job.</param>
    public static void Write(StringBuilder text, FileResult result, JobSummary job)
    {
        text.Append(CultureInfo.InvariantCulture, $"## {MarkdownText.Of(job.Title ?? job.Id)}\n\n");
        text.Append(CultureInfo.InvariantCulture, $"{MarkdownText.Of(result.File)}, job {MarkdownText.Of(job.Id)}. **{MarkdownText.Of(JobWords.Verdict(result).Text)}**\n\n");
        Row(text, ["shift", "verdict", "fail", "warn", "when", "hours", "mix", "courses"]);
        Row(text, ["---", "---", "---:", "---:", "---", "---", "---:", "---"]);
        foreach (var (shift, report) in job.Shifts.Zip(JobWords.Shifts(result)))
        {
            Row(text, [shift.Id, .. Verdict(report), JobWords.When(shift), JobWords.Hours(shift), JobWords.Mass(shift), string.Join(", ", shift.Courses)]);
        }

        Row(text, ["between them", .. Verdict(result.Reports[0]), string.Empty, string.Empty, string.Empty, string.Empty]);
        text.Append('\n');
        Line(text, JobWords.Days(job).Count > 0 ? $"Mix by day: {string.Join("; ", JobWords.Days(job))}." : null);
        foreach (var lot in job.Lots)
        {
            Line(text, $"Lot {JobWords.Lot(lot)}.");
        }

        text.Append(job.Lots.Count > 0 || job.Days.Count > 0 ? "\n" : string.Empty);
    }

    private static string[] Verdict(Report report) =>
        [VerdictWords.Of(report.Counts).Text.ToLowerInvariant(), Count(report, FindingGroup.Failed), Count(report, FindingGroup.Warned)];

    private static string Count(Report report, FindingGroup group) => FindingGroups.Count(report.Counts, group).ToString(CultureInfo.InvariantCulture);

    private static void Line(StringBuilder text, string? line)
    {
        if (line is not null)
        {
            text.Append("- ").Append(Cell(line)).Append('\n');
        }
    }

    private static void Row(StringBuilder text, IEnumerable<string> cells) => text.Append("| ").AppendJoin(" | ", cells.Select(Cell)).Append(" |\n");

    private static string Cell(string cell) => MarkdownText.Of(cell.Replace(PlainText.Glue, ' '));
}
