using Laygate.Model.Levers;
using Laygate.Rules.Results;

namespace Laygate.Rules.Remedies;

/// <summary>What one lever can do for one finding, on expected values.</summary>
/// <param name="Target">The finding as it is, with spread.</param>
/// <param name="Lever">The lever.</param>
/// <param name="Up">Direction in which it helps.</param>
/// <param name="Index">Index in <see cref="Values"/> of the smallest change that mends it; -1 when none does.</param>
/// <param name="Values">Values in that direction, nearest first.</param>
/// <param name="AtEnd">The finding at the farthest value that was tried.</param>
/// <param name="End">The farthest value that was tried.</param>
internal sealed record LeverEffect(
    Finding Target, Lever Lever, bool Up, int Index, IReadOnlyList<double> Values, Finding AtEnd, double End)
{
    public Setting? Mends => Index >= 0 ? new Setting(Lever, Values[Index]) : null;
}

/// <summary>Moves one lever and looks at findings; keeps its changed plans, so that several findings share them.</summary>
/// <param name="judge">Makes and judges changed plans.</param>
/// <param name="lever">The lever.</param>
/// <param name="asItIs">The plan as it is, on expected values.</param>
/// <param name="most">Most changed plans that are judged.</param>
internal sealed class LeverSearch(Judge judge, Lever lever, Variant asItIs, int most)
{
    /// <summary>Whole numbers are tried one by one as long as there are no more than this.</summary>
    private const int MostTriedOneByOne = 24;

    private readonly Dictionary<double, Variant?> variants = [];

    /// <summary>Number of changed plans that were judged.</summary>
    public int Judged => variants.Count;

    /// <summary>Whether there was more to try than may be judged.</summary>
    public bool IsCut { get; private set; }

    /// <summary>What the lever can do for a finding; null when it does not help in either direction.</summary>
    /// <param name="target">The finding as it is, with its spread.</param>
    public LeverEffect? Effect(Finding target)
    {
        var found = Best(target);
        return IsCut && found?.Mends is null ? null : found; // What was not tried to its end is not said to fail there.
    }

    private LeverEffect? Best(Finding target)
    {
        var best = (LeverEffect?)null;
        foreach (var up in new[] { true, false })
        {
            var effect = Effect(target, up);
            if (effect is not null && (best is null || (effect.Index >= 0 && best.Index < 0)))
            {
                best = effect;
            }
        }

        return best;
    }

    private LeverEffect? Effect(Finding target, bool up)
    {
        var values = lever.Values(up);
        var last = LastConsistent(values);
        if (last < 0 || !Touches(target, values[0], values[last]))
        {
            return null;
        }

        var needed = Margins.Aim(target);
        var index = Smallest(values, last, target, needed);
        if (index < 0 && needed > 0 && target.Outcome == Outcome.Missed)
        {
            index = Smallest(values, last, target, 0);
        }

        var best = index >= 0 ? index : Best(values, last, target);
        return best < 0 ? null : new LeverEffect(target, lever, up, index, values, At(values[best], target)!, values[best]);
    }

    /// <summary>Whether the lever moves the finding at all: most levers do not, and need no search.</summary>
    private bool Touches(Finding target, double nearest, double farthest) =>
        asItIs.Find(target.Rule, target.Address) is { } before
        && (Differs(before, At(farthest, target)) || Differs(before, At(nearest, target)));

    private static bool Differs(Finding before, Finding? after) =>
        after is not null && (after.Outcome != before.Outcome || !Nullable.Equals(Margins.Of(after), Margins.Of(before)));

    /// <summary>
    /// The first value that mends the finding with the margin it needs; -1 when none does. Looked for in doubling strides and
    /// then by halving, so that a limit with two ends is not jumped over unless its band is narrower than the stride.
    /// </summary>
    private int Smallest(IReadOnlyList<double> values, int last, Finding target, double needed)
    {
        var (low, high) = (-1, -1);
        foreach (var i in Scan(last))
        {
            if (Mends(values[i], target, needed))
            {
                high = i;
                break;
            }

            low = i;
        }

        while (high - low > 1)
        {
            var middle = (low + high) / 2;
            (low, high) = Mends(values[middle], target, needed) ? (low, middle) : (middle, high);
        }

        return high;
    }

    /// <summary>The scanned value at which the finding comes nearest to its limit; -1 when it comes no nearer than it is.</summary>
    private int Best(IReadOnlyList<double> values, int last, Finding target)
    {
        var (best, margin) = (-1, double.NegativeInfinity);
        foreach (var i in Scan(last))
        {
            if (At(values[i], target) is { } found && Improves(target, found) && Margins.Of(found) is { } now && now > margin)
            {
                (best, margin) = (i, now);
            }
        }

        return best;
    }

    // Few whole numbers are tried one by one; long ranges in strides that double.
    private IEnumerable<int> Scan(int last)
    {
        var oneByOne = lever.IsCount && last < MostTriedOneByOne;
        for (var i = 0; i < last; i = oneByOne ? i + 1 : (2 * i) + 1)
        {
            yield return i;
        }

        yield return last;
    }

    private bool Mends(double value, Finding target, double needed) =>
        At(value, target) is { Outcome: Outcome.Met } found && (Margins.Of(found) ?? -1) >= needed;

    private bool Improves(Finding target, Finding end)
    {
        var before = asItIs.Find(target.Rule, target.Address);
        if (end.Outcome is not (Outcome.Met or Outcome.Missed) || before is null)
        {
            return false;
        }

        return Margins.Of(end) is { } now && Margins.Of(before) is { } was && now > was + (1e-6 * Math.Max(1, Math.Abs(was)));
    }

    // A range may end where the plan contradicts itself, such as a buffer below its lowest level.
    private int LastConsistent(IReadOnlyList<double> values)
    {
        for (var i = values.Count - 1; i >= 0; i /= 2)
        {
            if (Of(values[i]) is not null)
            {
                return i;
            }

            if (i == 0)
            {
                break;
            }
        }

        return -1;
    }

    private Finding? At(double value, Finding target) => Of(value)?.Find(target.Rule, target.Address);

    private Variant? Of(double value)
    {
        if (!variants.TryGetValue(value, out var known))
        {
            if (variants.Count >= most)
            {
                IsCut = true;
                return null;
            }

            known = judge.Expected(new Setting(lever, value));
            variants[value] = known;
        }

        return known;
    }
}
