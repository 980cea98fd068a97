using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Quantities;
using Laygate.Engineering.Timeline;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Jobs;

/// <summary>Two shifts of a job, the one that begins earlier first.</summary>
/// <param name="Earlier">The earlier.</param>
/// <param name="Later">The later.</param>
internal sealed record Interval(JobShift Earlier, JobShift Later);

/// <summary>A job of several shifts: what its shifts have in common, and what is known of each.</summary>
/// <param name="Whole">What they have in common, as a plan of no shift with all runs.</param>
/// <param name="Shifts">The shifts as the job lists them.</param>
/// <param name="Lots">Its lots of acceptance.</param>
public sealed record JobView(Plan Whole, IReadOnlyList<JobShift> Shifts, IReadOnlyList<Lot> Lots)
{
    private readonly ILookup<string, JobShift> byRun = (
        from shift in Shifts
        from run in shift.Plan.Runs
        select (run.Id, shift)).ToLookup(one => one.Id, one => one.shift, StringComparer.Ordinal);

    /// <summary>Elements of the job: itself, its shifts, what lies between them, its courses, runs and plants.</summary>
    internal IEnumerable<Element> Elements =>
    [
        new Element(ElementKind.Job, string.Empty, this),
        .. Shifts.Select(shift => new Element(ElementKind.JobShift, shift.Id, shift)),
        .. Intervals.Select(pair => new Element(ElementKind.Interval, $"{pair.Earlier.Id}+{pair.Later.Id}", pair)),
        .. Whole.Courses.Select(course => new Element(ElementKind.JobCourse, course.Id, course)),
        .. Whole.Runs.Select(run => new Element(ElementKind.JobRun, run.Id, run)),
        .. (Whole.Supply?.Plants ?? []).Select(plant => new Element(ElementKind.JobPlant, plant.Id, plant)),
        .. Whole.Joints.Select(joint => new Element(ElementKind.JobJoint, joint.Id, joint)),
        .. LotWays.Select(way => new Element(ElementKind.JobLot, way.Lot.Id, way)),
    ];

    /// <summary>How its lots go over its shifts, as the job lists them.</summary>
    public IReadOnlyList<LotWay> LotWays => field ??= LotWay.Of(this);

    /// <summary>The shifts in the order in which they begin; where a moment is not known the order of the job counts.</summary>
    internal IReadOnlyList<JobShift> InOrder => Shifts.All(shift => shift.Start is not null) ? [.. Shifts.OrderBy(shift => shift.Start)] : Shifts;

    /// <summary>Shifts that follow each other, and shifts that lay at the same time.</summary>
    internal IReadOnlyList<Interval> Intervals
    {
        get
        {
            var ordered = InOrder;
            return
            [
                .. from one in Enumerable.Range(0, ordered.Count)
                   from other in Enumerable.Range(one + 1, ordered.Count - one - 1)
                   where other == one + 1 || ordered[one].IsAlongside(ordered[other])
                   select new Interval(ordered[one], ordered[other]),
            ];
        }
    }

    /// <summary>Shifts that lay a run.</summary>
    internal IEnumerable<JobShift> Of(Run run) => byRun[run.Id];

    /// <summary>Whether another shift lays upon what a shift lays.</summary>
    /// <param name="whole">What the shifts have in common.</param>
    /// <param name="plan">The plan of a shift.</param>
    public static bool IsLaidUpon(Plan whole, Plan plan)
    {
        var own = plan.Runs.Select(run => run.Id).ToHashSet(StringComparer.Ordinal);
        return whole.Runs.Any(run => !own.Contains(run.Id) && Below(whole, run).Any(lower => own.Contains(lower.Id)));
    }

    /// <summary>Whether a shift lays upon what another one lays.</summary>
    /// <param name="whole">What the shifts have in common.</param>
    /// <param name="plan">The plan of a shift.</param>
    public static bool LaysUpon(Plan whole, Plan plan)
    {
        var own = plan.Runs.Select(run => run.Id).ToHashSet(StringComparer.Ordinal);
        return whole.Runs.Any(run => own.Contains(run.Id) && Below(whole, run).Any(lower => !own.Contains(lower.Id)));
    }

    /// <summary>
    /// The runs on which a run is laid: those of the course below with which it shares stations. Strips side by side are laid upon each other in the same
    /// order where there are as many of both, as in a shift.
    /// </summary>
    /// <param name="whole">What the shifts have in common.</param>
    /// <param name="run">The run.</param>
    internal static IEnumerable<Run> Below(Plan whole, Run run) => whole.Courses.Where(course => PlanView.Lays(run, course)).SelectMany(course =>
    {
        var lower = whole.Courses.TakeWhile(other => !ReferenceEquals(other, course)).LastOrDefault();
        if (lower is null || PlanView.Lays(run, lower))
        {
            return [];
        }

        var under = whole.Runs.Where(other => PlanView.Lays(other, lower) && Neighbours.Shares(other, run)).ToList();
        var beside = whole.Runs.Where(other => PlanView.Lays(other, course) && (ReferenceEquals(other, run) || Neighbours.Shares(other, run))).ToList();
        return under.Count == beside.Count ? [under[beside.IndexOf(run)]] : under;
    });
}
