namespace Laygate.Engineering.Cooling.Catalogues;

/// <summary>Heat transfer of air along a flat plate, in W/(m² K).</summary>
/// <remarks>Air at a film temperature of about 55 °C: k 0.0283 W/(m K), nu 1.86e-5 m²/s, Pr 0.708 (texts on heat transfer, recalled).</remarks>
internal static class PlateFlow
{
    /// <summary>Width of a mat as the length of flow, m.</summary>
    public const double Length = 3.5;

    private const double Conductivity = 0.0283;
    private const double Viscosity = 1.86e-5;
    private const double Prandtl = 0.708;
    private const double Gravity = 9.80665;

    public static double Turbulent(double wind, double length) =>
        Conductivity / length * 0.037 * Math.Pow(Reynolds(wind, length), 0.8) * Math.Cbrt(Prandtl);

    public static double Laminar(double wind, double length) =>
        Conductivity / length * 0.664 * Math.Sqrt(Reynolds(wind, length)) * Math.Cbrt(Prandtl);

    public static double Schlichting(double wind, double length)
    {
        var re = Reynolds(wind, length);
        return re <= 0 ? 0 : Conductivity / length * 0.037 * Math.Pow(re, 0.8) * Prandtl
            / (1 + (2.443 * Math.Pow(re, -0.1) * (Math.Pow(Prandtl, 2.0 / 3) - 1)));
    }

    public static double HotFaceUp(double skin, double air, double length)
    {
        var mean = (0.5 * (skin + air)) + CoolingPhysics.ZeroCelsius;
        var rayleigh = Gravity / mean * Math.Abs(skin - air) * length * length * length * Prandtl / (Viscosity * Viscosity);
        var nusselt = rayleigh <= 1e7 ? 0.54 * Math.Sqrt(Math.Sqrt(rayleigh)) : 0.15 * Math.Cbrt(rayleigh);
        return Conductivity / length * nusselt;
    }

    private static double Reynolds(double wind, double length) => Math.Max(0, wind) * length / Viscosity;
}
