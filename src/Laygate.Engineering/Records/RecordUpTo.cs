using Laygate.Model.Records;

namespace Laygate.Engineering.Records;

/// <summary>What was known of a shift at a moment: later rows are not looked at, so that what was said at that moment can be said again.</summary>
internal static class RecordUpTo
{
    public static ShiftRecord Of(ShiftRecord record, DateTimeOffset at) => record with
    {
        Loads = [.. record.Loads.Where(load => Began(load) is not { } began || began <= at).Select(load => Upto(load, at))],
        Stations = [.. record.Stations.Where(reading => reading.At <= at)],
        Stops = [.. record.Stops.Where(stop => stop.From <= at).Select(stop => stop.To > at ? stop with { To = null } : stop)],
        Cores = [.. record.Cores.Where(core => core.Cut is not { } cut || cut <= at)],
        Last = Last(record, at),
    };

    private static DateTimeOffset? Began(Load load) => load.Loaded ?? load.Arrived ?? load.Started ?? load.Emptied;

    // A load that the site sent back was on its way until it arrived.
    private static Load Upto(Load load, DateTimeOffset at)
    {
        var (isOpen, isComing) = (load.Emptied > at, load.Arrived > at && load.State is (LoadState.Refused or LoadState.Returned));
        return load with
        {
            State = isComing ? LoadState.Valid : load.State,
            Arrived = Known(load.Arrived, at),
            Started = Known(load.Started, at),
            Emptied = Known(load.Emptied, at),
            StationAtEnd = isOpen ? null : load.StationAtEnd,
            NotLaid = isOpen ? 0 : load.NotLaid,
        };
    }

    private static DateTimeOffset? Known(DateTimeOffset? time, DateTimeOffset at) => time <= at ? time : null;

    private static DateTimeOffset? Last(ShiftRecord record, DateTimeOffset at)
    {
        IEnumerable<DateTimeOffset?> times =
        [
            .. record.Loads.SelectMany(load => new[] { load.Loaded, load.Arrived, load.Started, load.Emptied }),
            .. record.Stations.Select(reading => (DateTimeOffset?)reading.At),
            .. record.Stops.SelectMany(stop => new[] { stop.From, stop.To }),
        ];
        return times.Where(time => time <= at).Max();
    }
}
