using Laygate.Model.Measures;
using Laygate.Model.Plans;

namespace Laygate.Reading.Plans;

/// <summary>Maps the working period and the weather.</summary>
internal static class WeatherMapper
{
    public static Shift Shift(Fields at) => new()
    {
        Date = at.Date("date"),
        Start = at.Time("start"),
        End = at.Time("end"),
        Zone = at.Zone("zone"),
        ZoneAtEnd = at.Zone("zone_at_end"),
        SetUp = at.Measure<Duration>("set_up"),
    };

    public static Weather Weather(Fields at) => new()
    {
        Source = at.Text("source"),
        LastLook = at.Moment("last_look"),
        WindHeight = at.Measure<Length>("wind_height"),
        Exposure = at.Word<Exposure>("exposure"),
        WindAtMat = at.Measure<Ratio>("wind_at_mat"),
        Envelope = at.Block("envelope", WeatherEnvelope),
        Hours = at.List("hours", WeatherHour),
    };

    private static WeatherEnvelope WeatherEnvelope(Fields at) => new()
    {
        AirLowest = at.Measure<Temperature>("air_lowest"),
        AirHighest = at.Measure<Temperature>("air_highest"),
        BaseLowest = at.Measure<Temperature>("base_lowest"),
        BaseAtDepth = at.List("base_at_depth", DepthTemperature),
        BaseHighest = at.Measure<Temperature>("base_highest"),
        WindHighest = at.Measure<Speed>("wind_highest"),
        DewPointHighest = at.Measure<Temperature>("dew_point_highest"),
        RainChanceHighest = at.Measure<Ratio>("rain_chance_highest"),
    };

    private static DepthTemperature DepthTemperature(Fields at) => new(
        Depth: at.Measure<Length>("depth"),
        Temperature: at.Measure<Temperature>("temperature"));

    private static WeatherHour WeatherHour(Fields at) => new()
    {
        At = at.RequiredMoment("at"),
        Air = at.Measure<Temperature>("air"),
        Base = at.Measure<Temperature>("base"),
        BaseAtDepth = at.List("base_at_depth", DepthTemperature),
        Wind = at.Measure<Speed>("wind"),
        CloudEighths = at.Count("cloud_eighths"),
        DewPoint = at.Measure<Temperature>("dew_point"),
        RainChance = at.Measure<Ratio>("rain_chance"),
        Sun = at.Measure<Irradiance>("sun"),
    };
}
