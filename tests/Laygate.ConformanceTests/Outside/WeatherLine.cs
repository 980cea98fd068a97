namespace Laygate.ConformanceTests.Outside;

/// <summary>Weather on straight lines between hours, held before the first and after the last; written for the reference.</summary>
internal sealed class WeatherLine(Hour[] hours)
{
    private const double Zero = 273.15;

    /// <summary>A value at an hour of the day.</summary>
    public double At(double hour, Func<Hour, double> read)
    {
        var next = Array.FindIndex(hours, one => one.At > hour);
        if (next <= 0)
        {
            return read(hours[next < 0 ? ^1 : 0]);
        }

        var (a, b) = (hours[next - 1], hours[next]);
        return read(a) + ((hour - a.At) / (b.At - a.At) * (read(b) - read(a)));
    }

    /// <summary>How much warmer the base is at a depth in m than at its surface, K.</summary>
    public double Deep(double hour, double depth)
    {
        var stating = hours.Where(one => one.Deep.Length > 0).ToArray();
        return stating.Length == 0 ? 0 : new WeatherLine(stating).At(hour, one => Difference(one, depth));
    }

    /// <summary>Air, wind, sky and absorbed sun.</summary>
    public Outdoors Outdoors(double hour, double absorbs, double depression) => new(
        At(hour, one => one.Air), At(hour, one => one.Wind), At(hour, one => Sky(one, depression)), absorbs * At(hour, one => one.Sun));

    private static double Difference(Hour hour, double depth)
    {
        var (above, before) = (0.0, hour.Base);
        foreach (var (at, celsius) in hour.Deep)
        {
            if (depth <= at)
            {
                return before + ((depth - above) / (at - above) * (celsius - before)) - hour.Base;
            }

            (above, before) = (at, celsius);
        }

        return before - hour.Base;
    }

    /// <summary>Sky as Clark and Allen 1978 have it, with clouds in tenths (second-hand: EnergyPlus Engineering Reference, NREL).</summary>
    private static double Sky(Hour hour, double depression)
    {
        if (hour.Sky is not { } known)
        {
            return hour.Air - depression;
        }

        var tenths = known.Cloud * 10 / 8.0;
        var emissivity = (0.787 + (0.764 * Math.Log((known.Dew + Zero) / 273)))
            * (1 + (0.0224 * tenths) - (0.0035 * tenths * tenths) + (0.00028 * tenths * tenths * tenths));
        return ((hour.Air + Zero) * Math.Pow(Math.Min(1, emissivity), 0.25)) - Zero;
    }
}
