using System.Globalization;
using Laygate.Reporting.Language;
using Laygate.Reporting.Text;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Terminal;

/// <summary>The findings that decide, in order, in as many lines as there are: two lines for each, then one for each rule, then a list of rules.</summary>
internal sealed class BriefFindings
{
    private readonly Report report;
    private readonly int width;
    private readonly IReadOnlyList<Finding> findings;
    private readonly List<IReadOnlyList<TerminalLine>> entries;
    private readonly int failures;

    /// <summary>Lays findings out.</summary>
    /// <param name="report">Their report.</param>
    /// <param name="findings">Those that are shown.</param>
    /// <param name="width">Columns of a line.</param>
    public BriefFindings(Report report, IEnumerable<Finding> findings, int width)
    {
        (this.report, this.width, this.findings) = (report, width, FindingOrder.Of(findings));
        entries = [.. this.findings.Select(finding => BriefEntry.Lines(report.File, finding, width))];
        failures = this.findings.Count(finding => finding.Status == Status.Fail);
    }

    /// <summary>Lines that all of them would take.</summary>
    public int Ideal => entries.Sum(entry => entry.Count);

    /// <summary>Lines that they take at least: what is never left out, listed.</summary>
    public int Least => Rest(0, 0, Detail.MustsOnly).Count;

    /// <summary>The findings in at most so many lines. Failures are shown in two lines before a warning gets its own.</summary>
    public IReadOnlyList<TerminalLine> Within(int room)
    {
        if (Most(failures, findings.Count, whole => Composed(whole, int.MaxValue, Detail.Places, room)) is { } all)
        {
            return all.Lines;
        }

        foreach (var (detail, least) in Steps())
        {
            if (Most(least, failures, whole => Composed(whole, 0, detail, room)) is { } fitting)
            {
                return Most(0, findings.Count, single => Composed(fitting.Number, single, detail, room))!.Value.Lines;
            }
        }

        return Rest(0, 0, Detail.MustsOnly);
    }

    // First everything that fails in two lines and the list of the rest ever shorter; then fewer failures in two lines; then no more than must be.
    private IEnumerable<(Detail Detail, int Least)> Steps() =>
    [
        (Detail.Places, failures), (Detail.Ids, failures), (Detail.Families, failures),
        (Detail.Places, 0), (Detail.Ids, 0), (Detail.Families, 0), (Detail.FailuresOnly, 0), (Detail.MustsOnly, 0),
    ];

    // The largest number for which there are lines, by bisection: what fits with more fits with less.
    private static (int Number, List<TerminalLine> Lines)? Most(int low, int high, Func<int, List<TerminalLine>?> make)
    {
        if (make(low) is not { } lines)
        {
            return null;
        }

        while (low < high)
        {
            var middle = (low + high + 1) / 2;
            (low, high, lines) = make(middle) is { } more ? (middle, high, more) : (low, middle - 1, lines);
        }

        return (low, lines);
    }

    private List<TerminalLine>? Composed(int whole, int single, Detail detail, int room)
    {
        var groups = Groups(whole);
        List<TerminalLine> lines = [.. entries.Take(whole).SelectMany(entry => entry), .. groups.Take(single).SelectMany(group => BriefEntry.Line(report.File, group, width)), .. Rest(whole, single, detail)];
        return lines.Count <= room ? lines : null;
    }

    // In order of weight, as the findings are.
    private List<List<Finding>> Groups(int whole) => [.. findings.Skip(whole).GroupBy(finding => (finding.Rule, FindingGroups.Of(finding))).Select(group => group.ToList())];

    // What has no line of its own is listed, failures before warnings.
    private List<TerminalLine> Rest(int whole, int single, Detail detail) =>
        [.. Groups(whole).Skip(single).GroupBy(group => FindingGroups.Of(group[0])).OrderBy(part => part.Key).SelectMany(part => Listed(part.Key, [.. part], whole + single > 0, detail))];

    private IReadOnlyList<TerminalLine> Listed(FindingGroup part, List<List<Finding>> groups, bool isMore, Detail detail)
    {
        var kept = detail switch
        {
            Detail.MustsOnly => groups.FindAll(group => group.Exists(FindingOrder.IsMust)),
            Detail.FailuresOnly => part == FindingGroup.Failed ? groups : [],
            _ => groups,
        };
        var count = groups.Sum(group => group.Count).ToString(CultureInfo.InvariantCulture);
        var label = $"{count} {(isMore ? "more " : string.Empty)}{Names.Of(part)}{(detail == Detail.Places ? ", by rule (line)" : string.Empty)}: ".Replace(' ', PlainText.Glue).TrimEnd(PlainText.Glue) + " ";
        List<string> items = detail switch
        {
            Detail.Places => [.. kept.Select(BriefEntry.Item)],
            Detail.Ids => [.. kept.Select(group => PlainText.Show(group[0].Rule))],
            _ => [.. Families(kept)],
        };
        if (kept.Count < groups.Count)
        {
            items.Add(kept.Count > 0 ? $"and {(groups.Count - kept.Count).ToString(CultureInfo.InvariantCulture)} more rules: --full" : "--full lists them");
        }

        return BriefText.List(0, new TextSpan(Styles.Of(part), label), items, width, int.MaxValue);
    }

    /// <summary>Ids with the prefix of the family said once: <c>SAF 002 004</c>.</summary>
    internal static IEnumerable<string> Families(IEnumerable<IReadOnlyList<Finding>> groups) =>
        groups.Select(group => PlainText.Show(group[0].Rule)).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).GroupBy(rule => rule.Split('-')[0], StringComparer.Ordinal)
            .SelectMany(family => family.Select((rule, index) => index == 0 || !rule.StartsWith(family.Key + '-', StringComparison.Ordinal) ? rule : rule[(family.Key.Length + 1)..]));

    private enum Detail
    {
        Places,
        Ids,
        Families,
        FailuresOnly,
        MustsOnly,
    }
}
