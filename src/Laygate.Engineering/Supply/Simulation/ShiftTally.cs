namespace Laygate.Engineering.Supply.Simulation;

/// <summary>
/// Room for what happens in many shifts, one place for each replication, so that the order in which they are run does not
/// matter. A writer for one worker; workers share the arrays but never a place in them.
/// </summary>
internal sealed class ShiftTally
{
    /// <summary>Moments at which levels are looked at.</summary>
    public const int Moments = 121;

    /// <summary>Width of a class of waiting time, s.</summary>
    public const double WaitClass = 30;

    /// <summary>Number of classes of waiting time.</summary>
    public const int WaitClasses = 2880;

    private const int FirstClasses = 240; // Two hours: most trucks wait no longer.

    private readonly ShiftArrays arrays;
    private readonly float[] road = new float[Moments + 1];
    private readonly double step;
    private int replication;
    private int moment;
    private int queueHighest;

    public ShiftTally(ShiftArrays arrays, double duration)
    {
        this.arrays = arrays;
        step = duration / (Moments - 1);
    }

    /// <summary>Trucks by class of waiting time, for each group; each list as long as the longest wait so far asks for.</summary>
    public int[][] Waited { get; private set; } = [];

    /// <summary>When levels are looked at next, s; infinite after the last time.</summary>
    public double SampleTime => moment < Moments ? moment * step : double.PositiveInfinity;

    public void Begin(int number)
    {
        if (Waited.Length == 0)
        {
            Waited = [.. Enumerable.Range(0, arrays.Groups).Select(_ => new int[FirstClasses])];
        }

        (replication, moment, queueHighest) = (number, 0, 0);
        Array.Clear(road);
    }

    /// <summary>A load leaves the plant.</summary>
    public void Leaves(double time, double mass) => road[Place(time)] += (float)mass;

    /// <summary>A load arrives on site.</summary>
    public void Arrives(double time, double mass) => road[Place(time)] -= (float)mass;

    /// <summary>A truck has waited.</summary>
    public void Waits(int group, double time)
    {
        var place = (replication * arrays.Groups) + group;
        arrays.WaitSum[place] += time;
        arrays.WaitCount[place]++;
        var wait = (int)Math.Clamp(time / WaitClass, 0, WaitClasses - 1);
        ref var classes = ref Waited[group];
        if (wait >= classes.Length)
        {
            Array.Resize(ref classes, Math.Min(WaitClasses, Math.Max(wait + 1, 2 * classes.Length)));
        }

        classes[wait]++;
    }

    /// <summary>The paver has stood for want of mix.</summary>
    public void Stands(StopCause cause, double time) => arrays.StoppedBy[(replication * ShiftArrays.Causes) + (int)cause] += time;

    /// <summary>Trucks stand in the queue.</summary>
    public void Queue(TruckQueue[] queues)
    {
        var count = 0;
        foreach (var queue in queues)
        {
            count += queue.Count;
        }

        queueHighest = Math.Max(queueHighest, count);
    }

    /// <summary>Looks at levels and waiting loads.</summary>
    public void Sample(HeldMix[] held, MixFlow[] mixes)
    {
        var place = ((replication * Moments) + moment++) * arrays.Channels;
        for (var i = 0; i < held.Length; i++)
        {
            arrays.Samples[place + i] = (float)held[i].Level;
        }

        var waiting = 0.0;
        foreach (ref var mix in mixes.AsSpan())
        {
            waiting += mix.Arrived - mix.Fed;
        }

        arrays.Samples[place + held.Length] = (float)waiting;
    }

    /// <summary>The shift is over.</summary>
    public void End(ref ShiftOutcome outcome, HeldMix[] held, MixFlow[] mixes)
    {
        while (moment < Moments)
        {
            Sample(held, mixes);
        }

        outcome.QueueHighest = queueHighest;
        outcome.CommittedHighest = SumRoad(held.Length);
        for (var i = 0; i < held.Length; i++)
        {
            var place = (replication * held.Length) + i;
            arrays.Laid[place] = held[i].Laid;
            arrays.InBuffers[place] = held[i].Level;
        }

        for (var m = 0; m < mixes.Length; m++)
        {
            var place = (replication * mixes.Length) + m;
            arrays.Loaded[place] = mixes[m].Loaded;
            arrays.OnTrucks[place] = mixes[m].Loaded - mixes[m].Fed;
        }

        arrays.Outcomes[replication] = outcome;
    }

