using Laygate.Reporting.Language;
using Laygate.Reporting.Terminal;
using Laygate.Reporting.Text;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Records;

/// <summary>What a trial length proves, on a terminal.</summary>
public static class TrialLines
{
    /// <summary>All lines.</summary>
    /// <param name="report">The report.</param>
    /// <param name="width">Width of the terminal.</param>
    public static IReadOnlyList<TerminalLine> Of(TrialReport report, int width)
    {
        var page = new Page(width, cuts: false);
        void Say(string text, TextStyle style = TextStyle.Plain, int indent = 0) => page.Flow(indent, indent + 2, [new TextSpan(style, text)]);
        foreach (var sentence in TrialWords.Says(report))
        {
            Say(sentence, TextStyle.Heading);
        }

        Say($"{PlainText.Show(report.PlanTitle ?? report.PlanId)} ({PlainText.Show(report.PlanId)}), course {PlainText.Show(report.Growth.Course.Id)}.", TextStyle.Quiet);
        if (report.Record.About is { } about)
        {
            Say(PlainText.Show(about), TextStyle.Quiet);
        }

        page.Blank();
        var rows = TrialWords.Rows(report).ToList();
        var widths = Enumerable.Range(0, rows[0].Length).Select(column => rows.Max(row => TextWidth.Of(row[column]))).ToList();
        List<TerminalLine> lines = [.. page.Take(), .. rows.Select(row => new TerminalLine([new TextSpan(TextStyle.Plain, string.Join("  ", row.Select((cell, column) => cell.PadRight(widths[column]))).TrimEnd())]))];
        page.Blank();
        Say(TrialWords.Gauge(report));
        page.Blank();
        Say("Does it speak for this plan?", TextStyle.Heading);
        foreach (var cover in report.Growth.Covers)
        {
            Say(TrialWords.Cover(report, cover), indent: 2);
        }

        page.Blank();
        Say("For the plan, in place of what is stated", TextStyle.Heading);
        lines.AddRange(page.Take());
        lines.Add(new TerminalLine([new TextSpan(TextStyle.Plain, "  " + TrialWords.Reached(report))]));
        foreach (var difference in TrialWords.Differences(report))
        {
            Say(difference, indent: 2);
        }

        foreach (var problem in report.Refused)
        {
            Say("Not read: " + LedgerWords.Row(problem));
        }

        page.Blank();
        foreach (var sentence in Caution.Brief)
        {
            Say(sentence, TextStyle.Quiet);
        }

        return [.. lines, .. page.Take()];
    }
}
