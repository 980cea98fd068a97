using Laygate.Engineering.Assumptions;
using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Supply.Simulation;

/// <summary>
/// Reads the buffers of one course or two. For one mix the feeder's own storage counts as buffer, and a paver without stated
/// buffer has a plain hopper; for two mixes both buffers must be stated, and the feeder is empty whenever it turns.
/// </summary>
internal sealed class BufferReader(Calculation calculation, ShiftUnloading unloading)
{
    /// <summary>Reads the buffers.</summary>
    public IReadOnlyList<ShiftBuffer> Read(IReadOnlyList<Course> courses, IReadOnlyList<Paver> pavers)
    {
        if (pavers.Count != courses.Count)
        {
            return [];
        }

        var share = calculation.Assumed(SimulationAssumptions.RestartShare, "r", $"paver:{pavers[0].Id}", null);
        ShiftBuffer[] buffers = [.. courses.Select((course, i) => Plain(course, pavers[i], courses.Count == 1, share))];
        if (buffers.Length == 2 && unloading.OneForAll && buffers[1].Call is null)
        {
            buffers[1] = buffers[1] with { Call = MiddleOfBand(courses, buffers) };
        }

        return buffers;
    }

    private ShiftBuffer Plain(Course course, Paver paver, bool isOnly, double share)
    {
        var address = $"paver:{paver.Id}";
        var key = $"buffers.{course.Id}";
        var buffer = paver.Buffers.FirstOrDefault(buffer => PlanView.Same(buffer.Course, course.Id));
        double capacity, lowest;
        if (isOnly || !unloading.OneForAll)
        {
            capacity = calculation.StatedOr(SimulationAssumptions.HopperCapacity, "B", buffer?.Capacity, address, $"{key}.capacity");
            lowest = calculation.StatedOr(SimulationAssumptions.HopperLowest, "B0", buffer?.Lowest, address, $"{key}.lowest");
        }
        else
        {
            capacity = calculation.Stated("B", buffer?.Capacity, address, $"{key}.capacity");
            lowest = calculation.Stated("B0", buffer?.Lowest, address, $"{key}.lowest");
        }

        if (isOnly && calculation.Context.Plan.Supply?.Feeder is { Storage: { } storage } feeder)
        {
            capacity += calculation.Stated("B feeder", storage, $"feeder:{feeder.Id}", "storage");
        }

        double? call = buffer?.Call is { } stated && !isOnly ? calculation.Stated("call", stated, address, $"{key}.call") : null;
        return new ShiftBuffer(course.Id, course.Mix, capacity, lowest, lowest + (share * (capacity - lowest)), call);
    }

    /// <summary>Where the plan states no call level: the middle of the worst-case band, kept inside the buffer.</summary>
    private double? MiddleOfBand(IReadOnlyList<Course> courses, ShiftBuffer[] buffers)
    {
        var lower = FeederQuantities.Fed(calculation, courses[0], "Rb", "Pb");
        var upper = FeederQuantities.Fed(calculation, courses[1], "Rs", "Ps");
        var timing = new FeederTiming(
            unloading.Rate, unloading.Exchange.Expected * (unloading.InParts ? 2 : 1), unloading.Changeover);
        var lowest = TwoMixFeeding.CallLowest(lower, upper, timing, buffers[1].Lowest);
        var highest = TwoMixFeeding.CallHighest(upper, timing, buffers[1].Capacity);
        var middle = (lowest + highest) / 2;
        if (middle is not { } call || !(buffers[1].Capacity > buffers[1].Lowest))
        {
            return null;
        }

        call = Math.Clamp(call, buffers[1].Lowest, buffers[1].Capacity);
        calculation.Step("call", "call = (Sl + Sh) / 2", call, "t", "short ton");
        return call;
    }
}
