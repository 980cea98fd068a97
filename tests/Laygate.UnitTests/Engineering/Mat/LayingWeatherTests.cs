using Laygate.Engineering.Cooling;
using Laygate.Engineering.Mat;

namespace Laygate.UnitTests.Engineering.Mat;

/// <summary>When two plans have the same weather for laying, so that what was solved for one holds for the other.</summary>
public sealed class LayingWeatherTests
{
    private static readonly DateTimeOffset Start = new(2027, 5, 14, 21, 0, 0, TimeSpan.Zero);

    [Fact]
    public void The_same_hours_are_the_same_weather() => Assert.True(Weather(12, 0, 1).IsSame(Weather(12, 0, 1)));

    [Fact]
    public void Another_hour_temperature_part_or_envelope_is_another_weather()
    {
        var own = Weather(12, 0, 1);
        Assert.False(own.IsSame(Weather(11, 0, 1)));
        Assert.False(own.IsSame(Weather(12, 0, 2)));
        Assert.False(own.IsSame(Weather(12, 0)));
        Assert.False(own.IsSame(own with { Parts = [.. own.Parts, .. own.Parts] }));
        Assert.False(own.IsSame(own with { Envelope = own.Stated[0] }));
        Assert.False((own with { Envelope = own.Stated[0] }).IsSame(own));
        Assert.False((own with { Envelope = own.Stated[0] }).IsSame(own with { Envelope = own.Stated[0] with { Base = 1 } }));
        Assert.True((own with { Envelope = own.Stated[0] }).IsSame(own with { Envelope = own.Stated[0] }));
    }

    private static LayingWeather Weather(double air, params int[] hours) =>
        new([[.. hours.Select(hour => Start.AddHours(hour))]], at => new MatWeather(at, 10, new WeatherSite(), [new MatWeatherPoint(0, new WeatherHour(at, air, 3, 0.5, 5), HasSky: true)]));
}
