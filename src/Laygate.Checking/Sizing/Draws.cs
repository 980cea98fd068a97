using Laygate.Engineering.Assumptions;

namespace Laygate.Checking.Sizing;

/// <summary>Sets of values within the ranges of all usual values and assumptions that a sizing rests on.</summary>
internal sealed class Draws
{
    private readonly AssumptionSet basis;
    private readonly IReadOnlyList<Assumption> drawn;
    private readonly Dictionary<string, string> keys = new(StringComparer.Ordinal);
    private readonly Dictionary<(string Id, bool IsHigh), SizedValues> ends = [];
    private readonly Func<AssumptionSet, SizedValues> size;

    public Draws(AssumptionSet basis, SizingDraft draft, SizedValues expected, PlanTools tools)
    {
        this.basis = basis;
        size = set => new SizedValues(tools, draft, set);
        foreach (var usual in draft.Usual.Where(usual => usual.Id is not null))
        {
            keys.TryAdd(usual.Id!, usual.Key);
        }

        foreach (var use in expected.Asked.SelectMany(one => one.Answer.Working?.Assumptions ?? []))
        {
            keys.TryAdd(use.Id, use.Key is { } key ? $"{key.Address}/{key.Key}" : string.Empty);
        }

        keys.TryAdd(SizingAssumptions.ShiftLength, "shift.end");
        drawn = [.. keys.Keys.Order(StringComparer.Ordinal).Select(id => basis[id]).Where(one => one.Low < one.High && one.Id is not (SizingAssumptions.LayingTemperature or SizingAssumptions.Wind))];
    }

    /// <summary>Ids of what is drawn.</summary>
    public IEnumerable<string> Ids => drawn.Select(one => one.Id);

    /// <summary>The key of the plan that replaces one; null where no plan states it.</summary>
    public string? KeyOf(string id) => keys[id] is { Length: > 0 } key ? key : null;

    /// <summary>
    /// A set of values, each evenly within its range: Richtmyer's sequence, multiples of the roots of primes without their whole parts
    /// (recalled), which fills many ranges evenly with few sets and without chance.
    /// </summary>
    public AssumptionSet Of(int number) => basis.With(drawn.Select((one, index) =>
    {
        var share = number * Math.Sqrt(Prime(index)) % 1;
        return one with { Number = one.Low + (share * (one.High - one.Low)) };
    }));

    /// <summary>The expected values with one of them at an end of its range.</summary>
    public SizedValues At(string id, bool isHigh)
    {
        if (!ends.TryGetValue((id, isHigh), out var values))
        {
            var one = basis[id];
            ends[(id, isHigh)] = values = size(basis.With([one with { Number = isHigh ? one.High : one.Low }]));
        }

        return values;
    }

    private static int Prime(int index)
    {
        var prime = 1;
        for (var found = -1; found < index;)
        {
            prime++;
            found += Enumerable.Range(2, prime - 2).All(divisor => prime % divisor != 0) ? 1 : 0;
        }

        return prime;
    }
}
