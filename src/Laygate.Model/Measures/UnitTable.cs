using System.Collections.Frozen;

namespace Laygate.Model.Measures;

/// <summary>The unit spellings that plans and rule files may use. Each factor is the exact definition; a test compares them with an independent library.</summary>
public static class UnitTable
{
    private const UnitSystem Us = UnitSystem.UnitedStates;
    private const double Foot = 0.3048;
    private const double Pound = 0.45359237;
    private const double ShortTon = 2000 * Pound;
    private const string NistFactors = "NIST SP 811 (2008), Appendix B: exact international foot, pound and US gallon";

    /// <summary>All units, in the order in which they are offered to a reader.</summary>
    public static IReadOnlyList<Unit> All { get; } =
    [
        new("mm", Dimension.Length, 1e-3),
        new("cm", Dimension.Length, 1e-2),
        new("m", Dimension.Length, 1),
        new("km", Dimension.Length, 1e3),
        new("in", Dimension.Length, 0.0254, System: Us),
        new("ft", Dimension.Length, Foot, System: Us),
        new("yd", Dimension.Length, 3 * Foot, System: Us),
        new("mi", Dimension.Length, 5280 * Foot, System: Us),
        new("m2", Dimension.Area, 1),
        new("ft2", Dimension.Area, Foot * Foot, System: Us),
        new("yd2", Dimension.Area, 9 * Foot * Foot, System: Us),
        new("°C", Dimension.Temperature, 1),
        new("C", Dimension.Temperature, 1),
        new("°F", Dimension.Temperature, 5.0 / 9, -160.0 / 9, Us),
        new("F", Dimension.Temperature, 5.0 / 9, -160.0 / 9, Us),
        new("K", Dimension.TemperatureDifference, 1),
        new("s", Dimension.Duration, 1),
        new("min", Dimension.Duration, 60),
        new("h", Dimension.Duration, 3600),
        new("d", Dimension.Duration, 86400),
        new("m/min", Dimension.Speed, 1.0 / 60),
        new("m/s", Dimension.Speed, 1),
        new("km/h", Dimension.Speed, 1 / 3.6),
        new("ft/min", Dimension.Speed, Foot / 60, System: Us),
        new("ft/s", Dimension.Speed, Foot, System: Us),
        new("mph", Dimension.Speed, 5280 * Foot / 3600, System: Us),
        new("kn", Dimension.Speed, 1852.0 / 3600),
        new("g", Dimension.Mass, 1e-3),
        new("kg", Dimension.Mass, 1),
        new("t", Dimension.Mass, 1e3),
        new("lb", Dimension.Mass, Pound, System: Us),
        new("short ton", Dimension.Mass, ShortTon, System: Us),
        new("kg/s", Dimension.MassFlow, 1),
        new("t/h", Dimension.MassFlow, 1e3 / 3600),
        new("t/min", Dimension.MassFlow, 1e3 / 60, Source: "1 t = 1000 kg, 1 min = 60 s"),
        new("short ton/h", Dimension.MassFlow, ShortTon / 3600, System: Us),
        new("t/m3", Dimension.Density, 1e3),
        new("kg/m3", Dimension.Density, 1),
        new("g/cm3", Dimension.Density, 1e3),
        new("lb/ft3", Dimension.Density, Pound / (Foot * Foot * Foot), System: Us),
        new("kg/m2", Dimension.MassPerArea, 1),
        new("g/m2", Dimension.MassPerArea, 1e-3),
        new("lb/yd2", Dimension.MassPerArea, Pound / (9 * Foot * Foot), System: Us, Source: NistFactors),
        new("m3", Dimension.Volume, 1),
        new("L", Dimension.Volume, 1e-3),
        new("gal", Dimension.Volume, 3.785411784e-3, System: Us),
        new("L/m2", Dimension.VolumePerArea, 1e-3, Source: "1 L = 0.001 m³"),
        new("gal/yd2", Dimension.VolumePerArea, 3.785411784e-3 / (9 * Foot * Foot), System: Us, Source: NistFactors),
        new("%", Dimension.Proportion, 1e-2),
        new("Hz", Dimension.Frequency, 1),
        new("vpm", Dimension.Frequency, 1.0 / 60, System: Us, Source: "vibrations per minute, 1 min = 60 s"),
        new("kPa", Dimension.Pressure, 1e3),
        new("MPa", Dimension.Pressure, 1e6),
        new("bar", Dimension.Pressure, 1e5),
        new("psi", Dimension.Pressure, Pound * 9.80665 / (0.0254 * 0.0254), System: Us),
        new("kN/m", Dimension.ForcePerLength, 1e3),
        new("lb/in", Dimension.ForcePerLength, Pound * 9.80665 / 0.0254, System: Us),
        new("W/m2", Dimension.Irradiance, 1),
        new("V", Dimension.Voltage, 1),
        new("kV", Dimension.Voltage, 1e3),
        new("lx", Dimension.Illuminance, 1),
        new("fc", Dimension.Illuminance, 1 / (Foot * Foot), System: Us, Source: "1 foot-candle = 1 lm/ft²"),
        new("mg/m3", Dimension.Concentration, 1e-6),
        new("ug/m3", Dimension.Concentration, 1e-9),
        new("m/s2", Dimension.Acceleration, 1),
        new("°", Dimension.Angle, 1),
        new("deg", Dimension.Angle, 1),
    ];

    private static readonly FrozenDictionary<string, Unit> BySpelling = All.ToFrozenDictionary(unit => unit.Spelling, StringComparer.Ordinal);

    /// <summary>Finds a unit by its exact spelling; a superscript power counts as its digit (<c>kg/m²</c> is <c>kg/m2</c>).</summary>
    /// <returns>The unit, or null when the table has no such spelling.</returns>
    public static Unit? Find(string spelling) =>
        BySpelling.GetValueOrDefault(spelling.Replace('²', '2').Replace('³', '3'));

    /// <summary>The units of one dimension, in the order in which they are offered to a reader.</summary>
    public static IEnumerable<Unit> Of(Dimension dimension) => All.Where(unit => unit.Dimension == dimension);
}
