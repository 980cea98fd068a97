using Laygate.Engineering.Safety;

namespace Laygate.UnitTests.Engineering.Safety;

/// <summary>Formulas of the safety family against figures from outside.</summary>
public sealed class SafetyFormulaTests
{
    private const double Foot = 0.3048;
    private const double Mph = 1609.344 / 3600;

    // Source: MUTCD 2003, table 6H-4 (read), for a shift of 12 ft: 12 S²/60 up to 40 mph, 12 S above.
    [Theory]
    [InlineData(30, 180)]
    [InlineData(40, 320)]
    [InlineData(45, 540)]
    [InlineData(55, 660)]
    [InlineData(65, 780)]
    public void Tapers_are_as_long_as_the_manual_says(double mph, double feet) =>
        Assert.Equal(feet, TrafficSpaceFormulas.Taper(12 * Foot, mph * Mph)!.Value / Foot, 0.5);

    // Source: TxDOT Roadway Design Manual 4.11.1 (read: 1.47 V t + 1.075 V²/a, t 2.5 s, a 11.2 ft/s²), rounded: 30 mph 197 ft, 40 mph 301 ft, 45 mph 360 ft, 55 mph 492 ft, 65 mph 644 ft.
    [Theory]
    [InlineData(30, 197)]
    [InlineData(40, 301)]
    [InlineData(45, 360)]
    [InlineData(55, 492)]
    [InlineData(65, 644)]
    public void Stopping_sight_distances_are_those_of_the_manual(double mph, double feet) =>
        Assert.Equal(feet, TrafficSpaceFormulas.Stopping(mph * Mph)!.Value / Foot, 0.6);

    // Heat index chart of the US National Weather Service, °F; recalled, the chart rounds to whole degrees.
    [Theory]
    [InlineData(80, 40, 80)]
    [InlineData(86, 90, 105)]
    [InlineData(90, 50, 95)]
    [InlineData(90, 60, 100)]
    [InlineData(96, 65, 121)]
    [InlineData(100, 55, 124)]
    [InlineData(104, 40, 119)]
    public void Heat_index_follows_the_chart(double air, double humidity, double index) =>
        Assert.Equal(index, (HeatIndex.Of((air - 32) / 1.8, humidity)!.Value * 1.8) + 32, 1.0);

    // US National Weather Service, Weather Prediction Center, The Heat Index Equation (read): below 13 % and from 80 to 112 °F the regression less
    // (13 − RH)/4 · √((17 − |T − 95|)/17); above 85 % and from 80 to 87 °F the regression and (RH − 85)/10 · (87 − T)/5. Derived, the regression multiplied out:
    // 90.18 − 2, 85.91 − 0.63, 102.87 − 0.49, 94.54 + 1.5, 88.48 + 0.6; the last three are just outside of both.
    [Theory]
    [InlineData(95, 5, 88.18)]
    [InlineData(90, 10, 85.28)]
    [InlineData(111, 5, 102.38)]
    [InlineData(82, 100, 96.04)]
    [InlineData(81, 90, 89.08)]
    [InlineData(113, 5, 104.43)]
    [InlineData(95, 13, 90.41)]
    [InlineData(88, 95, 117.11)]
    public void Very_dry_air_lowers_the_heat_index_and_very_moist_air_raises_it(double air, double humidity, double index) =>
        Assert.Equal(index, (HeatIndex.Of((air - 32) / 1.8, humidity)!.Value * 1.8) + 32, 0.006);

    // US National Weather Service: below 80 °F the simple form 0.5 (T + 61 + 1.2 (T − 68) + 0.094 RH), averaged with the air (recalled). By hand at 70 °F and 50 %: (69.05 + 70) / 2.
    [Theory]
    [InlineData(70, 50, 69.525)]
    [InlineData(60, 0, 57.85)]
    [InlineData(76, 100, 77.0)]
    public void In_mild_air_the_simple_form_holds(double air, double humidity, double index) =>
        Assert.Equal(index, (HeatIndex.Of((air - 32) / 1.8, humidity)!.Value * 1.8) + 32, 1e-6);

    // US National Weather Service: dew point of 70 °F at 90 °F air is about 52 % relative humidity (recalled).
    [Fact]
    public void Humidity_follows_from_the_dew_point()
    {
        Assert.Equal(52, HeatIndex.Humidity(32.2, 21.1), 1.0);
        Assert.Equal(100, HeatIndex.Humidity(20, 20), 1e-9);
    }

    [Fact]
    public void What_is_no_length_speed_or_humidity_gives_nothing()
    {
        Assert.Null(TrafficSpaceFormulas.Taper(0, 10));
        Assert.Null(TrafficSpaceFormulas.Taper(3, 0));
        Assert.Null(TrafficSpaceFormulas.Stopping(double.NaN));
        Assert.Null(HeatIndex.Of(30, 101));
    }
}
