using System.Globalization;
using Laygate.Reporting.Language;
using Laygate.Reporting.Text;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Terminal;

/// <summary>The report for a person at a terminal: usually in short, in full when asked. Worst first, each kind counted apart, never one mark for the whole plan. Plan by plan: nothing waits.</summary>
/// <param name="settings">Width and how much is listed.</param>
public sealed class TerminalReport(TerminalSettings settings)
{
    private readonly Page page = new(settings.Width);

    /// <summary>Lines for the plans of one run, in the given order, with the caution below. Files that could not be read are left to <see cref="ProblemLines"/>.</summary>
    public static IReadOnlyList<TerminalLine> Lines(IReadOnlyList<FileResult> results, TerminalSettings settings)
    {
        var form = new TerminalReport(settings);
        return [.. results.SelectMany(form.Add), .. form.End()];
    }

    /// <summary>Lines for the plans of the next file.</summary>
    public IReadOnlyList<TerminalLine> Add(FileResult result)
    {
        if (result.Job is { } job && settings is { IsBrief: true })
        {
            page.Blank();
            page.Put(new BriefJob(result, job, settings.Width).Lines());
            return page.Take();
        }

        foreach (var report in result.Reports)
        {
            if (LinesOf(report) is { Count: > 0 } lines)
            {
                page.Blank();
                page.Put(lines);
            }
        }

        return page.Take();
    }

    /// <summary>Lines below the last plan.</summary>
    public IReadOnlyList<TerminalLine> End()
    {
        if (page.HasLines && settings is { IsBrief: false, Explain: null })
        {
            WriteCaution(page);
        }

        return page.Take();
    }

    private IReadOnlyList<TerminalLine> LinesOf(Report report)
    {
        if (settings.IsBrief)
        {
            return new BriefReport(report, settings.Width).Lines();
        }

        return settings.Explain is { } choice ? Explained(report, choice, settings.Width) : InFull(report);
    }

    private List<TerminalLine> InFull(Report report)
    {
        var full = new Page(settings.Width);
        Write(full, report, settings);
        return [.. full.Take()];
    }

    private static List<TerminalLine> Explained(Report report, FindingChoice choice, int width)
    {
        var own = new Page(width);
        var block = new FindingBlock(own, report.File, isFull: true);
        foreach (var finding in report.Findings.Where(choice.Holds))
        {
            block.Write(FindingGroups.Of(finding), finding);
        }

        return own.HasLines ? [.. BriefHead.Lines(report, BriefReport.WidthOf(width)), new TerminalLine([]), .. own.Take()] : [];
    }

    private static void Write(Page page, Report report, TerminalSettings settings)
    {
        WriteHead(page, report);
        WriteCounts(page, report.Counts);
        WriteBaseline(page, report.Baseline);
        WriteDepartures(page, report.Departures);
        new FindingList(page, report, settings).Write();
        new OutlookPart(page).Write(report.Outlook);
        new AssumptionList(page, settings).Write(report.Assumptions);
    }

    private static void WriteHead(Page page, Report report)
    {
        WriteNotes(page, report.Notes.Where(IsFirst));
        var name = PlainText.Show(report.PlanTitle ?? report.PlanId);
        page.Flow(0, 2, [new TextSpan(TextStyle.Heading, name)]);
        page.Flow(0, 2, [new TextSpan(TextStyle.Plain, Identity(report))]);
        page.Flow(0, 2, [new TextSpan(TextStyle.Plain, Judged(report))]);
        page.Flow(0, 2, [new TextSpan(TextStyle.Plain, Rules(report))]);
        if (report.Settings is { } settings)
        {
            page.Flow(0, 2, [new TextSpan(TextStyle.Plain, $"Settings: {PlainText.Show(settings)}.")]);
        }

        if (report.Uses.Count > 0)
        {
            page.Flow(0, 2, [new TextSpan(TextStyle.Plain, Places.Uses(report))]);
        }

        WriteNotes(page, report.Notes.Where(note => !IsFirst(note)));
        page.Blank();
    }

