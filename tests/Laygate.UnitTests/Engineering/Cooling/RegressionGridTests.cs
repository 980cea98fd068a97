using Laygate.Engineering.Cooling;
using Laygate.Engineering.Cooling.Catalogues;
using static Laygate.UnitTests.Engineering.Cooling.CoolingCase;

namespace Laygate.UnitTests.Engineering.Cooling;

/// <summary>
/// Minutes of another finite-volume program (grid error below 0.05 min) with the form of Barber 1957 (recalled), emissivity 0.95, sky and base as the air, night.
/// Source: derived with tests/Tools/cooling.py on docs/verification/conduction-other-program.
/// </summary>
public class RegressionGridTests
{
    [Theory]
    [InlineData(40, 140, 0, 5, 9.7, 11.8, 7.3, 4.8)]
    [InlineData(40, 140, 10, 1, 14.1, 16.1, 12.9, 6.7)]
    [InlineData(40, 140, 10, 5, 11.1, 13.1, 8.3, 5.5)]
    [InlineData(40, 140, 10, 10, 9.5, 11.5, 5.7, 4.7)]
    [InlineData(40, 140, 20, 5, 12.9, 15.0, 9.5, 6.2)]
    [InlineData(40, 160, 0, 5, 13.0, 15.0, 9.7, 7.6)]
    [InlineData(40, 160, 10, 1, 18.9, 20.9, 16.6, 10.6)]
    [InlineData(40, 160, 10, 5, 14.8, 16.8, 10.9, 8.5)]
    [InlineData(40, 160, 10, 10, 12.6, 14.6, 7.8, 7.3)]
    [InlineData(40, 160, 20, 5, 17.1, 19.1, 12.5, 9.6)]
    [InlineData(60, 140, 0, 5, 18.2, 22.8, 10.1, 9.2)]
    [InlineData(60, 140, 10, 1, 26.5, 31.1, 20.9, 12.8)]
    [InlineData(60, 140, 10, 5, 20.8, 25.3, 11.8, 10.3)]
    [InlineData(60, 140, 10, 10, 17.8, 22.4, 7.1, 8.9)]
    [InlineData(60, 140, 20, 5, 24.1, 28.6, 14.0, 11.7)]
    [InlineData(60, 160, 0, 5, 24.2, 28.8, 14.3, 14.3)]
    [InlineData(60, 160, 10, 1, 35.3, 39.8, 27.3, 20.1)]
    [InlineData(60, 160, 10, 5, 27.4, 32.0, 16.4, 16.0)]
    [InlineData(60, 160, 10, 10, 23.5, 28.1, 10.7, 13.8)]
    [InlineData(60, 160, 20, 5, 31.6, 36.1, 19.1, 17.9)]
    public void Single_course(double mm, double laid, double air, double wind, double mean80, double mid80, double skin80, double mean100)
    {
        var curve = Solve(
            [StackLayer.Course("hot", mm / 1000, Hot, laid), StackLayer.Existing("old", 0.1, Old, air)], Night(air, wind), HalfSpace, 3600);
        Near(mean80, curve.FirstBelow(CoolingPlace.Mean(0), 80) / 60, 0.1);
        Near(mid80, curve.FirstBelow(CoolingPlace.MidDepth(0), 80) / 60, 0.1);
        Near(skin80, curve.FirstBelow(CoolingPlace.Skin, 80) / 60, 0.1);
        Near(mean100, curve.FirstBelow(CoolingPlace.Mean(0), 100) / 60, 0.1);
    }

    [Theory]
    [InlineData(20, 155, 80, 150, 18.7, 36.4, 38.4, 68.2)]
    [InlineData(25, 155, 100, 150, 23.0, 46.3, 55.9, 98.3)]
    [InlineData(20, 155, 80, 130, 13.4, 28.3, 25.0, 52.4)]
    public void Pair(double upper, double upperLaid, double lower, double lowerLaid, double upper100, double upper80, double lower100, double lower80)
    {
        var curve = Solve(
            [
                StackLayer.Course("upper", upper / 1000, new(1.2, 2350, 920), upperLaid),
                StackLayer.Course("lower", lower / 1000, new(1.3, 2350, 900), lowerLaid),
                StackLayer.Existing("base", 0.1, Gran, 10),
            ],
            Night(10, 5),
            HalfSpace,
            3 * 3600);
        Near(upper100, curve.FirstBelow(CoolingPlace.Mean(0), 100) / 60, 0.1);
        Near(upper80, curve.FirstBelow(CoolingPlace.Mean(0), 80) / 60, 0.1);
        Near(lower100, curve.FirstBelow(CoolingPlace.Mean(1), 100) / 60, 0.1);
        Near(lower80, curve.FirstBelow(CoolingPlace.Mean(1), 80) / 60, 0.1);
    }

