namespace Laygate.Engineering.Cooling.Catalogues;

/// <summary>How open the site lies to the wind.</summary>
public enum WindExposure
{
    /// <summary>Open country: boundary layer 270 m, exponent 0.14.</summary>
    Open,

    /// <summary>Wooded or suburban country: 370 m, 0.22.</summary>
    Wooded,

    /// <summary>Town: 460 m, 0.33.</summary>
    Town,
}

/// <summary>Brings a wind speed from a weather station down to the mat.</summary>
public static class WindHeight
{
    private const double StationHeight = 10;

    /// <summary>
    /// Power law with boundary layers: V(z) = V10 (d0/10)^a0 (z/d)^a, station in open country (d0 = 270 m, a0 = 0.14),
    /// site with its own depth d and exponent a.
    /// </summary>
    /// <remarks>Source: ASHRAE Handbook of Fundamentals 2005 as given in the EnergyPlus Engineering Reference
    /// (NREL), local outdoor air conditions (second-hand). Meant for heights well above the roughness;
    /// below about 1 m it is an extrapolation. Heights and speeds below zero are taken as zero.</remarks>
    /// <param name="stationWind">Wind speed in m/s at 10 m height at the weather station.</param>
    /// <param name="height">Height above ground in m.</param>
    /// <param name="exposure">Exposure of the site.</param>
    /// <returns>Wind speed in m/s at that height.</returns>
    public static double At(double stationWind, double height, WindExposure exposure) =>
        Between(stationWind, StationHeight, WindExposure.Open, height, exposure);

    /// <summary>The same power law from any height and terrain to any other: V2 = V1 (d1/z1)^a1 (z2/d2)^a2.</summary>
    /// <param name="wind">Wind speed V1 in m/s.</param>
    /// <param name="from">Height z1 in m at which it is stated; positive.</param>
    /// <param name="terrain">Terrain where it is stated.</param>
    /// <param name="to">Height z2 in m for which it is wanted.</param>
    /// <param name="exposure">Terrain there.</param>
    /// <returns>Wind speed in m/s.</returns>
    public static double Between(double wind, double from, WindExposure terrain, double to, WindExposure exposure)
    {
        var (station, site) = (Layer(terrain), Layer(exposure));
        return Math.Max(0, wind)
            * Math.Pow(station.Depth / from, station.Exponent)
            * Math.Pow(Math.Max(0, to) / site.Depth, site.Exponent);
    }

    private static (double Depth, double Exponent) Layer(WindExposure exposure) => exposure switch
    {
        WindExposure.Wooded => (370, 0.22),
        WindExposure.Town => (460, 0.33),
        _ => (270, 0.14),
    };
}
