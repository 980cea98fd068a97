using Laygate.Model.Measures;
using Laygate.Model.Plans;

namespace Laygate.Model.Levers;

/// <summary>
/// The levers of a plan: stated quantities that a site, a plant or the designer may change. Ends of ranges are what a site
/// would accept: those of the plan first (mix not hotter than the plan's own highest, output up to the name plate, loads that find
/// a place to wait, opening inside the closure, thickness inside the tolerance). Where the plan sets no end, one of the ends below
/// holds. No source publishes them; they are engineering judgement, and bind only what is proposed, never what is judged.
/// </summary>
public static class PlanLevers
{
    /// <summary>
    /// Most of a stated count or measure that is proposed: its double. A fleet, an order or a time that must more than double is
    /// another job or a slip of the pen, and not a correction.
    /// </summary>
    public const double MostOfStated = 2;

    /// <summary>
    /// Most of a stated speed of a machine: half as fast again. Density behind the screed and effect of a pass were estimated or
    /// tried at the stated speed.
    /// </summary>
    public const double MostOfSpeed = 1.5;

    /// <summary>
    /// The same for a paver that lays a pair: a quarter faster. Two screeds and the trial length of both courses hang on the speed.
    /// </summary>
    public const double MostOfPairSpeed = 1.25;

    /// <summary>Most rollers added to a phase: each needs a driver, and room to turn in the zone with the others.</summary>
    public const int MostAddedRollers = 2;

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
        where T : IDimension
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
            Highest = si.Highest is { } high ? double.Round(stated.Unit.FromSi(high), 9) : MostOfStated * stated.Number,
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
        Highest = MostOfStated * Math.Max(1, Math.Min(stated.Value, 1000)),
        Step = 1,
        Change = number => change((int)Math.Round(number)),
    };
}
