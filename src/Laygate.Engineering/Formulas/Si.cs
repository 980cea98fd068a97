using UnitsNet;

namespace Laygate.Engineering.Formulas;

/// <summary>UnitsNet values from SI numbers. A number that is not finite becomes −1, which every formula turns down, where UnitsNet would throw.</summary>
internal static class Si
{
    /// <summary>A length in m.</summary>
    public static Length Metres(double value) => Length.FromMeters(Usable(value));

    /// <summary>A speed in m/s.</summary>
    public static Speed MetresPerSecond(double value) => Speed.FromMetersPerSecond(Usable(value));

    /// <summary>A time in s.</summary>
    public static Duration Seconds(double value) => Duration.FromSeconds(Usable(value));

    /// <summary>A mass in kg.</summary>
    public static Mass Kilograms(double value) => Mass.FromKilograms(Usable(value));

    /// <summary>A mass flow in kg/s.</summary>
    public static MassFlow KilogramsPerSecond(double value) => MassFlow.FromKilogramsPerSecond(Usable(value));

    /// <summary>A density in kg/m³.</summary>
    public static Density KilogramsPerCubicMetre(double value) => Density.FromKilogramsPerCubicMeter(Usable(value));

    /// <summary>A frequency in Hz.</summary>
    public static Frequency Hertz(double value) => Frequency.FromHertz(Usable(value));

    /// <summary>A share.</summary>
    public static Ratio Share(double value) => Ratio.FromDecimalFractions(Usable(value));

    private static double Usable(double value) => double.IsFinite(value) ? value : -1;
}
