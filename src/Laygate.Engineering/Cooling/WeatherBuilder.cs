using Laygate.Engineering.Cooling.Catalogues;

namespace Laygate.Engineering.Cooling;

/// <summary>Makes the weather at the mat from hours as a forecast or an envelope states them.</summary>
/// <param name="site">Wind and position of the site.</param>
/// <param name="sky">Form of the long-wave sky; <see cref="SkyForms.ClarkAllen"/> with its clouds is the house default.</param>
/// <remarks>Never throws for bad figures: what cannot be used is refused by the solver.</remarks>
public sealed class WeatherBuilder(WeatherSite site, SkyForm sky)
{
    /// <summary>A series with one point for each hour; straight lines between, constant before and after.</summary>
    /// <param name="hours">Hours in rising order.</param>
    /// <param name="start">Moment at which the solve starts.</param>
    public WeatherSeries Hours(IReadOnlyList<WeatherHour> hours, DateTimeOffset start) =>
        new([.. hours.Select(hour => Point(hour, (hour.At - start).TotalSeconds))]);

    /// <summary>The same weather all the time, for a design envelope.</summary>
    public WeatherSeries Envelope(WeatherHour hour) => new(Point(hour, 0));

    /// <summary>Weather at the mat in one hour.</summary>
    /// <param name="hour">The hour.</param>
    /// <param name="time">Time in s from the start of the solve.</param>
    public WeatherPoint Point(WeatherHour hour, double time)
    {
        var dew = Math.Min(hour.DewPoint, hour.Air);
        var emissivity = sky.Emissivity(hour.Air, dew, hour.Cloud, hour.At.TimeOfDay.TotalHours);
        return new(time, hour.Air, Wind(hour.Wind), SkyForms.Temperature(hour.Air, emissivity), SunOn(hour), 0, hour.Rain, dew);
    }

    /// <summary>Wind at the mat in m/s from the stated wind.</summary>
    public double Wind(double stated) => site.WindShare is { } share
        ? stated * share
        : WindHeight.Between(stated, site.WindHeight, site.StationTerrain, site.MatHeight, site.Exposure);

    /// <summary>
    /// Global irradiance on the mat in W/m²: as given, or clear sky by date, hour and position times the share that clouds
    /// let through. Shade takes away the direct part, of which clouds have already taken their share n/8 (derived here).
    /// </summary>
    public double SunOn(WeatherHour hour)
    {
        var altitude = Altitude(hour.At);
        var open = hour.Sun ?? (altitude is { } b ? Sun.Clear(Month(hour.At), b) * Sun.CloudShare(hour.Cloud) : 0);
        var direct = (altitude is { } height ? Sun.DirectShare(Month(hour.At), height) : 1) * (1 - (Math.Clamp(hour.Cloud, 0, 8) / 8));
        return open * (1 - (Math.Clamp(hour.Shade, 0, 1) * direct));
    }

    /// <summary>The month of the northern hemisphere with the same season.</summary>
    private int Month(DateTimeOffset at) => site.Position is { Latitude: < 0 } ? ((at.Month + 5) % 12) + 1 : at.Month;

    private double? Altitude(DateTimeOffset at) => site.Position is { } place
        ? Sun.Altitude(place.Latitude, at.DayOfYear, Sun.SolarHour(at, place.Longitude ?? (15 * at.Offset.TotalHours)))
        : null;
}
