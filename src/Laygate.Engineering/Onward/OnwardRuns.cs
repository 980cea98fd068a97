using Laygate.Engineering.Numerics;
using Laygate.Engineering.Records;
using Laygate.Engineering.Supply.Simulation;
using Laygate.Model.Measures;

namespace Laygate.Engineering.Onward;

/// <summary>Runs the rest of a shift: the engine of the check, from the states of its trains, with the luck that belongs to each load.</summary>
internal sealed class OnwardRuns(OnwardClock clock, DateTimeOffset closing, double? stopLimit, ulong seed, LedgerUnits units, CancellationToken cancel)
{
    /// <summary>Replications while changes are compared; what is proposed is confirmed with all.</summary>
    public const int Search = 100;

    /// <summary>Unit in which speeds are shown.</summary>
    public Unit SpeedUnit => OnwardUnits.Speed(units);

    /// <summary>Unit in which lengths are shown.</summary>
    public Unit LengthUnit => units.Length;

    /// <summary>What comes of the trains; null where one needs too many events.</summary>
    /// <param name="starts">Where they go on from.</param>
    /// <param name="replications">Replications.</param>
    public OnwardForecast? Forecast(IReadOnlyList<OnwardStart> starts, int replications)
    {
        var runs = starts.Select(start => Run(start, ShiftSimulator.LongestTime, replications)).ToList();
        if (runs.Count == 0 || runs.Contains(null))
        {
            return null;
        }

        var shifts = Enumerable.Range(0, replications).Select(i => runs.ConvertAll(run => run!.Outcomes[i])).ToList();
        double[] ends = [.. shifts.Select(all => all.TrueForAll(one => one.Finished) ? all.Max(one => one.Ended) : double.PositiveInfinity).Order()];
        double[] longest = [.. shifts.Select(all => all.Max(one => one.LongestStop))];
        var limit = clock.Of(closing);
        return new OnwardForecast(
            replications,
            Statistics.Share(ends.Count(end => end <= limit), replications),
            new MomentRange(Point(ends, 0.5), Point(ends, 0.05), Point(ends, 0.95)),
            Statistics.Spread([.. longest]),
            stopLimit is { } most ? Statistics.Share(longest.Count(stop => stop > most), replications) : null,
            Statistics.MeanOf([.. shifts.Select(all => (double)all.Sum(one => one.Stops))]));
    }

    /// <summary>What is left when laying stops at a moment, kg, and how far it has come, m; null where no shift is stopped by it.</summary>
    public (Band Left, Band Metres)? StoppedAt(IReadOnlyList<OnwardStart> starts, DateTimeOffset at, int replications)
    {
        var until = clock.Of(at);
        var runs = starts.Select(start => until > start.State.Now ? Run(start, until, replications) : null).ToList();
        if (runs.Contains(null) || runs.TrueForAll(run => run!.Outcomes.All(one => one.Finished)))
        {
            return null;
        }

        return (
            Statistics.Spread([.. Enumerable.Range(0, replications).Select(i => runs.Sum(run => run!.Balance(i) is var mass ? mass.InBuffers + mass.OnTrucks : 0))]),
            Statistics.Spread([.. Enumerable.Range(0, replications).Select(i => runs.Sum(run => run!.Outcomes[i].Metres))]));
    }

    private ShiftResult? Run(OnwardStart start, double duration, int replications) =>
        ShiftSimulator.Run(start.Model with { Duration = duration }, seed, replications, parallel: true, start.State, cancel);

    // No moment is given that was never reached.
    private DateTimeOffset? Point(double[] sorted, double share)
    {
        var at = sorted[Math.Min(sorted.Length - 1, (int)(share * sorted.Length))];
        return double.IsFinite(at) ? clock.At(double.IsFinite(sorted[^1]) ? Quantiles.Of(sorted, share) : at) : null;
    }
}
