namespace Laygate.Engineering.Supply.Simulation;

/// <summary>One mix at one plant while the shift runs: what is in the silo and when a load is complete.</summary>
internal sealed class PlantLine(ShiftLine line, double largestLoad, PlantStop? stop)
{
    private readonly double capacity = Math.Max(line.Capacity, largestLoad);
    private readonly double stopFrom = stop?.At ?? double.PositiveInfinity;
    private readonly double stopTo = stop is null ? double.PositiveInfinity : stop.At + stop.Length;
    private readonly bool fromSilo = stop?.FromSilo ?? true;
    private double level;
    private double time;

    /// <summary>Opens the plant.</summary>
    public void Reset(double opening) => (level, time) = (Math.Min(line.Stock, capacity), opening);

    /// <summary>Mix in the silo, kg, and the moment at which that holds, s.</summary>
    public (double Level, double Time) Save() => (level, time);

    /// <summary>Takes up what was saved.</summary>
    public void Restore(double held, double at) => (level, time) = (Math.Min(held, capacity), at);

    /// <summary>Loads a truck: the moment at which it is full, infinite where it never is.</summary>
    /// <param name="earliest">When loading alone would be done, s.</param>
    /// <param name="mass">Load, kg.</param>
    public double Load(double earliest, double mass)
    {
        var ready = Open(Math.Max(earliest, time));
        var held = Math.Min(capacity, level + (line.Rate * Making(time, ready)));
        if (held < mass)
        {
            if (line.Rate <= 0)
            {
                return double.PositiveInfinity;
            }

            ready = Made(ready, (mass - held) / line.Rate);
            held = mass;
        }

        if (double.IsPositiveInfinity(ready))
        {
            return ready;
        }

        (level, time) = (held - mass, ready);
        return ready;
    }

    /// <summary>Time in which the plant makes mix between two moments, s.</summary>
    private double Making(double from, double to) =>
        to - from - Math.Max(0, Math.Min(to, stopTo) - Math.Max(from, stopFrom));

    /// <summary>The first moment from one on at which trucks are loaded.</summary>
    private double Open(double moment) => !fromSilo && moment >= stopFrom && moment < stopTo ? stopTo : moment;

    /// <summary>The moment at which the plant has made mix for some time.</summary>
    private double Made(double from, double needed)
    {
        var before = Math.Max(0, Math.Min(stopFrom, double.MaxValue) - from);
        return from >= stopTo || needed <= before
            ? from + needed
            : Math.Max(from, stopTo) + needed - (from < stopFrom ? before : 0);
    }
}
