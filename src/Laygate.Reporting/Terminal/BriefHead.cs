using System.Globalization;
using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;
using Laygate.Reporting.Language;
using Laygate.Reporting.Text;
using Laygate.Rules.Definitions;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Terminal;

/// <summary>The first lines of the short form: which plan, judged how, the verdict with the counts, and directly behind it the short caution.</summary>
internal static class BriefHead
{
    private const int MostLinesOfNotes = 10;
    private const int MostUnread = 2;

    /// <summary>Plan, stage, rule book, verdict and caution; above them only that a specification was not read.</summary>
    public static IReadOnlyList<TerminalLine> Lines(Report report, int width)
    {
        var page = new Page(width, cuts: false);
        WriteNotes(page, report.Notes.Where(TerminalReport.IsFirst).Take(MostUnread));
        page.Flow(0, 2, [new TextSpan(TextStyle.Heading, BriefText.Clip(PlainText.Show(report.PlanTitle ?? report.PlanId), width))]);
        page.Flow(0, 2, [new TextSpan(TextStyle.Plain, TerminalReport.Identity(report))]);
        page.Flow(0, 2, [new TextSpan(TextStyle.Plain, Judged(report))]);
        page.Flow(0, 2, [new TextSpan(TextStyle.Plain, BriefText.Clip(Rules(report), width))]);
        if (report.Uses.Count > 0)
        {
            page.Flow(0, 2, [new TextSpan(TextStyle.Plain, BriefText.Clip(Places.UsesInBrief(report), width))]);
        }

        page.Flow(0, 2, Verdict(report.Counts));
        foreach (var sentence in Caution.Brief)
        {
            page.Flow(0, 2, [new TextSpan(TextStyle.Heading, sentence)]);
        }

        return page.Take();
    }

    /// <summary>Remarks on the run, what a baseline did, and departures that do not hold: somebody relies on them.</summary>
    public static IReadOnlyList<TerminalLine> Remarks(Report report, int width)
    {
        var page = new Page(width, cuts: false);
        var unread = report.Notes.Where(TerminalReport.IsFirst).Skip(MostUnread);
        WriteNotes(page, unread.Concat(report.Notes.Where(note => !TerminalReport.IsFirst(note))));
        foreach (var use in report.Departures.Where(use => use.State != DepartureState.Holds))
        {
            page.Flow(0, 5, [new TextSpan(TextStyle.Warn, "WARN "), new TextSpan(TextStyle.Plain, $"{PlainText.Show(use.Departure.File)} {DepartureWords.Of(use)}")]);
        }

        if (report.Baseline is { } baseline)
        {
            page.Flow(0, 2, [new TextSpan(TextStyle.Plain, BaselineWords.Of(baseline))]);
        }

        var lines = page.Take();
        return lines.Count <= MostLinesOfNotes ? lines
            : [.. lines.Take(MostLinesOfNotes - 1), new TerminalLine([new TextSpan(TextStyle.Quiet, "More remarks on the run: --full.")])];
    }

    private static void WriteNotes(Page page, IEnumerable<Note> notes)
    {
        foreach (var note in notes)
        {
            page.Flow(0, 2, [new TextSpan(TextStyle.Warn, "Note: "), new TextSpan(TextStyle.Plain, NoteWords.Glued(note))]);
        }
    }

    private static string Judged(Report report)
    {
        var day = report.JudgedFor.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
        return $"Stage {Words.Of(report.Stage)}, limits of {day} ({(report.JudgedForShift ? "the shift" : "today: no shift is stated")})";
    }

    /// <summary>The rule book and its layers.</summary>
    internal static string Rules(Report report)
    {
        var hash = report.BookHash.Length > 12 ? report.BookHash[..12] : report.BookHash;
        var layers = report.Layers.Select(layer => layer.Layer == Layer.GeneralPractice ? $"{PlainText.Show(layer.Title)} {PlainText.Show(layer.Edition)}".TrimEnd() : PlainText.Show(layer.Name));
        return $"Rule book {PlainText.Show(hash)}: {string.Join(", then ", layers)}";
    }

    private static List<TextSpan> Verdict(Counts counts)
    {
        var (text, tone) = VerdictWords.Of(counts);
        var counted = VerdictWords.Counted(counts);
        List<TextSpan> spans = [new TextSpan(Styles.Of(tone), $"{text}: ")];
        foreach (var (group, count) in counted)
        {
            spans.Add(new TextSpan(count == 0 ? TextStyle.Quiet : Styles.Of(group), $"{count.ToString(CultureInfo.InvariantCulture)} {Names.Of(group)}".Replace(' ', PlainText.Glue) + (group == counted[^1].Group ? string.Empty : ", ")));
        }

        return spans;
    }
}
