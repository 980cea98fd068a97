using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Quantities;
using Laygate.Model.Measures;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Jobs;

/// <summary>What a course takes in one shift.</summary>
/// <param name="Course">The course.</param>
/// <param name="Mass">Mix that it takes.</param>
/// <param name="Demand">Mix that it takes on average in an hour.</param>
public sealed record CourseOfShift(Course Course, Answer Mass, Answer Demand);

/// <summary>What a job needs to know of one of its shifts: a few answers, kept when all that they were computed from is gone.</summary>
public sealed record JobShift
{
    /// <summary>Id of the shift.</summary>
    public required string Id { get; init; }

    /// <summary>Its plan: what belongs to the shift.</summary>
    public required Plan Plan { get; init; }

    /// <summary>Start of laying; null where its plan does not tell.</summary>
    public DateTimeOffset? Start { get; init; }

    /// <summary>End of laying: of the shift, or the last metre where that comes later; null where its plan does not tell.</summary>
    public DateTimeOffset? End { get; init; }

    /// <summary>Length of the shift.</summary>
    public required Answer Duration { get; init; }

    /// <summary>Time that its runs need.</summary>
    public required Answer Needed { get; init; }

    /// <summary>Time from its last metre until what it has laid may be laid upon; null where no other shift lays upon it.</summary>
    public Answer? Cooled { get; init; }

    /// <summary>When what it has laid is opened to traffic; null where its plan does not tell.</summary>
    public DateTimeOffset? OpensAt { get; init; }

    /// <summary>Time from its last metre until what it has laid bears traffic; null where it lays upon no other shift.</summary>
    public Answer? SoftUntil { get; init; }

    /// <summary>Hours for which what it has laid is to stay closed, as its plan or its specification says; null where neither does.</summary>
    public IMeasure? HoursAsked { get; init; }

    /// <summary>What its courses take, from bottom to top.</summary>
    public required IReadOnlyList<CourseOfShift> Courses { get; init; }

    /// <summary>Pavers that lay its runs, by their ids.</summary>
    public required IReadOnlyList<string> Pavers { get; init; }

    /// <summary>The shift from its plan.</summary>
    /// <param name="id">Id of the shift.</param>
    /// <param name="context">Its plan, under the assumptions of the check.</param>
    /// <param name="whole">What the shifts of the job have in common.</param>
    public static JobShift Of(string id, QuantityContext context, Plan whole)
    {
        var view = PlanView.Of(context);
        var (shift, opening) = (context.Elements.Find("shift")!, context.Elements.Find("opening")!);
        return new JobShift
        {
            Id = id,
            Plan = context.Plan,
            Start = view.Clock.Start,
            End = LayingEnd.Of(context),
            Duration = context.Get("shift.duration", shift),
            Needed = context.Get("shift.time_needed", shift),
            OpensAt = context.Get("opening.at", opening).Value is MomentValue opens ? opens.At : null,
            SoftUntil = JobView.LaysUpon(whole, context.Plan) ? context.Get("opening.soft_until", opening) : null,
            HoursAsked = context.Plan.Opening?.After,
            Cooled = JobView.IsLaidUpon(whole, context.Plan) ? context.Get("existing.cooled_for_overlay", context.Elements.Find("existing")!) : null,
            Courses = [.. context.Elements.Of(ElementKind.Course).Select(course => new CourseOfShift(
                (Course)course.Subject!, context.Get("course.tonnage_computed", course), context.Get("course.demand_average", course)))],
            Pavers = [.. context.Plan.Runs.SelectMany(run => context.Plan.Courses.Where(course => PlanView.Lays(run, course)).Select(course => view.PaverOf(course, run)?.Id)).OfType<string>().Distinct(StringComparer.Ordinal)],
        };
    }

    /// <summary>Whether it lays at a time at which another one does.</summary>
    internal bool IsAlongside(JobShift other) => Start < other.End && other.Start < End;
}
