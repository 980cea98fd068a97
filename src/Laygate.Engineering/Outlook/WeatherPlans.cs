using Laygate.Engineering.Assumptions;
using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Outlook;

/// <summary>The plan as if it were laid in one hour of its forecast.</summary>
/// <param name="At">Start of the hour.</param>
/// <param name="Plan">The changed plan.</param>
public sealed record LayingHour(DateTimeOffset At, Plan Plan);

/// <summary>Weather of an envelope at the mat, SI.</summary>
/// <param name="Air">Air, °C.</param>
/// <param name="Base">Surface that is laid upon, °C.</param>
/// <param name="Wind">Wind at the mat, m/s.</param>
public sealed record MatEnvelope(double Air, double Base, double Wind);

/// <summary>Copies of a plan in other weather or at another hour.</summary>
public sealed class WeatherPlans
{
    private readonly QuantityContext context;
    private readonly Plan plan;

    /// <summary>Takes a plan.</summary>
    /// <param name="context">Its context.</param>
    public WeatherPlans(QuantityContext context)
    {
        this.context = context;
        plan = context.Plan;
    }

    /// <summary>
    /// One plan for each stated hour: laying starts with the hour and ends with it, everything else stays. The last hour is as
    /// long as the one before it; a forecast of one hour gives one of an hour.
    /// </summary>
    public IReadOnlyList<LayingHour> Hours()
    {
        var clock = PlanView.Of(context).Clock;
        var starts = (plan.Weather?.Hours ?? []).Select(hour => clock.At(hour.At)).Distinct().Order().ToList();
        return [.. starts.Select((at, i) => new LayingHour(at, In(at, Length(starts, i))))];
    }

    /// <summary>The plan in much worse and in much milder weather, to see which rules depend on it.</summary>
    public IReadOnlyList<Plan> Extremes() => plan.Weather is null ? [] :
    [
        plan with { Weather = Moved(plan.Weather, -15, 15, 100) },
        plan with { Weather = Moved(plan.Weather, 15, -100, 0) },
    ];

    /// <summary>The stated envelope at the mat; null where air, base or wind is not stated.</summary>
    public MatEnvelope? Envelope() =>
        plan.Weather?.Envelope is { AirLowest: { } air, BaseLowest: { } below, WindHighest: { } wind } && WindFactor() is { } factor
            ? new MatEnvelope(air.Si, below.Si, wind.Si * factor)
            : null;

    /// <summary>The plan without hours in another envelope.</summary>
    public Plan In(MatEnvelope weather)
    {
        var envelope = plan.Weather!.Envelope!;
        return plan with
        {
            Weather = plan.Weather with
            {
                Hours = [],
                Envelope = envelope with
                {
                    AirLowest = MovedWeather.With(envelope.AirLowest!, weather.Air),
                    BaseLowest = MovedWeather.With(envelope.BaseLowest!, weather.Base),
                    BaseAtDepth = MovedWeather.Points(envelope.BaseAtDepth, weather.Base - envelope.BaseLowest!.Si),
                    WindHighest = MovedWeather.With(envelope.WindHighest!, weather.Wind / WindFactor()!.Value),
                },
            },
        };
    }

    /// <summary>Seconds from the call of a plant to the first load at the mat: loading one after the other of the loads that wait before the start, ticket, journey on a bad day; null where no journey is stated.</summary>
    public double? Lead(TruckGroup trucks)
    {
        var calculation = new Calculation(context);
        var address = $"trucks:{trucks.Id}";
        var loading = calculation.StatedOr(AssumptionIds.Loading, "loading", trucks.Loading, address, "loading");
        var ticket = calculation.StatedOr(AssumptionIds.Ticket, "ticket", trucks.Ticket, address, "ticket");
        var journey = trucks.HaulOutBad ?? trucks.HaulOut;
        return journey is null ? null : (loading * Math.Clamp(trucks.LoadsBeforeStart ?? 1, 1, 1000)) + ticket + journey.Si;
    }

    private static TimeSpan Length(List<DateTimeOffset> starts, int i) =>
        i + 1 < starts.Count ? starts[i + 1] - starts[i] : i > 0 ? starts[i] - starts[i - 1] : TimeSpan.FromHours(1);

    private Plan In(DateTimeOffset at, TimeSpan length)
    {
        var end = at + (length < TimeSpan.FromDays(1) ? length : TimeSpan.FromDays(1));
        return plan with
        {
            Shift = (plan.Shift ?? new Shift()) with
            {
                Date = DateOnly.FromDateTime(at.DateTime),
                Start = TimeOnly.FromDateTime(at.DateTime),
                End = TimeOnly.FromDateTime(end.DateTime),
                Zone = plan.Shift?.Zone is null && at.Offset == TimeSpan.Zero ? plan.Shift?.Zone : at.Offset,
                ZoneAtEnd = null,
            },
        };
    }

    private static Weather Moved(Weather weather, double kelvins, double wind, double rain) => weather with
    {
        Hours = [.. weather.Hours.Select(hour => MovedWeather.Hour(hour, kelvins, kelvins, wind) with { RainChance = hour.RainChance is null ? null : MovedWeather.With(hour.RainChance, rain / 100) })],
        Envelope = weather.Envelope is not { } envelope ? null : envelope with
        {
            AirLowest = MovedWeather.Of(envelope.AirLowest, kelvins),
            AirHighest = MovedWeather.Of(envelope.AirHighest, kelvins),
            BaseLowest = MovedWeather.Of(envelope.BaseLowest, kelvins),
            BaseAtDepth = MovedWeather.Points(envelope.BaseAtDepth, kelvins),
            BaseHighest = MovedWeather.Of(envelope.BaseHighest, kelvins),
            WindHighest = MovedWeather.Wind(envelope.WindHighest, wind),
            RainChanceHighest = envelope.RainChanceHighest is null ? null : MovedWeather.With(envelope.RainChanceHighest, rain / 100),
        },
    };

    private double? WindFactor() =>
        WindReduction.Factor(new Calculation(context)) is var factor && factor > 0 && double.IsFinite(factor) ? factor : null;
}
