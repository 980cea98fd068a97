using Laygate.Model.Measures;
using Laygate.Rules.Binding;
using Laygate.Rules.Definitions;
using Laygate.Rules.Evaluation;

namespace Laygate.Rules.Merging;

/// <summary>Whether new bounds are weaker than old ones; asked before a rule of severity A is changed.</summary>
internal static class Weakening
{
    /// <summary>How the new bounds are weaker, or null when each old bound is covered.</summary>
    public static WeakerBy? Of(IReadOnlyList<CheckedBound> old, IReadOnlyList<CheckedBound> now, Dimension dimension) =>
        old.Select(bound => Of(bound, now, dimension)).FirstOrDefault(how => how is not null);

    private static WeakerBy? Of(CheckedBound old, IReadOnlyList<CheckedBound> now, Dimension dimension)
    {
        var candidates = now.Where(bound => bound.Definition.Strength <= old.Definition.Strength).ToList();
        if (candidates.Count == 0)
        {
            return old.Definition.Strength == Strength.Required ? WeakerBy.Advised : WeakerBy.Dropped;
        }

        var ways = candidates.Select(bound => Compare(old, bound, dimension)).ToList();
        return ways.Contains(null) ? null : ways[0];
    }

    private static WeakerBy? Compare(CheckedBound old, CheckedBound now, Dimension dimension)
    {
        if (old.Definition.Strength == Strength.Required && GateStatus.CanFail(old) && !GateStatus.CanFail(now))
        {
            return WeakerBy.WeakerEvidence;
        }

        var source = now.Definition.Source;
        var before = old.Definition.Source;
        if (source.ValidTo < (before.ValidTo ?? DateOnly.MaxValue) || source.ValidFrom > (before.ValidFrom ?? DateOnly.MinValue))
        {
            return WeakerBy.Shorter;
        }

        return Limits(old, now, dimension);
    }

    private static WeakerBy? Limits(CheckedBound old, CheckedBound now, Dimension dimension) => (old.Limit, now.Limit) switch
    {
        // The advised bound asks for more than the required one: that nothing is missing from what is stated.
        (CheckedPresence before, CheckedPresence after) => now.Definition.Strength == old.Definition.Strength && Covers(before, after) ? null : WeakerBy.Dropped,
        (CheckedWords before, CheckedWords after) => after.Words.Except(before.Words, StringComparer.Ordinal).Any() ? WeakerBy.Laxer : null,
        (CheckedConstant before, CheckedConstant after) when now.Definition.Place == old.Definition.Place =>
            Covers(before.Range, after.Range, old.Definition, now.Definition, dimension) ? null : WeakerBy.Laxer,
        _ => CanonicalText.Of(old.Definition.Limit).Equals(CanonicalText.Of(now.Definition.Limit), StringComparison.Ordinal)
            && now.Definition.Place == old.Definition.Place ? null : WeakerBy.NotComparable,
    };

    private static bool Covers(CheckedRange old, CheckedRange now, Bound before, Bound after, Dimension dimension) =>
        CoversLow(old.Low, now.Low, before.LowExclusive && !after.LowExclusive, dimension)
        && CoversHigh(old.High, now.High, before.HighExclusive && !after.HighExclusive, dimension);

    // Each old line must be met by whatever meets a new one: no further kind will do, and no key is asked less.
    private static bool Covers(CheckedPresence old, CheckedPresence now) => old.Entries.All(before => now.Entries.Any(after =>
        after.AnyOf.All(kind => before.AnyOf.Contains(kind, StringComparer.Ordinal))
        && before.Asks.All(key => after.Asks.Contains(key, StringComparer.Ordinal))));

    private static bool CoversLow(LimitEnd? old, LimitEnd? now, bool beyond, Dimension dimension) =>
        old is null || (now is not null && LimitComparison.MeetsLow(now.Si, old.Si, beyond, dimension));

    private static bool CoversHigh(LimitEnd? old, LimitEnd? now, bool beyond, Dimension dimension) =>
        old is null || (now is not null && LimitComparison.MeetsHigh(now.Si, old.Si, beyond, dimension));
}
