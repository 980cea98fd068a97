using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Cooling;
using Laygate.Engineering.Cooling.Catalogues;
using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Quantities;
using Laygate.Engineering.Timeline;
using Laygate.Model.Measures;
using Laygate.Model.Plans;
using PlanHour = Laygate.Model.Plans.WeatherHour;
using WeatherHour = Laygate.Engineering.Cooling.WeatherHour;

namespace Laygate.Engineering.Mat;

/// <summary>Which end of the weather a question needs.</summary>
internal enum MatQuestion
{
    /// <summary>Time to roll or to grit: fast cooling is unfavourable.</summary>
    Fast,

    /// <summary>Time until it may be opened: slow cooling is unfavourable.</summary>
    Slow,
}

/// <summary>Weather at one moment, before sampling.</summary>
/// <param name="Time">Time in s after the start of the series.</param>
/// <param name="Hour">The hour as the plan or an assumption states it; without sun where it follows from place, date and cloud.</param>
/// <param name="HasSky">Whether cloud and dew point are stated; otherwise the sky lies below the air by an assumed depression.</param>
internal sealed record MatWeatherPoint(double Time, WeatherHour Hour, bool HasSky);

/// <summary>Weather from one laying moment on: straight lines between the points, held after the last.</summary>
/// <param name="Start">The moment in words of the plan; null for an envelope.</param>
/// <param name="Base">Temperature of the surface that is laid upon, °C.</param>
/// <param name="Site">Wind and position of the site.</param>
/// <param name="Points">Points in time.</param>
internal sealed record MatWeather(DateTimeOffset? Start, double Base, WeatherSite Site, IReadOnlyList<MatWeatherPoint> Points)
{
    /// <summary>Whether two say the same at every moment.</summary>
    public bool IsSame(MatWeather other) => Start == other.Start && Base.Equals(other.Base) && Site == other.Site && Points.SequenceEqual(other.Points);

    /// <summary>Air at the start, °C.</summary>
    public double AirAtStart => AtStart(hour => hour.Air);

    /// <summary>Wind at the mat at the start, m/s.</summary>
    public double WindAtStart => new WeatherBuilder(Site, SkyForms.ClarkAllen).Wind(AtStart(hour => hour.Wind));

    /// <summary>A value at the start, on the straight line between the points beside it.</summary>
    private double AtStart(Func<WeatherHour, double> read)
    {
        var after = Points.ToList().FindIndex(point => point.Time >= 0);
        if (after <= 0)
        {
            return read(Points[after < 0 ? ^1 : 0].Hour);
        }

        var (a, b) = (Points[after - 1], Points[after]);
        return read(a.Hour) + (-a.Time / (b.Time - a.Time) * (read(b.Hour) - read(a.Hour)));
    }
}

/// <summary>Reads the weather of a plan for the cooling of the mat.</summary>
internal sealed class MatWeatherReader(QuantityContext context, Calculation calculation)
{
    private const string Address = "weather";

    private readonly Weather? weather = context.Plan.Weather;
    private readonly PlanClock clock = PlanView.Of(context).Clock;

    private double DefaultSun => context.Assumptions[AssumptionIds.Sun].Number;

    /// <summary>Weather at the moments of laying of a hot body; null where something is missing, which the calculation then says.</summary>
    public LayingWeather? Read(PavingPass pass, MatQuestion question)
    {
        var at = WeatherAtLaying.Of(context, LayingSpan.Of(context, pass));
        if (at.Hours.Count == 0)
        {
            return weather?.Envelope is not { } only ? None()
                : Envelope(only, question) is { } held ? new LayingWeather([], _ => held) { Envelope = held }
                : null;
        }

        if (at.Lacks(calculation, ("air", hour => hour.Air), ("base", hour => hour.Base), ("wind", hour => hour.Wind)))
        {
            return null;
        }

        var site = Site(WindReduction.Factor(calculation));
        if (at.Hours.Any(hour => !HasSky(hour)))
        {
            calculation.Assumed(AssumptionIds.SkyBelowAir, "ΔTsky", Address, new InputReference(Address, "hours"));
        }

        if (site.Position is not null && at.Hours.Any(hour => SunIsComputed(hour, question)))
        {
            calculation.Assumed(AssumptionIds.SunShare, "fs", Address, null);
        }

        var rest = at.Outside is not null && weather?.Envelope is { AirLowest: not null, BaseLowest: not null, WindHighest: not null } envelope
            ? Envelope(envelope, question)
            : null;
        calculation.LeaveOut(rest is null ? at.Outside : null);
        return new LayingWeather([.. at.Parts.Select(at.Table!.Bends)], moment => From(at.Table, moment, site, question)) { Envelope = rest };
    }

