using System.Runtime.InteropServices;
using Laygate.Engineering.Numerics;

namespace Laygate.Engineering.Supply.Simulation;

/// <summary>A value with its low and high end.</summary>
/// <param name="Expected">Mean, or share.</param>
/// <param name="Low">Low end.</param>
/// <param name="High">High end.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct Band(double Expected, double Low, double High);

/// <summary>Levels along the shift: median and the points below which 5 % and 95 % of the shifts lie.</summary>
/// <param name="Times">Moments after the planned start of laying, s.</param>
/// <param name="Low">5 % point, kg.</param>
/// <param name="Middle">Median, kg.</param>
/// <param name="High">95 % point, kg.</param>
public sealed record LevelCurve(IReadOnlyList<double> Times, IReadOnlyList<double> Low, IReadOnlyList<double> Middle, IReadOnlyList<double> High);

/// <summary>What happened in many simulated shifts of one train. Curves are worked out when they are asked for.</summary>
public sealed class ShiftResult : ShiftStatistics
{
    private readonly ShiftModel model;
    private readonly ShiftPlan plan;
    private readonly ShiftArrays arrays;
    private readonly int[][] waited;

    internal ShiftResult(ShiftModel model, ShiftPlan plan, ShiftArrays arrays, int[][] waited)
        : base(arrays.Outcomes) => (this.model, this.plan, this.arrays, this.waited) = (model, plan, arrays, waited);

    /// <summary>Bytes that it holds, about.</summary>
    internal long Bytes => arrays.Bytes + waited.Sum(classes => 4L * classes.Length);

    /// <summary>What the paver waited for when it stood for want of mix, largest share first; empty where it never stood.</summary>
    public IReadOnlyList<StopShare> StopCauses() => StopShare.Of(StopTimes());

    /// <summary>Time stopped for want of mix over all shifts by what the paver waited for, s, in the order of the causes.</summary>
    internal double[] StopTimes()
    {
        var times = new double[ShiftArrays.Causes];
        for (var i = 0; i < arrays.StoppedBy.Length; i++)
        {
            times[i % times.Length] += arrays.StoppedBy[i];
        }

        return times;
    }

    /// <summary>Time from a plant's stop to the first stop of the paver for want of a mix of that plant, or to the end of laying, s. Zero without a plant that stops.</summary>
    public Band Survived => model.Stop is not { } stop
        ? default
        : Statistics.Spread([.. Outcomes.Select(shift => Math.Max(0, shift.FirstStopAfterPlant - stop.At))]);

    /// <summary>Wait of a truck on site before it docks, s: mean over all trucks of a group; low and high are the 5 % and 95 % points of single waits, to half a minute. Null where no truck came.</summary>
    public Band? Wait(int group)
    {
        var classes = waited[group].AsSpan();
        long count = 0;
        var sum = 0.0;
        for (var i = 0; i < Outcomes.Count; i++)
        {
            count += arrays.WaitCount[(i * arrays.Groups) + group];
            sum += arrays.WaitSum[(i * arrays.Groups) + group];
        }

        if (count == 0)
        {
            return null;
        }

        var mean = sum / count;
        return new Band(
            mean,
            Math.Min(mean, Statistics.PointOfClasses(classes, count, 0.05) * ShiftTally.WaitClass),
            Math.Max(mean, Statistics.PointOfClasses(classes, count, 0.95) * ShiftTally.WaitClass));
    }

    /// <summary>Mix of a course left over at the end, kg: in its buffer, and on the trucks that still carry its mix.</summary>
    public Band LeftOver(int buffer)
    {
        var mix = plan.Held(buffer).Mix;
        var carries = !Enumerable.Range(0, buffer).Any(other => plan.Held(other).Mix == mix);
        var (buffers, mixes) = (model.Buffers.Count, plan.Mixes.Count);
        return Statistics.Spread([.. Enumerable.Range(0, Outcomes.Count).Select(i =>
            arrays.InBuffers[(i * buffers) + buffer] + (carries ? arrays.OnTrucks[(i * mixes) + mix] : 0))]);
    }

    /// <summary>Mix of one replication that left the plants, was laid, and is left in buffers and on trucks, kg.</summary>
    /// <param name="replication">Number of the replication.</param>
    public (double Loaded, double Laid, double InBuffers, double OnTrucks) Balance(int replication)
    {
        var (buffers, mixes) = (model.Buffers.Count, plan.Mixes.Count);
        return (
            arrays.Loaded.AsSpan(replication * mixes, mixes).ToArray().Sum(),
            arrays.Laid.AsSpan(replication * buffers, buffers).ToArray().Sum(),
            arrays.InBuffers.AsSpan(replication * buffers, buffers).ToArray().Sum(),
            arrays.OnTrucks.AsSpan(replication * mixes, mixes).ToArray().Sum());
    }

    /// <summary>Level of a buffer along the shift.</summary>
    public LevelCurve Level(int buffer) => Curve(samples => samples[buffer]);

    /// <summary>Mix that waits on site in trucks.</summary>
    public LevelCurve Waiting() => Curve(samples => samples[model.Buffers.Count]);

    /// <summary>Mix on the road.</summary>
    public LevelCurve OnTheRoad() => Curve(samples => samples[model.Buffers.Count + 1]);

    /// <summary>Committed mix: on the road, waiting and in buffers; what is lost when it rains.</summary>
    public LevelCurve Committed() => Curve(Sum);

    private static double Sum(ReadOnlySpan<float> samples)
    {
        var sum = 0.0;
        foreach (var sample in samples)
        {
            sum += sample;
        }

        return sum;
    }

    private LevelCurve Curve(Func<ReadOnlySpan<float>, double> read)
    {
        var count = Outcomes.Count;
        var values = new double[count];
        var (low, middle, high) = (new double[ShiftTally.Moments], new double[ShiftTally.Moments], new double[ShiftTally.Moments]);
        for (var k = 0; k < ShiftTally.Moments; k++)
        {
            for (var i = 0; i < count; i++)
            {
                values[i] = read(arrays.Samples.AsSpan(((i * ShiftTally.Moments) + k) * arrays.Channels, arrays.Channels));
            }

            Array.Sort(values);
            (low[k], middle[k], high[k]) = (Quantiles.Of(values, 0.05), Quantiles.Of(values, 0.5), Quantiles.Of(values, 0.95));
        }

        return new LevelCurve([.. Enumerable.Range(0, ShiftTally.Moments).Select(k => k * model.Duration / (ShiftTally.Moments - 1))], low, middle, high);
    }
}
