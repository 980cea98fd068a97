using System.Globalization;
using System.Reflection;
using Laygate.Model.Measures;
using UnitsNet;
using UnitsNet.Units;

namespace Laygate.UnitTests.Model;

public class UnitTableTests
{
    // The outside reference: UnitsNet 5.75.1, an independent open-source library that only this test uses.
    private static readonly Dictionary<string, Enum> InUnitsNet = new(StringComparer.Ordinal)
    {
        ["mm"] = LengthUnit.Millimeter,
        ["cm"] = LengthUnit.Centimeter,
        ["m"] = LengthUnit.Meter,
        ["km"] = LengthUnit.Kilometer,
        ["in"] = LengthUnit.Inch,
        ["ft"] = LengthUnit.Foot,
        ["yd"] = LengthUnit.Yard,
        ["mi"] = LengthUnit.Mile,
        ["m3"] = VolumeUnit.CubicMeter,
        ["L"] = VolumeUnit.Liter,
        ["gal"] = VolumeUnit.UsGallon,
        ["m2"] = AreaUnit.SquareMeter,
        ["ft2"] = AreaUnit.SquareFoot,
        ["yd2"] = AreaUnit.SquareYard,
        ["°C"] = TemperatureUnit.DegreeCelsius,
        ["C"] = TemperatureUnit.DegreeCelsius,
        ["°F"] = TemperatureUnit.DegreeFahrenheit,
        ["F"] = TemperatureUnit.DegreeFahrenheit,
        ["K"] = TemperatureDeltaUnit.Kelvin,
        ["s"] = DurationUnit.Second,
        ["min"] = DurationUnit.Minute,
        ["h"] = DurationUnit.Hour,
        ["d"] = DurationUnit.Day,
        ["m/min"] = SpeedUnit.MeterPerMinute,
        ["m/s"] = SpeedUnit.MeterPerSecond,
        ["km/h"] = SpeedUnit.KilometerPerHour,
        ["ft/min"] = SpeedUnit.FootPerMinute,
        ["ft/s"] = SpeedUnit.FootPerSecond,
        ["mph"] = SpeedUnit.MilePerHour,
        ["kn"] = SpeedUnit.Knot,
        ["g"] = MassUnit.Gram,
        ["kg"] = MassUnit.Kilogram,
        ["t"] = MassUnit.Tonne,
        ["lb"] = MassUnit.Pound,
        ["short ton"] = MassUnit.ShortTon,
        ["kg/s"] = MassFlowUnit.KilogramPerSecond,
        ["t/h"] = MassFlowUnit.TonnePerHour,
        ["short ton/h"] = MassFlowUnit.ShortTonPerHour,
        ["t/m3"] = DensityUnit.TonnePerCubicMeter,
        ["kg/m3"] = DensityUnit.KilogramPerCubicMeter,
        ["g/cm3"] = DensityUnit.GramPerCubicCentimeter,
        ["lb/ft3"] = DensityUnit.PoundPerCubicFoot,
        ["kg/m2"] = AreaDensityUnit.KilogramPerSquareMeter,
        ["g/m2"] = AreaDensityUnit.GramPerSquareMeter,
        ["%"] = RatioUnit.Percent,
        ["Hz"] = FrequencyUnit.Hertz,
        ["kPa"] = PressureUnit.Kilopascal,
        ["MPa"] = PressureUnit.Megapascal,
        ["bar"] = PressureUnit.Bar,
        ["psi"] = PressureUnit.PoundForcePerSquareInch,
        ["kN/m"] = ForcePerLengthUnit.KilonewtonPerMeter,
        ["lb/in"] = ForcePerLengthUnit.PoundForcePerInch,
        ["W/m2"] = IrradianceUnit.WattPerSquareMeter,
        ["V"] = ElectricPotentialUnit.Volt,
        ["kV"] = ElectricPotentialUnit.Kilovolt,
        ["lx"] = IlluminanceUnit.Lux,
        ["mg/m3"] = MassConcentrationUnit.MilligramPerCubicMeter,
        ["ug/m3"] = MassConcentrationUnit.MicrogramPerCubicMeter,
        ["m/s2"] = AccelerationUnit.MeterPerSecondSquared,
        ["°"] = AngleUnit.Degree,
        ["deg"] = AngleUnit.Degree,
    };

    public static TheoryData<string> WithUnitsNet => [.. InUnitsNet.Keys];

    [Theory]
    [MemberData(nameof(WithUnitsNet))]
    public void A_unit_converts_as_UnitsNet_does(string spelling)
    {
        var unit = UnitTable.Find(spelling)!;
        foreach (var number in new[] { -40, 0, 1, 12.5, 180 })
        {
            var expected = UnitConverter.Convert(number, InUnitsNet[spelling], Si(unit.Dimension));
            // UnitsNet rounds three of its own factors: lb/ft³ to eight digits, lb/in to nine, short ton/h to ten.
            var tolerance = spelling switch { "lb/ft3" => 1e-7, "lb/in" => 2e-9, "short ton/h" => 1e-10, _ => 1e-12 };
            Assert.Equal(expected, unit.ToSi(number), tolerance * Math.Max(100, Math.Abs(expected)));
            Assert.Equal(number, unit.FromSi(unit.ToSi(number)), 1e-9 * Math.Max(1, Math.Abs(number)));
        }
    }

