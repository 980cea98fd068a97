using Laygate.Engineering.Quantities;
using Laygate.Engineering.Records.Happened;
using Laygate.Model.Measures;
using Laygate.Rules.Binding;
using Laygate.Rules.Definitions;
using Laygate.Rules.Evaluation;
using Laygate.Rules.Results;

namespace Laygate.Rules.Held;

/// <summary>Judges one rule on one element by what happened: value by value, the worst of the shift decides.</summary>
internal sealed class HeldRule(HappenedShift shift, RuleEvaluation evaluation, bool isSimple)
{
    private readonly Dictionary<(string Quantity, string Address), HappenedSet> sets = [];
    private readonly QuantityContext context = shift.Context;

    /// <summary>Judges; null where the rule does not apply.</summary>
    public HeldFinding? Judge(CheckedRule rule, Element element, HappenedQuantity quantity)
    {
        if (context.Elements.Related(element, context.Catalogue.Find(quantity.Quantity)!.Element) is not { } owner)
        {
            return null;
        }

        var planned = context.Get(quantity.Quantity, owner);
        var plan = evaluation.Evaluate(rule, element);
        var set = Of(quantity, owner);
        var implied = quantity.Implies is { } flag && set.Values.Count > 0 ? context.Get(flag, owner) : null;
        if (implied is not null)
        {
            context.Give(quantity.Implies!, owner.Address, new Answer { Value = new FlagValue(Yes: true), Origin = Origin.Stated });
        }

        try
        {
            return Judge(rule, element, owner, quantity, set) is { } found ? found with { PlanStatus = plan.Status } : null;
        }
        finally
        {
            context.Give(quantity.Quantity, owner.Address, planned);
            if (implied is not null)
            {
                context.Give(quantity.Implies!, owner.Address, implied);
            }
        }
    }

    private HeldFinding? Judge(CheckedRule rule, Element element, Element owner, HappenedQuantity quantity, HappenedSet set)
    {
        var silent = Silent(rule, element, owner, quantity);
        if (set.Values.Count == 0)
        {
            return silent.Outcome == Outcome.NotApplicable ? null : NotRecorded(silent, quantity, set);
        }

        var judged = Judged(rule, element, owner, quantity, set);
        if (judged.Count == 0)
        {
            return null;
        }

        var worst = judged.OrderByDescending(one => Rank(one)).ThenByDescending(one => Beyond(one.Finding, one.Number, quantity.IsLimit)).First();
        var notHeld = judged.FindAll(one => one.Outcome != HeldOutcome.Held).OrderByDescending(Rank).ThenByDescending(one => Beyond(one.Finding, one.Number, quantity.IsLimit))
            .Select(one => new JudgedValue(one.Value, one.Outcome, one.Number)).ToList();
        var isSilent = worst.Outcome == HeldOutcome.Held && set.Lacking.Count > 0;
        return new HeldFinding(worst.Finding, isSilent ? HeldOutcome.NotRecorded : worst.Outcome, isSilent ? StatusOf(silent) : StatusOf(worst), quantity)
        {
            Worst = worst.Value,
            Number = worst.Number,
            Uncertainty = worst.Value.Standard is { } u ? 2 * u / Factor(worst.Finding) : null,
            Because = worst.Outcome == HeldOutcome.NotDecided ? worst.Because : NotDecidedBecause.None,
            Count = set.Values.Count,
            NotHeld = notHeld,
            Lacking = set.Lacking,
        };
    }

    private HappenedSet Of(HappenedQuantity quantity, Element owner)
    {
        if (!sets.TryGetValue((quantity.Quantity, owner.Address), out var set))
        {
            sets[(quantity.Quantity, owner.Address)] = set = quantity.Read(shift, owner);
        }

        return set;
    }

    private Finding Silent(CheckedRule rule, Element element, Element owner, HappenedQuantity quantity)
    {
        context.Give(quantity.Quantity, owner.Address, Answer.Missing(new InputReference(owner.Address, quantity.Quantity)));
        return evaluation.Evaluate(rule, element);
    }

    private static HeldFinding NotRecorded(Finding silent, HappenedQuantity quantity, HappenedSet set) => new(silent, HeldOutcome.NotRecorded, StatusOf(silent), quantity) { Lacking = set.Lacking };

    // Only where the least and the greatest do not both hold must each value be looked at.
    private List<One> Judged(CheckedRule rule, Element element, Element owner, HappenedQuantity quantity, HappenedSet set)
    {
        var keys = Keys(rule, element, quantity).ToList();
        One? Of(HappenedValue value) => JudgedOne(rule, element, owner, quantity, value, keys);
        if (keys.Count == 0 && set.Values.Count > 2 && set.Values.All(value => value.Standard is null == set.Values[0].Standard is null))
        {
            var ends = new[] { set.Values.MinBy(value => value.Si - (2 * value.Standard ?? 0)), set.Values.MaxBy(value => value.Si + (2 * value.Standard ?? 0)), set.Values.FirstOrDefault(value => value.Side != KnownSide.Value) }
                .OfType<HappenedValue>().Distinct().Select(Of).OfType<One>().ToList();
            if (ends.TrueForAll(one => one.Outcome == HeldOutcome.Held))
            {
                return ends;
            }
        }

        return [.. set.Values.Select(Of).OfType<One>()];
    }

