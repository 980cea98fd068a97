using Laygate.Engineering.Cooling.Catalogues;

namespace Laygate.Engineering.Cooling;

/// <summary>Weather of one hour as a forecast or an envelope states it.</summary>
/// <param name="At">Moment with its offset from UTC.</param>
/// <param name="Air">Air temperature in °C.</param>
/// <param name="Wind">Wind speed in m/s at the height and terrain of <see cref="WeatherSite"/>.</param>
/// <param name="Cloud">Cloud cover in eighths, 0 to 8; all of it counts as opaque.</param>
/// <param name="DewPoint">Dew point in °C; above the air temperature it counts as the air temperature.</param>
public sealed record WeatherHour(DateTimeOffset At, double Air, double Wind, double Cloud, double DewPoint)
{
    /// <summary>Global irradiance in W/m² if it is given; null: worked out from the place, zero where none is known.</summary>
    public double? Sun { get; init; }

    /// <summary>Rain on the mat in mm/h.</summary>
    public double Rain { get; init; }

    /// <summary>Share of the sky's sun disc that buildings or trees hide, 0 to 1.</summary>
    public double Shade { get; init; }
}

/// <summary>A place on earth.</summary>
/// <param name="Latitude">Degrees, north positive.</param>
/// <param name="Longitude">Degrees, east positive; null: the meridian of the clock (15° per hour of the offset from UTC).</param>
public sealed record SitePosition(double Latitude, double? Longitude = null);

/// <summary>How the wind reaches the mat and where the sun stands.</summary>
/// <param name="WindHeight">Height in m at which the wind is stated; 10 for weather services.</param>
/// <param name="Exposure">Terrain at the mat.</param>
public sealed record WeatherSite(double WindHeight = 10, WindExposure Exposure = WindExposure.Open)
{
    /// <summary>Terrain where the wind is stated; open country for weather services.</summary>
    public WindExposure StationTerrain { get; init; } = WindExposure.Open;

    /// <summary>Height in m of the wind that cools the mat; judgement: the convection forms were measured with the wind at a few metres.</summary>
    public double MatHeight { get; init; } = 2;

    /// <summary>Wind at the mat as a share of the stated wind, where the plan says so; it goes before heights and terrain.</summary>
    public double? WindShare { get; init; }

    /// <summary>Where the site lies; without it hours that give no sun count as night, which errs to the cold side.</summary>
    public SitePosition? Position { get; init; }
}
