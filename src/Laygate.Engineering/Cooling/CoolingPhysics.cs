namespace Laygate.Engineering.Cooling;

/// <summary>Physical constants of the cooling model.</summary>
public static class CoolingPhysics
{
    /// <summary>Stefan–Boltzmann constant sigma in W/(m² K⁴). Source: CODATA 2018 recommended value.</summary>
    public const double StefanBoltzmann = 5.670374419e-8;

    /// <summary>0 °C in K. Source: definition of the degree Celsius (SI Brochure, 9th edition, 2.3.1).</summary>
    public const double ZeroCelsius = 273.15;

    /// <summary>
    /// Long-wave exchange of a surface with black surroundings: q = eps sigma (T⁴ − Tr⁴), positive as a loss.
    /// Source: Stefan–Boltzmann law, as in the EnergyPlus Engineering Reference (NREL), outside surface heat balance.
    /// </summary>
    /// <param name="emissivity">Emissivity eps of the surface, 0 to 1.</param>
    /// <param name="surface">Surface temperature in °C, above −273.15.</param>
    /// <param name="surroundings">Temperature of sky or surroundings in °C, above −273.15.</param>
    /// <returns>Heat loss in W/m²; no range check: outside the stated ranges the formula is evaluated as it stands.</returns>
    public static double LongWaveLoss(double emissivity, double surface, double surroundings) =>
        emissivity * StefanBoltzmann * (Fourth(surface + ZeroCelsius) - Fourth(surroundings + ZeroCelsius));

    internal static double Fourth(double kelvin)
    {
        var square = kelvin * kelvin;
        return square * square;
    }

    internal static bool IsTemperature(double celsius) => double.IsFinite(celsius) && celsius > -ZeroCelsius;
}
