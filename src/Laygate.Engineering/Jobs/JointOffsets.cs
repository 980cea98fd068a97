using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Quantities;
using Laygate.Engineering.Timeline;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Jobs;

/// <summary>How far a longitudinal joint can lie from the one of the course below, by the widths of the lanes of both.</summary>
internal static class JointOffsets
{
    /// <summary>Whether the offset is stated and the lanes of both courses tell how far it can be.</summary>
    public static Answer IsCompared(QuantityContext context, Element element) => Answers.Follows(
        element.Subject is Joint { OffsetBelow: not null } joint && Widths(context.Job!.Whole, joint) is not null, new InputReference(element.Address, "offset_below"));

    /// <summary>
    /// The largest offset that the widths allow. One course lies within the edges of the other, so that its edge is shifted between nothing and what
    /// both differ in width; which lane lies on which side is not known, so the largest of all counts.
    /// </summary>
    public static Answer Largest(QuantityContext context, Element element)
    {
        var calculation = new Calculation(context);
        if (Widths(context.Job!.Whole, (Joint)element.Subject!) is not var (upper, lower))
        {
            return Answer.None(AbsenceReason.NotComputable, Note.Of(NoteIds.LaidCold));
        }

        foreach (var run in upper.Concat(lower))
        {
            calculation.Stated("W", run.Width, $"run:{run.Id}", "width");
        }

        double[] shifts = [0, lower.Sum(run => run.Width!.Si) - upper.Sum(run => run.Width!.Si)];
        var largest = (from u in upper from l in lower from s in shifts select Math.Abs(s + u.Width!.Si - l.Width!.Si)).Max();
        return calculation.Result("job-joint.offset_largest", "d", "d = max |s + Wu − Wl|", largest);
    }

    // Two lanes of both courses over the stations of the joint, each of one width.
    private static (List<Run> Upper, List<Run> Lower)? Widths(Plan whole, Joint joint)
    {
        if (joint.Kind is JointKind.Transverse || whole.Courses.FirstOrDefault(course => PlanView.Same(course.Id, joint.Course)) is not { } course
            || whole.Courses.TakeWhile(other => !ReferenceEquals(other, course)).LastOrDefault() is not { } below
            || whole.Runs.FirstOrDefault(run => PlanView.Same(run.Id, joint.Run)) is not { } own || PlanView.Lays(own, below))
        {
            return null;
        }

        List<Run> Lanes(Course laid) => [.. whole.Runs.Where(run => PlanView.Lays(run, laid) && (ReferenceEquals(run, own) || Neighbours.Shares(run, own)))];
        var (upper, lower) = (Lanes(course), Lanes(below));
        return upper.Count == 2 && lower.Count == 2 && upper.Concat(lower).All(run => run.Width is not null) ? (upper, lower) : null;
    }
}
