using Laygate.Engineering.Quantities;
using Laygate.Model.Measures;
using Laygate.Rules.Definitions;
using Laygate.Rules.Evaluation;

namespace Laygate.Rules.Binding;

/// <summary>Checks rules and bounds against the catalogue.</summary>
internal sealed class RuleChecker(CheckContext context)
{
    private const string SafetyFamily = "safety";

    /// <summary>Checks the parts of a rule that no specification can touch.</summary>
    /// <returns>The quantity and the conditions, or null when they cannot be used.</returns>
    public (QuantityDefinition Quantity, IReadOnlyList<CheckedMatch> When)? Check(RuleDefinition rule, BookPlace place)
    {
        var before = context.Problems.Count;
        CheckSeverity(rule, place);
        if (rule.Bounds.Count == 0 && !rule.OnDemand && rule.Life.State != LifeState.Gone)
        {
            context.Problems.Add(place, new BookMistake.NoBounds());
        }

        var when = rule.When.Select((condition, index) => MatchChecker.Condition(condition, rule, place.In("when", index), context)).ToList();
        var quantity = context.Quantity(rule.Quantity, rule.AppliesTo, place.In("quantity"));
        if (quantity is not null && !Fits(rule.Check, quantity.Kind))
        {
            context.Problems.Add(
                place.In("check"), new BookMistake.CheckDoesNotFit(rule.Check, quantity.Name, quantity.Kind));
        }

        return quantity is null || context.Problems.Count > before ? null : (quantity, [.. when.Select(match => match!)]);
    }

    /// <summary>Checks the bounds that a rule or a specification sets.</summary>
    public IReadOnlyList<CheckedBound> Bounds(
        IReadOnlyList<Bound> bounds, RuleDefinition rule, QuantityDefinition quantity, Layer layer, string? setBy, BookPlace place)
    {
        var sound = new List<CheckedBound>(bounds.Count);
        for (var index = 0; index < bounds.Count; index++)
        {
            var at = place.In("bounds", index);
            if (bounds.Take(index).Any(earlier => earlier.Strength == bounds[index].Strength))
            {
                context.Problems.Add(at.In("strength"), new BookMistake.TwoBoundsOfOneStrength(bounds[index].Strength));
            }

            if (One(bounds[index], rule, quantity, at) is { } limit)
            {
                sound.Add(new CheckedBound(bounds[index], limit, layer, setBy, rule.Check == CheckKind.AtMost));
            }
        }

        CheckAdvised(sound, quantity, place.In("bounds"));
        return [.. sound.OrderBy(bound => bound.Definition.Strength)];
    }

    private CheckedLimit? One(Bound bound, RuleDefinition rule, QuantityDefinition quantity, BookPlace place)
    {
        // What is required of a plan at severity A is that it speaks of the hazard, whatever binds the work itself.
        var mustSpeak = rule is { LifeCritical: true, Check: CheckKind.Present } && bound.Basis == Basis.Recommendation;
        if (bound is { Strength: Strength.Required, Basis: Basis.Recommendation or Basis.Judgement } && !mustSpeak)
        {
            context.Problems.Add(place.In("basis"), new BookMistake.RequiredWithoutRight(bound.Basis));
        }

        context.Source(bound.Source, place.In("source"));
        for (var index = 0; index < bound.Also.Count; index++)
        {
            context.Source(bound.Also[index], place.In("also", index));
        }

        CheckPlace(bound, quantity, place);
        return new LimitChecker(rule, quantity, context).Check(bound, place);
    }

    private void CheckPlace(Bound bound, QuantityDefinition quantity, BookPlace place)
    {
        if (bound.Place is not { } limit)
        {
            return;
        }

        if (quantity.Dimension != Dimension.Temperature)
        {
            context.Problems.Add(place.In("place"), new BookMistake.PlaceWithoutTemperature(quantity.Name));
        }
        else if (quantity.Place is { } own && own != limit)
        {
            context.Problems.Add(
                place.In("place"), new BookMistake.OtherPlace(quantity.Name, own, limit));
        }
    }

    private void CheckSeverity(RuleDefinition rule, BookPlace place)
    {
        var isSafety = string.Equals(rule.Family, SafetyFamily, StringComparison.Ordinal);
        if (!isSafety && rule.Severity is not null)
        {
            context.Problems.Add(place.In("severity"), new BookMistake.SeverityOutsideSafety());
        }
        else if (isSafety && rule.Severity is null && rule.Check == CheckKind.Present)
        {
            context.Problems.Add(place, new BookMistake.SeverityMissing());
        }
    }

    private void CheckAdvised(IReadOnlyList<CheckedBound> bounds, QuantityDefinition quantity, BookPlace place)
    {
        var required = bounds.FirstOrDefault(bound => bound.Definition.Strength == Strength.Required);
        var advised = bounds.FirstOrDefault(bound => bound.Definition.Strength == Strength.Advised);
        if (required?.Limit is not CheckedConstant { Range: var outer } || advised?.Limit is not CheckedConstant { Range: var inner })
        {
            return;
        }

        var lowIsSofter = Softer(inner.Low, outer.Low, low: true, quantity.Dimension);
        var highIsSofter = Softer(inner.High, outer.High, low: false, quantity.Dimension);
        var exclusive = advised.Definition.LowExclusive || advised.Definition.HighExclusive;
        if (lowIsSofter && highIsSofter && !exclusive)
        {
            context.Problems.Add(place, new BookMistake.AdvisedNeverDecides());
        }
    }

    private static bool Softer(LimitEnd? inner, LimitEnd? outer, bool low, Dimension dimension) =>
        inner is null || outer is null || (low
            ? LimitComparison.MeetsHigh(inner.Si, outer.Si, exclusive: false, dimension)
            : LimitComparison.MeetsLow(inner.Si, outer.Si, exclusive: false, dimension));

    private static bool Fits(CheckKind check, ValueKind kind) => check switch
    {
        CheckKind.AtLeast or CheckKind.AtMost or CheckKind.Between => kind == ValueKind.Number,
        CheckKind.NotBefore => kind == ValueKind.Moment,
        CheckKind.Agrees => kind is ValueKind.Category or ValueKind.Flag or ValueKind.Number,
        _ => true,
    };
}
