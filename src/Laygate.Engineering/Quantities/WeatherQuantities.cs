using Laygate.Engineering.Formulas;
using Laygate.Engineering.PlanViews;

namespace Laygate.Engineering.Quantities;

/// <summary>Weather while laying, over the stated hours or from the envelope.</summary>
internal static class WeatherQuantities
{
    private static readonly Define Weather = new(ElementKind.Weather);

    public static IEnumerable<QuantityDefinition> All() =>
    [
        Weather.Number("air_lowest", Shape.Temperature, "Lowest air temperature while laying.", (c, _) => Air(c)),
        Weather.Number("base_lowest", Shape.Temperature, "Lowest temperature of the surface that is laid upon while laying.", (c, _) => Base(c)),
        Weather.Number("wind_highest_at_mat", Shape.WindSpeed, "Highest wind at the height of the mat while laying.", WindAtMat, new Method(
            "v = v(h) · f, f = (270/h)^0.14 · (z/δ)^α, or the stated share", Sources.WindProfile,
            "open country (δ 270 m, α 0.14), wooded (370 m, 0.22), town (460 m, 0.33); a gust is no mean wind")),
        Weather.Number("rain_chance_highest", Shape.Share, "Highest chance of rain while laying.", (c, _) => WeatherAtLaying.Extreme(
            c, hour => hour.RainChance, "rain_chance", (c.Plan.Weather?.Envelope?.RainChanceHighest, "rain_chance_highest"), highest: true)),
        Weather.StatedFields<Laygate.Model.Plans.Weather>("forecast", "source", "Where the forecast comes from, and when it was last looked at.", weather =>
            [("source", Answers.Given(weather?.Source)), ("last_look", weather?.LastLook is not null)]),
        Weather.Presence("by_hour", "Weather hour by hour over the whole time of laying.", ByHour),
        Weather.Flag("sun_stated", "Whether an hour of the weather states the sun.", (c, e) => Answers.Follows(
            c.Plan.Weather?.Hours.Any(hour => hour.Sun is not null) == true, new InputReference(e.Address, "hours"))),
        Weather.Number("sun_above_sky", Shape.Sun, "By how much the stated sun exceeds what can fall on level ground at that hour; below zero where it does not.", SunAboveSky.Of, SunAboveSky.Method),
        Weather.Number("dew_margin_lowest", Shape.Difference, "Smallest margin of the surface that is laid upon over the dew point.", DewMargin, new Method(
            "Δ = Tbase − Tdew", Sources.Definition, "hour by hour; in an envelope the lowest base against the highest dew point")),
    ];

    /// <summary>Hours that leave out a part of the time are stated, but do not show what they leave out; entries too far apart for any line are no hours.</summary>
    private static Answer ByHour(QuantityContext context, Element element)
    {
        var laying = WeatherAtLaying.Of(context);
        var isGiven = laying is { Parts.Count: > 0, Table.IsByHour: true };
        return Answers.Fields(new InputReference(element.Address, "hours"), ("hours", isGiven)) with
        {
            Partial = isGiven ? laying.Outside : null,
            Note = isGiven ? laying.Bridged : laying.Outside,
        };
    }

    /// <summary>Lowest air temperature while laying.</summary>
    internal static Answer Air(QuantityContext context) => WeatherAtLaying.Extreme(
        context, hour => hour.Air, "air", (context.Plan.Weather?.Envelope?.AirLowest, "air_lowest"), highest: false);

    /// <summary>Lowest temperature of the surface that is laid upon while laying.</summary>
    internal static Answer Base(QuantityContext context) => WeatherAtLaying.Extreme(
        context, hour => hour.Base, "base", (context.Plan.Weather?.Envelope?.BaseLowest, "base_lowest"), highest: false);

    private static Answer WindAtMat(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var wind = WeatherAtLaying.Extreme(
            context, hour => hour.Wind, "wind", (context.Plan.Weather?.Envelope?.WindHighest, "wind_highest"), highest: true);
        calculation.Take(wind);
        if (wind.Value is not NumberValue number)
        {
            return calculation.Stopped!;
        }

        calculation.LeaveOut(wind.Partial);
        calculation.Show("v(h)", wind.Input!.Key, "weather", number.Si, wind.Unit);
        var factor = WindReduction.Factor(calculation);
        return calculation.Result("weather.wind_highest_at_mat", "v", "v = v(h) · f", number.Si * factor);
    }

    private static Answer DewMargin(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var laying = WeatherAtLaying.Of(context);
        var envelope = context.Plan.Weather?.Envelope;
        var rest = laying.Hours.Count == 0 || (laying.Outside is not null && envelope is { BaseLowest: not null, DewPointHighest: not null });
        var margin = double.PositiveInfinity;
        if (!laying.Lacks(calculation, ("base", hour => hour.Base), ("dew_point", hour => hour.DewPoint)) && laying.Hours.Count > 0)
        {
            laying.Hours.ToList().ForEach(hour => calculation.Reach(hour.Base!.Unit, hour.Base.Si));
            margin = laying.Hours.Min(hour => hour.Base!.Si - hour.DewPoint!.Si);
            calculation.LeaveOut(rest ? null : laying.Outside);
        }

        if (rest && envelope is null)
        {
            calculation.Take(WeatherAtLaying.NoWeather(context, "dew_point_highest"));
        }
        else if (rest)
        {
            var lowest = calculation.Stated("Tbase", envelope!.BaseLowest, "weather", "envelope.base_lowest");
            margin = Math.Min(margin, lowest - calculation.Stated("Tdew", envelope.DewPointHighest, "weather", "envelope.dew_point_highest"));
        }

        return calculation.Result("weather.dew_margin_lowest", "Δ", "Δ = Tbase − Tdew", margin);
    }
}