    [Theory]
    [InlineData(50, 20.1, 37.3, 52.2, 23.2)]
    [InlineData(100, 58.4, 105.6, 145.3, 71.1)]
    [InlineData(150, 110.7, 198.8, 272.1, 139.5)]
    public void Opening(double mm, double mean80, double mean60, double mean50, double mid80)
    {
        var curve = Solve(
            [StackLayer.Course("hot", mm / 1000, Hot, 145), StackLayer.Existing("old", 0.1, Old, 15)], Night(15, 3), HalfSpace, 6 * 3600);
        Near(mean80, curve.FirstBelow(CoolingPlace.Mean(0), 80) / 60, 0.1);
        Near(mean60, curve.FirstBelow(CoolingPlace.Mean(0), 60) / 60, 0.1);
        Near(mean50, curve.FirstBelow(CoolingPlace.Mean(0), 50) / 60, 0.1);
        Near(mid80, curve.FirstBelow(CoolingPlace.MidDepth(0), 80) / 60, 0.1);
    }

    /// <summary>The same program: 40 mm, 160 °C, base and air 10 °C, wind 5 m/s, one thing changed at a time; its sun is absorbed at 0.9.</summary>
    [Theory]
    [InlineData("base concrete", 13.53)]
    [InlineData("base granular dry", 20.12)]
    [InlineData("base granular moist", 13.58)]
    [InlineData("base at 40", 19.32)]
    [InlineData("base frozen", 11.66)]
    [InlineData("k 0.8", 16.64)]
    [InlineData("c 1100", 18.56)]
    [InlineData("air 0", 14.05)]
    [InlineData("calm", 22.05)]
    [InlineData("wind 15", 11.33)]
    [InlineData("McAdams", 15.65)]
    [InlineData("ISO 6946", 15.82)]
    [InlineData("clear night", 14.59)]
    [InlineData("sun 200", 15.23)]
    [InlineData("clear, sun 700", 16.21)]
    public void One_thing_changed(string change, double minutes)
    {
        var mix = Hot with { Absorptivity = 0.9 };
        var (hot, ground, cold) = change switch
        {
            "base concrete" => (mix, Conc, 10.0),
            "base granular dry" => (mix, new(0.6, 2000, 850), 10.0),
            "base granular moist" => (mix, new(2.0, 2200, 1000), 10.0),
            "base frozen" => (mix, new(2.5, 2200, 900), -5.0),
            "base at 40" => (mix, Old, 40.0),
            "k 0.8" => (mix with { Conductivity = 0.8 }, Old, 10.0),
            "c 1100" => (mix with { SpecificHeat = 1100 }, Old, 10.0),
            _ => (mix, Old, 10.0),
        };
        TopBoundary top = change switch
        {
            "air 0" => Night(0, 5),
            "calm" => Night(10, 0),
            "wind 15" => Night(10, 15),
            "McAdams" => new TopBoundary.Weather(WeatherSeries.Constant(10, 5, 10), ConvectionForms.McAdams),
            "ISO 6946" => new TopBoundary.Weather(WeatherSeries.Constant(10, 5, 10), ConvectionForms.Iso6946),
            "clear night" => new TopBoundary.Weather(WeatherSeries.Constant(10, 5, SkyForms.Swinbank.Temperature(10, 4)), ConvectionForms.Barber),
            "sun 200" => new TopBoundary.Weather(WeatherSeries.Constant(10, 5, 10, 200), ConvectionForms.Barber),
            "clear, sun 700" => new TopBoundary.Weather(WeatherSeries.Constant(10, 5, SkyForms.Swinbank.Temperature(10, 4), 700), ConvectionForms.Barber),
            _ => Night(10, 5),
        };
        var curve = Solve([StackLayer.Course("hot", 0.040, hot, 160), StackLayer.Existing("base", 0.1, ground, cold)], top, HalfSpace, 3600);
        Near(minutes, curve.FirstBelow(CoolingPlace.Mean(0), 80) / 60, 0.03);
    }

    private static TopBoundary.Weather Night(double air, double wind) => new(WeatherSeries.Constant(air, wind, air), ConvectionForms.Barber);
}
