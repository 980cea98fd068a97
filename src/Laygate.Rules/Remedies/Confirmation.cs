using System.Collections.Concurrent;
using Laygate.Model.Levers;
using Laygate.Rules.Results;

namespace Laygate.Rules.Remedies;

/// <summary>Holds proposed changes against the whole rule set with its spread; what does not stand is no remedy.</summary>
internal sealed class Confirmation(RemedyCandidates candidates, Before before)
{
    /// <summary>How often a change is carried further when in the worse case it still misses.</summary>
    private const int MostFurther = 3;

    private readonly ConcurrentDictionary<string, Lazy<Variant?>> judged = new(StringComparer.Ordinal);

    /// <summary>Whether there was more to try than may be judged; known once <see cref="Sets"/> has run.</summary>
    public bool IsCut { get; private set; }

    /// <summary>Remedies and failed attempts of every finding that a number might mend.</summary>
    /// <param name="workers">Threads; at least 1. The result does not depend on it.</param>
    public Dictionary<(string Rule, string Address), RemedySet> Sets(int workers)
    {
        var sets = new RemedySet[candidates.Targets.Count];
        var options = new ParallelOptions { MaxDegreeOfParallelism = Math.Max(1, workers), CancellationToken = candidates.Judge.Cancel };
        var done = candidates.Budget.InWaves(sets.Length, candidates.Budget.Plans / 2, () => judged.Count, options, i => sets[i] = Of(candidates.Targets[i]));
        Array.Fill(sets, new RemedySet([], []), done, sets.Length - done);
        IsCut = candidates.IsCut || done < sets.Length;
        return candidates.Targets.Zip(sets).Where(pair => pair.Second.Found.Count > 0 || pair.Second.CannotBy.Count > 0)
            .ToDictionary(pair => (pair.First.Rule, pair.First.Address), pair => pair.Second);
    }

    private RemedySet Of(Finding target)
    {
        var key = (target.Rule, target.Address);
        var found = new List<Remedy>();
        var failed = new List<FailedRemedy>();
        foreach (var candidate in RemedyOrder.Of(target, candidates.Found[key]))
        {
            // The design is not changed to suit plant or machines as long as those can be changed.
            if (candidate.IsDesign && found.Count > 0)
            {
                break;
            }

            if (candidate.Worsened.Count > 0)
            {
                failed.Add(Failed(candidate.Change[0], RemedyObstacle.WorsensAnother, null, candidate.Worsened));
            }
            else if (found.Count < RemedySearch.MostPerFinding)
            {
                Try(target, candidate, found, failed);
            }
        }

        failed.AddRange(candidates.Effects[key].Where(effect => effect.Mends is null)
            .Select(effect => Failed(new Setting(effect.Lever, effect.End), RemedyObstacle.EndOfRange, effect.AtEnd, [])));
        failed.AddRange(candidates.Effects[key].Where(effect => effect.Mends is not null && effect.Lever.IsGiven)
            .Select(effect => Failed(effect.Mends!, RemedyObstacle.GivenByMachine, effect.AtEnd, [])));
        return new RemedySet(found, failed);
    }

    // The farthest change is asked first; where it does harm, a smaller one that meets the limit on expected values may still stand.
    private void Try(Finding target, Candidate candidate, List<Remedy> found, List<FailedRemedy> failed)
    {
        var obstacle = (FailedRemedy?)null;
        foreach (var change in Enumerable.Reverse(Carried(target, candidate)))
        {
            var against = Against(target, change);
            if (against is null)
            {
                var now = Judged(change)!.Find(target.Rule, target.Address)!;
                found.Add(new Remedy([.. change.Select(Shown)], now.Value, now.Limit, now.Status, now.OnExpectedValuesOnly));
                return;
            }

            obstacle ??= against;
        }

        // Each lever of a pair is told for itself; naming the first again would say the same lever twice.
        if (candidate.Change.Count == 1)
        {
            failed.Add(obstacle!);
        }
    }

