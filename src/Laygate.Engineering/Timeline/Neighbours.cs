using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Timeline;

/// <summary>
/// Which strips lie side by side. Two strips of one course that share stations cannot lie upon each other, so they lie beside
/// each other, with a joint between neighbours.
/// </summary>
internal static class Neighbours
{
    /// <summary>Whether a joint lies between two strips: longitudinal, of a course of both, named by both or by one whose only neighbour the other is.</summary>
    public static bool AreJoined(QuantityContext context, Joint joint, LaidStrip one, LaidStrip other)
    {
        if (!LieSideBySide(one, other) || joint.Kind is JointKind.Transverse || !HasCourse(joint, one) || !HasCourse(joint, other))
        {
            return false;
        }

        var (first, second) = (one.Run.Id, other.Run.Id);
        if (joint.Beside is { } beside)
        {
            return (PlanView.Same(joint.Run, first) && PlanView.Same(beside, second)) || (PlanView.Same(joint.Run, second) && PlanView.Same(beside, first));
        }

        var named = PlanView.Same(joint.Run, first) ? one : PlanView.Same(joint.Run, second) ? other : null;
        return named is not null && CountBeside(context, named) == 1;
    }

    /// <summary>Whether a joint may lie at a strip: it names the run, or names one run only, of which this may be the neighbour.</summary>
    public static bool Names(Joint joint, LaidStrip strip) =>
        joint.Beside is null || PlanView.Same(joint.Run, strip.Run.Id) || PlanView.Same(joint.Beside, strip.Run.Id);

    /// <summary>The two strips that a joint lies between, in the order in which they are laid; null where the plan has not both, or does not say which.</summary>
    public static (LaidStrip First, LaidStrip Second)? Of(QuantityContext context, ShiftTimeline timeline, Joint joint)
    {
        var (strips, named) = (timeline.Strips, timeline.Named(joint));
        for (var i = 0; i < strips.Count; i++)
        {
            // One of the two is named: beside a named strip lies any, beside another only a named one.
            var others = named.Contains(i) ? Enumerable.Range(i + 1, strips.Count - i - 1) : named.Where(j => j > i);
            foreach (var j in others.Where(j => AreJoined(context, joint, strips[i], strips[j])))
            {
                return (strips[i], strips[j]);
            }
        }

        return null;
    }

    /// <summary>Shortest and longest time at one point between two strips, s.</summary>
    public static (double Shortest, double Longest) Delay(LaidStrip first, LaidStrip second)
    {
        var (low, high) = first.Shared(second)!.Value;
        double[] delays = [.. first.Stations.Concat(second.Stations).Append(low).Append(high)
            .Where(station => station >= low && station <= high)
            .Select(station => Math.Abs(second.AtStation(station) - first.AtStation(station)))];
        return (delays.Min(), delays.Max());
    }

    /// <summary>Whether two strips of one course share stations.</summary>
    public static bool LieSideBySide(LaidStrip one, LaidStrip other) =>
        !ReferenceEquals(one.Run, other.Run) && one.Shared(other) is not null && one.Courses.Any(course => other.Courses.Contains(course));

    /// <summary>Runs laid before one that share stations and a course with it.</summary>
    public static IEnumerable<Run> Before(QuantityContext context, Run run) =>
        LyingBeside(context, run, StripOrder.InOrder(context.Plan.Runs).TakeWhile(other => !ReferenceEquals(other, run)));

    /// <summary>Runs that share stations and a course with one, laid before it or after.</summary>
    public static IEnumerable<Run> Beside(QuantityContext context, Run run) =>
        LyingBeside(context, run, context.Plan.Runs.Where(other => !ReferenceEquals(other, run)));

    private static IEnumerable<Run> LyingBeside(QuantityContext context, Run run, IEnumerable<Run> others)
    {
        var courses = context.Plan.Courses.Where(course => PlanView.Lays(run, course)).ToList();
        return others.Where(other => Shares(other, run) && courses.Exists(course => PlanView.Lays(other, course)));
    }

    /// <summary>Whether an edge lies against asphalt.</summary>
    public static bool IsAgainstAsphalt(EdgeKind? edge) => edge is EdgeKind.ExistingCold or EdgeKind.Hot or EdgeKind.Cut;

    /// <summary>How many sides of a run lie against asphalt that no run of the plan lays.</summary>
    public static int OlderSides(QuantityContext context, Run run) =>
        Math.Max(0, new[] { run.LeftEdge, run.RightEdge }.Count(IsAgainstAsphalt) - Beside(context, run).Count());

    /// <summary>
    /// A run laid before one, beside it, to which no joint is stated; null where there are joints enough. So many strips side by
    /// side need one joint less; a joint that names one run only counts for any of them, once their sides against older asphalt have theirs.
    /// </summary>
    public static Run? Without(QuantityContext context, Run run)
    {
        var before = Before(context, run).ToList();
        var all = before.Append(run).ToList();
        var ids = all.Select(one => one.Id).ToHashSet(StringComparer.Ordinal);
        var joints = context.Plan.Joints.Where(joint => joint.Kind is not JointKind.Transverse && joint.Run is { } named && ids.Contains(named)).ToList();
        var between = joints.Count(joint => joint.Beside is { } beside && ids.Contains(beside));
        var open = joints.Count(joint => joint.Beside is null) - all.Sum(one => OlderSides(context, one));
        return between + Math.Max(0, open) < before.Count
            ? before.FindLast(other => !joints.Exists(joint => PlanView.Same(joint.Run, other.Id) || PlanView.Same(joint.Beside, other.Id))) ?? before[^1]
            : null;
    }

    private static bool HasCourse(Joint joint, LaidStrip strip) =>
        joint.Course is null || strip.Courses.Any(course => PlanView.Same(course.Id, joint.Course));

    // Counted on the runs, not on the strips, which may not all be placed yet.
    private static int CountBeside(QuantityContext context, LaidStrip strip) =>
        context.Plan.Runs.Count(run => !ReferenceEquals(run, strip.Run) && strip.Courses.Any(course => PlanView.Lays(run, course)) && Shares(run, strip.Run));

    /// <summary>Whether two runs share more than a station.</summary>
    internal static bool Shares(Run one, Run other) => RunProfile.Stretch(one) is { } a && RunProfile.Stretch(other) is { } b
        && Math.Min(a.High, b.High) - Math.Max(a.Low, b.Low) > LaidStrip.Touching;
}
