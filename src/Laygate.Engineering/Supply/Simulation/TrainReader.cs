using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Quantities;
using Laygate.Engineering.Timeline;

namespace Laygate.Engineering.Supply.Simulation;

/// <summary>
/// Finds what can be simulated: one train; several without a feeder, each with trucks of its own (see <see cref="TruckDeal"/>); two with one mix in
/// echelon. A feeder that would serve pavers at different places is refused with its reason.
/// </summary>
internal static class TrainReader
{
    /// <summary>The trains of a timeline; empty where the calculation says why they cannot be simulated.</summary>
    public static IReadOnlyList<PavingTrain> Of(ShiftTimeline timeline, Calculation calculation)
    {
        var view = PlanView.Of(calculation.Context);
        var trains = timeline.Trains;
        if (trains.Count == 2 && Echelon(view, timeline, trains[0], trains[1]) is { } echelon)
        {
            trains = [trains[0]];
            return NoSharedFeeder(calculation, 2) ? [echelon] : [];
        }

        var singles = trains.Select(strips => new PavingTrain(strips, [], Lanes(view, strips), timeline.StopsOf(strips[0].Train))).ToList();
        return singles.Count < 2 || NoSharedFeeder(calculation, singles.Count) ? singles : [];
    }

    private static bool NoSharedFeeder(Calculation calculation, int trains)
    {
        if (trains > 1 && calculation.Context.Plan.Supply?.Feeder is { } feeder)
        {
            calculation.Block(AbsenceReason.NotComputable, Note.Of(SimulationNotes.SharedFeeder, ("feeder", feeder.Id)));
            return false;
        }

        return true;
    }

    private static List<TrainLane> Lanes(PlanView view, IReadOnlyList<LaidStrip> strips) =>
    [
        .. strips.SelectMany(strip => strip.Courses.Select(course => (strip.Train, course)))
            .DistinctBy(lane => lane.course)
            .OrderBy(lane => strips.TakeWhile(strip => !strip.Courses.Contains(lane.course)).Count())
            .Select(lane => new TrainLane(lane.Train, lane.course, view.PaverOf(lane.course, strips.First(strip => strip.Courses.Contains(lane.course)).Run)!)),
    ];

    // Strip by strip side by side with the same single mix, one speed, and the second begun before the first has ended.
    private static PavingTrain? Echelon(PlanView view, ShiftTimeline timeline, IReadOnlyList<LaidStrip> one, IReadOnlyList<LaidStrip> other)
    {
        var (first, second) = one[0].Begins <= other[0].Begins ? (one, other) : (other, one);
        if (first.Count != second.Count || !first.Concat(second).All(strip => strip.Courses.Count == 1 && strip.Pavers.Count == 1 && Same(strip.Speed, first[0].Speed)))
        {
            return null;
        }

        var isBeside = first.Zip(second).All(pair => Neighbours.LieSideBySide(pair.First, pair.Second) && pair.Second.Begins < pair.First.Ends
            && Same(pair.Second.Begins - pair.First.Begins, second[0].Begins - first[0].Begins));
        var lanes = Lanes(view, first).Concat(Lanes(view, second)).ToList();
        return isBeside && lanes.Count == 2 && PlanView.Same(lanes[0].Course.Mix, lanes[1].Course.Mix)
            ? new PavingTrain(first, second, lanes, [.. timeline.StopsOf(first[0].Train).Union(timeline.StopsOf(second[0].Train)).OrderBy(stop => stop.At)])
            : null;
    }

    private static bool Same(double one, double other) => Math.Abs(one - other) <= 1e-6 * Math.Max(1, Math.Abs(one));
}
