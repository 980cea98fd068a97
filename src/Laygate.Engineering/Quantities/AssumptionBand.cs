using Laygate.Engineering.Assumptions;

namespace Laygate.Engineering.Quantities;

/// <summary>
/// Low and high of a number that rests on weak assumptions in place of plan inputs: the extremes over the ends of their
/// ranges. Values that already carry a spread keep it.
/// </summary>
internal static class AssumptionBand
{
    /// <summary>With more assumptions than this only the common ends are looked at, not every combination.</summary>
    private const int MostCombined = 4;

    /// <summary>The answer with its band, or as it is.</summary>
    public static Answer Add(QuantityContext context, string quantity, Element element, Answer answer)
    {
        if (answer is not { RestsOnWeakAssumption: true, Value: NumberValue { Low: null, High: null } number })
        {
            return answer;
        }

        var (low, high) = (number.Si, number.Si);
        foreach (var ends in Ends([.. WeakOnes(context, answer)]))
        {
            if (context.Service(one => new AssumptionVariants(one)).Of(ends).Get(quantity, element).Value is NumberValue other)
            {
                (low, high) = (Math.Min(low, other.Si), Math.Max(high, other.Si));
            }
        }

        return answer with { Value = number with { Low = low, High = high } };
    }

    private static IEnumerable<Assumption> WeakOnes(QuantityContext context, Answer answer) => answer.Working.Assumptions
        .Where(use => use.StandsFor is not null && use.Evidence is Evidence.Recalled or Evidence.Judgement or Evidence.CommonPractice)
        .Select(use => use.Id)
        .Distinct(StringComparer.Ordinal)
        .Select(id => context.Assumptions[id]);

    /// <summary>Every combination of ends, or all low and all high.</summary>
    private static IEnumerable<Assumption[]> Ends(Assumption[] weak)
    {
        var combinations = weak.Length <= MostCombined ? 1 << weak.Length : 2;
        for (var i = 0; i < combinations; i++)
        {
            var bits = weak.Length <= MostCombined ? i : -i;
            yield return [.. weak.Select((assumption, at) =>
                assumption with { Number = (bits >> at & 1) == 0 ? assumption.Low : assumption.High })];
        }
    }
}

/// <summary>The plan under other assumptions, kept: several quantities rest on the same ends, and on one another.</summary>
internal sealed class AssumptionVariants(QuantityContext context)
{
    private readonly Dictionary<string, QuantityContext> kept = new(StringComparer.Ordinal);

    /// <summary>The plan under some ends.</summary>
    public QuantityContext Of(Assumption[] ends)
    {
        var key = string.Join(';', ends.Select(end => FormattableString.Invariant($"{end.Id}={end.Number:R}")));
        if (!kept.TryGetValue(key, out var variant))
        {
            variant = context.Under(context.Assumptions.With(ends));
            kept[key] = variant;
        }

        return variant;
    }
}
