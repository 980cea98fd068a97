using Laygate.Model.Plans;

namespace Laygate.Reading.Plans.Consistency;

/// <summary>Learnt values that cannot be, or that speak of none of the plan's mixes.</summary>
internal static class LearntRanges
{
    public static void Check(Plan plan, PlanPart at)
    {
        var mixes = plan.Mixes.Select(mix => mix.Id).ToHashSet(StringComparer.Ordinal);
        foreach (var (entry, where) in at.Each("learnt", plan.Learnt))
        {
            Values(entry, where);
            where.AtLeast("shifts", entry.Shifts, 2);
            where.AtLeast("readings", entry.Readings, 1);
            foreach (var (record, one) in where.Each("records", entry.Records))
            {
                one.AtLeast("readings", record.Readings, 1);
            }

            if (mixes.Count > 0 && !entry.Mixes.Any(mixes.Contains))
            {
                where.Fail("mixes", "None of these mixes is one of the plan.", "Leave the entry out: what was learnt of other mixes says nothing of these.");
            }
        }
    }

    private static void Values(LearntValues entry, PlanPart where)
    {
        if (entry.Conductivity is { } conductivity)
        {
            var inside = where.Inside("conductivity");
            inside.Positive("value", conductivity.Value);
            inside.Positive("low", conductivity.Low);
            inside.Positive("high", conductivity.High);
            inside.Positive("assumed_low", conductivity.AssumedLow);
            inside.Positive("assumed_high", conductivity.AssumedHigh);
            inside.Ascending(("low", conductivity.Low), ("value", conductivity.Value), ("high", conductivity.High));
        }

        if (entry.Laying is { } laying)
        {
            where.Inside("laying").Ascending(("low", laying.Low), ("value", laying.Value), ("high", laying.High));
        }

        if (entry.HeldOut is { } held)
        {
            var inside = where.Inside("held_out");
            inside.Share("inside_before", held.InsideBefore);
            inside.Share("inside_after", held.InsideAfter);
            inside.NotNegative("off_before", held.OffBefore);
            inside.NotNegative("off_after", held.OffAfter);
        }
    }
}
