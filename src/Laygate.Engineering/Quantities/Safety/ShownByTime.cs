using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Cooling.Catalogues;
using Laygate.Engineering.PlanViews;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Quantities.Safety;

/// <summary>Conditions of the site that date, times, place and weather decide.</summary>
internal static class ShownByTime
{
    /// <summary>
    /// Centre of the sun at sunrise and sunset, degrees: half a disc (0.267°) and the refraction at the horizon (0.566°) below it.
    /// Source: the definition of rising and setting of the US Naval Observatory (recalled).
    /// </summary>
    private const double Horizon = -0.833;

    private static readonly TimeSpan Step = TimeSpan.FromMinutes(5);

    /// <summary>
    /// By night as soon as the sun is set at some time between the start of set-up and the end; by day otherwise. Not decided without place,
    /// times and offset from UTC.
    /// </summary>
    public static ShownCondition? Night(QuantityContext context)
    {
        var clock = PlanView.Of(context).Clock;
        if (context.Plan.Location is not { Latitude: { } latitude, Longitude: { } longitude } || !clock.HasZone || Span(context) is not { } span)
        {
            return null;
        }

        var dark = false;
        for (var at = span.From; !dark && at < span.To; at += Step)
        {
            dark = IsDark(at, latitude.Si, longitude.Si);
        }

        dark |= IsDark(span.To, latitude.Si, longitude.Si);
        return new ShownCondition(dark, new InputReference("shift", IsDark(span.To, latitude.Si, longitude.Si) ? "end" : "start"));
    }

    /// <summary>Whether set-up and laying together are longer than the assumed limit, by day or by night.</summary>
    public static ShownCondition? LongShift(QuantityContext context)
    {
        var limit = Night(context) is { Yes: true } ? AssumptionIds.LongNight : AssumptionIds.LongDay;
        return Span(context) is { } span && span.To - span.From > TimeSpan.FromHours(context.Assumptions[limit].Number)
            ? new ShownCondition(true, new InputReference("shift", "end"), limit)
            : null;
    }

    /// <summary>
    /// On a Sunday, on a Saturday after 13:00, or before 07:00 or after 19:00: outside the widest of the hours that British councils publish for
    /// construction noise (Hastings, Castle Point, Aberdeenshire, Test Valley: read).
    /// </summary>
    public static ShownCondition? OutOfHours(QuantityContext context)
    {
        if (Span(context) is not { } span)
        {
            return null;
        }

        for (var at = span.From; at < span.To; at += Step)
        {
            if (!IsUsual(at))
            {
                return Yes("shift", at < PlanView.Of(context).Clock.Start ? "set_up" : "start");
            }
        }

        return null;
    }

    /// <summary>Any chance of rain that the plan itself states, over the hours of laying or in its envelope.</summary>
    public static ShownCondition? BadWeather(QuantityContext context) =>
        context.Get("weather.rain_chance_highest", context.Elements.Find("weather")!) is { Value: NumberValue { Si: > 0 }, Input: { } input }
            ? new ShownCondition(true, input)
            : null;

    /// <summary>Milled on the day of the shift or later: milling belongs to these works. Milled on a day before: it does not.</summary>
    public static ShownCondition? Milling(QuantityContext context) =>
        context.Plan is { Existing.Milling.Done: { } done, Shift.Date: { } day } ? new ShownCondition(done >= day, new InputReference("existing", "milling.done")) : null;

    /// <summary>A surface that is stated as milled, without the day.</summary>
    public static InputReference? MilledNobodyKnowsWhen(QuantityContext context) =>
        context.Plan.Existing is { Milling.Done: null } existing && (existing.Milling is not null || existing.Surface == ExistingSurface.Milled)
            ? new InputReference("existing", existing.Milling is null ? "surface" : "milling")
            : null;

    private static (DateTimeOffset From, DateTimeOffset To)? Span(QuantityContext context)
    {
        var clock = PlanView.Of(context).Clock;
        return clock is { Start: { } start, End: { } end } && end - start <= TimeSpan.FromDays(2)
            ? (start.AddSeconds(-Math.Clamp(context.Plan.Shift?.SetUp?.Si ?? 0, 0, 86_400)), end)
            : null;
    }

    private static bool IsDark(DateTimeOffset at, double latitude, double longitude) =>
        Sun.Altitude(latitude, at.DayOfYear, Sun.SolarHour(at, longitude)) < Horizon;

    private static bool IsUsual(DateTimeOffset at) => at.DayOfWeek switch
    {
        DayOfWeek.Sunday => false,
        DayOfWeek.Saturday => at.TimeOfDay >= TimeSpan.FromHours(7) && at.TimeOfDay < TimeSpan.FromHours(13),
        _ => at.TimeOfDay >= TimeSpan.FromHours(7) && at.TimeOfDay < TimeSpan.FromHours(19),
    };

    private static ShownCondition Yes(string address, string key) => new(true, new InputReference(address, key));
}
