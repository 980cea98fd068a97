using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Quantities;
using Laygate.Model.Measures;
using Laygate.Model.Plans;
using Laygate.Model.Records;

namespace Laygate.Engineering.Measured;

/// <summary>The plan in the weather that was measured: at each reading the measured air, surface and wind, with cloud, dew point and sun of the forecast; before the first and after the last the forecast, moved by what they differ. Where the plan states no hours, whole readings are the hours.</summary>
internal static class MeasuredWeather
{
    private static readonly Unit Celsius = UnitTable.Find("°C")!;
    private static readonly Unit Speed = UnitTable.Find("m/s")!;

    /// <summary>The plan in that weather; the plan as it is where nothing was measured.</summary>
    public static Plan Of(QuantityContext context, IReadOnlyList<WeatherReading> readings)
    {
        var rows = readings.Where(row => row is not { Air: null, Surface: null, Wind: null }).OrderBy(row => row.At).ToList();
        if (rows.Count == 0 || context.Plan.Weather is not { } weather)
        {
            return context.Plan;
        }

        rows = [.. rows.Select(row => row with { Wind = WindReduction.AsForecast(context, row.Wind) })];
        if (WeatherTable.Of(context) is not { } table)
        {
            return context.Plan with { Weather = weather with { Hours = [.. rows.Select(Hour).OfType<WeatherHour>()] } };
        }

        var hours = table.Rows().Where(row => row.At < rows[0].At).Select(row => Measured(row.At, row.Hour, table.At(rows[0].At), rows[0]))
            .Concat(rows.Select(row => Measured(row.At, table.At(row.At), table.At(row.At), row)))
            .Concat(table.Rows().Where(row => row.At > rows[^1].At).Select(row => Measured(row.At, row.Hour, table.At(rows[^1].At), rows[^1])));
        return context.Plan with { Weather = weather with { Hours = [.. hours] } };
    }

    private static WeatherHour? Hour(WeatherReading row) => row is { Air: { } air, Surface: { } surface, Wind: { } wind }
        ? new WeatherHour { At = new Moment(row.At.DateTime, row.At.Offset), Air = new(air, Celsius), Base = new(surface, Celsius), Wind = new(wind, Speed) }
        : null;

    // By as much as the reading lies above the forecast of its time.
    private static WeatherHour Measured(DateTimeOffset at, WeatherHour hour, WeatherHour forecast, WeatherReading reading) =>
        MovedWeather.Hour(hour, (reading.Air - forecast.Air?.Si) ?? 0, (reading.Surface - forecast.Base?.Si) ?? 0, (reading.Wind - forecast.Wind?.Si) ?? 0) with { At = new Moment(at.DateTime, at.Offset) };
}
