using System.Globalization;
using Laygate.Engineering.Records;
using Laygate.Reporting.Language;
using Laygate.Reporting.Terminal;
using Laygate.Reporting.Text;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Records;

/// <summary>The ledger on a terminal. What the foreman needs stands first.</summary>
public static class LedgerLines
{
    private const int NameWidth = 16;

    /// <summary>All lines.</summary>
    /// <param name="report">The ledger.</param>
    /// <param name="full">Whether the working, every remark and the raw files are shown.</param>
    public static IReadOnlyList<TerminalLine> Of(LedgerReport report, bool full)
    {
        var lines = new List<TerminalLine>();
        lines.AddRange(LedgerWords.Says(report.Ledger).Select(sentence => Line(TextStyle.Heading, sentence)));
        lines.Add(Line(TextStyle.Quiet, $"{LedgerWords.Plan(report)}. {LedgerWords.Moment(report.Ledger)}."));
        if (report.Record.About is { } about)
        {
            lines.Add(Line(TextStyle.Quiet, PlainText.Show(about)));
        }

        foreach (var course in report.Ledger.Courses)
        {
            lines.AddRange([Empty, .. Course(course, full)]);
        }

        lines.AddRange([Empty, Line(TextStyle.Plain, LedgerWords.Stops(report.Ledger.Stops))]);
        lines.AddRange(report.Ledger.Notes.Select(note => Line(TextStyle.Quiet, "- " + LedgerWords.Note(note))));
        lines.AddRange(Rows("Not read", report.Refused, full ? int.MaxValue : 10));
        lines.AddRange(Rows("Seen while reading", report.Remarks, full ? int.MaxValue : 3));
        if (full)
        {
            lines.AddRange([Empty, Line(TextStyle.Heading, "Raw files"), .. report.Record.Files.Select(file => Line(TextStyle.Plain, string.Create(CultureInfo.InvariantCulture, $"  {PlainText.Show(file.File)}: {file.Holds}, {file.Rows} rows, {file.Refused} refused, SHA-256 {file.Hash}")))]);
        }

        lines.AddRange([Empty, .. Caution.Brief.Select(sentence => Line(TextStyle.Quiet, sentence))]);
        return lines;
    }

    private static TerminalLine Empty => Line(TextStyle.Plain, string.Empty);

    private static IEnumerable<TerminalLine> Course(CourseLedger course, bool full)
    {
        yield return Line(TextStyle.Heading, $"{PlainText.Show(course.Course)} ({PlainText.Show(course.Mix)}), {LedgerNumbers.Count(course.Discharged, "load", "loads")} discharged");
        yield return Columns("", "so far", "plan", LedgerTables.LastLoads(course));
        foreach (var row in LedgerTables.Laid(course))
        {
            yield return Columns(row.Name, row.Shift, row.Plan, row.Last);
        }

        foreach (var (name, value) in LedgerTables.Left(course).Concat(full ? LedgerTables.Working(course) : []))
        {
            yield return Line(TextStyle.Plain, $"  {Pad(name, NameWidth)} {value}");
        }
    }

    /// <summary>Rows that were not read, or seen while reading.</summary>
    internal static IEnumerable<TerminalLine> Rows(string title, IReadOnlyList<Problem> problems, int most)
    {
        if (problems.Count == 0)
        {
            yield break;
        }

        yield return Empty;
        yield return Line(TextStyle.Heading, $"{title}: {LedgerNumbers.Count(problems.Count, "row or file", "rows or files")}");
        foreach (var problem in problems.Take(most))
        {
            yield return Line(TextStyle.Plain, $"  {LedgerWords.Row(problem)}");
            if (problem.Hint is { } hint)
            {
                yield return Line(TextStyle.Quiet, $"    {PlainText.Show(hint)}");
            }
        }

        if (problems.Count > most)
        {
            yield return Line(TextStyle.Quiet, $"  {(problems.Count - most).ToString(CultureInfo.InvariantCulture)} more: add --full.");
        }
    }

    private static TerminalLine Columns(string name, string shift, string plan, string last) =>
        Line(TextStyle.Plain, $"  {Pad(name, NameWidth)} {Pad(shift, 18)} {Pad(plan, 14)} {last}".TrimEnd());

    private static string Pad(string text, int width) => text + new string(' ', Math.Max(0, width - TextWidth.Of(text)));

    private static TerminalLine Line(TextStyle style, string text) => new([new TextSpan(style, text)]);
}
