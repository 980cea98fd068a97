using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Safety;

namespace Laygate.Engineering.Quantities.Safety;

/// <summary>Heat that acts on the crew.</summary>
internal static class HeatQuantities
{
    private static readonly Define Weather = new(ElementKind.Weather);

    public static IEnumerable<QuantityDefinition> All() =>
    [
        Weather.Number("heat_index", Shape.Temperature, "Highest heat index while laying, in the shade and away from the mat; sun and mat add to it.", Highest, new Method(
            HeatIndex.Expression, HeatIndex.Source, "hour by hour from air and dew point; in an envelope the highest air with the highest dew point, the hot side")),
    ];

    private static Answer Highest(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        var pairs = Pairs(context, calculation).ToList();
        var index = calculation.Stopped is null
            ? pairs.Max(pair => HeatIndex.Of(pair.Air, Math.Min(100, HeatIndex.Humidity(pair.Air, pair.Dew))))
            : null;
        return calculation.Result("weather.heat_index", "HI", HeatIndex.Expression, index);
    }

    private static IEnumerable<(double Air, double Dew)> Pairs(QuantityContext context, Calculation calculation)
    {
        var laying = WeatherAtLaying.Of(context);
        var envelope = context.Plan.Weather?.Envelope;
        if (laying.Lacks(calculation, ("air", hour => hour.Air), ("dew_point", hour => hour.DewPoint)))
        {
            return [];
        }

        var hours = laying.Hours.Select(hour => (hour.Air!.Si, hour.DewPoint!.Si));
        if (laying.Hours.Count > 0 && (laying.Outside is null || envelope is not { AirHighest: not null, DewPointHighest: not null }))
        {
            calculation.LeaveOut(laying.Outside);
            return hours;
        }

        // What the hours leave out, the envelope covers.
        return hours.Append((
            calculation.Stated("T", envelope?.AirHighest, "weather", "envelope.air_highest"),
            calculation.Stated("Td", envelope?.DewPointHighest, "weather", "envelope.dew_point_highest")));
    }
}
