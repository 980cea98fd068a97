using System.Globalization;
using Laygate.Reporting.Language;
using Laygate.Reporting.Text;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Terminal;

/// <summary>
/// A finding in two lines: status, rule, place and title; then what was found against what is allowed, whose limit it is, and what mends it. What
/// mends it takes a third line where there is no room, and so does a path that leaves none for the title.
/// </summary>
internal static class BriefEntry
{
    private const int Indent = 5;
    private const int ShortestTitle = 16;
    private const int MostPlaces = 3;

    /// <summary>One finding.</summary>
    public static IReadOnlyList<TerminalLine> Lines(string file, Finding finding, int width)
    {
        var page = new Page(width, cuts: false);
        WriteFirst(page, At(file, finding), [finding]);
        var (line, mend) = Second(finding, width - Indent);
        page.Flow(Indent, Indent, [new TextSpan(TextStyle.Plain, line)]);
        if (mend is not null)
        {
            page.Flow(Indent, Indent + 2, [new TextSpan(TextStyle.Plain, mend)]);
        }

        foreach (var note in finding.Notes.Where(note => IsDeciding(note) || note.Id is FindingNotes.UnitSlip))
        {
            page.Flow(Indent, Indent + 2, [new TextSpan(TextStyle.Plain, NoteWords.Glued(note))]);
        }

        return page.Take();
    }

    /// <summary>Findings of one rule with one status in a line: how many, where, and what is wrong.</summary>
    public static IReadOnlyList<TerminalLine> Line(string file, IReadOnlyList<Finding> same, int width)
    {
        var page = new Page(width, cuts: false);
        var places = Places(same);
        var others = places.Count > 1 ? $" (also {string.Join(", ", places.Skip(1).Take(MostPlaces))}{(places.Count > MostPlaces + 1 ? ", …" : string.Empty)})" : string.Empty;
        WriteFirst(page, $"{At(file, same[0])}{others}", same);
        return page.Take();
    }

    /// <summary>The rule with the lines at which its findings stand, for a list.</summary>
    public static string Item(IReadOnlyList<Finding> same)
    {
        var places = Places(same);
        var shown = string.Join(", ", places.Take(MostPlaces)) + (places.Count > MostPlaces ? ", …" : string.Empty);
        return PlainText.Show(same[0].Rule) + (places.Count > 0 ? $" ({shown})" : string.Empty);
    }

    /// <summary>Whether a remark says that an assumption decides.</summary>
    internal static bool IsDeciding(Engineering.Quantities.Note note) => note.Id is
        FindingNotes.AssumptionDecides or FindingNotes.AssumptionDecidesByCount or FindingNotes.AssumptionMovesCount or FindingNotes.AssumptionsDecideTogether;

    private static List<string> Places(IReadOnlyList<Finding> same) =>
        [.. same.Select(finding => finding.Position).OfType<Position>().Select(position => (position.File, position.Line)).Distinct().OrderBy(place => place.File, StringComparer.Ordinal).ThenBy(place => place.Line)
            .Select(place => (place.File is { } file ? PlainText.Show(file) + ":" : string.Empty) + place.Line.ToString(CultureInfo.InvariantCulture))];

    private static string At(string file, Finding finding) => finding.Position is { } position ? string.Create(CultureInfo.InvariantCulture, $"{position.File ?? file}:{position.Line}") : file;

    private static void WriteFirst(Page page, string place, IReadOnlyList<Finding> same)
    {
        var group = FindingGroups.Of(same[0]);
        var status = Names.Of(group).ToUpperInvariant().Replace(' ', PlainText.Glue);
        var rule = PlainText.Show(same[0].Rule) + (same.Count > 1 ? string.Create(CultureInfo.InvariantCulture, $" ({same.Count})") : string.Empty);
        var where = PlainText.Show(place);
        var used = TextWidth.Of($"{status} {rule} ");
        var room = page.Width - used - TextWidth.Of(where) - 1;
        if (room >= ShortestTitle)
        {
            page.Flow(0, Indent, [new TextSpan(Styles.Of(group), status), new TextSpan(TextStyle.Heading, " " + rule), new TextSpan(TextStyle.Plain, " " + where), new TextSpan(TextStyle.Heading, " " + Title(same[0], room))]);
            return;
        }

        page.Flow(0, Indent, [new TextSpan(Styles.Of(group), status), new TextSpan(TextStyle.Heading, $" {rule} {Title(same[0], page.Width - used)}")]);
        page.Flow(Indent, Indent, [new TextSpan(TextStyle.Plain, where)]);
    }

    // A rule is named after the bad situation; its name is the title in fewer words. Behind a status that says that it is not known, it stands small and asserts nothing.
    private static string Title(Finding finding, int room)
    {
        var title = Wording.Title(finding);
        var name = PlainText.Show(finding.RuleName[(finding.RuleName.IndexOf('/', StringComparison.Ordinal) + 1)..].Replace('-', ' '));
        return BriefText.Fits(title, room) ? title : BriefText.Clip(Short(finding, name), room);
    }

    private static string Short(Finding finding, string name) => finding switch
    {
        { Outcome: Outcome.Met or Outcome.Missed } => Names.Capital(name),
        { Status: Status.Fail } => $"Unknown: {name}",
        _ => name,
    };

    private static (string Line, string? Mend) Second(Finding finding, int room)
    {
        var (found, whose, mend) = (BriefWords.Found(finding), BriefWords.Whose(finding).DefaultIfEmpty(string.Empty).ToList(), BriefWords.Mend(finding));
        var lines = found.SelectMany(_ => whose, (text, name) => name.Length > 0 ? $"{text} ({name})".Replace(") (", "; ", StringComparison.Ordinal) : text).ToList();
        return mend is not null && lines.Find(line => BriefText.Fits($"{line}. {mend}", room)) is { } whole ? ($"{whole}. {mend}", null)
            : (lines.Find(line => BriefText.Fits(line, room)) ?? BriefText.Clip(lines[^1], (2 * room) - 10), mend);
    }
}