    private IEnumerable<(HappenedQuantity Key, Element Owner, HappenedSet Set)> Keys(CheckedRule rule, Element element, HappenedQuantity judged) =>
        from name in rule.When.Select(condition => condition.Quantity).Concat(rule.Bounds.SelectMany(bound => bound.Limit switch { CheckedTable table => table.Keys, CheckedQuantity other => [other.Quantity], _ => [] })).Select(one => one.Name).Distinct(StringComparer.Ordinal)
        let key = HappenedQuantities.Find(name)
        where key is { GoesWithTime: true } && !ReferenceEquals(key, judged)
        let owner = context.Elements.Related(element, context.Catalogue.Find(name)!.Element)
        where owner is not null
        let set = Of(key, owner)
        where set.Values.Count > 0
        select (key, owner, set);

    private One? JudgedOne(CheckedRule rule, Element element, Element owner, HappenedQuantity quantity, HappenedValue value, List<(HappenedQuantity Key, Element Owner, HappenedSet Set)> keys)
    {
        foreach (var (key, keyOwner, set) in keys)
        {
            var planned = context.Get(key.Quantity, keyOwner);
            context.Give(key.Quantity, keyOwner.Address, planned with { Value = new NumberValue(AtTime(set.Values, value.At)), Absence = null });
        }

        var half = 2 * (isSimple ? 0 : value.Standard ?? 0);
        context.Give(quantity.Quantity, owner.Address, new Answer
        {
            Value = new NumberValue(value.Si, value.Side == KnownSide.AtMost ? double.NegativeInfinity : value.Si - half, value.Side == KnownSide.AtLeast ? double.PositiveInfinity : value.Si + half),
            Origin = Origin.Stated,
            Place = value.Place,
        });
        var finding = evaluation.Evaluate(rule, element);
        if (finding.Outcome == Outcome.NotApplicable)
        {
            return null;
        }

        var (outcome, because) = OutcomeOf(finding, value);
        var shown = finding.Value ?? new ShownValue(null, string.Empty);
        return new One(finding with { Value = finding.Value is null ? null : shown with { Low = null, High = null } }, value, outcome, because, (quantity.IsLimit ? Known(finding) : shown.Number) ?? value.Si);
    }

    private (HeldOutcome Outcome, NotDecidedBecause Because) OutcomeOf(Finding finding, HappenedValue value) => finding switch
    {
        { Outcome: Outcome.Met, OnExpectedValuesOnly: false } when value.Standard is null && !isSimple => (HeldOutcome.NotDecided, NotDecidedBecause.NoUncertainty),
        { Outcome: Outcome.Met, OnExpectedValuesOnly: false } => (HeldOutcome.Held, NotDecidedBecause.None),
        { Outcome: Outcome.Missed, FavourableEndMeets: false } => (HeldOutcome.Missed, NotDecidedBecause.None),
        { Outcome: Outcome.Met or Outcome.Missed } => (HeldOutcome.NotDecided, value.Side switch { KnownSide.AtLeast => NotDecidedBecause.ReadLater, KnownSide.AtMost => NotDecidedBecause.ReadEarlier, _ => NotDecidedBecause.Uncertainty }),
        _ => (HeldOutcome.NotDecided, NotDecidedBecause.NoLimit),
    };

    // Straight between the readings before and behind; outside of them the nearest.
    private static double AtTime(IReadOnlyList<HappenedValue> values, DateTimeOffset? at)
    {
        var timed = values.Where(value => value.At is not null).OrderBy(value => value.At).ToList();
        var before = timed.LastOrDefault(value => value.At <= at);
        var behind = timed.FirstOrDefault(value => value.At >= at);
        return (before, behind) switch
        {
            (null, null) => timed.Count > 0 ? timed[0].Si : values[0].Si,
            (null, _) => behind.Si,
            (_, null) => before.Si,
            _ when behind.At > before.At => before.Si + ((behind.Si - before.Si) * ((at - before.At)!.Value / (behind.At - before.At)!.Value)),
            _ => before.Si,
        };
    }

    private static int Rank(One one) => one.Outcome switch
    {
        HeldOutcome.Missed => StatusOf(one) == Status.Fail ? 3 : 2,
        HeldOutcome.NotDecided => 1,
        _ => 0,
    };

    private static Status StatusOf(One one) => one.Outcome switch
    {
        HeldOutcome.Held => Status.Pass,
        HeldOutcome.NotDecided => Status.Warn,
        _ => one.Finding.Status == Status.Fail ? Status.Fail : Status.Warn,
    };

    private static Status StatusOf(Finding silent) => silent.Status == Status.Fail ? Status.Fail : Status.Warn;

    private static double? Known(Finding finding) => finding.Limit?.Low?.Number ?? finding.Limit?.High?.Number;

    // How far beyond its limit a value lies; below zero within it. Where what happened is the limit, the greater one is the worse for what must be at least it.
    private static double Beyond(Finding finding, double number, bool isLimit) => isLimit ? (finding.Check == CheckKind.AtMost ? -number : number) : Math.Max(
        finding.Limit?.Low?.Number is { } low ? low - number : double.NegativeInfinity, finding.Limit?.High?.Number is { } high ? number - high : double.NegativeInfinity);

    private static double Factor(Finding finding) => finding.Value?.Unit is { Length: > 0 } unit ? UnitTable.Find(unit)?.Factor ?? 1 : 1;

    private sealed record One(Finding Finding, HappenedValue Value, HeldOutcome Outcome, NotDecidedBecause Because, double Number);
}
