using Laygate.Engineering.Formulas;
using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Timeline;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Quantities;

/// <summary>Time between a course laid on a warm one and that one, from the runs of both.</summary>
internal static class CourseTimes
{
    private static readonly Define Course = new(ElementKind.Course);

    public static IEnumerable<QuantityDefinition> All() =>
    [
        Course.Stated<Course>("delay", Shape.Minutes, "delay", "Time between the screed of the course and the one below it, as stated.", course => course.Delay),
        Course.Flag("has_computed_delay", "Whether the delay of a course laid on a warm one is stated and also follows from order, speed and moves of the runs.", IsCompared),
        Course.Number("delay_shortest", Shape.Minutes, "Shortest time at one point between the course and the warm one below it, from the runs of both.", (c, e) =>
            Of(c, e, "course.delay_shortest", delay => delay.Shortest), Method("least")),
        Course.Number("delay_longest", Shape.Minutes, "Longest time at one point between the course and the warm one below it, from the runs of both.", (c, e) =>
            Of(c, e, "course.delay_longest", delay => delay.Longest), Method("greatest")),
    ];

    /// <summary>Shortest and longest time, s; null where it does not follow from the runs.</summary>
    public static (double Shortest, double Longest)? Delay(QuantityContext context, Course upper) =>
        upper.Laid == Laying.HotOnWarm && ShiftTimeline.Of(context) is { } timeline ? Delay(context, timeline, upper) : null;

    private static Answer IsCompared(QuantityContext context, Element element)
    {
        var upper = (Course)element.Subject!;
        var input = new InputReference(element.Address, "delay");
        if (upper is not { Laid: Laying.HotOnWarm, Delay: not null } || context.Plan.Runs.Count == 0)
        {
            return Answers.Follows(flag: false, input);
        }

        var calculation = new Calculation(context);
        return new TimelineReader(calculation).Read() is null ? calculation.Stopped! : Answers.Follows(Delay(context, upper) is not null, input);
    }

    private static (double Shortest, double Longest)? Delay(QuantityContext context, ShiftTimeline timeline, Course upper)
    {
        if (context.Plan.Courses.FirstOrDefault(course => PlanView.Same(course.Id, upper.On)) is not { } lower)
        {
            return null;
        }

        var (below, delays) = (timeline.Of(lower).ToList(), new List<(double Shortest, double Longest)>());
        foreach (var strip in timeline.Of(upper))
        {
            // Strips side by side are laid upon each other in the same order, unless one run has both courses.
            var beside = below.Where(other => other.Shared(strip) is not null).ToList();
            var place = timeline.Of(upper).Where(other => other.Shared(strip) is not null).TakeWhile(other => !ReferenceEquals(other, strip)).Count();
            var under = beside.Find(other => ReferenceEquals(other.Run, strip.Run)) ?? beside.ElementAtOrDefault(place);
            if (under is null || ReferenceEquals(under, strip) || !strip.IsPlaced)
            {
                return null;
            }

            delays.Add(Neighbours.Delay(under, strip));
        }

        return delays.Count == 0 ? null : (delays.Min(delay => delay.Shortest), delays.Max(delay => delay.Longest));
    }

    private static Answer Of(QuantityContext context, Element element, string quantity, Func<(double Shortest, double Longest), double> read)
    {
        var calculation = new Calculation(context);
        var upper = (Course)element.Subject!;
        if (upper.Laid != Laying.HotOnWarm)
        {
            return Answer.None(AbsenceReason.NotComputable, Note.Of(NoteIds.LaidCold));
        }

        var timeline = new TimelineReader(calculation).Read();
        return timeline is null || Delay(context, timeline, upper) is not { } delay
            ? calculation.Result(quantity, "Δt", "Δt = t2 − t1", null)
            : calculation.Result(quantity, "Δt", "Δt = t2 − t1", read(delay));
    }

    private static Method Method(string which) => new(
        $"Δt = {which} of t2(s) − t1(s) over the stations s of both runs", Sources.Definition,
        "both courses in runs of the plan; t from order, speed · availability, planned stops and moves; nothing by chance");
}
