using Laygate.Engineering.Formulas;

namespace Laygate.Engineering.Supply;

/// <summary>Mix that the paver takes, and the speed that a supply allows.</summary>
public static class Demand
{
    /// <summary>Mix that a moving paver takes.</summary>
    /// <param name="speed">v, m/s: paver speed while it moves.</param>
    /// <param name="width">W, m: mat width.</param>
    /// <param name="rate">q, kg/m²: mass of mix per area.</param>
    /// <returns>R, kg/s; null outside the range.</returns>
    [Formula("R", "R = v · W · q", Sources.WorkTip31, "all inputs above zero; otherwise no result")]
    public static double? Of(double speed, double width, double rate) =>
        Finite.Positive(speed, width, rate)
            ? Finite.OrNull(speed * width * rate)
            : null;

    /// <summary>Paver speed that uses a supply up.</summary>
    /// <param name="supply">S, kg/s: mix supplied, averaged over the time in which the paver moves.</param>
    /// <param name="width">W, m: mat width.</param>
    /// <param name="rate">q, kg/m²: mass of mix per area.</param>
    /// <returns>v, m/s; null outside the range.</returns>
    [Formula("v", "v = S / (W · q)", Sources.WorkTip31, "all inputs above zero; otherwise no result")]
    public static double? PaverSpeed(double supply, double width, double rate) =>
        Finite.Positive(supply, width, rate)
            ? Finite.OrNull(supply / (width * rate))
            : null;

    /// <summary>Speed while moving of a paver that moves only part of the time.</summary>
    /// <param name="average">vm, m/s: average speed.</param>
    /// <param name="availability">a, 1: share of the time in which the paver moves.</param>
    /// <returns>v, m/s; null outside the range.</returns>
    [Formula("v", "v = vm / a", Sources.Definition, "vm above zero, a above 0 and at most 1; otherwise no result")]
    public static double? WhileMoving(double average, double availability) =>
        Finite.Positive(average) && availability is > 0 and <= 1
            ? Finite.OrNull(average / availability)
            : null;

    /// <summary>What a plant can send on average over a shift: its output and the stock that it starts with.</summary>
    /// <param name="planned">S0, kg/s: planned average output.</param>
    /// <param name="stock">B, kg: mix in the silo at the start.</param>
    /// <param name="shift">T, s: length of the shift.</param>
    /// <returns>S, kg/s; null outside the range.</returns>
    [Formula("S", "S = S0 + B / T", Sources.Napa62, "S0 and T above zero, B not below zero; otherwise no result")]
    public static double? WithStock(double planned, double stock, double shift) =>
        Finite.Positive(planned) && Finite.NotNegative(stock) && Finite.Positive(shift)
            ? Finite.OrNull(planned + (stock / shift))
            : null;
}
