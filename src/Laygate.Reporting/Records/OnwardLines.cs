using Laygate.Reporting.Language;
using Laygate.Reporting.Terminal;
using Laygate.Reporting.Text;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Records;

/// <summary>The rest of a shift on a terminal. What has to be decided stands first.</summary>
public static class OnwardLines
{
    private const int NameWidth = 16;

    /// <summary>All lines.</summary>
    /// <param name="report">The rest of the shift.</param>
    /// <param name="full">Whether all that it started from, every change tried and every remark are shown.</param>
    public static IReadOnlyList<TerminalLine> Of(OnwardReport report, bool full)
    {
        var result = report.Result;
        var lines = new List<TerminalLine>();
        lines.AddRange(OnwardWords.Says(result).Select(sentence => Line(TextStyle.Heading, sentence)));
        lines.Add(Line(TextStyle.Quiet, $"{OnwardWords.Plan(report)}. {OnwardWords.Moment(result)}."));
        if (OnwardWords.Said(result) is { } said)
        {
            lines.Add(Line(TextStyle.Plain, said));
        }

        if (report.Record.About is { } about)
        {
            lines.Add(Line(TextStyle.Quiet, PlainText.Show(about)));
        }

        lines.AddRange([Empty, .. Pairs(OnwardTables.Whole(result))]);
        foreach (var course in result.Courses)
        {
            lines.AddRange([Empty, Line(TextStyle.Heading, $"{PlainText.Show(course.Course)} ({PlainText.Show(course.Mix)})"), .. Pairs(OnwardTables.Course(course))]);
        }

        lines.AddRange([Empty, .. result.Notes.Select(note => Line(TextStyle.Quiet, "- " + OnwardNotes.Of(note)))]);
        if (full)
        {
            lines.AddRange([Line(TextStyle.Heading, "Started from"), .. Pairs(OnwardTables.Facts(result), 34)]);
            lines.AddRange(result.Tried.Count > 0 ? [Empty, Line(TextStyle.Heading, "Changes tried"), .. Pairs(OnwardTables.Tried(result), 60)] : []);
        }

        lines.AddRange(LedgerLines.Rows("Not read", report.Refused, full ? int.MaxValue : 10));
        lines.AddRange(LedgerLines.Rows("Seen while reading", report.Remarks, full ? int.MaxValue : 3));
        lines.AddRange([Empty, .. Caution.Brief.Select(sentence => Line(TextStyle.Quiet, sentence))]);
        return lines;
    }

    private static TerminalLine Empty => Line(TextStyle.Plain, string.Empty);

    private static IEnumerable<TerminalLine> Pairs(IEnumerable<(string Name, string Value)> pairs, int width = NameWidth) =>
        pairs.Select(pair => Line(TextStyle.Plain, $"  {pair.Name + new string(' ', Math.Max(0, width - TextWidth.Of(pair.Name)))} {pair.Value}"));

    private static TerminalLine Line(TextStyle style, string text) => new([new TextSpan(style, text)]);
}
