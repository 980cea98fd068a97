namespace Laygate.Engineering.Safety;

/// <summary>Heat index of the US National Weather Service.</summary>
internal static class HeatIndex
{
    public const string Expression = "Rothfusz regression of heat index on air temperature and relative humidity, with its two adjustments; below 80 °F the simple form";
    public const string Source = "US National Weather Service, Technical Attachment SR 90-23 (Rothfusz 1990), as given by the Weather Prediction Center (read)";

    private const double FullForm = 80;

    /// <summary>Heat index, °C.</summary>
    /// <param name="air">Air temperature, °C.</param>
    /// <param name="humidity">Relative humidity, %, 0 to 100.</param>
    /// <returns>Heat index in the shade and a light wind; full sun may add some degrees. Null outside 0 to 100 %.</returns>
    public static double? Of(double air, double humidity)
    {
        if (!(humidity is >= 0 and <= 100) || !double.IsFinite(air))
        {
            return null;
        }

        var t = (air * 1.8) + 32;
        var simple = 0.5 * (t + 61 + ((t - 68) * 1.2) + (humidity * 0.094));
        var index = (simple + t) / 2;
        return ((index < FullForm ? index : Full(t, humidity)) - 32) / 1.8;
    }

    /// <summary>Relative humidity from air temperature and dew point, %. Source: Magnus formula with the constants of Alduchov and Eskridge 1996 (17.625 and 243.04 °C; recalled).</summary>
    public static double Humidity(double air, double dewPoint) => 100 * Math.Exp(Magnus(dewPoint) - Magnus(air));

    private static double Magnus(double celsius) => 17.625 * celsius / (243.04 + celsius);

    private static double Full(double t, double r)
    {
        var index = -42.379 + (2.04901523 * t) + (10.14333127 * r) - (0.22475541 * t * r) - (0.00683783 * t * t) - (0.05481717 * r * r)
            + (0.00122874 * t * t * r) + (0.00085282 * t * r * r) - (0.00000199 * t * t * r * r);
        if (r < 13 && t is >= 80 and <= 112)
        {
            return index - ((13 - r) / 4 * Math.Sqrt((17 - Math.Abs(t - 95)) / 17));
        }

        return r > 85 && t is >= 80 and <= 87 ? index + ((r - 85) / 10 * ((87 - t) / 5)) : index;
    }
}
