using Laygate.Rules.Results;

namespace Laygate.Rules.Comparing;

/// <summary>Sets two reports on one plan against each other. A finding is the same finding when rule and address agree; one that is not applicable counts as none.</summary>
public static class ReportComparer
{
    /// <summary>Two reports on one plan side by side; what changed in the text is not known.</summary>
    /// <param name="old">The earlier report; null when there is none.</param>
    /// <param name="new">The later report; null when there is none.</param>
    public static PlanComparison Compare(Report? old, Report? @new)
    {
        var findings = Findings(old, @new);
        return new PlanComparison(old, @new, findings, Quantities(old, @new), []) { Counts = Count(findings) };
    }

    /// <summary>Findings of two reports, those of the later one first and in its order, then those that are gone.</summary>
    /// <param name="old">The earlier report; null when there is none.</param>
    /// <param name="new">The later report; null when there is none.</param>
    public static IReadOnlyList<FindingChange> Findings(Report? old, Report? @new)
    {
        var before = Speaking(old).ToDictionary(Key);
        var after = Speaking(@new).ToList();
        var kept = after.Select(Key).ToHashSet();
        return
        [
            .. after.Select(finding => Change(before.GetValueOrDefault(Key(finding)), finding)),
            .. Speaking(old).Where(finding => !kept.Contains(Key(finding))).Select(finding => Change(finding, null)),
        ];
    }

    /// <summary>Counts changes.</summary>
    public static ChangeCounts Count(IReadOnlyList<FindingChange> changes)
    {
        int Of(ChangeKind kind) => changes.Count(change => change.Kind == kind);
        return new ChangeCounts(Of(ChangeKind.New), Of(ChangeKind.Gone), Of(ChangeKind.Changed), Of(ChangeKind.Unchanged));
    }

    /// <summary>Quantities of two reports that moved, each once, in the order of the later report.</summary>
    public static IReadOnlyList<QuantityChange> Quantities(Report? old, Report? @new)
    {
        var before = Values(old);
        var after = Values(@new);
        return
        [
            .. after.Where(pair => before.TryGetValue(pair.Key, out var was) && !AreEqual(was.Value, pair.Value.Value))
                .Select(pair => Moved(pair.Key, before[pair.Key], pair.Value)),
        ];
    }

    private static QuantityChange Moved((string Address, string Quantity) key, Finding old, Finding @new) =>
        new(key.Address, key.Quantity, @new.QuantityMeaning, old.Value, @new.Value);

    private static Dictionary<(string Address, string Quantity), Finding> Values(Report? report)
    {
        var values = new Dictionary<(string, string), Finding>();
        foreach (var finding in Speaking(report).Where(finding => finding.Value is not null))
        {
            values.TryAdd((finding.Address, finding.Quantity), finding);
        }

        return values;
    }

    private static IEnumerable<Finding> Speaking(Report? report) =>
        report?.Findings.Where(finding => finding.Outcome != Outcome.NotApplicable) ?? [];

    private static (string Rule, string Address) Key(Finding finding) => (finding.Rule, finding.Address);

    private static FindingChange Change(Finding? old, Finding? @new) => new(
        old is null ? ChangeKind.New : @new is null ? ChangeKind.Gone : IsAlike(old, @new) ? ChangeKind.Unchanged : ChangeKind.Changed,
        Direction(Weight(old), Weight(@new)),
        old,
        @new);

    private static ChangeDirection Direction(int old, int @new) =>
        old == @new ? ChangeDirection.Level : @new > old ? ChangeDirection.Worse : ChangeDirection.Better;

    // A departed finding weighs as one that does not count: what it stands on shows beside it.
    private static int Weight(Finding? finding) => finding?.Status switch
    {
        Status.Fail => 2,
        Status.Warn => 1,
        _ => 0,
    };

    private static bool IsAlike(Finding old, Finding @new) =>
        old.Outcome == @new.Outcome
        && old.Status == @new.Status
        && AreEqual(old.Value, @new.Value)
        && AreEqual(old.Limit, @new.Limit)
        && old.Missing.SequenceEqual(@new.Missing);

    private static bool AreEqual(ShownLimit? old, ShownLimit? @new) => (old, @new) switch
    {
        (null, null) => true,
        ({ } one, { } other) => one.Strength == other.Strength
            && AreEqual(one.Low, other.Low)
            && AreEqual(one.High, other.High)
            && one.LowExclusive == other.LowExclusive
            && one.HighExclusive == other.HighExclusive
            && one.Source == other.Source
            && string.Equals(one.SetBy, other.SetBy, StringComparison.Ordinal),
        _ => false,
    };

    // The spread is left out: it follows the expected value, and a status that it changes shows as such.
    private static bool AreEqual(ShownValue? old, ShownValue? @new) => (old, @new) switch
    {
        (null, null) => true,
        ({ Number: { } one }, { Number: { } other }) =>
            string.Equals(old.Unit, @new.Unit, StringComparison.Ordinal) && Math.Abs(one - other) <= 1e-9 * Math.Max(Math.Abs(one), Math.Abs(other)),
        ({ Number: null }, { Number: null }) => string.Equals(old.Text, @new.Text, StringComparison.Ordinal),
        _ => false,
    };
}
