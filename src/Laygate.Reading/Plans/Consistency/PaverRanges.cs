using Laygate.Model.Plans;

namespace Laygate.Reading.Plans.Consistency;

/// <summary>Values of pavers that cannot be.</summary>
internal static class PaverRanges
{
    public static void Check(Plan plan, PlanPart at)
    {
        foreach (var (paver, where) in at.Each("pavers", plan.Pavers))
        {
            Paver(paver, where);
        }
    }

    private static void Paver(Paver paver, PlanPart at)
    {
        at.Positive("speed", paver.Speed);
        at.CanBe("speed", paver.Speed, Possible.PaverSpeed);
        at.PositiveShare("availability", paver.Availability);
        at.Positive("travel_speed", paver.TravelSpeed);
        at.NotNegative("reset", paver.Reset);
        foreach (var (screed, where) in at.Each("screeds", paver.Screeds))
        {
            where.Positive("width_lowest", screed.WidthLowest);
            where.Positive("width_highest", screed.WidthHighest);
            where.CanBe("width_lowest", screed.WidthLowest, Possible.Width);
            where.CanBe("width_highest", screed.WidthHighest, Possible.Width);
            where.Ascending(("width_lowest", screed.WidthLowest), ("width_highest", screed.WidthHighest));
        }

        foreach (var (buffer, where) in at.Each("buffers", paver.Buffers))
        {
            Buffer(buffer, where);
        }

        foreach (var (stop, where) in at.Each("stops", paver.Stops))
        {
            where.NotNegative("after", stop.After);
            where.Positive("length", stop.Length);
        }

        at.Positive("stop_limit", paver.StopLimit);
        at.Positive("mass_empty", paver.MassEmpty);
    }

    private static void Buffer(MixBuffer buffer, PlanPart at)
    {
        at.Positive("capacity", buffer.Capacity);
        at.NotNegative("lowest", buffer.Lowest);
        at.NotNegative("call", buffer.Call);
        at.Ascending(("lowest", buffer.Lowest), ("call", buffer.Call), ("capacity", buffer.Capacity));
    }
}