    /// <summary>Writes what was counted so far.</summary>
    public TallyState Save(in ShiftOutcome outcome)
    {
        var (samples, causes, groups) = (replication * Moments * arrays.Channels, replication * ShiftArrays.Causes, replication * arrays.Groups);
        return new TallyState(
            outcome.Stops, outcome.Stopped, outcome.LongestStop, double.IsNaN(outcome.FirstStopAfterPlant) ? null : outcome.FirstStopAfterPlant, outcome.BrokenOff, queueHighest, moment,
            [.. road], arrays.Samples[samples..(samples + (moment * arrays.Channels))], arrays.StoppedBy[causes..(causes + ShiftArrays.Causes)],
            arrays.WaitSum[groups..(groups + arrays.Groups)], arrays.WaitCount[groups..(groups + arrays.Groups)]);
    }

    /// <summary>Goes on from what was counted; without it counting begins at the state, where the loads under way are on the road.</summary>
    public void Restore(ref ShiftOutcome outcome, ShiftState state)
    {
        if (state.Tally is not { } tally)
        {
            moment = (int)Math.Clamp(Math.Ceiling(state.Now / step), 0, Moments);
            road[Place(state.Now)] = (float)state.Trucks.Where(truck => truck is { HasMix: true } and not { Due: null, LeftAt: null }).Sum(truck => truck.Load);
            return;
        }

        (outcome.Stops, outcome.Stopped, outcome.LongestStop, outcome.BrokenOff) = (tally.Stops, tally.Stopped, tally.LongestStop, tally.BrokenOff);
        outcome.FirstStopAfterPlant = tally.FirstStopAfterPlant ?? double.NaN;
        (queueHighest, moment) = (tally.QueueHighest, tally.Moment);
        Put(tally.Road, road, 0);
        Put(tally.Samples, arrays.Samples, replication * Moments * arrays.Channels);
        Put(tally.StoppedBy, arrays.StoppedBy, replication * ShiftArrays.Causes);
        Put(tally.WaitSum, arrays.WaitSum, replication * arrays.Groups);
        Put(tally.WaitCount, arrays.WaitCount, replication * arrays.Groups);
    }

    private static void Put<T>(IReadOnlyList<T> from, T[] to, int at)
    {
        for (var i = 0; i < from.Count; i++)
        {
            to[at + i] = from[i];
        }
    }

    private double SumRoad(int buffers)
    {
        var onRoad = 0f;
        var highest = 0f;
        for (var k = 0; k < Moments; k++)
        {
            onRoad += road[k];
            var place = ((replication * Moments) + k) * arrays.Channels;
            arrays.Samples[place + buffers + 1] = onRoad;
            var sum = onRoad;
            for (var i = 0; i <= buffers; i++)
            {
                sum += arrays.Samples[place + i];
            }

            highest = Math.Max(highest, sum);
        }

        return highest;
    }

    private int Place(double time) => (int)Math.Clamp(Math.Ceiling(time / step), 0, Moments);
}

/// <summary>Arrays that the replications write to.</summary>
internal sealed class ShiftArrays(int replications, int buffers, int mixes, int groups)
{
    public int Groups { get; } = groups;

    /// <summary>Bytes of the larger arrays.</summary>
    public long Bytes => (4L * Samples.Length) + (12L * WaitSum.Length) + (8L * StoppedBy.Length);

    /// <summary>Levels of the buffers, waiting loads, loads on the road.</summary>
    public int Channels { get; } = buffers + 2;

    /// <summary>Number of causes of a stop.</summary>
    public static int Causes { get; } = Enum.GetValues<StopCause>().Length;

    /// <summary>Time stopped, s, for each cause.</summary>
    public double[] StoppedBy { get; } = new double[replications * Causes];

    public ShiftOutcome[] Outcomes { get; } = new ShiftOutcome[replications];

    public double[] Laid { get; } = new double[replications * buffers];

    public double[] InBuffers { get; } = new double[replications * buffers];

    public double[] Loaded { get; } = new double[replications * mixes];

    public double[] OnTrucks { get; } = new double[replications * mixes];

    public double[] WaitSum { get; } = new double[replications * groups];

    public int[] WaitCount { get; } = new int[replications * groups];

    public float[] Samples { get; } = new float[replications * ShiftTally.Moments * (buffers + 2)];
}
