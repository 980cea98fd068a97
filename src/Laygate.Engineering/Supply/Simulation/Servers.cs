namespace Laygate.Engineering.Supply.Simulation;

/// <summary>Servers of one station: when each is free, and what was watched.</summary>
internal struct Servers(int count)
{
    private readonly double[] free = new double[count];
    private double from = double.PositiveInfinity;
    private long departures;
    private double busy;
    private double waited;

    /// <summary>The server that is free first.</summary>
    public readonly int EarliestFree()
    {
        var best = 0;
        for (var i = 1; i < free.Length; i++)
        {
            best = free[i] < free[best] ? i : best;
        }

        return best;
    }

    /// <summary>When a server is free.</summary>
    public readonly double FreeAt(int slot) => free[slot];

    /// <summary>When each server is free; null: since ever.</summary>
    public readonly IReadOnlyList<double?> Save() => [.. free.Select(time => double.IsNegativeInfinity(time) ? (double?)null : time)];

    /// <summary>Takes up what was saved.</summary>
    public readonly void Restore(IReadOnlyList<double?> times)
    {
        for (var i = 0; i < free.Length; i++)
        {
            free[i] = i < times.Count && times[i] is { } time ? time : double.NegativeInfinity;
        }
    }

    /// <summary>Takes a truck.</summary>
    public void Serve(int slot, double arrived, double begin, double end)
    {
        free[slot] = end;
        if (arrived >= from)
        {
            departures++;
            busy += end - begin;
            waited += begin - arrived;
        }
    }

    /// <summary>Starts to watch.</summary>
    public void Watch(double since) => (from, departures, busy, waited) = (since, 0, 0, 0);

    /// <summary>What was watched. Arrivals are counted; in the long run they are the departures.</summary>
    public readonly StationTally Tally(double until) => new(departures, until - from, busy, waited);

    /// <summary>All servers free, nothing watched.</summary>
    public void Clear()
    {
        Array.Fill(free, double.NegativeInfinity);
        Watch(double.PositiveInfinity);
    }
}
