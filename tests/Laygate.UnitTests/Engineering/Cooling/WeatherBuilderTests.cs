using Laygate.Engineering.Cooling;
using Laygate.Engineering.Cooling.Catalogues;
using static Laygate.UnitTests.Engineering.Cooling.CoolingCase;

namespace Laygate.UnitTests.Engineering.Cooling;

public class WeatherBuilderTests
{
    private static readonly DateTimeOffset Noon = new(2027, 6, 21, 12, 0, 0, TimeSpan.Zero);
    private static readonly WeatherHour Hour = new(Noon, 10, 5, 0, 4);

    /// <summary>Clark and Allen 1978 with its cloud factor (EnergyPlus Engineering Reference (NREL), read, climate calculations), multiplied out at air 10 and dew point 4 °C; 8 tenths = 6.4 eighths.</summary>
    [Fact]
    public void Sky_of_an_hour()
    {
        Near(-5.49, Build(SkyForms.ClarkAllen).Point(Hour, 0).Sky, 0.011);
        Near(-6.01, Build(SkyForms.EdingerHerb).Point(Hour, 0).Sky, 0.011);
        var clear = SkyForms.ClarkAllen.ClearEmissivity(10, 4);
        Near(SkyForms.Temperature(10, 1.0986 * clear), Build(SkyForms.ClarkAllen).Point(Hour with { Cloud = 6.4 }, 0).Sky, 0.01);
        Near(10, Build(SkyForms.EdingerHerb).Point(Hour with { Cloud = 8 }, 0).Sky, 1e-9);
        Near(SkyForms.Temperature(10, (clear * 0.58) + 0.42), Build(SkyForms.ClarkAllen with { Clouds = CloudForm.CloudShare }).Point(Hour with { Cloud = 4 }, 0).Sky, 1e-9);
    }

    /// <summary>Berdahl and Martin 1984 (recalled) with 0.013 cos(pi hour/12): +0.013 at midnight, −0.013 at noon, none at six.</summary>
    [Theory]
    [InlineData(0, 0.013)]
    [InlineData(6, 0)]
    [InlineData(12, -0.013)]
    public void Hourly_sky(double hour, double added) =>
        Near(SkyForms.BerdahlMartin.ClearEmissivity(10, 4) + added, SkyForms.BerdahlMartinHourly.Emissivity(10, 4, 0, hour), 1e-12);

    /// <summary>Berdahl and Fromberg 1982 (recalled), day, 0.727 + 0.0060 Td.</summary>
    [Fact]
    public void Day_sky() => Near(0.751, SkyForms.BerdahlFrombergDay.Emissivity(10, 4, 0, 12), 1e-12);

    /// <summary>Power law of the wind over height (ASHRAE Fundamentals 2005 in the EnergyPlus Engineering Reference (NREL), read); a stated share of 0.80 is taken as stated.</summary>
    [Fact]
    public void Wind_at_the_mat()
    {
        Near(5 * 0.798, Build(SkyForms.ClarkAllen).Wind(5), 0.005);
        Near(5 * 0.264, new WeatherBuilder(new WeatherSite(Exposure: WindExposure.Town), SkyForms.ClarkAllen).Wind(5), 0.005);
        Near(4, new WeatherBuilder(new WeatherSite { WindShare = 0.8 }, SkyForms.ClarkAllen).Wind(5), 1e-12);
        Near(5, new WeatherBuilder(new WeatherSite(2, WindExposure.Town) { StationTerrain = WindExposure.Town }, SkyForms.ClarkAllen).Wind(5), 1e-12);
    }

