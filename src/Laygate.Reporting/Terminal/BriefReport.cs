using Laygate.Reporting.Language;
using Laygate.Model.Plans;
using Laygate.Reporting.Text;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Terminal;

/// <summary>
/// A plan in at most 60 lines: the verdict, the findings that decide, what the plan does not say, and how to see more. What has no room is grouped by
/// rule; a failure that guards lives or that the contract sets is never left out. Everything stands in the full form and in JSON.
/// </summary>
internal sealed class BriefReport
{
    /// <summary>Most lines of a plan.</summary>
    internal const int MostLines = 60;

    private const int Narrowest = 80;
    private const int Widest = 100;
    private const int LeastOpen = 2;
    private const int Blanks = 4;

    private readonly Report report;
    private readonly int width;
    private readonly BriefFindings first;
    private readonly BriefFindings others;
    private readonly BriefSilence silence;
    private readonly BriefParts parts;

    /// <summary>Lays a report out.</summary>
    /// <param name="report">The report.</param>
    /// <param name="terminal">Columns of the terminal.</param>
    public BriefReport(Report report, int terminal)
    {
        (this.report, width) = (report, WidthOf(terminal));
        var (silent, shown) = BriefSilence.Split([.. report.Findings.Where(Decides)]);
        first = new BriefFindings(report, shown.Where(FindingOrder.IsMust), width);
        others = new BriefFindings(report, shown.Where(finding => !FindingOrder.IsMust(finding)), width);
        silence = new BriefSilence(silent, width);
        parts = new BriefParts(report, width);
    }

    /// <summary>Columns of the short form: a narrower terminal breaks its lines itself, so that a place stays in one piece.</summary>
    public static int WidthOf(int terminal) => Math.Clamp(terminal, Narrowest, Widest);

    /// <summary>The lines.</summary>
    public IReadOnlyList<TerminalLine> Lines()
    {
        var head = BriefHead.Lines(report, width);
        var remarks = BriefHead.Remarks(report, width);
        IReadOnlyList<TerminalLine> behind = [.. parts.Outlook(), .. parts.Others()];
        var tail = Tail();
        var room = MostLines - head.Count - tail.Count - Blanks;
        var least = first.Least + silence.Least + others.Least + parts.Open(LeastOpen).Count;
        behind = room - remarks.Count - behind.Count < least ? [] : behind;
        remarks = room - remarks.Count - behind.Count < least ? [] : remarks;
        return Apart([[.. head, .. remarks], .. Body(room - remarks.Count - behind.Count), behind, tail]);
    }

    /// <summary>Whether a finding decides: known ones do not count, and what is permitted, passes, is open or does not apply decides nothing.</summary>
    internal static bool Decides(Finding finding) =>
        !finding.Known && FindingGroups.Of(finding) is FindingGroup.Failed or FindingGroup.Warned or FindingGroup.NotAssessed or FindingGroup.NeedsPerson;

    // What is never left out comes first; then silence on which lives depend; then what was computed; then what else is not stated or not due.
    private List<IReadOnlyList<TerminalLine>> Body(int room)
    {
        var open = parts.Open(LeastOpen).Count;
        var musts = first.Within(room - silence.Least - others.Least - open);
        room -= musts.Count;
        var said = silence.Lines(Math.Min(Math.Max(room / 3, room - others.Ideal - open), room - others.Least - open));
        room -= said.Count;
        var rest = others.Within(room - open);
        var due = parts.Open(Math.Max(LeastOpen, room - rest.Count));
        return silence.IsFirst ? [musts, said, rest, due] : [[.. musts, .. rest], said, due];
    }

    private IReadOnlyList<TerminalLine> Tail()
    {
        var page = new Page(width, cuts: false);
        if (report.Stage == Stage.Concept)
        {
            page.Flow(0, 2, [new TextSpan(TextStyle.Plain, $"First figures, with usual values for what is open: laygate size {PlainText.Show(report.File)}")]);
        }

        page.Flow(0, 2, [new TextSpan(TextStyle.Quiet, "One finding in full: --explain RULE[@ADDRESS]; all: --full; passes, too: --all")]);
        return page.Take();
    }

    // A blank line between parts, as long as there is room for it.
    private static List<TerminalLine> Apart(IReadOnlyList<IReadOnlyList<TerminalLine>> all)
    {
        var shown = all.Where(part => part.Count > 0).ToList();
        var spare = MostLines - shown.Sum(part => part.Count);
        return [.. shown.SelectMany((part, index) => index > 0 && index <= spare ? [new TerminalLine([]), .. part] : part)];
    }
}
