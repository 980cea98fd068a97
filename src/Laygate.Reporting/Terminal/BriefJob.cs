using System.Globalization;
using Laygate.Reporting.Language;
using Laygate.Reporting.Text;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Terminal;

/// <summary>A job of several shifts in at most 60 lines, or somewhat more where it has many shifts: a line for each shift and for what lies between, each with its worst findings.</summary>
internal sealed class BriefJob
{
    private const int MostOfDays = 3;
    private const int MostOfLots = 4;

    private readonly FileResult result;
    private readonly JobSummary job;
    private readonly int width;
    private readonly IReadOnlyList<(IReadOnlyList<TerminalLine> Head, BriefFindings Findings)> parts;

    /// <summary>Lays a job out.</summary>
    /// <param name="result">Its file.</param>
    /// <param name="job">The job.</param>
    /// <param name="terminal">Columns of the terminal.</param>
    public BriefJob(FileResult result, JobSummary job, int terminal)
    {
        (this.result, this.job, width) = (result, job, BriefReport.WidthOf(terminal));
        parts =
        [
            .. JobWords.Shifts(result).Zip(job.Shifts).Select(one => (ShiftLine(one.First, one.Second), Findings(one.First))),
            (Line("Between the shifts", result.Reports[0]), Findings(result.Reports[0])),
        ];
    }

    /// <summary>The lines.</summary>
    public IReadOnlyList<TerminalLine> Lines()
    {
        var (head, tail) = (Head(), Tail());
        var room = BriefReport.MostLines - head.Count - tail.Count - parts.Sum(part => part.Head.Count) - parts.Count - 1;
        var shares = Shares(room);
        return
        [
            .. head,
            .. parts.SelectMany((part, index) => (IReadOnlyList<TerminalLine>)[new TerminalLine([]), .. part.Head, .. part.Findings.Within(shares[index])]),
            new TerminalLine([]),
            .. tail,
        ];
    }

    // An equal share each; what one does not need goes to the others, and nobody gets less than what is never left out.
    private int[] Shares(int room)
    {
        var (shares, open) = (new int[parts.Count], Enumerable.Range(0, parts.Count).OrderBy(index => parts[index].Findings.Ideal).ToList());
        for (var number = 0; number < open.Count; number++)
        {
            var part = parts[open[number]].Findings;
            shares[open[number]] = Math.Max(part.Least, Math.Min(part.Ideal, room / (open.Count - number)));
            room -= shares[open[number]];
        }

        return shares;
    }

    private IReadOnlyList<TerminalLine> Head()
    {
        var page = new Page(width, cuts: false);
        var between = result.Reports[0];
        page.Flow(0, 2, [new TextSpan(TextStyle.Heading, BriefText.Clip(PlainText.Show(job.Title ?? job.Id), width))]);
        page.Flow(0, 2, [new TextSpan(TextStyle.Plain, $"{PlainText.Show(result.File)}: job {PlainText.Show(job.Id)}{(between.Revision is { Length: > 0 } revision ? $", revision {PlainText.Show(revision)}" : string.Empty)}")]);
        page.Flow(0, 2, [new TextSpan(TextStyle.Plain, $"Stage {Model.Plans.Words.Of(between.Stage)}, each shift by the limits of its day")]);
        page.Flow(0, 2, [new TextSpan(TextStyle.Plain, BriefText.Clip(BriefHead.Rules(between), width))]);
        if (between.Uses.Count > 0)
        {
            page.Flow(0, 2, [new TextSpan(TextStyle.Plain, BriefText.Clip(Places.UsesInBrief(between), width))]);
        }

        var (text, tone) = JobWords.Verdict(result);
        page.Flow(0, 2, [new TextSpan(Styles.Of(tone), text)]);
        foreach (var sentence in Caution.Brief)
        {
            page.Flow(0, 2, [new TextSpan(TextStyle.Heading, sentence)]);
        }

        page.Put(BriefText.List(0, new TextSpan(TextStyle.Quiet, "Mix by day: "), JobWords.Days(job), width, MostOfDays));
        foreach (var lot in job.Lots.Take(MostOfLots))
        {
            page.Flow(0, 2, [new TextSpan(TextStyle.Quiet, "Lot "), new TextSpan(TextStyle.Plain, JobWords.Lot(lot))]);
        }

        if (job.Lots.Count > MostOfLots)
        {
            page.Flow(0, 2, [new TextSpan(TextStyle.Quiet, $"{(job.Lots.Count - MostOfLots).ToString(CultureInfo.InvariantCulture)} more lots: --format html or json")]);
        }

        return page.Take();
    }

    private IReadOnlyList<TerminalLine> ShiftLine(Report report, ShiftOfJob shift) => Line(
        $"{PlainText.Show(shift.Id)}, {JobWords.When(shift)}, {JobWords.Hours(shift)}, {JobWords.Mass(shift)}, {string.Join(" and ", shift.Courses.Select(PlainText.Show))}", report);

    private IReadOnlyList<TerminalLine> Line(string name, Report report)
    {
        var page = new Page(width, cuts: false);
        var (text, tone) = VerdictWords.Of(report.Counts);
        var counted = VerdictWords.Counted(report.Counts).Where(part => part.Group is not (FindingGroup.Passed or FindingGroup.NotApplicable))
            .Select(part => $"{part.Count.ToString(CultureInfo.InvariantCulture)}{PlainText.Glue}{Names.Of(part.Group).Replace(' ', PlainText.Glue)}");
        page.Flow(0, 2, [new TextSpan(TextStyle.Heading, name + ": "), new TextSpan(Styles.Of(tone), text + " "), new TextSpan(TextStyle.Plain, $"({string.Join(", ", counted)})")]);
        return page.Take();
    }

    private IReadOnlyList<TerminalLine> Tail()
    {
        var page = new Page(width, cuts: false);
        page.Flow(0, 2, [new TextSpan(TextStyle.Quiet, "One finding in full: --explain RULE[@ADDRESS]; all: --full; passes, too: --all; one shift as a plan: laygate expand JOB --shift ID")]);
        return page.Take();
    }

    private BriefFindings Findings(Report report) => new(report, report.Findings.Where(BriefReport.Decides), width);
}
