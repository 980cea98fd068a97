using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;
using Laygate.Model.Records;

namespace Laygate.Engineering.Measured;

/// <summary>The plan in the weather that was measured: at each reading the measured air, surface and wind, with cloud, dew point and sun of the forecast; before the first and after the last the forecast, moved by what they differ.</summary>
internal static class MeasuredWeather
{
    /// <summary>The plan in that weather; the plan as it is where nothing was measured, or it states no hours.</summary>
    public static Plan Of(QuantityContext context, IReadOnlyList<WeatherReading> readings)
    {
        var rows = readings.Where(row => row is not { Air: null, Surface: null, Wind: null }).OrderBy(row => row.At).ToList();
        if (rows.Count == 0 || WeatherTable.Of(context) is not { } table || context.Plan.Weather is not { } weather)
        {
            return context.Plan;
        }

        var hours = table.Rows().Where(row => row.At < rows[0].At).Select(row => Measured(row.At, row.Hour, table.At(rows[0].At), rows[0]))
            .Concat(rows.Select(row => Measured(row.At, table.At(row.At), table.At(row.At), row)))
            .Concat(table.Rows().Where(row => row.At > rows[^1].At).Select(row => Measured(row.At, row.Hour, table.At(rows[^1].At), rows[^1])));
        return context.Plan with { Weather = weather with { Hours = [.. hours] } };
    }

    // By as much as the reading lies above the forecast of its time.
    private static WeatherHour Measured(DateTimeOffset at, WeatherHour hour, WeatherHour forecast, WeatherReading reading) =>
        MovedWeather.Hour(hour, (reading.Air - forecast.Air?.Si) ?? 0, (reading.Surface - forecast.Base?.Si) ?? 0, (reading.Wind - forecast.Wind?.Si) ?? 0) with { At = new Moment(at.DateTime, at.Offset) };
}