    private LayingWeather? None()
    {
        if (weather?.Hours is { Count: > 0 })
        {
            calculation.Take(WeatherAtLaying.NoWeather(context, "air_lowest"));
        }
        else
        {
            calculation.Miss(Address, "envelope.air_lowest");
            calculation.Miss(Address, "envelope.base_lowest");
            calculation.Miss(Address, "envelope.wind_highest");
        }

        return null;
    }

    private MatWeather? Envelope(WeatherEnvelope envelope, MatQuestion question)
    {
        var fast = question == MatQuestion.Fast;
        var air = Either("Ta", fast ? null : (envelope.AirHighest, "air_highest"), (envelope.AirLowest, "air_lowest"));
        var below = Either("Tb", fast ? null : (envelope.BaseHighest, "base_highest"), (envelope.BaseLowest, "base_lowest"));
        var wind = calculation.Stated("v(h)", envelope.WindHighest, Address, "envelope.wind_highest") * WindReduction.Factor(calculation);
        var calm = fast ? 1 : calculation.Assumed(AssumptionIds.CalmShare, "calm", Address, null);
        calculation.Assumed(AssumptionIds.SkyBelowAir, "ΔTsky", Address, null);
        if (!fast && clock.End is not null && Site(1).Position is not null)
        {
            calculation.Assumed(AssumptionIds.SunShare, "fs", Address, null);
        }

        return calculation.Stopped is null
            ? new MatWeather(null, below, Site(1), fast || clock.End is not { Year: < 9000 } end ? [Still(default, 0, DefaultSun)] : Days(end))
            : null;

        MatWeatherPoint Still(DateTimeOffset at, double time, double? sun) =>
            new(time, new WeatherHour(at, air, wind * calm, 0, air) { Sun = sun }, HasSky: false);

        // The envelope names no sun; for slow cooling the unfavourable one is that of a clear sky, hour by hour.
        IReadOnlyList<MatWeatherPoint> Days(DateTimeOffset end) =>
            [.. Enumerable.Range(0, (int)(MatCooling.LongestOpening / 3600) + 1).Select(hour => Still(end.AddHours(hour), 3600 * hour, null))];
    }

    private double Either(string symbol, (IMeasure? Value, string Key)? preferred, (IMeasure? Value, string Key) other)
    {
        var (value, key) = preferred is { Value: not null } first ? first : other;
        return calculation.Stated(symbol, value, Address, $"envelope.{key}");
    }

    /// <summary>Weather from one moment on, held after the last stated hour.</summary>
    private MatWeather From(WeatherTable table, DateTimeOffset start, WeatherSite site, MatQuestion question) => new(
        start, table.At(start).Base!.Si, site, [.. table.Rows().Where(row => IsWhole(row.Hour)).Select(row => Point(row.At, row.Hour, start, question))]);

    private static bool IsWhole(PlanHour hour) => hour is { Air: not null, Wind: not null };

    private static bool HasSky(PlanHour hour) => hour is { DewPoint: not null, CloudEighths: not null };

    /// <summary>Sun not stated follows from place, date and cloud; without a stated cloud slow cooling takes a clear sky, fast cooling no sun.</summary>
    private static bool SunIsComputed(PlanHour hour, MatQuestion question) =>
        hour.Sun is null && (hour.CloudEighths is not null || question == MatQuestion.Slow);

    private MatWeatherPoint Point(DateTimeOffset at, PlanHour hour, DateTimeOffset start, MatQuestion question)
    {
        var air = hour.Air!.Si;
        var stated = new WeatherHour(at, air, hour.Wind!.Si, hour.CloudEighths ?? 0, hour.DewPoint?.Si ?? air)
        {
            Sun = hour.Sun?.Si ?? (SunIsComputed(hour, question) ? null : DefaultSun),
        };
        return new MatWeatherPoint((at - start).TotalSeconds, stated, HasSky(hour));
    }

    /// <summary>The site: without a latitude and an offset from UTC the sun is not known and counts as none.</summary>
    private WeatherSite Site(double share) => new()
    {
        WindShare = share,
        Position = context.Plan.Location?.Latitude is { } latitude && clock.HasZone
            ? new SitePosition(latitude.Si, context.Plan.Location.Longitude?.Si)
            : null,
    };
}
