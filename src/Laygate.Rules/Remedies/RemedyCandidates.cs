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
        Judge judge, SearchBudget budget, IReadOnlyList<Finding> targets, ILookup<(string, string), LeverEffect> effects, ILookup<(string, string), Candidate> found)
    {
        Judge = judge;
        Budget = budget;
        Targets = targets;
        Effects = effects;
        Found = found;
    }

    internal Judge Judge { get; }

    /// <summary>What may be judged; half as many plans to confirm.</summary>
    internal SearchBudget Budget { get; }

    /// <summary>Whether there was more to try than may be judged.</summary>
    internal bool IsCut { get; private init; }

    internal IReadOnlyList<Finding> Targets { get; }

    internal ILookup<(string Rule, string Address), LeverEffect> Effects { get; }

    internal ILookup<(string Rule, string Address), Candidate> Found { get; }

    internal static RemedyCandidates Find(Judge judge, IReadOnlyList<Finding> targets, SearchBudget budget, int workers)
    {
        var asItIs = judge.AsItIs();
        foreach (var target in targets)
        {
            asItIs.Find(target.Rule, target.Address); // Filled before several threads read it.
        }

        var options = new ParallelOptions { MaxDegreeOfParallelism = Math.Max(1, workers), CancellationToken = judge.Cancel };
        // Asked for after the levers, so it is judged beside the first of them.
        var before = workers > 1 ? Task.Run(Whole, judge.Cancel) : Task.FromResult(Whole());
        var levers = InTurn(PlanLevers.Of(judge.Plan));
        var effects = new List<LeverEffect>[levers.Count];
        var (judged, cut) = (0, 0);
        var moved = budget.InWaves(levers.Count, budget.Plans, () => judged, options, i =>
        {
            var search = new LeverSearch(judge, levers[i].Lever, asItIs, budget.ForOne); // Let go with its changed plans.
            effects[levers[i].Place] = [.. targets.Select(search.Effect).OfType<LeverEffect>()];
            Interlocked.Add(ref judged, search.Judged);
            Interlocked.Add(ref cut, search.IsCut ? 1 : 0);
        });

        var byTarget = effects.SelectMany(list => list ?? []).ToLookup(effect => (effect.Target.Rule, effect.Target.Address));
        var harm = new HarmCheck(judge, before.GetAwaiter().GetResult());
        var found = new List<Candidate>[targets.Count];
        var mending = effects.SelectMany(list => list ?? []).Where(IsProposed).Select(effect => effect.Mends!).Distinct().ToList();
        budget.InWaves(mending.Count, budget.Plans / 2, () => harm.Judged, options, i => harm.Of([mending[i]])); // Each finding asks for some of them.
        var paired = 0;
        var followed = budget.InWaves(targets.Count, budget.Plans / 2, () => harm.Judged + paired, options, i =>
        {
            var helping = byTarget[(targets[i].Rule, targets[i].Address)].ToList();
            var pairs = new PairSearch(judge, harm, helping, budget.ForOne);
            found[i] = Of(helping, pairs, harm);
            Interlocked.Add(ref paired, pairs.Judged);
            Interlocked.Add(ref cut, pairs.IsCut ? 1 : 0);
        });
        return new RemedyCandidates(
            judge, budget, targets, byTarget, found.SelectMany(list => list ?? []).ToLookup(candidate => (candidate.Effect.Target.Rule, candidate.Effect.Target.Address)))
        {
            IsCut = moved < levers.Count || followed < targets.Count || cut > 0,
        };

        Before Whole() => new(judge.AsItIs().All());
    }

    // One of each kind of change first, then a second of each: a plan with forty rollers has other levers too.
    private static List<(Lever Lever, int Place)> InTurn(IReadOnlyList<Lever> levers) =>
    [
        .. levers.Select((lever, place) => (Lever: lever, Place: place)).GroupBy(item => (item.Lever.Kind, item.Lever.Key))
            .SelectMany(kind => kind.Select((item, turn) => (item.Lever, item.Place, Turn: turn)))
            .OrderBy(item => item.Turn).ThenBy(item => item.Place).Select(item => (item.Lever, item.Place)),
    ];

    private static bool IsProposed(LeverEffect effect) => effect.Mends is not null && !effect.Lever.IsGiven;

    // Single changes first; two together only where no single one does without harm, or only one that changes the design.
    private static List<Candidate> Of(IReadOnlyList<LeverEffect> effects, PairSearch pairs, HarmCheck harm)
    {
        var single = effects.Where(IsProposed)
            .Select(effect => new Candidate([effect.Mends!], effect, harm.Of([effect.Mends!])))
            .ToList();
        return single.Exists(candidate => candidate is { Worsened.Count: 0, IsDesign: false })
            ? single
            : [.. single, .. pairs.Find(single)];
    }
}
