using Laygate.Engineering.Cooling;
using Laygate.Engineering.Cooling.Catalogues;
using static Laygate.UnitTests.Engineering.Cooling.CoolingCase;

namespace Laygate.UnitTests.Engineering.Cooling;

/// <summary>Water on the base and rain, bounded by its heat: 4.19 kJ/(kg K) and 2257 kJ/kg at 100 °C (steam tables, recalled), multiplied out.</summary>
public class WetnessTests
{
    [Theory]
    [InlineData(5, 2655.1)]
    [InlineData(10, 2634.1)]
    [InlineData(20, 2592.2)]
    public void Heat_of_a_film(double water, double kilojoule) => Near(kilojoule * 1000, WetBase.Heat(1, water), 60);

    /// <summary>1 mm of film at 10 °C under a mix of 2300 kg/m³ and 920 J/(kg K).</summary>
    [Theory]
    [InlineData(30, 41.50)]
    [InlineData(40, 31.12)]
    [InlineData(50, 24.90)]
    [InlineData(100, 12.45)]
    public void Film_cools_the_mean(double millimetres, double kelvin)
    {
        var wet = WetBase.Lay(StackLayer.Course("hot", millimetres / 1000, Hot, 160), 1, 10);
        Near(kelvin, wet.Loss, 0.006);
        Near(160 - kelvin, wet.Course.Initial.At(0), 0.006);
        Near(1, wet.Boiled, 1e-12);
    }

    /// <summary>Sheet: 0.2 mm costs about 6 K on 40 mm, about 1.1 min of a 15 min window (interpolated there between rows of 140 and 160 °C).</summary>
    [Fact]
    public void Damp_film_costs_a_minute()
    {
        var dry = StackLayer.Course("hot", 0.040, Hot, 160);
        Near(1.1, (Window(dry) - Window(WetBase.Lay(dry, 0.2, 10).Course)) / 60, 0.15);
    }

    /// <summary>The heat that leaves the course is the heat of the film, with a varying specific heat too.</summary>
    [Fact]
    public void Energy_of_the_film_is_what_the_course_loses()
    {
        var dry = StackLayer.Course("hot", 0.040, Hot.WithHeatLaw(HeatLaws.Mix(0.06), 100), 160);
        var wet = WetBase.Lay(dry, 0.5, 10).Course;
        var lost = 0.040 * 2300 * (dry.Material.HeatContent(160) - dry.Material.HeatContent(wet.Initial.At(0)));
        Near(WetBase.Heat(0.5, 10), lost, 1e-9 * lost);
    }

    [Fact]
    public void No_more_boils_than_the_course_can_give()
    {
        var wet = WetBase.Lay(StackLayer.Course("thin", 0.010, Hot, 140), 3, 10);
        Near(100, wet.Course.Initial.At(0), 1e-9);
        Near(40 * 0.010 * 2300 * 920 / WetBase.Heat(1, 10), wet.Boiled, 1e-9);
        Assert.Equal(0, WetBase.Lay(StackLayer.Course("cool", 0.010, Hot, 90), 3, 10).Loss);
    }

    /// <summary>Sheet: rain of 1 mm/h at 10 °C on a mat above 100 °C takes at most 731.7 W/m².</summary>
    [Fact]
    public void Rain_on_a_hot_mat()
    {
        var weather = new WeatherPoint(0, 10, 3, 5, Rain: 1, DewPoint: 8);
        Near(731.7, RainHeat.Loss(weather, 150), 0.4);
        Near(731.7, RainHeat.Loss(weather, 100), 0.4);
        Near(3 * 731.7, RainHeat.Loss(weather with { Rain = 3 }, 120), 1.2);
        Assert.Equal(0, RainHeat.Loss(weather with { Rain = 0 }, 150));
    }

    /// <summary>On a mat at 100 °C and more all rain boils away, also a cloudburst that the air alone could not take up: per kg/h and m² 90 K of 4.19 kJ and 2257 kJ, 731.7 W/m² for each mm/h.</summary>
    [Fact]
    public void A_cloudburst_on_a_mat_that_boils_it_evaporates_whole()
    {
        var weather = new WeatherPoint(0, 10, 0, 5, Rain: 200, DewPoint: 8);
        Assert.True(RainHeat.Evaporation(weather, 100) * 3600 < 200);
        Near(200 * 731.7, RainHeat.Loss(weather, 100), 80);
        Assert.True(RainHeat.Loss(weather, 99.9) < 0.5 * RainHeat.Loss(weather, 100));
    }

    /// <summary>Below 100 °C never more than full evaporation, never less than warming the rain to the skin, and rising with the skin.</summary>
    [Fact]
    public void Rain_loss_is_bounded_and_rises()
    {
        foreach (var rain in new[] { 0.5, 5, 50 })
        {
            var weather = new WeatherPoint(0, 10, 3, 5, Rain: rain, DewPoint: 8);
            var before = 0.0;
            for (var skin = 10.0; skin <= 130; skin += 0.5)
            {
                var loss = RainHeat.Loss(weather, skin);
                Assert.True(loss >= before - 1e-9);
                Assert.True(loss >= (rain / 3600 * 4190 * (Math.Min(skin, 100) - 10)) - 1e-9);
                Assert.True(loss <= rain * 740);
                before = loss;
            }
        }
    }

    /// <summary>
    /// Source: the form of Ryan and Henderson after Herb and others 2008, in the coefficients of a public road surface model (second-hand), at 40 °C skin, 20 °C air, dew point 10 °C, wind 2 m/s, by hand from steam-table pressures 73.8 and
    /// 12.3 hPa: q 0.0466 and 0.00759, virtual difference 27.6 K, m = 1.2041 · 0.0015 (2 + 27.6^(1/3)) · 0.0390 = 3.54e-4 kg/(m² s).
    /// </summary>
    [Fact]
    public void Evaporation_by_hand() =>
        Near(3.54e-4, RainHeat.Evaporation(new WeatherPoint(0, 20, 2, 10, Rain: 1, DewPoint: 10), 40), 0.03e-4);

    [Fact]
    public void Rain_shortens_the_window_and_heat_still_balances()
    {
        var series = new WeatherSeries(new WeatherPoint(0, 10, 3, 5, DewPoint: 8), new WeatherPoint(600, 10, 3, 5, Rain: 4, DewPoint: 8), new WeatherPoint(1800, 10, 3, 5, Rain: 1, DewPoint: 8));
        var wet = Solve([StackLayer.Course("hot", 0.050, Hot, 160), StackLayer.Existing("old", 0.3, Old, 10)], new TopBoundary.Weather(series, ConvectionForms.Iso6946), new BottomBoundary.Insulated(), 3600);
        var dry = Solve([StackLayer.Course("hot", 0.050, Hot, 160), StackLayer.Existing("old", 0.3, Old, 10)], new TopBoundary.Weather(WeatherSeries.Constant(10, 3, 5), ConvectionForms.Iso6946), new BottomBoundary.Insulated(), 3600);
        Assert.True(wet.FirstBelow(CoolingPlace.Mean(0), 80) < dry.FirstBelow(CoolingPlace.Mean(0), 80) - 60);
        Near(0, wet.Balance().Gap, 1e-9 * wet.Balance().Brought);
    }

    private static double Window(StackLayer course) => Solve(
        [course, StackLayer.Existing("old", 0.1, Old, 10)],
        new TopBoundary.Weather(WeatherSeries.Constant(10, 5, 10), ConvectionForms.Barber), HalfSpace, 3600).FirstBelow(CoolingPlace.Mean(0), 80)!.Value;
}
