using System.Globalization;
using Laygate.Reporting.Language;
using Laygate.Reporting.Text;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Records;

/// <summary>A part of the report: a title and its lines.</summary>
/// <param name="Title">Title.</param>
/// <param name="Lines">Lines.</param>
internal sealed record HeldSection(string Title, IReadOnlyList<string> Lines);

/// <summary>The parts of the report in the order in which they are needed; the same for terminal and page.</summary>
internal static class HeldSections
{
    private const int Most = 8;

    /// <summary>All parts that have a line.</summary>
    /// <param name="report">The report.</param>
    /// <param name="full">Whether every line is shown.</param>
    public static IReadOnlyList<HeldSection> Of(HeldReport report, bool full) =>
    [
        .. new[]
        {
            new HeldSection("Missed", [.. report.Findings.Where(one => one.Outcome == HeldOutcome.Missed).OrderBy(one => one.Status == Status.Fail ? 0 : 1).Select(one => Line(report, one)), .. Points(report, HeldOutcome.Missed)]),
            new HeldSection("Not decided", [.. Cut(NotDecided(report, full).ToList(), full), .. Points(report, HeldOutcome.NotDecided)]),
            new HeldSection("Not recorded: write this down", [.. ToRecord(report), .. Points(report, HeldOutcome.NotRecorded)]),
            new HeldSection("Departed with permission", [.. report.Findings.Where(one => one.Outcome == HeldOutcome.Departed).Select(one => $"{Line(report, one)} Permitted: {DepartureWords.Permission(one.Finding.Departure!)}")]),
            new HeldSection("Departures that do not hold", [.. report.Plan.Departures.Where(use => use.State is DepartureState.Expired or DepartureState.NotYet or DepartureState.Exceeded or DepartureState.NoValueAccepted).Select(DepartureWords.Of)]),
            new HeldSection("Held", full ? [.. report.Findings.Where(one => one.Outcome == HeldOutcome.Held).Select(one => Line(report, one)), .. Points(report, HeldOutcome.Held)] : [.. Points(report, HeldOutcome.Held), .. Folded(report)]),
            new HeldSection("Not judged", [.. NotJudged(report, full)]),
        }.Where(section => section.Lines.Count > 0),
    ];

    /// <summary>A limit and what decided on it, in one sentence.</summary>
    public static string Line(HeldReport report, HeldFinding one)
    {
        var parts = new[] { HeldWords.Count(one), HeldWords.Because(one) is { } because ? because : string.Empty }.Where(part => part.Length > 0).ToList();
        return $"{PlainText.Show(one.Finding.Rule)} {HeldWords.What(one)}: {HeldWords.Value(one) ?? "no value"}; {HeldWords.Limit(one)}. {(one.Worst is { } worst ? Names.Capital(HeldWords.Where(report, worst)) + "." : string.Empty)}{(parts.Count > 0 ? $" {Names.Capital(string.Join("; ", parts))}." : string.Empty)}";
    }

    private static IEnumerable<string> NotDecided(HeldReport report, bool full)
    {
        var open = report.Findings.Where(one => one.Outcome == HeldOutcome.NotDecided).ToList();
        foreach (var one in open.Where(one => full || one.Because != NotDecidedBecause.NoUncertainty))
        {
            yield return Line(report, one);
        }

        if (open.Where(one => one.Because == NotDecidedBecause.NoUncertainty).ToList() is { Count: > 0 } without)
        {
            var keys = without.SelectMany(one => one.Quantity.Uncertainty.Split(", ")).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal);
            yield return $"{LedgerNumbers.Count(without.Count, "limit is", "limits are")} met by the readings, whose uncertainty the record does not state. Write under `uncertainty` in record.yaml: {string.Join(", ", keys)}.";
        }
    }

    private static IEnumerable<string> Cut(List<string> lines, bool full) => full || lines.Count <= Most ? lines
        : lines.Take(Most - 1).Append(lines[^1].StartsWith(lines[Most - 1], StringComparison.Ordinal) ? lines[^1] : More(lines.Count - Most + 1)).Concat(lines[^1].Contains("record.yaml", StringComparison.Ordinal) ? [lines[^1]] : []);

    private static string More(int count) => string.Create(CultureInfo.InvariantCulture, $"{count} more: --full.");

    /// <summary>What to record, by the file to which it belongs, each thing once.</summary>
    public static IEnumerable<string> ToRecord(HeldReport report)
    {
        foreach (var group in report.Findings.Where(one => one.Outcome == HeldOutcome.NotRecorded).GroupBy(one => one.Quantity.Rows, StringComparer.Ordinal))
        {
            var file = report.Record.Files.FirstOrDefault(one => string.Equals(one.Holds, group.Key, StringComparison.Ordinal))?.File ?? $"a file of {group.Key}";
            var things = group.GroupBy(HeldWords.Lacking, StringComparer.Ordinal).Select(same => $"{same.Key} for {string.Join(", ", same.Select(one => PlainText.Show(one.Finding.Rule)))}");
            yield return $"{PlainText.Show(file)}: {string.Join("; ", things)}.";
        }
    }

    private static IEnumerable<string> Points(HeldReport report, HeldOutcome outcome) =>
        report.HoldPoints.Where(point => point.Outcome == outcome).Select(point => $"Hold point {PlainText.Show(point.Use.Id)}: {HeldWords.Of(report, point.Use)}.");

    private static IEnumerable<string> Folded(HeldReport report)
    {
        if (report.Findings.Count(one => one.Outcome == HeldOutcome.Held) is > 0 and var count)
        {
            yield return $"{LedgerNumbers.Count(count, "limit", "limits")}: --full lists them.";
        }
    }

    private static IEnumerable<string> NotJudged(HeldReport report, bool full)
    {
        foreach (var release in report.UnknownHoldPoints)
        {
            yield return $"The plan has no hold point {PlainText.Show(release.HoldPoint)} ({HeldWords.Row(release.Place)}).";
        }

        if (report.NotSeen.Count > 0)
        {
            yield return $"{LedgerNumbers.Count(report.NotSeen.Count, "rule", "rules")} in force ask what no record shows: the check of the plan judges them. {(full ? string.Join(" ", report.NotSeen) : "--full and JSON list them.")}";
        }
    }
}
