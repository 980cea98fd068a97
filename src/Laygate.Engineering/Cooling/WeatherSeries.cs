using System.Runtime.InteropServices;

namespace Laygate.Engineering.Cooling;

/// <summary>Weather at mat level at one moment.</summary>
/// <param name="Time">Time in s from the start of the solve.</param>
/// <param name="Air">Air temperature in °C.</param>
/// <param name="Wind">Wind speed at mat level in m/s; not negative.</param>
/// <param name="Sky">Temperature of the sky for long-wave exchange in °C.</param>
/// <param name="Sun">Global irradiance on the surface in W/m²; not negative.</param>
/// <param name="AddedHeat">Any further heat into the skin in W/m² (negative for a loss).</param>
/// <param name="Rain">Rain that falls on the mat in mm/h; not negative. What it takes is bounded (<see cref="RainHeat"/>).</param>
/// <param name="DewPoint">Dew point in °C, used with rain only; NaN counts as saturated air.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct WeatherPoint(
    double Time, double Air, double Wind, double Sky, double Sun = 0, double AddedHeat = 0, double Rain = 0, double DewPoint = double.NaN);

/// <summary>Weather over time: straight lines between points, constant before the first and after the last.</summary>
public sealed class WeatherSeries
{
    private readonly WeatherPoint[] points;

    /// <summary>Takes points with strictly increasing time.</summary>
    public WeatherSeries(params IReadOnlyList<WeatherPoint> points) => this.points = [.. points];

    /// <summary>Number of points.</summary>
    public int Count => points.Length;

    /// <summary>One point of the series.</summary>
    public WeatherPoint this[int index] => points[index];

    /// <summary>The same weather all the time.</summary>
    public static WeatherSeries Constant(double air, double wind, double sky, double sun = 0) =>
        new(new WeatherPoint(0, air, wind, sky, sun));

    /// <summary>Weather at a time in s.</summary>
    public WeatherPoint At(double time)
    {
        if (time <= points[0].Time || points.Length == 1)
        {
            return points[0];
        }

        var last = points.Length - 1;
        if (time >= points[last].Time)
        {
            return points[last];
        }

        var (low, high) = (0, last);
        while (high - low > 1)
        {
            var middle = (low + high) / 2;
            (low, high) = points[middle].Time <= time ? (middle, high) : (low, middle);
        }

        return Between(points[low], points[high], time);
    }

    internal bool IsUsable()
    {
        for (var i = 0; i < points.Length; i++)
        {
            if (!IsUsable(points[i]) || (i > 0 && points[i].Time <= points[i - 1].Time))
            {
                return false;
            }
        }

        return points.Length > 0;
    }

    private static bool IsUsable(in WeatherPoint p) =>
        double.IsFinite(p.Time) && CoolingPhysics.IsTemperature(p.Air) && CoolingPhysics.IsTemperature(p.Sky)
        && double.IsFinite(p.Wind) && p.Wind >= 0 && double.IsFinite(p.Sun) && p.Sun >= 0 && double.IsFinite(p.AddedHeat)
        && double.IsFinite(p.Rain) && p.Rain >= 0 && !double.IsInfinity(p.DewPoint);

    private static WeatherPoint Between(in WeatherPoint a, in WeatherPoint b, double time)
    {
        var s = (time - a.Time) / (b.Time - a.Time);
        return new WeatherPoint(
            time,
            a.Air + (s * (b.Air - a.Air)),
            a.Wind + (s * (b.Wind - a.Wind)),
            a.Sky + (s * (b.Sky - a.Sky)),
            a.Sun + (s * (b.Sun - a.Sun)),
            a.AddedHeat + (s * (b.AddedHeat - a.AddedHeat)),
            a.Rain + (s * (b.Rain - a.Rain)),
            a.DewPoint + (s * (b.DewPoint - a.DewPoint)));
    }
}
