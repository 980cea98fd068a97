using System.Globalization;
using Laygate.Reporting.Language;
using Laygate.Reporting.Text;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Comparing;

/// <summary>One thing that differs, in words that every format shares.</summary>
/// <param name="Title">What it is about.</param>
/// <param name="Rows">Labels and texts, for example <c>was</c> and <c>now</c>.</param>
public sealed record ComparisonEntry(string Title, IReadOnlyList<(string Label, string Text)> Rows);

/// <summary>A part of a comparison.</summary>
/// <param name="Heading">Its heading with the number of entries.</param>
/// <param name="Direction">Which way its entries go.</param>
/// <param name="Entries">The entries.</param>
public sealed record ComparisonPart(string Heading, ChangeDirection Direction, IReadOnlyList<ComparisonEntry> Entries);

/// <summary>Puts comparisons into words.</summary>
public static class ComparisonWords
{
    /// <summary>The plan and its two states, for example <c>revision 1 and revision 2</c>.</summary>
    public static string Head(PlanComparison comparison)
    {
        var report = (comparison.New ?? comparison.Old)!;
        var title = PlainText.Show(report.PlanTitle ?? report.PlanId);
        return comparison.IsBetweenShifts ? $"{title}: between the shifts" : title;
    }

    /// <summary>One line per state: where it was read, its revision and its rule book.</summary>
    public static IReadOnlyList<(string Label, string Text)> States(ComparisonResult result, PlanComparison comparison) =>
        [("was", State(comparison.Old, result.OldFile)), ("now", State(comparison.New, result.NewFile))];

    /// <summary>How many findings went which way.</summary>
    public static string Counts(PlanComparison comparison)
    {
        var counts = comparison.Counts;
        return $"Findings: {Number(counts.New)} new, {Number(counts.Gone)} gone, {Number(counts.Changed)} changed, {Number(counts.Unchanged)} unchanged.";
    }

    /// <summary>The parts that have entries, worst first.</summary>
    public static IReadOnlyList<ComparisonPart> Parts(PlanComparison comparison)
    {
        var findings = comparison.Findings.Where(change => change.Kind != ChangeKind.Unchanged).ToList();
        var explained = findings.SelectMany(change => change.Behind).ToHashSet();
        var told = findings.Where(change => change is { Old: not null, New: not null }).Select(change => (change.Either.Address, change.Either.Quantity)).ToHashSet();
        var both = findings.Where(change => change is { Old: not null, New: not null }).ToList();
        var level = both.Where(change => change.Direction == ChangeDirection.Level).ToLookup(IsSameAsShown);
        List<ComparisonPart> parts =
        [
            Part("Worse than before", ChangeDirection.Worse, both.Where(change => change.Direction == ChangeDirection.Worse).Select(Entry)),
            Part("Better than before", ChangeDirection.Better, both.Where(change => change.Direction == ChangeDirection.Better).Select(Entry)),
            Part("New", findings.Exists(change => change is { Old: null, Direction: ChangeDirection.Worse }) ? ChangeDirection.Worse : ChangeDirection.Level, findings.Where(change => change.Old is null).OrderBy(Weight).Select(Entry)),
            Part("Gone", ChangeDirection.Level, findings.Where(change => change.New is null).OrderBy(Weight).Select(Entry)),
            Part("Different, with the same weight at the gate", ChangeDirection.Level, level[false].Select(Entry)),
            Part("Other quantities that moved", ChangeDirection.Level, comparison.Quantities.Where(change => !told.Contains((change.Address, change.Quantity))).Select(Entry)),
            Part("Other changes of the text", ChangeDirection.Level, comparison.Text.Where(change => !explained.Contains(change)).Select(change => new ComparisonEntry(Text(change), []))),
        ];
        parts.RemoveAll(part => part.Entries.Count == 0);
        return level[true].Any() ? [.. parts, new ComparisonPart($"The same in the digits shown: {Number(level[true].Count())}", ChangeDirection.Level, [])] : parts;
    }

    /// <summary>How many findings became worse, became better, are new or are gone.</summary>
    public static string Directions(PlanComparison comparison)
    {
        var both = comparison.Findings.Where(change => change is { Old: not null, New: not null }).ToList();
        return $"{Number(both.Count(change => change.Direction == ChangeDirection.Worse))} worse, {Number(both.Count(change => change.Direction == ChangeDirection.Better))} better, "
            + $"{Number(comparison.Findings.Count(change => change.Old is null))} new, {Number(comparison.Findings.Count(change => change.New is null))} gone.";
    }

    // Nobody can act on what looks the same: it is counted. A limit that comes from elsewhere is told.
    private static bool IsSameAsShown(FindingChange change) => string.Equals(Side(change.Old), Side(change.New), StringComparison.Ordinal) && !HasOtherSource(change);

    private static FindingGroup Weight(FindingChange change) => FindingGroups.Of(change.Either);

