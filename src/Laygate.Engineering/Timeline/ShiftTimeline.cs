using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Timeline;

/// <summary>
/// When each metre of each course is laid, by which train, in which run: order of the runs, speed, availability, planned stops
/// and moves, nothing by chance. Everything that asks when something is laid asks this.
/// </summary>
internal sealed class ShiftTimeline
{
    private readonly PlanView view;

    private readonly IReadOnlyDictionary<int, IReadOnlyList<TrainStop>> stops;

    private readonly Lazy<ILookup<string, int>> places;

    internal ShiftTimeline(PlanView view, IReadOnlyList<LaidStrip> strips, IReadOnlyDictionary<int, IReadOnlyList<TrainStop>> stops) =>
        (this.view, Strips, this.stops, places) = (view, strips, stops, new(() => strips.Select((strip, place) => (strip.Run.Id, place)).ToLookup(item => item.Id, item => item.place, StringComparer.Ordinal)));

    /// <summary>Strips in the order in which they are begun; at least one.</summary>
    public IReadOnlyList<LaidStrip> Strips { get; }

    /// <summary>Strips of each train in order.</summary>
    public IReadOnlyList<IReadOnlyList<LaidStrip>> Trains => [.. Strips.GroupBy(strip => strip.Train).OrderBy(train => train.Key).Select(train => train.ToList())];

    /// <summary>Places in <see cref="Strips"/> of the runs that a joint names, ascending.</summary>
    public IReadOnlyList<int> Named(Joint joint) =>
        [.. new[] { joint.Run, joint.Beside }.OfType<string>().Distinct(StringComparer.Ordinal).SelectMany(run => places.Value[run]).Order()];

    /// <summary>Planned stops of a train in order.</summary>
    public IReadOnlyList<TrainStop> StopsOf(int train) => stops[train];

    /// <summary>When the last metre is laid, s after the start of laying.</summary>
    public double Finish => Strips.Max(strip => strip.Ends);

    /// <summary>Length of all strips, m; courses laid together count once.</summary>
    public double Length => Strips.Sum(strip => strip.Length);

    /// <summary>When the last metre is laid; null where the plan states no start.</summary>
    public DateTimeOffset? LastMetre => At(Finish);

    /// <summary>The timeline of a context; null where the plan does not say enough.</summary>
    public static ShiftTimeline? Of(QuantityContext context) => context.Service(c => new Kept(new TimelineReader(new Calculation(c)).Read())).Timeline;

    /// <summary>A moment; null without a start of the shift, or where it would leave the calendar.</summary>
    /// <param name="seconds">Seconds after the start of laying.</param>
    public DateTimeOffset? At(double seconds) =>
        view.Clock.Start is { Year: < 9000 } start && Math.Abs(seconds) <= TimeSpan.FromDays(36_500).TotalSeconds ? start.AddSeconds(seconds) : null;

    /// <summary>Strips in which a course is laid, in order.</summary>
    public IEnumerable<LaidStrip> Of(Course course) => Strips.Where(strip => strip.Courses.Contains(course));

    /// <summary>Courses that several trains lay at one time; none where there is only one train.</summary>
    public IEnumerable<IReadOnlyList<Course>> AtOneTime() => Trains.Count < 2 ? [] : Strips
        .Select(strip => Strips.Where(other => other.Begins <= strip.Begins && strip.Begins < other.Ends).SelectMany(other => other.Courses).Distinct().ToList())
        .Where(courses => courses.Count > 1);

    /// <summary>When a share of the whole length is laid, s after the start of laying.</summary>
    /// <param name="share">Share, 0 to 1.</param>
    public double When(double share)
    {
        var (low, high) = (Strips.Min(strip => strip.Begins), Finish);
        for (var i = 0; i < 60; i++)
        {
            var middle = (low + high) / 2;
            (low, high) = LaidBy(middle) < share * Length ? (middle, high) : (low, middle);
        }

        return high;
    }

    /// <summary>Length laid by a moment, m.</summary>
    /// <param name="seconds">Seconds after the start of laying.</param>
    public double LaidBy(double seconds) => Strips.Sum(strip => strip.Legs.Sum(leg =>
        leg.Ends > leg.Begins ? (leg.To - leg.From) * Math.Clamp((seconds - leg.Begins) / (leg.Ends - leg.Begins), 0, 1) : seconds >= leg.Ends ? leg.To - leg.From : 0));

    private sealed record Kept(ShiftTimeline? Timeline);
}
