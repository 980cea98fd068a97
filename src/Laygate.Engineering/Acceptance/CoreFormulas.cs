using Laygate.Engineering.Formulas;

namespace Laygate.Engineering.Acceptance;

/// <summary>Density and voids of a core.</summary>
public static class CoreFormulas
{
    /// <summary>Bulk specific gravity by water displacement, surface dry. Not for open mixes, or where more than 2 % by volume is absorbed.</summary>
    /// <param name="dry">A, kg: dry mass in air.</param>
    /// <param name="surfaceDry">B, kg: mass saturated, surface dry.</param>
    /// <param name="inWater">C, kg: mass in water.</param>
    /// <returns>G, 1; null outside the range.</returns>
    [Formula("G", "G = A / (B − C)", "AASHTO T 166, field procedure, 22 (read; symbols second-hand)", "A above zero, B at least A, C below B and not below zero; otherwise no result")]
    public static double? Bulk(double dry, double surfaceDry, double inWater) =>
        Finite.Positive(dry) && Finite.NotNegative(inWater) && Finite.NotNegative(surfaceDry - dry) && Finite.Positive(surfaceDry - inWater) ? dry / (surfaceDry - inWater) : null;

    /// <summary>Water that was absorbed, by volume.</summary>
    /// <param name="dry">A, kg: dry mass in air.</param>
    /// <param name="surfaceDry">B, kg: mass saturated, surface dry.</param>
    /// <param name="inWater">C, kg: mass in water.</param>
    /// <returns>w, 1; null outside the range.</returns>
    [Formula("w", "w = (B − A) / (B − C)", "AASHTO T 166 (recalled)", "as for the bulk specific gravity; otherwise no result")]
    public static double? Absorbed(double dry, double surfaceDry, double inWater) =>
        Bulk(dry, surfaceDry, inWater) is null ? null : (surfaceDry - dry) / (surfaceDry - inWater);

    /// <summary>Air voids. Below 0 or above 25 % is a fault of the data, not of the road (judgement).</summary>
    /// <param name="bulk">Gb, 1: bulk density or specific gravity, in the unit of the maximum.</param>
    /// <param name="maximum">Gm, 1: maximum density or specific gravity of the mix.</param>
    /// <returns>V, 1; null outside the range.</returns>
    [Formula("V", "V = 1 − Gb / Gm", "Texas Department of Transportation, pavement manual 8.2, compaction measurement (read)", "both above zero, result from 0 to 0.25; otherwise no result")]
    public static double? Voids(double bulk, double maximum) =>
        Finite.Positive(bulk) && Finite.Positive(maximum) && 1 - (bulk / maximum) is >= 0 and <= 0.25 and var voids ? voids : null;

    /// <summary>Density as a share of the maximum density; with the air voids it makes the whole.</summary>
    /// <param name="bulk">Gb, 1: bulk density or specific gravity, in the unit of the maximum.</param>
    /// <param name="maximum">Gm, 1: maximum or reference density or specific gravity of the mix.</param>
    /// <returns>D, 1; null outside the range.</returns>
    [Formula("D", "D = Gb / Gm", "Texas Department of Transportation, pavement manual 8.2, compaction measurement (read)", "both above zero; otherwise no result")]
    public static double? Share(double bulk, double maximum) => Finite.Positive(bulk) && Finite.Positive(maximum) ? bulk / maximum : null;

    /// <summary>Bulk density from a specific gravity.</summary>
    /// <param name="gravity">G, 1: bulk specific gravity.</param>
    /// <param name="water">ρw, kg/m³: density of water that it refers to; 997 kg/m³ at 25 °C.</param>
    /// <returns>ρ, kg/m³; null outside the range.</returns>
    [Formula("ρ", "ρ = G · ρw", Sources.Definition, "both above zero; otherwise no result")]
    public static double? Density(double gravity, double water) => Finite.Positive(gravity) && Finite.Positive(water) ? gravity * water : null;
}
