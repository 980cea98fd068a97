using System.Globalization;
using Laygate.Reporting.Language;
using Laygate.Reporting.Text;
using Laygate.Rules.Definitions;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Terminal;

/// <summary>What the plan does not say, as one block: how many findings wait for it, which of them fail, and which keys to state.</summary>
internal sealed class BriefSilence(IReadOnlyList<Finding> unordered, int width)
{
    private const int LeastKeys = 3;

    // A handful is better read one by one.
    private const int MostAsFindings = 3;

    private readonly IReadOnlyList<Finding> silent = FindingOrder.Of(unordered);

    /// <summary>Splits findings into those that wait for a statement, where they are many, and the rest.</summary>
    public static (IReadOnlyList<Finding> Silent, IReadOnlyList<Finding> Others) Split(IReadOnlyList<Finding> findings)
    {
        var many = findings.Where(Is).ToList();
        return many.Count > MostAsFindings ? (many, [.. findings.Where(finding => !Is(finding))]) : ([], findings);
    }

    /// <summary>Whether a finding says no more than that something is not stated.</summary>
    public static bool Is(Finding finding) => finding.Missing.Count > 0
        && (finding.Outcome == Outcome.NotAssessed || finding is { Check: CheckKind.Present, Outcome: Outcome.Missed, Value: null or { Text: null or "absent" or "thin" } });

    /// <summary>Whether it stands before the computed failures: it holds a failure that is never left out.</summary>
    public bool IsFirst => silent.Any(FindingOrder.IsMust);

    /// <summary>Lines that it takes at least.</summary>
    public int Least => Lines(0).Count;

    /// <summary>The block in at most so many lines, but never without what must be said.</summary>
    public IReadOnlyList<TerminalLine> Lines(int room)
    {
        if (silent.Count == 0)
        {
            return [];
        }

        var head = Head();
        var failing = Failing(byFamily: false);
        if (head.Count + failing.Count + LeastKeys > room)
        {
            failing = Failing(byFamily: true);
        }

        return [.. head, .. failing, .. Keys(Math.Max(1, room - head.Count - failing.Count))];
    }

    private IReadOnlyList<TerminalLine> Head()
    {
        var (fail, all) = (silent.Count(finding => finding.Status == Status.Fail), silent.Count);
        var group = fail > 0 ? FindingGroup.Failed : FindingGroup.NotAssessed;
        var page = new Page(width, cuts: false);
        var warn = all - fail;
        page.Flow(0, 2, [
            new TextSpan(Styles.Of(group), fail > 0 ? "FAIL" : "WARN"),
            new TextSpan(TextStyle.Heading, " The plan does not say enough: "),
            new TextSpan(TextStyle.Plain, $"{(fail > 0 ? Number(fail) + " fail for it" : string.Empty)}{(fail > 0 && warn > 0 ? ", " : string.Empty)}{(warn > 0 ? Number(warn) + " warn or are not assessed" : string.Empty)}.")]);
        return page.Take();
    }

    private List<TerminalLine> Failing(bool byFamily)
    {
        var failing = silent.Where(finding => finding.Status == Status.Fail).ToList();
        return
        [
            .. List("Fail, lives depend on it", failing.FindAll(finding => finding.Severity == Severity.A)),
            .. List("Fail, the contract asks", failing.FindAll(finding => finding.Severity != Severity.A && FindingOrder.IsMust(finding))),
            .. List("Fail, too", failing.FindAll(finding => !FindingOrder.IsMust(finding))),
        ];

        IReadOnlyList<TerminalLine> List(string label, List<Finding> part)
        {
            var rules = part.GroupBy(finding => finding.Rule, StringComparer.Ordinal).OrderBy(rule => rule.Key, StringComparer.Ordinal).Select(rule => rule.ToList()).ToList();
            var items = byFamily ? BriefFindings.Families(rules).ToList() : rules.ConvertAll(rule => PlainText.Show(rule[0].Rule) + (rule.Count > 1 ? $" ({Number(rule.Count)})" : string.Empty));
            return part.Count == 0 ? [] : BriefText.List(2, new TextSpan(TextStyle.Fail, label.Replace(' ', PlainText.Glue) + ": "), items, width, int.MaxValue);
        }
    }

    // Key by key in order of weight; what belongs to one list stands together. The last list that has room is cut, what has none is counted.
    private List<TerminalLine> Keys(int room)
    {
        var wanted = silent.SelectMany(finding => BriefWords.ToState(finding).Select(key => (key.List, key.Entry, finding.Position))).DistinctBy(key => (key.List, key.Entry)).ToList();
        var begun = wanted.Select(key => key.List).Where(list => list.Length > 0).ToHashSet(StringComparer.Ordinal);
        wanted.RemoveAll(key => key.List.Length == 0 && begun.Any(list => BriefWords.IsList(key.Entry, list)));
        var (lines, left) = (new List<TerminalLine>(), wanted.Count);
        foreach (var list in wanted.GroupBy(key => key.List, StringComparer.Ordinal))
        {
            var label = list.Key.Length == 0 ? "State" : $"Add to {PlainText.Show(list.Key)}{(list.First().Position is { } at ? $" ({Places.Line(at)})" : string.Empty)}";
            var part = Part(left == wanted.Count ? $"{Number(left)} things to state. {label}" : label, [.. list.Select(key => key.Entry)], Math.Max(1, room - lines.Count - (left > list.Count() ? 1 : 0)));
            if (lines.Count > 0 && lines.Count + part.Count + (left > list.Count() ? 1 : 0) > room)
            {
                lines.Add(new TerminalLine([new TextSpan(TextStyle.Plain, $"  and {Number(left)} more to state: --full")]));
                return lines;
            }

            lines.AddRange(part);
            left -= list.Count();
        }

        return lines;
    }

    private IReadOnlyList<TerminalLine> Part(string label, IReadOnlyList<string> entries, int most) =>
        BriefText.List(2, new TextSpan(TextStyle.Heading, label.Replace(' ', PlainText.Glue) + ": "), entries, width, most);

    private static string Number(int count) => count.ToString(CultureInfo.InvariantCulture);
}
