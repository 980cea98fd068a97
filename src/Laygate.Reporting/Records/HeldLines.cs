using Laygate.Reporting.Language;
using Laygate.Reporting.Terminal;
using Laygate.Reporting.Text;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Records;

/// <summary>What became of the limits on a terminal: the decision first.</summary>
public static class HeldLines
{
    /// <summary>All lines.</summary>
    /// <param name="report">The report.</param>
    /// <param name="full">Whether every limit and every row is shown.</param>
    /// <param name="width">Width of the terminal.</param>
    public static IReadOnlyList<TerminalLine> Of(HeldReport report, bool full, int width)
    {
        var page = new Page(width, cuts: false);
        page.Flow(0, 2, [new TextSpan(TextStyle.Heading, HeldWords.Says(report))]);
        page.Flow(0, 2, [new TextSpan(TextStyle.Quiet, $"{PlainText.Show(report.Plan.PlanTitle ?? report.Plan.PlanId)} ({PlainText.Show(report.Plan.PlanId)}). {HeldWords.Decision(report)}")]);
        if (report.Record.About is { } about)
        {
            page.Flow(0, 2, [new TextSpan(TextStyle.Quiet, PlainText.Show(about))]);
        }

        foreach (var section in HeldSections.Of(report, full))
        {
            page.Blank();
            page.Flow(0, 0, [new TextSpan(TextStyle.Heading, section.Title)]);
            foreach (var line in section.Lines)
            {
                page.Flow(2, 4, [new TextSpan(TextStyle.Plain, line)]);
            }
        }

        page.Blank();
        foreach (var problem in report.Refused)
        {
            page.Flow(0, 2, [new TextSpan(TextStyle.Plain, "Not read: " + LedgerWords.Row(problem))]);
        }

        foreach (var sentence in Caution.Brief)
        {
            page.Flow(0, 2, [new TextSpan(TextStyle.Quiet, sentence)]);
        }

        return page.Take();
    }
}