    /// <summary>What an empty comparison says.</summary>
    public static string Nothing(PlanComparison comparison) => (comparison.Old, comparison.New) switch
    {
        (null, _) => "The plan is new: there is nothing to compare it with.",
        (_, null) => "The plan is gone.",
        _ => "No finding, quantity or text differs.",
    };

    /// <summary>A change of the text on one line.</summary>
    public static string Text(TextChange change)
    {
        var path = PlainText.Show(change.Path);
        return (change.Old, change.New) switch
        {
            (null, { } now) => $"{path}: added {Quoted(now)}{At(change.NewPosition)}",
            ({ } was, null) => $"{path}: removed {Quoted(was)}{At(change.OldPosition, " before")}",
            ({ } was, { } now) => $"{path}: {Quoted(was)} became {Quoted(now)}{At(change.NewPosition)}",
            _ => path,
        };
    }

    private static string State(Report? report, string file)
    {
        if (report is null)
        {
            return "no such plan";
        }

        var revision = report.Revision is { Length: > 0 } known ? $", revision {PlainText.Show(known)}" : string.Empty;
        var rules = string.Join("; then ", report.Layers.Select(layer => $"{PlainText.Show(layer.Title)} {PlainText.Show(layer.Edition)}".TrimEnd()));
        var hash = report.BookHash.Length > 12 ? report.BookHash[..12] : report.BookHash;
        return $"{PlainText.Show(file)}{revision}: {Number(report.Counts.Failed)} failed, {Number(report.Counts.Warned)} warned, {Number(report.Counts.NotAssessed)} not assessed. Rules: {rules}. Rule book {PlainText.Show(hash)}.";
    }

    private static ComparisonPart Part(string heading, ChangeDirection direction, IEnumerable<ComparisonEntry> entries)
    {
        List<ComparisonEntry> listed = [.. entries];
        return new ComparisonPart($"{heading}: {Number(listed.Count)}", direction, listed);
    }

    private static ComparisonEntry Entry(FindingChange change)
    {
        var finding = change.Either;
        var (was, now) = (Side(change.Old), Side(change.New));
        List<(string, string)> rows =
        [
            ("was", was),
            ("now", string.Equals(was, now, StringComparison.Ordinal) ? Same(change) : now),
            .. change.Behind.Select(difference => ("because", Text(difference))),
        ];
        return new ComparisonEntry($"{PlainText.Show(finding.Title)} ({PlainText.Show(finding.Rule)}, {PlainText.Show(finding.Address)})", rows);
    }

    // The sentences agree and the limit may come from elsewhere.
    private static string Same(FindingChange change) => HasOtherSource(change)
        ? $"the same, but the limit comes from {SourceWords.Line(change.New!.Limit!).Replace(PlainText.Glue, ' ')}"
        : "the same";

    private static bool HasOtherSource(FindingChange change) => change is { Old.Limit: { } was, New.Limit: { } now }
        && !string.Equals(SourceWords.Line(was), SourceWords.Line(now), StringComparison.Ordinal);

    private static ComparisonEntry Entry(QuantityChange change)
    {
        var title = $"{Names.Capital(Names.OfQuantity(change.Quantity))} of {PlainText.Show(change.Address)}";
        return new ComparisonEntry($"{title}: {Figure(change.Old, change.New)} became {Figure(change.New, change.Old)}", []);
    }

    // Two values are shown with as many digits as it takes to tell them apart, and no more.
    private static string Figure(ShownValue? value, ShownValue? other)
    {
        if (value is not { Number: { } number })
        {
            return PlainText.Show(value?.Text ?? "nothing");
        }

        var digits = 3;
        while (digits < 12 && other is { Number: { } beside } && string.Equals(Digits(number, digits), Digits(beside, digits), StringComparison.Ordinal))
        {
            digits++;
        }

        return Figures.WithUnit(Digits(number, digits), value.Unit).Replace(PlainText.Glue, ' ');
    }

    private static string Digits(double number, int digits) =>
        Math.Abs(number) >= Math.Pow(10, digits)
            ? Math.Round(number).ToString("F0", CultureInfo.InvariantCulture)
            : ((decimal)double.Parse(number.ToString("G" + digits.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture), CultureInfo.InvariantCulture)).ToString(CultureInfo.InvariantCulture);

    private static string Side(Finding? finding)
    {
        if (finding is null)
        {
            return "no finding: the rule does not apply";
        }

        var missing = finding.Missing.Count == 0 ? string.Empty : $" Not stated: {string.Join(", ", finding.Missing.Select(Names.Of).Distinct(StringComparer.Ordinal))}.";
        var (group, sentence) = (Names.Of(FindingGroups.Of(finding)), Wording.Sentence(finding) + missing);
        return sentence.StartsWith(group, StringComparison.OrdinalIgnoreCase) ? sentence : $"{group}: {sentence}";
    }

    private static string Quoted(string text) => $"`{PlainText.Show(text.Length > 60 ? text[..60] + "…" : text)}`";

    private static string At(Position? position, string when = "") =>
        position is null ? string.Empty : $" ({Places.Line(position)}{when})";

    private static string Number(int count) => count.ToString(CultureInfo.InvariantCulture);
}