    /// <summary>The change, and farther ones of a single lever as long as in the worse case it still misses.</summary>
    private List<IReadOnlyList<Setting>> Carried(Finding target, Candidate candidate)
    {
        var changes = new List<IReadOnlyList<Setting>> { candidate.Change };
        var effect = candidate.Effect;
        var index = effect.Index;
        while (candidate.Change.Count == 1 && changes.Count <= MostFurther
            && Judged(changes[^1])?.Find(target.Rule, target.Address) is { Outcome: Outcome.Met } now && now.Status != Status.Pass
            && Further(effect, index, now) is >= 0 and var next)
        {
            index = next;
            changes.Add([new Setting(effect.Lever, effect.Values[index])]);
        }

        return changes;
    }

    /// <summary>What stands against a change; null when nothing does. The finding itself is asked before all other rules.</summary>
    private FailedRemedy? Against(Finding target, IReadOnlyList<Setting> change)
    {
        var variant = Judged(change);
        var now = variant?.Find(target.Rule, target.Address);
        if (now is not { Outcome: Outcome.Met })
        {
            return Failed(change[0], RemedyObstacle.EndOfRange, now, []);
        }

        if (now.Status >= target.Status && target.Outcome != Outcome.Missed)
        {
            return Failed(change[0], RemedyObstacle.SpreadRemains, now, []);
        }

        var worsened = before.Worsened(variant!.Bad());
        return worsened.Count > 0 ? Failed(change[0], RemedyObstacle.WorsensAnother, now, worsened) : null;
    }

    // By how much in the worse case it still misses, over what one step has brought, says how many steps are missing.
    private static int Further(LeverEffect effect, int index, Finding now)
    {
        var missing = Margins.Spread(now) - (Margins.Of(now) ?? 0);
        var gained = ((Margins.Of(effect.AtEnd) ?? 0) - (Margins.Of(effect.Target) ?? 0)) / Math.Max(1, effect.Values.Count);
        var steps = missing > 0 && gained > 0 ? (int)Math.Min(effect.Values.Count, Math.Ceiling(missing / gained)) : 0;
        return steps > 0 && index + steps < effect.Values.Count ? index + steps : -1;
    }

    private Variant? Judged(IReadOnlyList<Setting> change)
    {
        var name = string.Join('|', change.Select(one => FormattableString.Invariant($"{one.Lever.Kind} {one.Lever.Address} {one.Lever.Key} {one.Value:R}")));
        return judged.GetOrAdd(name, _ => new Lazy<Variant?>(() => candidates.Judge.Confirmed(change))).Value;
    }

    private static FailedRemedy Failed(Setting setting, RemedyObstacle obstacle, Finding? there, IReadOnlyList<Finding> worsened) => new(
        Shown(setting), obstacle, there?.Value, there?.Limit,
        [.. worsened.Select(finding => new FindingReference(finding.Rule, finding.Title, finding.Address))]);

    private static LeverSetting Shown(Setting setting) => new(
        setting.Lever.Kind, setting.Lever.Address, setting.Lever.Key,
        LeverDisplay.Of(setting.Lever, setting.Lever.Current), LeverDisplay.Of(setting.Lever, setting.Value), setting.Lever.ByDesigner);
}

/// <summary>Values of levers as shown.</summary>
internal static class LeverDisplay
{
    /// <summary>A value in its unit, or a clock time such as <c>21:15</c> with the days after the first in words of the record.</summary>
    public static ShownValue Of(Lever lever, double value)
    {
        if (lever.Names is { } names)
        {
            return new ShownValue(null, string.Empty, Text: names[Math.Clamp((int)Math.Round(value), 0, names.Count - 1)]);
        }

        if (!lever.IsClock)
        {
            return new ShownValue(value, lever.Unit?.Spelling ?? string.Empty);
        }

        var time = TimeSpan.FromMinutes(value);
        var days = (int)Math.Floor(time.TotalDays);
        var clock = FormattableString.Invariant($"{time - TimeSpan.FromDays(days):hh\\:mm}");
        return new ShownValue(null, string.Empty, Text: days == 0 ? clock : FormattableString.Invariant($"{clock} ({days:+0;-0} d)"));
    }
}
