using Laygate.Engineering.Quantities;
using Laygate.Model.Measures;
using Laygate.Model.Plans;
using Laygate.Rules.Binding;
using Laygate.Rules.Results;

namespace Laygate.Rules.Evaluation;

/// <summary>A limiting temperature is compared only with a temperature of the same place.</summary>
internal static class PlaceCheck
{
    /// <summary>Checks the place of a value against that of a limit.</summary>
    /// <returns>The bound with a remark where its source names no place, or why it cannot be compared.</returns>
    public static (ResolvedBound? Resolved, UnresolvedBound? Unresolved) Check(CheckedRule rule, ResolvedBound bound, Answer value)
    {
        if (rule.Quantity.Dimension != Dimension.Temperature || value.Value is null)
        {
            return (bound, null);
        }

        var here = value.Place ?? rule.Quantity.Place;
        var other = (bound.Bound.Limit as CheckedQuantity)?.Quantity;
        var ofOther = other is null ? null : bound.Other!.Place ?? other.Place;
        if (bound.Bound.Definition.Place is { } asked && other is not null && ofOther != asked)
        {
            return (null, Unlike(bound, bound.Other!, ofOther, asked));
        }

        if ((bound.Bound.Definition.Place ?? ofOther) is { } limit)
        {
            return here == limit ? (bound, null) : (null, Unlike(bound, value, here, limit));
        }

        return here is { } known
            ? (bound with { Notes = [.. bound.Notes, Note.Of(FindingNotes.LimitPlaceNotStated, ("place", Words.Of(known)))] }, null)
            : (bound, null);
    }

    private static UnresolvedBound Unlike(ResolvedBound bound, Answer value, Place? place, Place limit) => place is { } known
        ? new UnresolvedBound(
            bound.Bound, InForce: true, [], Note.Of(FindingNotes.PlacesDiffer, ("place", Words.Of(known)), ("limit", Words.Of(limit))))
        : new UnresolvedBound(bound.Bound, InForce: true, [Answer.Missing(PlaceKey(value.Input))], null);

    // The place stands beside the temperature: `delivery.lowest` and `delivery.place`.
    private static InputReference PlaceKey(InputReference? input)
    {
        if (input is null)
        {
            return new InputReference("plan", "place");
        }

        var point = input.Key.LastIndexOf('.');
        var block = point >= 0 && input.Key[(point + 1)..] is "value" or "lowest" or "expected" or "highest" ? input.Key[..point] : input.Key;
        return input with { Key = block.Length == 0 ? "place" : $"{block}.place" };
    }
}
