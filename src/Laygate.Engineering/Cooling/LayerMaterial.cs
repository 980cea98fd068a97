namespace Laygate.Engineering.Cooling;

/// <summary>
/// What heat conduction and the surface balance need to know of one material. Constant over temperature.
/// </summary>
/// <remarks>
/// The heat equation solved is rho c dT/dt = d/dz(k dT/dz); source: any textbook of heat conduction
/// (Carslaw and Jaeger, Conduction of Heat in Solids, 2nd ed., chapter 1; from memory).
/// A specific heat that depends on temperature enters through the heat content per volume (enthalpy) of a grid
/// cell; <see cref="VolumetricHeat"/> is the only place from which the grid takes it.
/// </remarks>
/// <param name="Conductivity">Thermal conductivity k in W/(m K); positive.</param>
/// <param name="Density">Bulk density rho in kg/m³ in the state in which the layer has its stated thickness; positive.</param>
/// <param name="SpecificHeat">Specific heat capacity c in J/(kg K); positive.</param>
/// <param name="Emissivity">Long-wave emissivity of the bare surface, 0 to 1.</param>
/// <param name="Absorptivity">Share of the sun's irradiance that the bare surface absorbs (1 − albedo), 0 to 1.</param>
public sealed record LayerMaterial(
    double Conductivity,
    double Density,
    double SpecificHeat,
    double Emissivity = 0.95,
    double Absorptivity = 0.92)
{
    /// <summary>Heat capacity per volume, rho c, in J/(m³ K).</summary>
    public double VolumetricHeat => Density * SpecificHeat;

    /// <summary>Thermal diffusivity alpha = k / (rho c) in m²/s.</summary>
    public double Diffusivity => Conductivity / VolumetricHeat;

    /// <summary>Thermal effusivity e = √(k rho c) in J/(m² K √s); decides the temperature at a sudden contact.</summary>
    public double Effusivity => Math.Sqrt(Conductivity * VolumetricHeat);

    internal bool ConductsLike(LayerMaterial other) =>
        Conductivity.Equals(other.Conductivity) && VolumetricHeat.Equals(other.VolumetricHeat);
}
