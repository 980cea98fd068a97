using Laygate.Engineering.Formulas;

namespace Laygate.Engineering.Supply;

/// <summary>What a shift can lay on average, and what its start costs; without chance.</summary>
public static class ShiftTonnage
{
    /// <summary>Mix that a plant sends in a shift.</summary>
    /// <param name="output">S, kg/s: output while it works.</param>
    /// <param name="productive">T, s: shift without start-up and tail-out.</param>
    /// <param name="availability">a, 1: share of that time in which it works.</param>
    /// <param name="used">B, kg: stock in the silo that is used up, start less end.</param>
    /// <returns>M, kg; null outside the range.</returns>
    [Formula("M", "M = S · T · a + B", Sources.Balance, "S and T above zero, a above 0 and at most 1, B not below zero; otherwise no result")]
    public static double? Of(double output, double productive, double availability, double used) =>
        Finite.Positive(output) && Finite.Positive(productive)
        && availability is > 0 and <= 1 && Finite.NotNegative(used)
            ? Finite.OrNull((output * productive * availability) + used)
            : null;

    /// <summary>Loads that carry a mass; the last one may be part of a load.</summary>
    /// <param name="mass">M, kg: mass to be carried.</param>
    /// <param name="payload">P, kg: payload.</param>
    /// <returns>n, 1; null outside the range.</returns>
    [Formula("n", "n = ⌈M / P⌉", Sources.Balance, "both inputs above zero, result below a million; otherwise no result")]
    public static int? Loads(double mass, double payload)
    {
        var loads = mass / payload;
        return Finite.Positive(mass, payload, loads) && loads < 1e6 ? (int)Math.Ceiling(loads - Fleet.Rounding) : null;
    }

    /// <summary>Time by which the first metre is later when several loads must wait on site.</summary>
    /// <param name="waiting">m, 1: loads that must be there.</param>
    /// <param name="payload">P, kg: payload.</param>
    /// <param name="output">S, kg/s: output of the plant.</param>
    /// <returns>t, s; null outside the range.</returns>
    [Formula("t", "t = (m − 1) · P / S", Sources.Balance, "m at least 1, P and S above zero; otherwise no result")]
    public static double? StartDelay(int waiting, double payload, double output) =>
        waiting >= 1 && Finite.Positive(payload) && Finite.Positive(output)
            ? Finite.OrNull((waiting - 1) * payload / output)
            : null;
}
