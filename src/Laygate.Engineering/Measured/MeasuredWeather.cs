using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Quantities;
using Laygate.Model.Measures;
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
    private static WeatherHour Measured(DateTimeOffset at, WeatherHour hour, WeatherHour forecast, WeatherReading reading) => hour with
    {
        At = new Moment(at.DateTime, at.Offset),
        Air = Moved(hour.Air, reading.Air - forecast.Air?.Si),
        Base = Moved(hour.Base, reading.Surface - forecast.Base?.Si),
        Wind = hour.Wind is null ? null : hour.Wind with { Number = hour.Wind.Unit.FromSi(Math.Max(0, hour.Wind.Si + ((reading.Wind - forecast.Wind?.Si) ?? 0))) },
        BaseAtDepth = [.. hour.BaseAtDepth.Select(point => point with { Temperature = Moved(point.Temperature, reading.Surface - forecast.Base?.Si)! })],
    };

    private static Measure<T>? Moved<T>(Measure<T>? measure, double? by)
        where T : IDimension => measure is null || by is null ? measure : measure with { Number = measure.Unit.FromSi(measure.Si + by.Value) };
}
