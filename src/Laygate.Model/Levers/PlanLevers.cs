using Laygate.Model.Measures;
using Laygate.Model.Plans;

namespace Laygate.Model.Levers;

/// <summary>
/// The levers of a plan: stated quantities that a site, a plant or the designer may change. Ends of ranges are what a site
/// would accept (speed not below 1.5 m/min, mix not hotter than the plan's own highest, opening inside the closure,
/// thickness inside the tolerance); where the plan sets no end, <see cref="SearchFactor"/> only says how far is looked.
/// </summary>
public static class PlanLevers
{
    /// <summary>How far is looked where nothing else ends a range: this many times the stated value. A bound of the search, not of the trade.</summary>
    public const double SearchFactor = 4;

    /// <summary>The same for the speed of machines, which have a working range.</summary>
    public const double SpeedFactor = 2;

    /// <summary>Most rollers added to a phase; a bound of the search.</summary>
    public const int MostAddedRollers = 4;

    /// <summary>Slowest paver speed that a remedy may propose, m/min (engineering judgement: slower, screed and mix temperature suffer).</summary>
    public const double SlowestPaver = 1.5;

    /// <summary>All levers of a plan, in a fixed order.</summary>
    public static IReadOnlyList<Lever> Of(Plan plan) =>
    [
        .. PaverLevers.Of(plan),
        .. SupplyLevers.Of(plan),
        .. RollingLevers.Of(plan),
        .. MixLevers.Of(plan),
        .. TimeLevers.Of(plan),
    ];

    /// <summary>A lever on a stated measure; null when it is not stated or not above zero.</summary>
    internal static Lever? Measure<T>(
        LeverKind kind, string address, string key, Measure<T>? stated, (double? Lowest, double? Highest) si, Func<Measure<T>, Plan> change)
        where T : struct
    {
        if (stated is not { Number: > 0 } || !double.IsFinite(stated.Number))
        {
            return null;
        }

        var step = Steps.Of(stated.Unit, stated.Number);
        return new Lever
        {
            Kind = kind,
            Address = address,
            Key = key,
            Unit = stated.Unit,
            Current = stated.Number,
            Lowest = si.Lowest is { } low ? double.Round(stated.Unit.FromSi(low), 9) : step,
            Highest = si.Highest is { } high ? double.Round(stated.Unit.FromSi(high), 9) : SearchFactor * stated.Number,
            Step = step,
            Change = number => change(stated with { Number = number }),
        };
    }

    /// <summary>A lever on a stated count; null when it is not stated.</summary>
    internal static Lever? Count(LeverKind kind, string address, string key, int? stated, int lowest, Func<int, Plan> change) => stated is null ? null : new Lever
    {
        Kind = kind,
        Address = address,
        Key = key,
        IsCount = true,
        Current = stated.Value,
        Lowest = lowest,
        Highest = SearchFactor * Math.Max(1, Math.Min(stated.Value, 1000)),
        Step = 1,
        Change = number => change((int)Math.Round(number)),
    };
}
