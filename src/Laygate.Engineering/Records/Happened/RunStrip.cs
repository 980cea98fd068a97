using Laygate.Model.Plans;
using Laygate.Model.Records;

namespace Laygate.Engineering.Records.Happened;

/// <summary>A load where it was laid. Stations in m, temperatures in °C.</summary>
/// <param name="Ticket">Number of the ticket.</param>
/// <param name="From">Station at which the load before it was empty; the first reading for the first load.</param>
/// <param name="To">Station at which it was empty.</param>
/// <param name="Emptied">When.</param>
/// <param name="Temperature">Temperature in the load on site; null where it was not read.</param>
/// <param name="Row">Row of its delivery.</param>
public sealed record StripLoad(string Ticket, double From, double To, DateTimeOffset Emptied, double? Temperature, RowPlace Row);

/// <summary>Something that happened at a moment, with the station that the screed had reached.</summary>
/// <param name="Station">Station, m.</param>
/// <param name="At">When.</param>
/// <param name="Text">What.</param>
public sealed record StripMark(double Station, DateTimeOffset At, string Text);

/// <summary>A course along its run: loads with temperature and minute, stops, hold points.</summary>
/// <param name="Course">Id of the course.</param>
/// <param name="Loads">Loads in the order in which they were empty.</param>
/// <param name="Times">Every half hour.</param>
/// <param name="Stops">Stops; text: how many minutes.</param>
/// <param name="HoldPoints">Hold points that were released while the course was laid.</param>
/// <param name="RefuseBelow">Temperature in the load below which the plan refuses; null where it states none for the load.</param>
public sealed record RunStrip(
    string Course, IReadOnlyList<StripLoad> Loads, IReadOnlyList<StripMark> Times, IReadOnlyList<StripMark> Stops, IReadOnlyList<StripMark> HoldPoints, double? RefuseBelow)
{
    private static readonly TimeSpan Step = TimeSpan.FromMinutes(30);

    /// <summary>The strips of all courses whose loads have a station.</summary>
    /// <param name="shift">Plan and record.</param>
    public static IReadOnlyList<RunStrip> Of(HappenedShift shift) => [.. shift.Plan.Courses.Select(course => Of(shift, course)).Where(strip => strip.Loads.Count > 0)];

    private static RunStrip Of(HappenedShift shift, Course course)
    {
        var screed = shift.Screed(course);
        var loads = shift.LoadsOf(course.Mix).Where(load => load is { StationAtEnd: not null, Emptied: not null }).OrderBy(load => load.Emptied).ToList();
        var from = loads.Count > 0 ? screed.Start ?? loads[0].StationAtEnd!.Value : 0;
        var strip = new List<StripLoad>();
        foreach (var load in loads)
        {
            strip.Add(new StripLoad(load.Ticket, from, load.StationAtEnd!.Value, load.Emptied!.Value, load.SiteTemperature, load.Delivery ?? load.Place));
            from = load.StationAtEnd.Value;
        }

        var mix = shift.Plan.Mixes.FirstOrDefault(one => string.Equals(one.Id, course.Mix, StringComparison.Ordinal));
        return new RunStrip(
            course.Id, strip, [.. HalfHours(screed)],
            [.. shift.Record.Stops.Where(stop => stop.To is not null).Select(stop => (Stop: stop, Station: stop.Station ?? screed.StationAt(stop.From))).Where(one => one.Station is not null)
                .Select(one => new StripMark(one.Station!.Value, one.Stop.From, FormattableString.Invariant($"{(one.Stop.To!.Value - one.Stop.From).TotalMinutes:0} min")))],
            [.. shift.Record.HoldPoints.Where(release => release.At is not null).Select(release => (Release: release, Station: screed.StationAt(release.At!.Value))).Where(one => one.Station is not null)
                .Select(one => new StripMark(one.Station!.Value, one.Release.At!.Value, one.Release.HoldPoint))],
            mix?.RefuseBelow is { Place: Place.InLoad, Value: { } limit } ? limit.Si : null);
    }

    private static IEnumerable<StripMark> HalfHours(ScreedTimes screed)
    {
        if (screed is not { First.At: var first, Last.At: var last })
        {
            yield break;
        }

        var start = new DateTimeOffset(first.Year, first.Month, first.Day, first.Hour, 0, 0, first.Offset);
        for (var at = start; at <= last; at += Step)
        {
            if (at >= first && screed.StationAt(at) is { } station)
            {
                yield return new StripMark(station, at, string.Empty);
            }
        }
    }
}
