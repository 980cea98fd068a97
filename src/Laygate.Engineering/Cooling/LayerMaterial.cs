namespace Laygate.Engineering.Cooling;

/// <summary>
/// What heat conduction and the surface balance need to know of one material. Conductivity and density do not change
/// with temperature; the specific heat may (<see cref="HeatLaw"/>).
/// </summary>
/// <remarks>
/// The heat equation solved is rho c dT/dt = d/dz(k dT/dz); source: any textbook of heat conduction
/// (Carslaw and Jaeger, Conduction of Heat in Solids, 2nd ed., chapter 1; from memory). With a law for c it is solved for
/// the heat content per volume, rho ∫ c dT, so that heat is conserved whatever c does.
/// </remarks>
/// <param name="Conductivity">Thermal conductivity k in W/(m K); positive.</param>
/// <param name="Density">Bulk density rho in kg/m³ in the state in which the layer has its stated thickness; positive.</param>
/// <param name="SpecificHeat">Specific heat capacity c in J/(kg K); positive. With a law: the value that grades the grid.</param>
/// <param name="Emissivity">Long-wave emissivity of the bare surface, 0 to 1.</param>
/// <param name="Absorptivity">Share of the sun's irradiance that the bare surface absorbs (1 − albedo), 0 to 1.</param>
public sealed record LayerMaterial(
    double Conductivity,
    double Density,
    double SpecificHeat,
    double Emissivity = 0.95,
    double Absorptivity = 0.92)
{
    /// <summary>Specific heat as a law over temperature; null where <see cref="SpecificHeat"/> holds at every temperature.</summary>
    public SpecificHeatLaw? HeatLaw { get; init; }

    /// <summary>Heat capacity per volume, rho c, in J/(m³ K).</summary>
    public double VolumetricHeat => Density * SpecificHeat;

    /// <summary>Thermal diffusivity alpha = k / (rho c) in m²/s.</summary>
    public double Diffusivity => Conductivity / VolumetricHeat;

    /// <summary>Thermal effusivity e = √(k rho c) in J/(m² K √s); decides the temperature at a sudden contact.</summary>
    public double Effusivity => Math.Sqrt(Conductivity * VolumetricHeat);

    /// <summary>The material with a law for its specific heat; <see cref="SpecificHeat"/> becomes the law's value at a temperature.</summary>
    /// <param name="law">The law.</param>
    /// <param name="typical">Temperature in °C in the middle of what is to be solved.</param>
    public LayerMaterial WithHeatLaw(SpecificHeatLaw law, double typical) =>
        this with { HeatLaw = law, SpecificHeat = law.At(typical) };

    /// <summary>Heat content in J/kg at a temperature in °C, zero at 0 °C.</summary>
    public double HeatContent(double celsius) => HeatLaw is null ? SpecificHeat * celsius : HeatLaw.Content(celsius);

    /// <summary>Temperature in °C at a heat content in J/kg; inverse of <see cref="HeatContent"/>.</summary>
    public double TemperatureAt(double joulePerKilogram) =>
        HeatLaw is null ? joulePerKilogram / SpecificHeat : HeatLaw.Temperature(joulePerKilogram);

    internal bool ConductsLike(LayerMaterial other) =>
        Conductivity.Equals(other.Conductivity) && VolumetricHeat.Equals(other.VolumetricHeat) && ReferenceEquals(HeatLaw, other.HeatLaw);
}
