using Laygate.Model.Levers;
using Laygate.Rules.Results;

namespace Laygate.Rules.Remedies;

/// <summary>A change that mends a finding on expected values, and what it would make worse.</summary>
internal sealed record Candidate(IReadOnlyList<Setting> Change, LeverEffect Effect, IReadOnlyList<Finding> Worsened)
{
    /// <summary>Whether the designer must agree to it, or to a part of it.</summary>
    public bool IsDesign => Change.Any(setting => setting.Lever.ByDesigner);
}

/// <summary>What the search on expected values proposes for each finding.</summary>
public sealed class RemedyCandidates
{
    private RemedyCandidates(
        Judge judge, IReadOnlyList<Finding> targets, ILookup<(string, string), LeverEffect> effects, ILookup<(string, string), Candidate> found)
    {
        Judge = judge;
        Targets = targets;
        Effects = effects;
        Found = found;
    }

    /// <summary>Number of proposed changes over all findings.</summary>
    public int Count => Found.Sum(group => group.Count(candidate => candidate.Worsened.Count == 0));

    internal Judge Judge { get; }

    internal IReadOnlyList<Finding> Targets { get; }

    internal ILookup<(string Rule, string Address), LeverEffect> Effects { get; }

    internal ILookup<(string Rule, string Address), Candidate> Found { get; }

    internal static RemedyCandidates Find(Judge judge, IReadOnlyList<Finding> targets, int workers)
    {
        var asItIs = judge.AsItIs();
        var all = asItIs.All();
        foreach (var target in targets)
        {
            asItIs.Find(target.Rule, target.Address); // Filled before several threads read it.
        }

        var before = new Before(all);
        var levers = PlanLevers.Of(judge.Plan);
        var effects = new List<LeverEffect>[levers.Count];
        var options = new ParallelOptions { MaxDegreeOfParallelism = Math.Max(1, workers), CancellationToken = judge.Cancel };
        Parallel.For(0, levers.Count, options, i =>
        {
            var search = new LeverSearch(judge, levers[i], asItIs);
            effects[i] = [.. targets.Select(search.Effect).OfType<LeverEffect>()];
        });
        var byTarget = effects.SelectMany(list => list).ToLookup(effect => (effect.Target.Rule, effect.Target.Address));
        var harm = new HarmCheck(judge, before);
        var found = new List<Candidate>[targets.Count];
        Parallel.For(0, targets.Count, options, i => found[i] = Of([.. byTarget[(targets[i].Rule, targets[i].Address)]], judge, harm));
        return new RemedyCandidates(
            judge, targets, byTarget, found.SelectMany(list => list).ToLookup(candidate => (candidate.Effect.Target.Rule, candidate.Effect.Target.Address)));
    }

    // Single changes first; two together only where no single one does without harm, or only one that changes the design.
    private static List<Candidate> Of(IReadOnlyList<LeverEffect> effects, Judge judge, HarmCheck harm)
    {
        var single = effects.Where(effect => effect.Mends is not null && !effect.Lever.IsGiven)
            .Select(effect => new Candidate([effect.Mends!], effect, harm.Of([effect.Mends!])))
            .ToList();
        return single.Exists(candidate => candidate is { Worsened.Count: 0, IsDesign: false })
            ? single
            : [.. single, .. new PairSearch(judge, harm, effects).Find(single)];
    }
}
