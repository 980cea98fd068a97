using Laygate.Model.Levers;
using Laygate.Rules.Results;

namespace Laygate.Rules.Remedies;

/// <summary>
/// Looks for two changes that mend a finding together: a second lever that undoes the one harm of a first, or two levers of
/// which each helps and neither suffices.
/// </summary>
/// <param name="judge">Makes and judges changed plans.</param>
/// <param name="harm">What a change makes worse.</param>
/// <param name="effects">What each lever can do for the finding.</param>
/// <param name="most">Most changed plans that are judged.</param>
internal sealed class PairSearch(Judge judge, HarmCheck harm, IReadOnlyList<LeverEffect> effects, int most)
{
    /// <summary>Most firsts that are followed up for one finding, and most findings that a first may harm.</summary>
    private const int MostFirsts = 4;
    private const int MostHarmed = 2;

    /// <summary>Number of changed plans that were judged.</summary>
    public int Judged { get; private set; }

    /// <summary>Whether there was more to try than may be judged.</summary>
    public bool IsCut { get; private set; }

    public IEnumerable<Candidate> Find(IReadOnlyList<Candidate> single)
    {
        var healed = single.Where(candidate => candidate.Worsened.Count is > 0 and <= MostHarmed).OrderBy(candidate => candidate.IsDesign).Take(MostFirsts).Select(Heal).OfType<Candidate>().ToList();
        return healed.Count > 0 ? healed : Together().Take(1);
    }

    /// <summary>A second lever, and the smallest setting of it, with which the first does no harm any more.</summary>
    private Candidate? Heal(Candidate first)
    {
        foreach (var lever in PlanLevers.Of(judge.Plan).Where(lever => !lever.IsGiven && !IsSame(lever, first.Effect.Lever)).OrderBy(lever => lever.ByDesigner))
        {
            foreach (var up in new[] { true, false })
            {
                var values = lever.Values(up);
                if (Smallest(values, value => [first.Change[0], new Setting(lever, value)], variant => !Harms(variant, first)) is { } setting
                    && harm.Of(setting) is { Count: 0 })
                {
                    return new Candidate(setting, first.Effect, []);
                }
            }
        }

        return null;
    }

    // What costs least is asked first; most second levers change nothing about the harm.
    private bool Harms(Variant variant, Candidate first) => first.Worsened.Append(first.Effect.Target).OrderBy(Variant.IsSimulated).Any(finding =>
        ReferenceEquals(finding, first.Effect.Target)
            ? variant.Find(finding.Rule, finding.Address) is not { Outcome: Outcome.Met }
            : harm.IsWorse(variant.Find(finding.Rule, finding.Address)));

    private IEnumerable<Candidate> Together()
    {
        var helping = effects.Where(effect => effect.Mends is null && !effect.Lever.IsGiven).OrderBy(effect => effect.Lever.ByDesigner).Take(MostFirsts).ToList();
        for (var i = 0; i < helping.Count; i++)
        {
            for (var j = 0; j < helping.Count; j++)
            {
                var (first, second) = (helping[i], helping[j]);
                if (i != j && Smallest(
                    second.Values, value => [new Setting(first.Lever, first.End), new Setting(second.Lever, value)],
                    variant => variant.Find(first.Target.Rule, first.Target.Address) is { Outcome: Outcome.Met }) is { } setting
                    && harm.Of(setting) is { Count: 0 })
                {
                    yield return new Candidate(setting, first, []);
                }
            }
        }
    }

    private IReadOnlyList<Setting>? Smallest(IReadOnlyList<double> values, Func<double, Setting[]> change, Func<Variant, bool> suits)
    {
        // A range may end where the plan contradicts itself, such as a phase that is done after the next one.
        var last = values.Count - 1;
        while (last > 0 && MayJudge() && judge.Changed(change(values[last])) is null)
        {
            last /= 2;
        }

        if (last < 0 || !Suits(last))
        {
            return null;
        }

        var (low, high) = (-1, last);
        while (high - low > 1)
        {
            var middle = (low + high) / 2;
            (low, high) = Suits(middle) ? (low, middle) : (middle, high);
        }

        return change(values[high]);

        bool Suits(int i) => MayJudge() && judge.Expected(change(values[i])) is { } variant && suits(variant);
    }

    private bool MayJudge()
    {
        IsCut |= Judged >= most;
        Judged += IsCut ? 0 : 1;
        return !IsCut;
    }

    private static bool IsSame(Lever a, Lever b) => a.Kind == b.Kind
        && string.Equals(a.Address, b.Address, StringComparison.Ordinal) && string.Equals(a.Key, b.Key, StringComparison.Ordinal);
}
