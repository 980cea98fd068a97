using Laygate.Engineering.Records;
using Laygate.Engineering.Supply.Simulation;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Onward;

/// <summary>
/// By how much loads leave later or earlier than by the timetable of the plan: what the last five loads of a mix that were held back have in common. A dispatcher who
/// has put the timetable back goes on with it as he put it.
/// </summary>
internal sealed class TimetableDelay(ShiftModel model, RecordedLoads loads, OnwardKnown known)
{
    /// <summary>Shortest delay in s that counts; less is a queue at the weighbridge or a rounded clock: judgement.</summary>
    public const double Least = 120;

    private readonly Dictionary<TimedLoad, TimedLoad> before = Before(loads);

    /// <summary>The model with that delay.</summary>
    public ShiftModel Into()
    {
        if (model.Dispatch != Dispatch.Timetable)
        {
            return model;
        }

        var plan = new ShiftPlan(model);
        var delays = Enumerable.Range(0, plan.Mixes.Count).Select(m => Of(plan, m)).OfType<double>().ToList();
        var late = delays.Count > 0 ? delays.MinBy(Math.Abs) : 0;
        if (Math.Abs(late) < Least)
        {
            return model;
        }

        known.Facts.Add(new OnwardFact(FactKind.TimetableLate, null, FactBasis.Record, new LedgerFigure(late, LedgerUnits.Minutes)));
        return model with { TimetableLate = late };
    }

    private double? Of(ShiftPlan plan, int mix)
    {
        var (sent, late) = (0.0, new List<double>());
        foreach (var load in loads.Loads.Where(load => load.Counts && plan.MixOfGroup[load.Carried.Group] == mix))
        {
            var leave = plan.LeaveAt(mix, sent, model.Trucks[load.Carried.Group].Out.Expected);
            sent += load.Load.Net;
            if (double.IsFinite(leave) && IsHeldBack(load))
            {
                late.Add(known.Clock.Of(load.Left) - leave);
            }
        }

        var last = late.TakeLast(CourseLedgers.MeanOf).ToList();
        return last.Count < CourseLedgers.MeanOf ? null
            : last.TrueForAll(one => one > 0) ? last.Min()
            : last.TrueForAll(one => one < 0) ? last.Max()
            : 0;
    }

    // Its truck was back and could have been loaded sooner: a load that waited for its truck says nothing about the timetable.
    private bool IsHeldBack(TimedLoad load)
    {
        var trucks = model.Trucks[load.Carried.Group];
        return !before.TryGetValue(load, out var earlier) || (earlier.Emptied is { } empty && empty.AddSeconds(trucks.Back.Expected + trucks.Loading.Expected + Least) < load.Left);
    }

    private static Dictionary<TimedLoad, TimedLoad> Before(RecordedLoads loads)
    {
        var (before, last) = (new Dictionary<TimedLoad, TimedLoad>(ReferenceEqualityComparer.Instance), new Dictionary<(int Group, int Truck), TimedLoad>());
        foreach (var load in loads.Loads.OrderBy(load => load.Left))
        {
            var key = (load.Carried.Group, load.Carried.Truck);
            if (last.TryGetValue(key, out var earlier))
            {
                before[load] = earlier;
            }

            last[key] = load;
        }

        return before;
    }
}
