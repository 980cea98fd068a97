using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Timeline;

/// <summary>
/// Gives the strips of a plan their times. The strips of one train follow each other with the move between; a train that lays
/// against the hot edge of another, or upon its warm course, follows it at the stated time; one that lays upon the cold course
/// of another begins when that is complete; any other begins with the shift.
/// </summary>
internal sealed class TimelineReader(Calculation calculation)
{
    /// <summary>Longest time that is worked out, s.</summary>
    private const double Longest = 36_500 * 86400.0;

    private readonly PlanView view = PlanView.Of(calculation.Context);
    private readonly List<LaidStrip> placed = [];
    private readonly Dictionary<int, IReadOnlyList<TrainStop>> stops = [];
    private readonly Dictionary<int, Queue<TrainStop>> ahead = [];

    /// <summary>Reads the timeline.</summary>
    /// <returns>The timeline; null where the calculation says why there is none.</returns>
    public ShiftTimeline? Read()
    {
        var strips = new StripOrder(calculation).Strips();
        foreach (var paver in strips.SelectMany(strip => strip.Pavers).Distinct())
        {
            PaverQuantities.SpeedOf(calculation, paver);
            if (paver.Availability is { } share)
            {
                calculation.Stated("a", share, $"paver:{paver.Id}", "availability");
            }
        }

        if (calculation.Stopped is not null)
        {
            return null;
        }

        foreach (var strip in strips)
        {
            if (Place(strip) is not { } laid)
            {
                calculation.BlockOutside("shift.time_needed");
                return null;
            }

            placed.Add(laid);
        }

        return calculation.Stopped is null ? new ShiftTimeline(view, placed, stops) : null;
    }

    private LaidStrip? Place(LaidStrip strip)
    {
        var before = placed.FindLast(other => other.Train == strip.Train);
        var move = before is null ? 0 : new PaverMove(calculation).Between(before, strip);
        var start = Begin(strip, (before?.Ends ?? 0) + move, before is null);
        var speed = Math.Min(Average(strip), start.Leader?.Speed ?? double.PositiveInfinity); // Nobody overtakes.
        return speed > 0 && double.IsFinite(start.At) && strip.Length / speed < Longest && start.At < Longest
            ? strip with { Speed = speed, Move = move, IsPlaced = start.IsPlaced, Legs = Legs(strip, start.At, speed, start.Leader?.Train) }
            : null;
    }

    private (double At, bool IsPlaced, LaidStrip? Leader) Begin(LaidStrip strip, double free, bool isFirst)
    {
        if (strip.Run.StartsAfter is { } stated)
        {
            return (Math.Max(free, calculation.Stated("t0", stated, $"run:{strip.Run.Id}", "starts_after")), true, null);
        }

        if (Leader(strip) is { } leader)
        {
            var station = strip.Shared(leader.Strip)!.Value.Low;
            var way = Math.Abs(station - strip.First) / Math.Min(Average(strip), leader.Strip.Speed);
            return (Math.Max(free, leader.Strip.AtStation(station) + leader.Delay - way), true, leader.Strip);
        }

        var below = placed.Where(other => other.Train != strip.Train && IsBelow(other, strip)).Select(other => other.Ends).DefaultIfEmpty(0).Max();
        return (Math.Max(free, below), !isFirst || below > 0 || strip.Train == 0, null);
    }

    private static double Average(LaidStrip strip) => strip.Pavers.Min(paver => paver.Speed!.Si * (paver.Availability?.Si ?? 1));

    /// <summary>The strip of another train that this one follows at a stated time.</summary>
    private (LaidStrip Strip, double Delay)? Leader(LaidStrip strip)
    {
        var others = placed.FindAll(other => other.Train != strip.Train);
        if (others.Count == 0)
        {
            return null;
        }

        foreach (var joint in calculation.Context.Plan.Joints.Where(joint => joint.Delay is not null && Neighbours.Names(joint, strip)))
        {
            if (others.Find(other => Neighbours.AreJoined(calculation.Context, joint, other, strip)) is { } beside)
            {
                return (beside, calculation.Stated("Δt", joint.Delay, $"joint:{joint.Id}", "delay"));
            }
        }

        var lowest = strip.Courses[0];
        return lowest is { Laid: Laying.HotOnWarm } and ({ Delay: not null } or { Distance: not null })
            && others.Find(other => IsBelow(other, strip)) is { } lower
                ? (lower, PairQuantities.StatedDelayOf(calculation, lowest))
                : null;
    }

    private bool IsBelow(LaidStrip lower, LaidStrip upper) =>
        Rank(lower.Pass) < Rank(upper.Pass) && lower.Shared(upper) is not null;

    // A planned stop that falls into a move, or before the first metre, is made when the train lays again.
    private List<StripLeg> Legs(LaidStrip strip, double begins, double speed, int? leader)
    {
        if (!stops.ContainsKey(strip.Train))
        {
            stops[strip.Train] = [.. StopsOf(strip, begins, leader).OrderBy(stop => stop.At)];
            ahead[strip.Train] = new Queue<TrainStop>(stops[strip.Train]);
        }

        var (now, along, legs, queue) = (begins, 0.0, new List<StripLeg>(), ahead[strip.Train]);
        while (queue.TryPeek(out var stop) && stop.At < now + ((strip.Length - along) / speed))
        {
            var at = Math.Max(now, stop.At);
            var to = along + ((at - now) * speed);
            legs.Add(new StripLeg(along, to, now, at));
            (along, now) = (to, at + queue.Dequeue().Length);
        }

        legs.Add(new StripLeg(along, strip.Length, now, now + ((strip.Length - along) / speed)));
        return legs;
    }

    /// <summary>Planned stops of a train; one that follows another closely stops with it.</summary>
    private IEnumerable<TrainStop> StopsOf(LaidStrip strip, double begins, int? leader) =>
    [
        .. strip.Pavers.SelectMany(paver => paver.Stops).Where(stop => stop is { After: not null, Length: not null })
            .Select(stop => new TrainStop(begins + stop.After!.Si, stop.Length!.Si)),
        .. leader is { } train ? stops[train].Where(stop => stop.At >= begins) : [],
    ];

    private int Rank(PavingPass pass) => view.Passes.TakeWhile(other => !other.Courses.Contains(pass.Courses[0])).Count();
}
