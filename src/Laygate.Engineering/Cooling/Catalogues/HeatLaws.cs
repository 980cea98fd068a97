namespace Laygate.Engineering.Cooling.Catalogues;

/// <summary>Specific heat over temperature of the materials of a stack.</summary>
public static class HeatLaws
{
    /// <summary>Latent heat of melting of water, J/kg. Source: parameters of the public road weather model of the
    /// Finnish Meteorological Institute, 0.334e6 J/kg (read).</summary>
    public const double MeltingHeat = 334e3;

    private const double WaterHeat = 4187;

    /// <summary>
    /// Hot mix: c = b (1685 + 3.39 T) + (1 − b) (780 + 1.0 T) J/(kg K), T in °C, from −40 to 200 °C, constant outside.
    /// At b = 0.05 about 850 cold and 990 at 150 °C.
    /// </summary>
    /// <remarks>Bitumen: 1685 + 3.39 T (recalled). Aggregate: a line through about 800 at 20 °C and 930 at 150 °C
    /// (recalled). Mixing by mass (derived). Air weighs nothing, so voids do not enter.</remarks>
    /// <param name="binderShare">Mass of binder per mass of mix, 0 to 1; 0.04 to 0.08 is usual.</param>
    public static SpecificHeatLaw Mix(double binderShare)
    {
        var stone = 1 - binderShare;
        return SpecificHeatLaw.Linear((binderShare * 1685) + (stone * 780), (binderShare * 3.39) + stone);
    }

    /// <summary>
    /// Moist ground that is frozen and thaws: c = c_dry + w c_water above 0 °C, half of c_water while frozen, and between
    /// them the latent heat w · 334 kJ/kg, taken up evenly over a thawing range that ends at 0 °C. Everything is per mass
    /// of dry ground, so the layer's density is its dry density.
    /// </summary>
    /// <remarks>Heat capacities after Kersten 1949 as in US army manuals, g (0.17 + w) and g (0.17 + 0.5 w) in
    /// Btu/(ft³ °F) (recalled). Water in fine soils thaws over a wider range than in crushed rock; the width of the range
    /// is judgement and hardly changes what a mat above it loses.</remarks>
    /// <param name="water">Mass of water per mass of dry ground; 0 or more.</param>
    /// <param name="dryHeat">Specific heat of the dry ground in J/(kg K); Kersten 0.17 Btu/(lb °F).</param>
    /// <param name="thawingRange">Width in K of the thawing range below 0 °C; positive.</param>
    public static SpecificHeatLaw ThawingGround(double water, double dryHeat = 712, double thawingRange = 1)
    {
        var (frozen, thawed) = (dryHeat + (0.5 * water * WaterHeat), dryHeat + (water * WaterHeat));
        var thawing = (0.5 * (frozen + thawed)) + (water * MeltingHeat / thawingRange);
        return SpecificHeatLaw.Through((-thawingRange, frozen), (-thawingRange, thawing), (0, thawing), (0, thawed));
    }
}
