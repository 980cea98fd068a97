using Laygate.Engineering.Formulas;

namespace Laygate.Engineering.Records;

/// <summary>What a spray of binder comes to, from volumes of its tank.</summary>
public static class BinderFormulas
{
    /// <summary>Temperature to which volumes are brought, °C.</summary>
    public const double Base = 15;

    // 0.00025 of the volume for each °F.
    private const double EmulsionPerKelvin = 0.00025 * 1.8;

    /// <summary>Volume of an emulsion at a base temperature.</summary>
    /// <param name="volume">V, m³: volume at the temperature of the tank.</param>
    /// <param name="temperature">T, °C: temperature of the tank.</param>
    /// <param name="reference">Tr, °C: base temperature, 15 °C or 60 °F.</param>
    /// <returns>V0, m³; null outside the range.</returns>
    [Formula("V0", "V0 = V · (1 − 0.00045 · (T − Tr))", "Correction of emulsions by 0.00025 for each °F about 60 °F (recalled)", "V not below zero, T from 0 to 100 °C, Tr from 0 to 30 °C; otherwise no result")]
    public static double? Emulsion(double volume, double temperature, double reference) =>
        Finite.NotNegative(volume) && temperature is >= 0 and <= 100 && reference is >= 0 and <= 30 ? volume * (1 - (EmulsionPerKelvin * (temperature - reference))) : null;

    /// <summary>Volume of a binder without water at a base temperature.</summary>
    /// <param name="volume">V, m³: volume at the temperature of the tank.</param>
    /// <param name="temperature">T, °C: temperature of the tank.</param>
    /// <param name="reference">Tr, °C: base temperature, 15 °C or 60 °F.</param>
    /// <returns>V0, m³; null outside the range.</returns>
    [Formula("V0", "V0 = V · A(T) / A(Tr), A(t) = 1.0211 − 0.0003549 · F + 4.4988e-8 · F², F = 1.8 · t + 32", "ASTM D4311, table 2, column A, density of at least 966 kg/m³ (second-hand)", "V not below zero, T from −18 to 260 °C, Tr from 0 to 30 °C; otherwise no result")]
    public static double? Binder(double volume, double temperature, double reference) =>
        Finite.NotNegative(volume) && temperature is >= -18 and <= 260 && reference is >= 0 and <= 30 ? volume * Factor(temperature) / Factor(reference) : null;

    /// <summary>Volume per area.</summary>
    /// <param name="volume">V, m³: volume that was sprayed, at the base temperature.</param>
    /// <param name="area">A, m²: area that was sprayed.</param>
    /// <returns>r, m; null outside the range.</returns>
    [Formula("r", "r = V / A", Sources.Balance, "V not below zero, A above zero; otherwise no result")]
    public static double? Rate(double volume, double area) => Finite.NotNegative(volume) && Finite.Positive(area) ? volume / area : null;

    /// <summary>Binder that stays of what was sprayed.</summary>
    /// <param name="rate">r, m or kg/m²: what was sprayed, with the water that was added.</param>
    /// <param name="residue">a, 1: binder that stays of what was delivered.</param>
    /// <param name="dilution">d, 1: water that was added, as a share of what was delivered.</param>
    /// <returns>rr, m; kg/m² where r is one; null outside the range.</returns>
    [Formula("rr", "rr = r · a / (1 + d)", Sources.Balance, "r and d not below zero, a above 0 and at most 1; otherwise no result. Rate and shares are all by mass or all by volume")]
    public static double? Residual(double rate, double residue, double dilution) =>
        Finite.NotNegative(rate) && Finite.NotNegative(dilution) && residue is > 0 and <= 1 ? rate * residue / (1 + dilution) : null;

    /// <summary>What must be sprayed so that a rate of binder stays.</summary>
    /// <param name="residual">rr, m: binder that shall stay; or kg/m².</param>
    /// <param name="residue">a, 1: binder that stays of what was delivered.</param>
    /// <param name="dilution">d, 1: water that was added, as a share of what was delivered.</param>
    /// <returns>r, m; kg/m² where rr is one; null outside the range.</returns>
    [Formula("r", "r = rr · (1 + d) / a", Sources.Balance, "rr and d not below zero, a above 0 and at most 1; otherwise no result. Rate and shares are all by mass or all by volume")]
    public static double? Spray(double residual, double residue, double dilution) =>
        Finite.NotNegative(residual) && Finite.NotNegative(dilution) && residue is > 0 and <= 1 ? residual * (1 + dilution) / residue : null;

    /// <summary>Volume that an area takes.</summary>
    /// <param name="rate">r, m: volume per area.</param>
    /// <param name="area">A, m²: area to be sprayed.</param>
    /// <returns>V, m³; null outside the range.</returns>
    [Formula("V", "V = r · A", Sources.Balance, "no input below zero; otherwise no result")]
    public static double? Needed(double rate, double area) => Finite.NotNegative(rate) && Finite.NotNegative(area) ? rate * area : null;

    /// <summary>Mass of a volume.</summary>
    /// <param name="volume">V, m³: volume.</param>
    /// <param name="gravity">G, 1: specific gravity at the temperature of the volume.</param>
    /// <param name="water">ρw, kg/m³: density of water that the gravity refers to.</param>
    /// <returns>m, kg; null outside the range.</returns>
    [Formula("m", "m = V · G · ρw", Sources.Definition, "V not below zero, G and ρw above zero; otherwise no result")]
    public static double? Mass(double volume, double gravity, double water) => Finite.NotNegative(volume) && Finite.Positive(gravity) && Finite.Positive(water) ? volume * gravity * water : null;

    private static double Factor(double temperature)
    {
        var fahrenheit = (1.8 * temperature) + 32;
        return 1.0211 - (3.549e-4 * fahrenheit) + (4.4988e-8 * fahrenheit * fahrenheit);
    }
}
