using Laygate.Model.Measures;

namespace Laygate.Model.Levers;

/// <summary>Steps in which a site would state a value.</summary>
internal static class Steps
{
    /// <summary>The step of a measure in its own unit: a round figure, finer than a hundredth of nothing a site can set.</summary>
    /// <param name="unit">Unit.</param>
    /// <param name="current">Value, for units without a usual step: some twentieth of it, as a power of ten.</param>
    public static double Of(Unit unit, double current) => unit.Spelling switch
    {
        "m/min" => 0.1,
        "ft/min" => 0.5,
        "km/h" or "mph" => 0.1,
        "t/h" or "short ton/h" => 5,
        "t" or "short ton" => 1,
        "°C" or "C" or "°F" or "F" => 1,
        "m" => 1,
        "ft" => 1,
        "mm" => 1,
        "cm" => 0.1,
        "in" => 0.125,
        "min" => 1,
        "h" => 0.25,
        "g/m2" => 10,
        "kg/m2" => 0.01,
        "L/m2" => 0.01,
        "gal/yd2" => 0.005,
        _ => Math.Pow(10, Math.Floor(Math.Log10(Math.Max(Math.Abs(current), 1e-9) / 20))),
    };
}
