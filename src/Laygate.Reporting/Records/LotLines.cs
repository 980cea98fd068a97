using Laygate.Reporting.Language;
using Laygate.Reporting.Terminal;
using Laygate.Reporting.Text;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Records;

/// <summary>The lot report on a terminal: what it comes to first, then each number with what it follows from.</summary>
public static class LotLines
{
    /// <summary>All lines.</summary>
    /// <param name="report">The report.</param>
    /// <param name="full">Whether results, working and places are shown, not only what they come to.</param>
    public static IReadOnlyList<TerminalLine> Of(AcceptanceReport report, bool full)
    {
        var lines = LotSections.Says(report).Select(sentence => Line(TextStyle.Heading, sentence)).ToList();
        lines.Add(Line(TextStyle.Quiet, $"{PlainText.Show(report.PlanTitle ?? report.PlanId)} ({PlainText.Show(report.PlanId)}). {PlainText.Show(report.Scheme.Title)} ({PlainText.Show(report.Scheme.Name)})."));
        if (report.Record.About is { } about)
        {
            lines.Add(Line(TextStyle.Quiet, PlainText.Show(about)));
        }

        lines.AddRange(LotSections.Of(report).Where(section => full || section.Level < 4).SelectMany(section => Section(section, full)));
        lines.AddRange(report.Refused.Select(problem => Line(TextStyle.Plain, "Not read: " + LedgerWords.Row(problem))));
        lines.Add(Line(TextStyle.Plain, string.Empty));
        lines.AddRange(Caution.Brief.Select(sentence => Line(TextStyle.Quiet, sentence)));
        return lines;
    }

    private static IEnumerable<TerminalLine> Section(LotSection section, bool full)
    {
        var indent = new string(' ', 2 * (section.Level - 2));
        yield return Line(TextStyle.Plain, string.Empty);
        yield return Line(TextStyle.Heading, indent + section.Title);
        foreach (var sentence in section.Lines)
        {
            yield return Line(TextStyle.Plain, $"{indent}  {sentence}");
        }

        // Places are what a crew needs; results and working only whoever does the sums again.
        if (section.Head.Count == 0 || (!full && section.Level > 2))
        {
            yield break;
        }

        var rows = section.Rows.Prepend(section.Head).ToList();
        var widths = Enumerable.Range(0, section.Head.Count).Select(column => rows.Max(row => TextWidth.Of(row[column]))).ToList();
        foreach (var row in rows)
        {
            yield return Line(TextStyle.Plain, indent + "  " + string.Join("  ", row.Select((cell, column) => cell + new string(' ', widths[column] - TextWidth.Of(cell)))).TrimEnd());
        }
    }

    private static TerminalLine Line(TextStyle style, string text) => new([new TextSpan(style, text)]);
}