    // Reference: NIST SP 811 (2008), Appendix B.8, factors to seven digits, recalled from the printed list: lb/yd² 5.424919 E-01 kg/m²,
    // gal/yd² from gallon 3.785412 E-03 m³ and square yard 8.361274 E-01 m², foot-candle 1.076391 E+01 lx. The metric and per-minute units are exact by definition.
    [Theory]
    [InlineData("lb/yd2", 0.5424919)]
    [InlineData("gal/yd2", 3.785412e-3 / 8.361274e-1)]
    [InlineData("fc", 10.76391)]
    [InlineData("L/m2", 1e-3)]
    [InlineData("t/min", 1000.0 / 60)]
    [InlineData("vpm", 1.0 / 60)]
    public void A_unit_that_UnitsNet_lacks_has_the_published_factor(string spelling, double factor) =>
        Assert.Equal(1, UnitTable.Find(spelling)!.ToSi(1) / factor, 6e-7);

    // The same list, as printed with seven digits: half a unit of the last digit is at most 5e-7 of the value.
    [Theory]
    [InlineData("in", 2.54e-2)]
    [InlineData("ft", 3.048e-1)]
    [InlineData("yd", 9.144e-1)]
    [InlineData("mi", 1.609344e3)]
    [InlineData("lb", 4.535924e-1)]
    [InlineData("short ton", 9.071847e2)]
    [InlineData("lb/ft3", 1.601846e1)]
    [InlineData("psi", 6.894757e3)]
    [InlineData("lb/in", 1.751268e2)]
    [InlineData("mph", 4.4704e-1)]
    [InlineData("kn", 5.144444e-1)]
    public void A_customary_unit_has_the_factor_of_the_printed_list(string spelling, double factor) =>
        Assert.Equal(1, UnitTable.Find(spelling)!.ToSi(1) / factor, 5e-7);

    [Fact]
    public void Units_without_UnitsNet_are_all_checked_and_name_a_source()
    {
        string[] compared = ["lb/yd2", "gal/yd2", "fc", "L/m2", "t/min", "vpm"];
        Assert.Equal(compared.Order(StringComparer.Ordinal), UnitTable.All.Select(unit => unit.Spelling).Except(InUnitsNet.Keys, StringComparer.Ordinal).Order(StringComparer.Ordinal));
        Assert.All(compared, spelling => Assert.False(string.IsNullOrEmpty(UnitTable.Find(spelling)!.Source)));
    }

    [Fact]
    public void Every_dimension_but_none_has_a_unit() =>
        Assert.All(Enum.GetValues<Dimension>().Where(dimension => dimension != Dimension.None), dimension => Assert.NotEmpty(UnitTable.Of(dimension)));

    [Fact]
    public void Every_dimension_but_none_has_one_type() =>
        Assert.Equal(
            Enum.GetValues<Dimension>().Where(dimension => dimension != Dimension.None).Order(),
            typeof(IDimension).Assembly.GetExportedTypes().Where(type => type.IsAssignableTo(typeof(IDimension)) && !type.IsInterface)
                .Select(type => (Dimension)type.GetMethods(BindingFlags.Static | BindingFlags.NonPublic).Single().Invoke(null, null)!).Order());

    [Fact]
    public void A_spelling_is_found_with_digit_or_superscript_and_only_in_its_own_letters()
    {
        Assert.Same(UnitTable.Find("kg/m2"), UnitTable.Find("kg/m²"));
        Assert.Same(UnitTable.Find("lb/ft3"), UnitTable.Find("lb/ft³"));
        Assert.Null(UnitTable.Find("MM"));
        Assert.Null(UnitTable.Find("ton"));
    }

    [Fact]
    public void A_sieve_named_in_inches_has_a_size_near_its_opening() =>
        Assert.All(Sieve.Names.Select(name => Sieve.Find(name)!).Where(sieve => sieve.Inches is not null), sieve =>
            // ASTM E11 rounds its alternative designations: 12.5 mm is called 1/2 in (12.7 mm).
            Assert.InRange(sieve.Inches!.Value * 25.4 / sieve.Millimetres, 0.98, 1.03));

    [Fact]
    public void A_sieve_named_in_millimetres_has_that_opening() =>
        Assert.All(Sieve.Names.Where(name => name.EndsWith(" mm", StringComparison.Ordinal)), name =>
            Assert.Equal(double.Parse(name[..^3], CultureInfo.InvariantCulture), Sieve.Find(name)!.Millimetres));

    private static Enum Si(Dimension dimension) => dimension switch
    {
        Dimension.Length => LengthUnit.Meter,
        Dimension.Area => AreaUnit.SquareMeter,
        Dimension.Temperature => TemperatureUnit.DegreeCelsius,
        Dimension.TemperatureDifference => TemperatureDeltaUnit.Kelvin,
        Dimension.Duration => DurationUnit.Second,
        Dimension.Speed => SpeedUnit.MeterPerSecond,
        Dimension.Mass => MassUnit.Kilogram,
        Dimension.MassFlow => MassFlowUnit.KilogramPerSecond,
        Dimension.Density => DensityUnit.KilogramPerCubicMeter,
        Dimension.MassPerArea => AreaDensityUnit.KilogramPerSquareMeter,
        Dimension.Volume => VolumeUnit.CubicMeter,
        Dimension.Proportion => RatioUnit.DecimalFraction,
        Dimension.Frequency => FrequencyUnit.Hertz,
        Dimension.Pressure => PressureUnit.Pascal,
        Dimension.Irradiance => IrradianceUnit.WattPerSquareMeter,
        Dimension.ForcePerLength => ForcePerLengthUnit.NewtonPerMeter,
        Dimension.Voltage => ElectricPotentialUnit.Volt,
        Dimension.Illuminance => IlluminanceUnit.Lux,
        Dimension.Concentration => MassConcentrationUnit.KilogramPerCubicMeter,
        Dimension.Acceleration => AccelerationUnit.MeterPerSecondSquared,
        Dimension.Angle => AngleUnit.Degree,
        _ => throw new ArgumentOutOfRangeException(nameof(dimension)),
    };
}
