using Laygate.Model.Plans;
using PlanSupply = Laygate.Model.Plans.Supply;

namespace Laygate.Engineering.PlanViews;

/// <summary>
/// What of a plan belongs to its shift. A course without a run, in a plan whose runs lay others, is laid in another shift: it takes no mix, no machine and
/// no time of this one. Where it lies below what is laid, it is what is laid upon. Found once, before anything is computed, so that no quantity asks it again.
/// </summary>
/// <param name="Plan">The plan with nothing but what belongs to its shift.</param>
/// <param name="Below">Courses of other shifts that lie below what is laid, from bottom to top.</param>
/// <param name="Elsewhere">All courses of other shifts, in plan order.</param>
/// <param name="Stated">The plan as it is stated.</param>
internal sealed record ShiftScope(Plan Plan, IReadOnlyList<Course> Below, IReadOnlyList<Course> Elsewhere, Plan Stated)
{
    /// <summary>What lay there before the first of all courses.</summary>
    public Existing? Ground => Stated.Existing;

    /// <summary>The same shift with a changed plan of it.</summary>
    public ShiftScope With(Plan changed) => Elsewhere.Count == 0 ? new ShiftScope(changed, [], [], changed) : this with { Plan = changed };

    /// <summary>Kind of the mix of a course of any shift.</summary>
    public MixKind? MixKindOf(Course course) => Stated.Mixes.FirstOrDefault(mix => PlanView.Same(mix.Id, course.Mix))?.Kind;

    /// <summary>The scope of a plan as it is stated.</summary>
    public static ShiftScope Of(Plan plan)
    {
        var laid = LaidBy(plan);
        if (laid.Count == 0 || laid.Count == plan.Courses.Count)
        {
            return new ShiftScope(plan, [], [], plan);
        }

        var below = plan.Courses.TakeWhile(course => !laid.Contains(course)).ToList();
        return new ShiftScope(Without(plan, laid, below.Count > 0), below, [.. plan.Courses.Where(course => !laid.Contains(course))], plan);
    }

    // A course that is laid hot on another, or on which another is laid hot, goes with it: neither can wait for another shift.
    private static HashSet<Course> LaidBy(Plan plan)
    {
        HashSet<Course> laid = [.. plan.Courses.Where(course => plan.Runs.Any(run => PlanView.Lays(run, course)))];
        if (laid.Count == 0)
        {
            return laid;
        }

        var before = 0;
        while (laid.Count > before)
        {
            before = laid.Count;
            foreach (var upper in plan.Courses.Where(course => course.Laid is Laying.HotOnHot or Laying.HotOnWarm))
            {
                if (plan.Courses.FirstOrDefault(course => PlanView.Same(course.Id, upper.On)) is { } lower && (laid.Contains(upper) || laid.Contains(lower)))
                {
                    laid.UnionWith([lower, upper]);
                }
            }
        }

        return laid;
    }

    private static Plan Without(Plan plan, HashSet<Course> laid, bool isOnCourse)
    {
        var courses = plan.Courses.Where(laid.Contains).ToList();
        var gone = plan.Courses.Where(course => !laid.Contains(course)).Select(course => course.Id).ToHashSet(StringComparer.Ordinal);
        // A mix that no course takes at all stays: nobody says that it belongs to another shift.
        var mixes = plan.Courses.Where(course => !laid.Contains(course)).Select(course => course.Mix)
            .Except(courses.Select(course => course.Mix).Concat(plan.Runs.SelectMany(run => run.HandLaid).Select(area => area.Mix).OfType<string>()), StringComparer.Ordinal)
            .ToHashSet(StringComparer.Ordinal);
        bool Stays(string? course) => course is null || !gone.Contains(course);
        return plan with
        {
            Courses = courses,
            Mixes = [.. plan.Mixes.Where(mix => !mixes.Contains(mix.Id))],
            Runs = [.. plan.Runs.Select(run => run with { Thickness = [.. run.Thickness.Where(at => Stays(at.Course))] })],
            Existing = isOnCourse ? OnCourse(plan.Existing) : plan.Existing,
            Supply = plan.Supply is { } supply ? SupplyOf(supply, mixes) : null,
            Pavers = [.. PaversOf(plan, gone)],
            BondCoats = [.. plan.BondCoats.Where(coat => Stays(coat.Below))],
            Joints = [.. plan.Joints.Where(joint => Stays(joint.Course))],
            Tests = [.. plan.Tests.Where(test => Stays(test.Course) && (test.Reached?.Mix is not { } mix || !mixes.Contains(mix)))],
            Contingencies = [.. plan.Contingencies.Select(action => Stays(action.GoesOnWith) ? action : action with { GoesOnWith = null })],
        };
    }

    // What lay there is covered: what is laid upon now is a course of this job. Milling is done, and a deck stays a deck under it.
    private static Existing OnCourse(Existing? ground) => (ground ?? new Existing()) with
    {
        Surface = ground?.Surface == ExistingSurface.BridgeDeck ? ExistingSurface.BridgeDeck : ExistingSurface.NewAsphalt,
        Milling = null,
    };

    private static PlanSupply SupplyOf(PlanSupply supply, HashSet<string> mixes)
    {
        var plants = supply.Plants.Where(plant => plant.Mixes.Count == 0 || !plant.Mixes.All(mixes.Contains))
            .Select(plant => plant with { Mixes = [.. plant.Mixes.Where(mix => !mixes.Contains(mix))] }).ToList();
        return supply with { Plants = plants, Trucks = [.. supply.Trucks.Where(trucks => trucks.Mix is null || !mixes.Contains(trucks.Mix))] };
    }

    private static IEnumerable<Paver> PaversOf(Plan plan, HashSet<string> gone) =>
        from paver in plan.Pavers
        let named = plan.Runs.Any(run => PlanView.Same(run.Paver, paver.Id))
        where named || paver.Courses.Count == 0 || !paver.Courses.All(gone.Contains)
        select paver with
        {
            Courses = [.. paver.Courses.Where(course => !gone.Contains(course))],
            Screeds = [.. paver.Screeds.Where(screed => !gone.Contains(screed.Course))],
            Buffers = [.. paver.Buffers.Where(buffer => !gone.Contains(buffer.Course))],
        };
}
