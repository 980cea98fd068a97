using System.Globalization;
using Laygate.Model.Plans;
using Laygate.Model.Records;

namespace Laygate.Engineering.Records.Happened;

/// <summary>Weather while mix was laid.</summary>
internal static class HappenedWeather
{
    // A plan states its weather by the hour; an hour of laying without a reading is one of which nothing is known.
    private static readonly TimeSpan Longest = TimeSpan.FromHours(1);

    public static IEnumerable<HappenedQuantity> All() =>
    [
        new("course.air_lowest", "air while the course was laid", RowsOf.Weather, "air", "temperature", (shift, element) => While(shift, element.Subject as Course, reading => reading.Air, shift.Known.Temperature)) { GoesWithTime = true },
        new("course.base_lowest", "surface of the base while the course was laid", RowsOf.Weather, "surface", "skin", (shift, element) => While(shift, element.Subject as Course, reading => reading.Surface, shift.Known.Skin)) { GoesWithTime = true },
        new("weather.wind_highest_at_mat", "wind while mix was laid", RowsOf.Weather, "wind", "wind", (shift, _) => While(shift, null, reading => reading.Wind, shift.Known.Wind)) { GoesWithTime = true },
        new("weather.dew_margin_lowest", "base above the dew point while mix was laid", RowsOf.Weather, "surface, dew_point", "skin, temperature", (shift, _) => While(
            shift, null, reading => reading.Surface - reading.DewPoint, shift.Known is { Skin: { } skin, Temperature: { } air } ? Math.Sqrt((skin * skin) + (air * air)) : null)),
    ];

    private static HappenedSet While(HappenedShift shift, Course? course, Func<WeatherReading, double?> value, double? standard)
    {
        var screeds = (course is null ? shift.Plan.Courses : [course]).Select(shift.Screed).ToList();
        var (first, last) = (screeds.Min(screed => screed.First?.At), screeds.Max(screed => screed.Last?.At));
        var readings = shift.Record.Weather.Where(reading => value(reading) is not null).ToList();
        if (readings.Count == 0)
        {
            return HappenedSet.Nothing;
        }

        if (first is not { } begun || last is not { } ended)
        {
            return new HappenedSet([], [new LackingRow("stations of the screed, which say when mix was laid")]);
        }

        var during = readings.Where(reading => reading.At >= begun && reading.At <= ended).ToList();
        return new HappenedSet(
            [.. during.Select(reading => new HappenedValue(value(reading)!.Value, standard, [reading.Place]) { At = reading.At })],
            [.. Gaps(begun, ended, readings.Select(reading => reading.At))]);
    }

    private static IEnumerable<LackingRow> Gaps(DateTimeOffset begun, DateTimeOffset ended, IEnumerable<DateTimeOffset> times)
    {
        var from = begun;
        foreach (var time in times.Where(time => time >= begun - Longest && time <= ended).Append(ended))
        {
            if (time - from > Longest)
            {
                yield return new LackingRow(string.Create(CultureInfo.InvariantCulture, $"no reading from {from:HH:mm} to {time:HH:mm}"));
            }

            from = time > from ? time : from;
        }
    }
}
