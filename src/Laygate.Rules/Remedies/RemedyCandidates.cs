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
/// <param name="Judge">Makes and judges changed plans.</param>
/// <param name="Budget">What may be judged.</param>
/// <param name="Targets">The findings, the worst first.</param>
/// <param name="Effects">What each lever can do for a finding.</param>
/// <param name="Found">Proposed changes.</param>
/// <param name="IsCut">Whether there was more to try than may be judged.</param>
internal sealed record RemedyCandidates(
    Judge Judge,
    SearchBudget Budget,
    IReadOnlyList<Finding> Targets,
    ILookup<(string Rule, string Address), LeverEffect> Effects,
    ILookup<(string Rule, string Address), Candidate> Found,
    bool IsCut)
{
    public static RemedyCandidates Find(Judge judge, IReadOnlyList<Finding> targets, SearchBudget budget, int workers)
    {
        var options = new ParallelOptions { MaxDegreeOfParallelism = Math.Max(1, workers), CancellationToken = judge.Cancel };
        // Asked for after the levers, so it is judged beside the first of them.
        var before = workers > 1 ? Task.Run(Whole, judge.Cancel) : Task.FromResult(Whole());
        var worstFirst = targets.OrderByDescending(target => target.Status).ToList();
        var (effects, isCut) = Moved(judge, worstFirst, budget, options);
        var (found, isCutToo) = Followed(effects, new HarmCheck(judge, before.GetAwaiter().GetResult()), judge, worstFirst, budget, options);
        return new RemedyCandidates(judge, budget, worstFirst, effects, found, isCut || isCutToo);

        Before Whole() => new(judge.AsItIs().All());
    }

    // Each lever alone.
    private static (ILookup<(string, string), LeverEffect> Effects, bool IsCut) Moved(Judge judge, List<Finding> targets, SearchBudget budget, ParallelOptions options)
    {
        var asItIs = judge.AsItIs();
        foreach (var target in targets)
        {
            asItIs.Find(target.Rule, target.Address); // Filled before several threads read it.
        }

        var levers = InTurn(PlanLevers.Of(judge.Plan));
        var effects = new List<LeverEffect>[levers.Count];
        var (judged, cut) = (0, 0);
        var done = budget.InWaves(levers.Count, budget.Plans, () => judged, options, i =>
        {
            var search = new LeverSearch(judge, levers[i].Lever, asItIs, budget.ForOne); // Let go with its changed plans.
            effects[levers[i].Place] = [.. targets.Select(search.Effect).OfType<LeverEffect>()];
            Interlocked.Add(ref judged, search.Judged);
            Interlocked.Add(ref cut, search.IsCut ? 1 : 0);
        });
        return (effects.SelectMany(list => list ?? []).ToLookup(effect => (effect.Target.Rule, effect.Target.Address)), done < levers.Count || cut > 0);
    }

    // What mends and what harm it does: first each change for itself, which several findings ask for, then finding by finding with pairs.
    private static (ILookup<(string, string), Candidate> Found, bool IsCut) Followed(
        ILookup<(string, string), LeverEffect> effects, HarmCheck harm, Judge judge, List<Finding> targets, SearchBudget budget, ParallelOptions options)
    {
        // Several findings ask for one change: those of the worst findings are judged beside each other, as many as leave half of what there is for following up.
        var mending = targets.SelectMany(target => effects[(target.Rule, target.Address)]).Where(IsProposed).Select(effect => effect.Mends!).Distinct();
        List<Setting> first = [.. mending.Take(budget.Plans / 4)];
        SearchBudget.Each(0, first.Count, options, i => harm.Of([first[i]]));
        var (paired, cut) = (0, 0);
        var found = new List<Candidate>[targets.Count];
        var done = budget.InWaves(targets.Count, budget.Plans / 2, () => harm.Judged + paired, options, i =>
        {
            var helping = effects[(targets[i].Rule, targets[i].Address)].ToList();
            var pairs = new PairSearch(judge, harm, helping, budget.ForOne);
            found[i] = Of(helping, pairs, harm);
            Interlocked.Add(ref paired, pairs.Judged);
            Interlocked.Add(ref cut, pairs.IsCut ? 1 : 0);
        });
        return (found.SelectMany(list => list ?? []).ToLookup(candidate => (candidate.Effect.Target.Rule, candidate.Effect.Target.Address)), done < targets.Count || cut > 0);
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
