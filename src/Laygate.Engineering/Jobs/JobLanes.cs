using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Quantities;
using Laygate.Engineering.Timeline;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Jobs;

/// <summary>Strips of one course that lie side by side and are laid in different shifts.</summary>
internal static class JobLanes
{
    /// <summary>Whether a run is laid beside one that an earlier shift has laid.</summary>
    public static Answer LiesBeside(QuantityContext context, Element element) =>
        Answers.Follows(Earlier(context.Job!, (Run)element.Subject!).Any(), new InputReference(element.Address, "from"));

    /// <summary>Whether a joint to each such run is stated.</summary>
    public static Answer Joint(QuantityContext context, Element element)
    {
        var run = (Run)element.Subject!;
        var input = new InputReference("plan", "joints");
        return Earlier(context.Job!, run).FirstOrDefault(other => !context.Plan.Joints.Any(joint => IsBetween(joint, run, other))) is { } lacking
            ? new() { Value = new PresenceValue(PresenceLevel.Absent, []), Input = input, Note = Note.Of(NoteIds.SideBySide, ("run", run.Id), ("other", lacking.Id)) }
            : new() { Value = new PresenceValue(PresenceLevel.Stated, []), Input = input };
    }

    /// <summary>The runs of one course beside a run that an earlier shift has laid.</summary>
    internal static IEnumerable<Run> Earlier(JobView job, Run run) => job.Of(run).FirstOrDefault() is not { } own ? [] : job.Whole.Runs.Where(other =>
        !ReferenceEquals(other, run) && Neighbours.Shares(other, run) && job.Whole.Courses.Any(course => PlanView.Lays(run, course) && PlanView.Lays(other, course))
        && job.Of(other).FirstOrDefault() is { } shift && !ReferenceEquals(shift, own) && shift.Start < own.Start);

    // A joint that names one run only lies between it and any that is beside it.
    private static bool IsBetween(Joint joint, Run one, Run other) => joint.Kind is not JointKind.Transverse
        && (Names(joint, one.Id, other.Id) || Names(joint, other.Id, one.Id));

    private static bool Names(Joint joint, string run, string beside) => PlanView.Same(joint.Run, run) && (joint.Beside is null || PlanView.Same(joint.Beside, beside));
}
