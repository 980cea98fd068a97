using Laygate.Engineering.Formulas;
using UnitsNet;

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
    public static MassFlow? Of(Speed speed, Length width, AreaDensity rate) =>
        Finite.Positive(speed.MetersPerSecond, width.Meters, rate.KilogramsPerSquareMeter)
            ? Finite.Of(speed.MetersPerSecond * width.Meters * rate.KilogramsPerSquareMeter, MassFlow.FromKilogramsPerSecond)
            : null;

    /// <summary>Paver speed that uses a supply up.</summary>
    /// <param name="supply">S, kg/s: mix supplied, averaged over the time in which the paver moves.</param>
    /// <param name="width">W, m: mat width.</param>
    /// <param name="rate">q, kg/m²: mass of mix per area.</param>
    /// <returns>v, m/s; null outside the range.</returns>
    [Formula("v", "v = S / (W · q)", Sources.WorkTip31, "all inputs above zero; otherwise no result")]
    public static Speed? PaverSpeed(MassFlow supply, Length width, AreaDensity rate) =>
        Finite.Positive(supply.KilogramsPerSecond, width.Meters, rate.KilogramsPerSquareMeter)
            ? Finite.Of(supply.KilogramsPerSecond / (width.Meters * rate.KilogramsPerSquareMeter), Speed.FromMetersPerSecond)
            : null;

    /// <summary>Speed while moving of a paver that moves only part of the time.</summary>
    /// <param name="average">vm, m/s: average speed.</param>
    /// <param name="availability">a, 1: share of the time in which the paver moves.</param>
    /// <returns>v, m/s; null outside the range.</returns>
    [Formula("v", "v = vm / a", Sources.Definition, "vm above zero, a above 0 and at most 1; otherwise no result")]
    public static Speed? WhileMoving(Speed average, Ratio availability) =>
        Finite.Positive(average.MetersPerSecond) && availability.DecimalFractions is > 0 and <= 1
            ? Finite.Of(average.MetersPerSecond / availability.DecimalFractions, Speed.FromMetersPerSecond)
            : null;

    /// <summary>What a plant can send on average over a shift: its output and the stock that it starts with.</summary>
    /// <param name="planned">S0, kg/s: planned average output.</param>
    /// <param name="stock">B, kg: mix in the silo at the start.</param>
    /// <param name="shift">T, s: length of the shift.</param>
    /// <returns>S, kg/s; null outside the range.</returns>
    [Formula("S", "S = S0 + B / T", Sources.Napa62, "S0 and T above zero, B not below zero; otherwise no result")]
    public static MassFlow? WithStock(MassFlow planned, Mass stock, Duration shift) =>
        Finite.Positive(planned.KilogramsPerSecond) && Finite.NotNegative(stock.Kilograms) && Finite.Positive(shift.Seconds)
            ? Finite.Of(planned.KilogramsPerSecond + (stock.Kilograms / shift.Seconds), MassFlow.FromKilogramsPerSecond)
            : null;
}