    /// <summary>
    /// The sun of the June solstice stands 90 − latitude + 23.45° high at true noon (astronomy,
    /// recalled); at latitude 53.45° that is 60°, for which the clear-sky model of ASHRAE (EnergyPlus Engineering Reference (NREL), read, climate calculations) gives 884.6 W/m² in June.
    /// </summary>
    [Fact]
    public void Sun_of_an_hour()
    {
        var builder = Build(SkyForms.ClarkAllen, new(53.45, 0));
        Near(884.6, builder.SunOn(Hour), 1.5);
        Near(0.929 * 884.6, builder.SunOn(Hour with { Cloud = 4 }), 1.5);
        Near(0, builder.SunOn(Hour with { At = Noon.AddHours(12) }), 1e-12);
        Near(500, builder.SunOn(Hour with { Sun = 500 }), 1e-12);
        Near(884.6 * 0.137 / (Math.Sqrt(0.75) + 0.137), builder.SunOn(Hour with { Shade = 1 }), 1.5);
        Near(884.6 * 0.25, builder.SunOn(Hour with { Shade = 1, Cloud = 8 }), 1.5);
        Near(0, Build(SkyForms.ClarkAllen).SunOn(Hour), 1e-12);
        Assert.True(Build(SkyForms.ClarkAllen, new(53.45, 90)).SunOn(Hour) < 300);
    }

    /// <summary>Equation of time: about −14.2 min on 11 February, +16.4 on 3 November, near zero on 15 April and 1 September (almanacs, recalled).</summary>
    [Theory]
    [InlineData(42, -14.2)]
    [InlineData(307, 16.4)]
    [InlineData(105, 0)]
    [InlineData(244, 0)]
    public void Equation_of_time(int day, double minutes) => Near(minutes, Sun.EquationOfTime(day), 0.6);

    /// <summary>By hand: 15° of longitude are one hour; the clock's own meridian has mean noon at 12.</summary>
    [Fact]
    public void Solar_hour()
    {
        var at = new DateTimeOffset(2027, 4, 15, 14, 0, 0, TimeSpan.FromHours(2));
        Near(12, Sun.SolarHour(at, 0), 0.02);
        Near(13, Sun.SolarHour(at, 15), 0.02);
        Near(23, Sun.SolarHour(at.AddHours(12), -15), 0.02);
    }

    [Fact]
    public void Hours_become_a_series()
    {
        var builder = Build(SkyForms.ClarkAllen);
        var series = builder.Hours([Hour, Hour with { At = Noon.AddHours(1), Air = 14, Rain = 2 }], Noon.AddMinutes(30));
        Assert.Equal(2, series.Count);
        // By hand: the first hour lies 30 min before the start; half way between 10 and 14 °C, between no rain and 2 mm/h.
        Near(-1800, series[0].Time, 1e-9);
        Near(12, series.At(0).Air, 1e-9);
        Near(1, series.At(0).Rain, 1e-9);
        Near(10, builder.Envelope(Hour).At(1e6).Air, 1e-12);
        Assert.Equal(10, builder.Point(Hour with { DewPoint = 20 }, 0).DewPoint);
    }

    [Fact]
    public void Unusable_hours_are_refused_by_the_solver()
    {
        var builder = Build(SkyForms.ClarkAllen);
        foreach (var series in new[] { builder.Hours([Hour, Hour], Noon), builder.Hours([], Noon), builder.Envelope(Hour with { Air = double.NaN }), builder.Envelope(Hour with { Rain = -1 }) })
        {
            var result = new CoolingSolver().Solve(new([StackLayer.Course("hot", 0.04, Hot, 150)], new TopBoundary.Weather(series, ConvectionForms.Iso6946), HalfSpace, 60));
            Assert.Equal("skin", result.Failure!.Subject);
        }
    }

    /// <summary>Psychrometric tables (recalled, printed to 0.1 K).</summary>
    [Theory]
    [InlineData(20, 50, 9.3)]
    [InlineData(25, 60, 16.7)]
    [InlineData(10, 80, 6.7)]
    [InlineData(30, 50, 18.4)]
    [InlineData(15, 100, 15)]
    public void Dew_point(double air, double humidity, double expected)
    {
        Near(expected, DewPoint.Of(air, humidity), 0.1);
        Near(humidity, DewPoint.Humidity(air, DewPoint.Of(air, humidity)), 1e-9);
        Near(3, DewPoint.Margin(DewPoint.Of(air, humidity) + 3, DewPoint.Of(air, humidity)), 1e-12);
    }

    private static WeatherBuilder Build(SkyForm sky, SitePosition? position = null) => new(new WeatherSite { Position = position }, sky);
}