    /// <summary>Whether a remark stands before everything else.</summary>
    internal static bool IsFirst(Engineering.Quantities.Note note) => string.Equals(note.Id, FindingNotes.SpecificationUnread, StringComparison.Ordinal);

    private static void WriteNotes(Page page, IEnumerable<Engineering.Quantities.Note> notes)
    {
        foreach (var note in notes)
        {
            page.Flow(0, 2, [new TextSpan(TextStyle.Warn, "Note: "), new TextSpan(TextStyle.Plain, NoteWords.Glued(note))]);
        }
    }

    /// <summary>File, plan and revision.</summary>
    internal static string Identity(Report report)
    {
        var document = report.Document > 1 ? $", plan {report.Document} of the file" : string.Empty;
        var revision = report.Revision is { Length: > 0 } known ? $", revision {PlainText.Show(known)}" : string.Empty;
        return $"{PlainText.Show(report.File)}{document}: plan {PlainText.Show(report.PlanId)}{revision}";
    }

    private static string Judged(Report report)
    {
        var day = report.JudgedFor.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
        return $"Judged at stage {Model.Plans.Words.Of(report.Stage)}, by the limits in force on {day} ({(report.JudgedForShift ? "the shift" : "the day of checking: the plan states no shift")}).";
    }

    private static string Rules(Report report)
    {
        var layers = report.Layers.Select(layer =>
            $"{PlainText.Show(layer.Title)} {PlainText.Show(layer.Edition)}".TrimEnd()
            + (layer.Status is { Length: > 0 } status ? $" ({PlainText.Show(status)})" : string.Empty));
        var hash = report.BookHash.Length > 12 ? report.BookHash[..12] : report.BookHash;
        return $"Rules: {string.Join("; then ", layers)}. Rule book {PlainText.Show(hash)}.";
    }

    private static void WriteCounts(Page page, Counts counts)
    {
        var spans = new List<TextSpan>();
        foreach (var group in Enum.GetValues<FindingGroup>())
        {
            var count = FindingGroups.Count(counts, group);
            if (count > 0 || group is FindingGroup.Failed or FindingGroup.Warned or FindingGroup.NotAssessed or FindingGroup.NeedsPerson or FindingGroup.Open)
            {
                var text = $"{count.ToString(CultureInfo.InvariantCulture)} {Names.Of(group)}".Replace(' ', '\u00A0');
                spans.Add(new TextSpan(count == 0 ? TextStyle.Quiet : Styles.Of(group), text));
                spans.Add(new TextSpan(TextStyle.Quiet, ", "));
            }
        }

        page.Flow(0, 0, spans.Take(spans.Count - 1));
    }

    private static void WriteBaseline(Page page, BaselineUse? use)
    {
        if (use is not null)
        {
            page.Flow(0, 2, [new TextSpan(TextStyle.Plain, BaselineWords.Of(use))]);
        }
    }

    // A departure that does not hold stands before the findings: somebody relies on it.
    private static void WriteDepartures(Page page, IReadOnlyList<DepartureUse> uses)
    {
        var broken = uses.Where(use => use.State != DepartureState.Holds).ToList();
        if (broken.Count == 0)
        {
            return;
        }

        page.Blank();
        page.Flow(0, 2, [new TextSpan(TextStyle.Heading, $"Departures that do not hold: {broken.Count.ToString(CultureInfo.InvariantCulture)}"), new TextSpan(TextStyle.Quiet, " (each counts as a warning)")]);
        foreach (var use in broken)
        {
            page.Flow(2, 4, [new TextSpan(TextStyle.Warn, "WARN"), new TextSpan(TextStyle.Plain, "\u00A0 " + DepartureWords.Of(use)), new TextSpan(TextStyle.Quiet, $" ({PlainText.Show(use.Departure.File)})")]);
        }
    }

    private static void WriteCaution(Page page)
    {
        page.Blank();
        page.Flow(0, 2, [new TextSpan(TextStyle.Heading, "Before you rely on this")]);
        foreach (var sentence in Caution.Sentences)
        {
            page.Flow(2, 2, [new TextSpan(TextStyle.Plain, sentence)]);
        }
    }
}
