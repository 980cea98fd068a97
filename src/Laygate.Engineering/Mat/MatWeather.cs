using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Cooling.Catalogues;
using Laygate.Engineering.Quantities;
using Laygate.Engineering.Reading;
using Laygate.Model.Measures;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Mat;

/// <summary>Which end of the weather a question needs.</summary>
internal enum CoolingQuestion
{
    /// <summary>Time to roll or to grit: fast cooling is unfavourable.</summary>
    Fast,

    /// <summary>Time until it may be opened: slow cooling is unfavourable.</summary>
    Slow,
}

/// <summary>Weather at the mat at one moment, before sampling.</summary>
/// <param name="Time">Time in s after the start of the series.</param>
/// <param name="Air">Air temperature in °C.</param>
/// <param name="Wind">Wind at the mat in m/s.</param>
/// <param name="SkyBelowAir">Stated depression of the sky in K; null where it is assumed.</param>
/// <param name="Sun">Sun in W/m².</param>
internal sealed record MatWeatherPoint(double Time, double Air, double Wind, double? SkyBelowAir, double Sun);

/// <summary>Weather from one laying moment on.</summary>
/// <param name="Start">The moment in words of the plan; null for an envelope.</param>
/// <param name="Base">Temperature of the surface that is laid upon, °C.</param>
/// <param name="Points">Points in time.</param>
internal sealed record MatWeather(DateTimeOffset? Start, double Base, IReadOnlyList<MatWeatherPoint> Points)
{
    /// <summary>The point in force at the start.</summary>
    public MatWeatherPoint AtStart => Points.LastOrDefault(point => point.Time <= 0) ?? Points[0];
}

/// <summary>Reads the weather of a plan for the cooling of the mat.</summary>
internal sealed class MatWeatherReader(QuantityContext context, Calculation calculation)
{
    private const string Address = "weather";

    private readonly Weather? weather = context.Plan.Weather;
    private readonly PlanClock clock = PlanView.Of(context).Clock;

    private double DefaultSun => context.Assumptions[AssumptionIds.Sun].Number;

    /// <summary>Candidates: each hour of laying for fast cooling, its end for slow cooling, or the envelope.</summary>
    public IReadOnlyList<MatWeather> Read(CoolingQuestion question)
    {
        if (WeatherAtLaying.Hours(context) is not { } hours)
        {
            return weather?.Envelope is { } envelope ? Envelope(envelope, question) : None();
        }

        if (hours.Any(hour => hour.Air is null || hour.Base is null || hour.Wind is null))
        {
            calculation.Miss(Address, "hours");
            return [];
        }

        var factor = WindReduction.Factor(calculation);
        if (hours.Any(hour => hour.DewPoint is null || hour.CloudEighths is null))
        {
            calculation.Assumed(AssumptionIds.SkyBelowAir, "ΔTsky", Address, new InputReference(Address, "hours"));
        }

        return question == CoolingQuestion.Fast
            ? [.. hours.Select(hour => From(hours, Later(clock.At(hour.At), clock.Start!.Value), factor, question))]
            : [From(hours, clock.End!.Value, factor, question)];
    }

    private static DateTimeOffset Later(DateTimeOffset a, DateTimeOffset b) => a > b ? a : b;

    private List<MatWeather> None()
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

        return [];
    }

    private IReadOnlyList<MatWeather> Envelope(WeatherEnvelope envelope, CoolingQuestion question)
    {
        var fast = question == CoolingQuestion.Fast;
        var air = Either("Ta", fast ? null : (envelope.AirHighest, "air_highest"), (envelope.AirLowest, "air_lowest"));
        var below = Either("Tb", fast ? null : (envelope.BaseHighest, "base_highest"), (envelope.BaseLowest, "base_lowest"));
        var wind = calculation.Stated("v(h)", envelope.WindHighest, Address, "envelope.wind_highest") * WindReduction.Factor(calculation);
        var calm = fast ? 1 : calculation.Assumed(AssumptionIds.CalmShare, "calm", Address, null);
        calculation.Assumed(AssumptionIds.SkyBelowAir, "ΔTsky", Address, null);
        return calculation.Stopped is null ? [new MatWeather(null, below, [new MatWeatherPoint(0, air, wind * calm, null, DefaultSun)])] : [];
    }

    private double Either(string symbol, (IMeasure? Value, string Key)? preferred, (IMeasure? Value, string Key) other)
    {
        var (value, key) = preferred is { Value: not null } first ? first : other;
        return calculation.Stated(symbol, value, Address, $"envelope.{key}");
    }

    /// <summary>Weather from one moment on, held after the last stated hour.</summary>
    private MatWeather From(IReadOnlyList<WeatherHour> laying, DateTimeOffset start, double factor, CoolingQuestion question)
    {
        var hours = weather!.Hours.OrderBy(hour => clock.At(hour.At)).Where(IsWhole).ToList();
        var points = hours
            .Select(hour => Point(hour, (clock.At(hour.At) - start).TotalSeconds, factor, question))
            .DistinctBy(point => point.Time)
            .ToList();
        var current = laying.LastOrDefault(hour => clock.At(hour.At) <= start) ?? laying[0];
        return new MatWeather(start, current.Base!.Si, points);
    }

    private static bool IsWhole(WeatherHour hour) => hour is { Air: not null, Wind: not null };

    private MatWeatherPoint Point(WeatherHour hour, double time, double factor, CoolingQuestion question) => new(
        time, hour.Air!.Si, hour.Wind!.Si * factor, Depression(hour), hour.Sun?.Si ?? (question == CoolingQuestion.Slow ? ClearSun(hour) : DefaultSun));

    /// <summary>How far the sky lies below the air by dew point and cloud; null where either is not stated.</summary>
    private static double? Depression(WeatherHour hour)
    {
        if (hour is not { DewPoint: { } dew, CloudEighths: { } cloud, Air: { } air })
        {
            return null;
        }

        var emissivity = SkyForms.WithOpaqueCover(SkyForms.ClarkAllen.ClearEmissivity(air.Si, dew.Si), cloud * 1.25);
        return air.Si - SkyForms.Temperature(air.Si, emissivity);
    }

    /// <summary>Sun of a sky with the stated cloud, clear where none is stated; none where the place is not stated.</summary>
    private double ClearSun(WeatherHour hour)
    {
        if (context.Plan.Location is not { Latitude: { } latitude, Longitude: { } longitude } || !clock.HasZone)
        {
            return 0;
        }

        var at = clock.At(hour.At).UtcDateTime;
        var solar = at.TimeOfDay.TotalHours + (longitude.Si / 15);
        var month = latitude.Si >= 0 ? at.Month : ((at.Month + 5) % 12) + 1;
        return Sun.Clear(month, Sun.Altitude(latitude.Si, at.DayOfYear, solar)) * Sun.CloudShare(hour.CloudEighths ?? 0);
    }
}
