using Laygate.Model.Plans;

namespace Laygate.Model.Levers;

/// <summary>Levers of pavers: speed, buffers, call levels.</summary>
internal static class PaverLevers
{
    public static IEnumerable<Lever> Of(Plan plan)
    {
        var fastest = plan.Courses.Any(course => course.Laid == Laying.HotOnHot) ? PlanLevers.MostOfPairSpeed : PlanLevers.MostOfSpeed;
        foreach (var paver in plan.Pavers)
        {
            var address = $"paver:{paver.Id}";
            if (PlanLevers.Measure(
                LeverKind.PaverSpeed, address, "speed", paver.Speed, (PlanLevers.SlowestPaver / 60, fastest * paver.Speed?.Si),
                speed => PlanCopy.WithPaver(plan, paver with { Speed = speed })) is { } lever)
            {
                yield return lever;
            }

            foreach (var buffer in paver.Buffers.SelectMany(buffer => Of(plan, paver, buffer)))
            {
                yield return buffer;
            }
        }
    }

    private static IEnumerable<Lever> Of(Plan plan, Paver paver, MixBuffer buffer)
    {
        var address = $"paver:{paver.Id}";
        if (PlanLevers.Measure(
            LeverKind.BufferCapacity, address, $"buffers.{buffer.Course}.capacity", buffer.Capacity, (buffer.Lowest?.Si, null),
            capacity => With(plan, paver, buffer with { Capacity = capacity })) is { } room)
        {
            // No source publishes how far a hopper can be enlarged, and no plan states it: the machine gives it.
            yield return room with { IsGiven = true };
        }

        if (PlanLevers.Measure(
            LeverKind.CallLevel, address, $"buffers.{buffer.Course}.call", buffer.Call, (buffer.Lowest?.Si, buffer.Capacity?.Si),
            call => With(plan, paver, buffer with { Call = call })) is { } level)
        {
            yield return level;
        }
    }

    private static Plan With(Plan plan, Paver paver, MixBuffer changed) =>
        PlanCopy.WithPaver(plan, paver with { Buffers = PlanCopy.Replace(paver.Buffers, buffer => buffer.Course, changed) });
}
