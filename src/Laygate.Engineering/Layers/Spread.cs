using Laygate.Engineering.Formulas;

namespace Laygate.Engineering.Layers;

/// <summary>Mass of mix per area, per length and per load.</summary>
public static class Spread
{
    /// <summary>Mass of mix per area of a course.</summary>
    /// <param name="thickness">t, m: compacted thickness.</param>
    /// <param name="density">ρ, kg/m³: density of the finished course.</param>
    /// <returns>q, kg/m²; null outside the range.</returns>
    [Formula("q", "q = t · ρ", Sources.Definition, "t and ρ above zero; otherwise no result")]
    public static double? Rate(double thickness, double density) =>
        Finite.Positive(thickness) && Finite.Positive(density)
            ? Finite.OrNull(thickness * density)
            : null;

    /// <summary>Density of a course from the reference density and the degree of compaction.</summary>
    /// <param name="reference">ρ0, kg/m³: reference density.</param>
    /// <param name="degree">D, 1: degree of compaction.</param>
    /// <returns>ρ, kg/m³; null outside the range.</returns>
    [Formula("ρ", "ρ = D · ρ0", Sources.Definition, "ρ0 above zero, D above 0 and at most 1.1; otherwise no result")]
    public static double? Compacted(double reference, double degree) =>
        Finite.Positive(reference) && degree is > 0 and <= 1.1
            ? Finite.OrNull(reference * degree)
            : null;

    /// <summary>Mass of mix for an area.</summary>
    /// <param name="rate">q, kg/m²: mass of mix per area.</param>
    /// <param name="area">A, m²: area.</param>
    /// <param name="waste">f, 1: allowance for waste; 0 for none.</param>
    /// <returns>M, kg; null outside the range.</returns>
    [Formula("M", "M = q · A · (1 + f)", Sources.Navedtra14080, "q and A above zero, f from 0 to 1; otherwise no result")]
    public static double? Tonnage(double rate, double area, double waste = 0) =>
        Finite.Positive(rate) && Finite.Positive(area) && waste is >= 0 and <= 1
            ? Finite.OrNull(rate * area * (1 + waste))
            : null;

    /// <summary>Length of strip that one load covers.</summary>
    /// <param name="payload">P, kg: payload.</param>
    /// <param name="width">W, m: width of the strip.</param>
    /// <param name="rate">q, kg/m²: mass of mix per area.</param>
    /// <returns>L, m; null outside the range.</returns>
    [Formula("L", "L = P / (W · q)", Sources.Balance, "all inputs above zero; otherwise no result")]
    public static double? RunPerLoad(double payload, double width, double rate) =>
        Finite.Positive(payload, width, rate)
            ? Finite.OrNull(payload / (width * rate))
            : null;
}
