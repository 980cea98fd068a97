using Laygate.Engineering.Formulas;
using UnitsNet;

namespace Laygate.Engineering.Layers;

/// <summary>Mass of mix per area, per length and per load.</summary>
public static class Spread
{
    /// <summary>Mass of mix per area of a course.</summary>
    /// <param name="thickness">t, m: compacted thickness.</param>
    /// <param name="density">ρ, kg/m³: density of the finished course.</param>
    /// <returns>q, kg/m²; null outside the range.</returns>
    [Formula("q", "q = t · ρ", Sources.Definition, "t and ρ above zero; otherwise no result")]
    public static AreaDensity? Rate(Length thickness, Density density) =>
        Finite.Positive(thickness.Meters) && Finite.Positive(density.KilogramsPerCubicMeter)
            ? Finite.Of(thickness.Meters * density.KilogramsPerCubicMeter, AreaDensity.FromKilogramsPerSquareMeter)
            : null;

    /// <summary>Density of a course from the reference density and the degree of compaction.</summary>
    /// <param name="reference">ρ0, kg/m³: reference density.</param>
    /// <param name="degree">D, 1: degree of compaction.</param>
    /// <returns>ρ, kg/m³; null outside the range.</returns>
    [Formula("ρ", "ρ = D · ρ0", Sources.Definition, "ρ0 above zero, D above 0 and at most 1.1; otherwise no result")]
    public static Density? Compacted(Density reference, Ratio degree) =>
        Finite.Positive(reference.KilogramsPerCubicMeter) && degree.DecimalFractions is > 0 and <= 1.1
            ? Finite.Of(reference.KilogramsPerCubicMeter * degree.DecimalFractions, Density.FromKilogramsPerCubicMeter)
            : null;

    /// <summary>Mass of mix for an area.</summary>
    /// <param name="rate">q, kg/m²: mass of mix per area.</param>
    /// <param name="area">A, m²: area.</param>
    /// <param name="waste">f, 1: allowance for waste; 0 for none.</param>
    /// <returns>M, kg; null outside the range.</returns>
    [Formula("M", "M = q · A · (1 + f)", Sources.Navedtra14080, "q and A above zero, f from 0 to 1; otherwise no result")]
    public static Mass? Tonnage(AreaDensity rate, Area area, Ratio waste = default) =>
        Finite.Positive(rate.KilogramsPerSquareMeter) && Finite.Positive(area.SquareMeters) && waste.DecimalFractions is >= 0 and <= 1
            ? Finite.Of(rate.KilogramsPerSquareMeter * area.SquareMeters * (1 + waste.DecimalFractions), Mass.FromKilograms)
            : null;

    /// <summary>Length of strip that one load covers.</summary>
    /// <param name="payload">P, kg: payload.</param>
    /// <param name="width">W, m: width of the strip.</param>
    /// <param name="rate">q, kg/m²: mass of mix per area.</param>
    /// <returns>L, m; null outside the range.</returns>
    [Formula("L", "L = P / (W · q)", Sources.Balance, "all inputs above zero; otherwise no result")]
    public static Length? RunPerLoad(Mass payload, Length width, AreaDensity rate) =>
        Finite.Positive(payload.Kilograms, width.Meters, rate.KilogramsPerSquareMeter)
            ? Finite.Of(payload.Kilograms / (width.Meters * rate.KilogramsPerSquareMeter), Length.FromMeters)
            : null;
}
