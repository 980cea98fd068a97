using Laygate.Engineering.Formulas;

namespace Laygate.Engineering.Supply;

/// <summary>Trucks between plant and paver, without chance: the least that can work.</summary>
public static class Fleet
{
    /// <summary>A count this close below a whole number is that number.</summary>
    public const double Rounding = 1e-9;

    /// <summary>Time of one round of a truck.</summary>
    /// <param name="parts">ti, s: loading, ticket, haul out, wait, exchange, discharge, cleaning, haul back.</param>
    /// <returns>C, s; null outside the range.</returns>
    [Formula("C", "C = Σ ti", Sources.Napa62, "no part below zero, the sum above zero; otherwise no result")]
    public static double? Cycle(params IReadOnlyList<double> parts)
    {
        var sum = parts.Sum();
        return parts.All(Finite.NotNegative) && Finite.Positive(sum) ? Finite.OrNull(sum) : null;
    }

    /// <summary>Least number of trucks that keeps up with a rate when nothing varies; always rounded up.</summary>
    /// <param name="rate">R, kg/s: mix to be carried.</param>
    /// <param name="cycle">C, s: time of one round.</param>
    /// <param name="payload">P, kg: payload.</param>
    /// <returns>N, 1; null outside the range.</returns>
    [Formula("N", "N = ⌈R · C / P⌉", Sources.Napa62, "all inputs above zero, result below a million; a lower bound: real hauls vary and need more")]
    public static int? MinimumCount(double rate, double cycle, double payload)
    {
        if (!Finite.Positive(rate, cycle, payload))
        {
            return null;
        }

        var trucks = rate * cycle / payload;
        return trucks < 1e6 ? (int)Math.Ceiling(trucks - Rounding) : null;
    }

    /// <summary>Time between two loads.</summary>
    /// <param name="payload">P, kg: payload.</param>
    /// <param name="rate">R, kg/s: mix to be carried.</param>
    /// <returns>T, s; null outside the range.</returns>
    [Formula("T", "T = P / R", Sources.Balance, "both inputs above zero; otherwise no result")]
    public static double? Interval(double payload, double rate) => Emptied(payload, rate);

    /// <summary>Time in which a truck unloads: it is set by the paver's demand, or by the feeder's rate where there is one; it is no constant.</summary>
    /// <param name="payload">P, kg: payload.</param>
    /// <param name="taker">Q, kg/s: demand of the paver or rate of the feeder.</param>
    /// <returns>td, s; null outside the range.</returns>
    [Formula("td", "td = P / Q", Sources.Balance, "both inputs above zero; otherwise no result")]
    public static double? Discharge(double payload, double taker) => Emptied(payload, taker);

    /// <summary>Time for which mix held on a machine keeps the paver going.</summary>
    /// <param name="held">B, kg: mix held above the lowest workable level.</param>
    /// <param name="demand">R, kg/s: demand of the paver.</param>
    /// <returns>tb, s; null outside the range.</returns>
    [Formula("tb", "tb = B / R", Sources.Balance, "both inputs above zero; otherwise no result")]
    public static double? BufferCover(double held, double demand) => Emptied(held, demand);

    private static double? Emptied(double mass, double flow) =>
        Finite.Positive(mass) && Finite.Positive(flow)
            ? Finite.OrNull(mass / flow)
            : null;
}
