using System.Collections.Frozen;
using UnitsNet.Units;
using static Laygate.Model.Measures.Dimension;

namespace Laygate.Model.Measures;

/// <summary>The unit spellings that plans and rule files may use. UnitsNet's own text parser is not used: it reads <c>1,5 in</c> as 15 in.</summary>
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
        new("mm", Length, 1e-3, UnitsNet: LengthUnit.Millimeter),
        new("cm", Length, 1e-2, UnitsNet: LengthUnit.Centimeter),
        new("m", Length, 1, UnitsNet: LengthUnit.Meter),
        new("km", Length, 1e3, UnitsNet: LengthUnit.Kilometer),
        new("in", Length, 0.0254, 0, Us, LengthUnit.Inch),
        new("ft", Length, Foot, 0, Us, LengthUnit.Foot),
        new("yd", Length, 3 * Foot, 0, Us, LengthUnit.Yard),
        new("mi", Length, 5280 * Foot, 0, Us, LengthUnit.Mile),
        new("m2", Area, 1, UnitsNet: AreaUnit.SquareMeter),
        new("ft2", Area, Foot * Foot, 0, Us, AreaUnit.SquareFoot),
        new("yd2", Area, 9 * Foot * Foot, 0, Us, AreaUnit.SquareYard),
        new("°C", Temperature, 1, UnitsNet: TemperatureUnit.DegreeCelsius),
        new("C", Temperature, 1, UnitsNet: TemperatureUnit.DegreeCelsius),
        new("°F", Temperature, 5.0 / 9, -160.0 / 9, Us, TemperatureUnit.DegreeFahrenheit),
        new("F", Temperature, 5.0 / 9, -160.0 / 9, Us, TemperatureUnit.DegreeFahrenheit),
        new("K", TemperatureDifference, 1, UnitsNet: TemperatureDeltaUnit.Kelvin),
        new("s", Duration, 1, UnitsNet: DurationUnit.Second),
        new("min", Duration, 60, UnitsNet: DurationUnit.Minute),
        new("h", Duration, 3600, UnitsNet: DurationUnit.Hour),
        new("d", Duration, 86400, UnitsNet: DurationUnit.Day),
        new("m/min", Speed, 1.0 / 60, UnitsNet: SpeedUnit.MeterPerMinute),
        new("m/s", Speed, 1, UnitsNet: SpeedUnit.MeterPerSecond),
        new("km/h", Speed, 1 / 3.6, UnitsNet: SpeedUnit.KilometerPerHour),
        new("ft/min", Speed, Foot / 60, 0, Us, SpeedUnit.FootPerMinute),
        new("ft/s", Speed, Foot, 0, Us, SpeedUnit.FootPerSecond),
        new("mph", Speed, 5280 * Foot / 3600, 0, Us, SpeedUnit.MilePerHour),
        new("kn", Speed, 1852.0 / 3600, UnitsNet: SpeedUnit.Knot),
        new("g", Mass, 1e-3, UnitsNet: MassUnit.Gram),
        new("kg", Mass, 1, UnitsNet: MassUnit.Kilogram),
        new("t", Mass, 1e3, UnitsNet: MassUnit.Tonne),
        new("lb", Mass, Pound, 0, Us, MassUnit.Pound),
        new("short ton", Mass, ShortTon, 0, Us, MassUnit.ShortTon),
        new("kg/s", MassFlow, 1, UnitsNet: MassFlowUnit.KilogramPerSecond),
        new("t/h", MassFlow, 1e3 / 3600, UnitsNet: MassFlowUnit.TonnePerHour),
        new("t/min", MassFlow, 1e3 / 60, Source: "1 t = 1000 kg, 1 min = 60 s"),
        new("short ton/h", MassFlow, ShortTon / 3600, 0, Us, MassFlowUnit.ShortTonPerHour),
        new("t/m3", Density, 1e3, UnitsNet: DensityUnit.TonnePerCubicMeter),
        new("kg/m3", Density, 1, UnitsNet: DensityUnit.KilogramPerCubicMeter),
        new("g/cm3", Density, 1e3, UnitsNet: DensityUnit.GramPerCubicCentimeter),
        new("lb/ft3", Density, Pound / (Foot * Foot * Foot), 0, Us, DensityUnit.PoundPerCubicFoot),
        new("kg/m2", MassPerArea, 1, UnitsNet: AreaDensityUnit.KilogramPerSquareMeter),
        new("g/m2", MassPerArea, 1e-3, UnitsNet: AreaDensityUnit.GramPerSquareMeter),
        new("lb/yd2", MassPerArea, Pound / (9 * Foot * Foot), 0, Us, Source: NistFactors),
        new("L/m2", VolumePerArea, 1e-3, Source: "1 L = 0.001 m³"),
        new("gal/yd2", VolumePerArea, 3.785411784e-3 / (9 * Foot * Foot), 0, Us, Source: NistFactors),
        new("%", Proportion, 1e-2, UnitsNet: RatioUnit.Percent),
        new("Hz", Frequency, 1, UnitsNet: FrequencyUnit.Hertz),
        new("vpm", Frequency, 1.0 / 60, 0, Us, Source: "vibrations per minute, 1 min = 60 s"),
        new("kPa", Pressure, 1e3, UnitsNet: PressureUnit.Kilopascal),
        new("MPa", Pressure, 1e6, UnitsNet: PressureUnit.Megapascal),
        new("bar", Pressure, 1e5, UnitsNet: PressureUnit.Bar),
        new("psi", Pressure, Pound * 9.80665 / (0.0254 * 0.0254), 0, Us, PressureUnit.PoundForcePerSquareInch),
        new("kN/m", ForcePerLength, 1e3, UnitsNet: ForcePerLengthUnit.KilonewtonPerMeter),
        new("lb/in", ForcePerLength, Pound * 9.80665 / 0.0254, 0, Us, ForcePerLengthUnit.PoundForcePerInch),
        new("W/m2", Irradiance, 1, UnitsNet: IrradianceUnit.WattPerSquareMeter),
        new("V", Voltage, 1, UnitsNet: ElectricPotentialUnit.Volt),
        new("kV", Voltage, 1e3, UnitsNet: ElectricPotentialUnit.Kilovolt),
        new("lx", Illuminance, 1, UnitsNet: IlluminanceUnit.Lux),
        new("fc", Illuminance, 1 / (Foot * Foot), 0, Us, Source: "1 foot-candle = 1 lm/ft²"),
        new("mg/m3", Concentration, 1e-6, UnitsNet: MassConcentrationUnit.MilligramPerCubicMeter),
        new("ug/m3", Concentration, 1e-9, UnitsNet: MassConcentrationUnit.MicrogramPerCubicMeter),
        new("m/s2", Acceleration, 1, UnitsNet: AccelerationUnit.MeterPerSecondSquared),
        new("°", Angle, 1, UnitsNet: AngleUnit.Degree),
        new("deg", Angle, 1, UnitsNet: AngleUnit.Degree),
    ];

    private static readonly FrozenDictionary<string, Unit> BySpelling = All.ToFrozenDictionary(unit => unit.Spelling, StringComparer.Ordinal);

    /// <summary>Finds a unit by its exact spelling; a superscript power counts as its digit (<c>kg/m²</c> is <c>kg/m2</c>).</summary>
    /// <returns>The unit, or null when the table has no such spelling.</returns>
    public static Unit? Find(string spelling) =>
        BySpelling.GetValueOrDefault(spelling.Replace('²', '2').Replace('³', '3'));

    /// <summary>The units of one dimension, in the order in which they are offered to a reader.</summary>
    public static IEnumerable<Unit> Of(Dimension dimension) => All.Where(unit => unit.Dimension == dimension);
}
