namespace Laygate.Engineering.Supply.Simulation;

/// <summary>
/// The simulated shifts of all trains together, replication by replication. Each train has trucks of its own, so the highest masses and queues are
/// added, which is an upper bound.
/// </summary>
public sealed class ShiftTrains : ShiftStatistics
{
    internal ShiftTrains(IReadOnlyList<(ShiftModel Model, ShiftResult Result)> trains)
        : base(trains.Count == 1 ? trains[0].Result.Outcomes : Together([.. trains.Select(train => train.Result)])) => Trains = trains;

    /// <summary>Each train.</summary>
    public IReadOnlyList<(ShiftModel Model, ShiftResult Result)> Trains { get; }

    /// <summary>Wait on site of the trucks of a group, s, at the train where it is longest; null where no truck came.</summary>
    /// <param name="group">Id of the group.</param>
    public Band? Wait(string group)
    {
        var waits = Trains.Select(train => Place(train.Model.Trucks, trucks => Same(trucks.Id, group)) is { } place ? train.Result.Wait(place) : null).OfType<Band>().ToList();
        return waits.Count > 0 ? waits.MaxBy(wait => wait.Expected) : null;
    }

    /// <summary>Mix of a course left over at the end, kg; null where no train lays it.</summary>
    /// <param name="course">Id of the course.</param>
    public Band? LeftOver(string course)
    {
        Band? sum = null;
        foreach (var (model, result) in Trains)
        {
            for (var i = 0; i < model.Buffers.Count; i++)
            {
                var (had, left) = (sum ?? default, Same(model.Buffers[i].Course, course) ? result.LeftOver(i) : default);
                sum = Same(model.Buffers[i].Course, course) ? new Band(had.Expected + left.Expected, had.Low + left.Low, had.High + left.High) : sum;
            }
        }

        return sum;
    }

    /// <summary>What the pavers waited for when they stood for want of mix, largest share first; empty where they never stood.</summary>
    public IReadOnlyList<StopShare> StopCauses()
    {
        var times = new double[ShiftArrays.Causes];
        foreach (var (_, result) in Trains)
        {
            times = [.. times.Zip(result.StopTimes(), (sum, time) => sum + time)];
        }

        return StopShare.Of(times);
    }

    private static ShiftOutcome[] Together(IReadOnlyList<ShiftResult> trains) => [.. Enumerable.Range(0, trains.Min(train => train.Outcomes.Count)).Select(i =>
    {
        var all = trains.Select(train => train.Outcomes[i]).ToList();
        return new ShiftOutcome
        {
            Stops = all.Sum(one => one.Stops),
            Stopped = all.Sum(one => one.Stopped),
            LongestStop = all.Max(one => one.LongestStop),
            FirstStopAfterPlant = all.Min(one => one.FirstStopAfterPlant),
            Metres = all.Sum(one => one.Metres),
            Started = all.Min(one => one.Started),
            Late = all.Max(one => one.Late),
            Ended = all.Max(one => one.Ended),
            Finished = all.TrueForAll(one => one.Finished),
            FeederUse = all.Max(one => one.FeederUse),
            CommittedHighest = all.Sum(one => one.CommittedHighest),
            QueueHighest = all.Sum(one => one.QueueHighest),
            BrokenOff = all.Sum(one => one.BrokenOff),
            Events = all.Sum(one => one.Events),
        };
    })];

    private static bool Same(string a, string b) => string.Equals(a, b, StringComparison.Ordinal);

    private static int? Place<T>(IReadOnlyList<T> list, Func<T, bool> isIt)
    {
        for (var i = 0; i < list.Count; i++)
        {
            if (isIt(list[i]))
            {
                return i;
            }
        }

        return null;
    }
}
