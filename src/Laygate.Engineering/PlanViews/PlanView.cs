using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;

namespace Laygate.Engineering.PlanViews;

/// <summary>Courses that are laid together as one hot body: one course, or those laid hot-on-hot, from bottom to top.</summary>
/// <param name="Courses">The courses.</param>
internal sealed record PavingPass(IReadOnlyList<Course> Courses)
{
    /// <summary>The uppermost course.</summary>
    public Course Top => Courses[^1];
}

/// <summary>Who lays what: passes, runs and pavers of a plan.</summary>
internal sealed class PlanView
{
    private readonly Plan plan;

    public PlanView(QuantityContext context)
    {
        plan = context.Plan;
        Elements = context.Elements;
        Passes = FindPasses(plan.Courses);
        Clock = new PlanClock(plan);
    }

    /// <summary>Elements of the plan.</summary>
    public PlanElements Elements { get; }

    /// <summary>Passes of the pavers over a point, from bottom to top.</summary>
    public IReadOnlyList<PavingPass> Passes { get; }

    /// <summary>Times of the plan.</summary>
    public PlanClock Clock { get; }

    /// <summary>The view of a context.</summary>
    public static PlanView Of(QuantityContext context) => context.Service(c => new PlanView(c));

    /// <summary>The pass that lays a course.</summary>
    public PavingPass PassOf(Course course) =>
        Passes.FirstOrDefault(pass => pass.Courses.Contains(course)) ?? new PavingPass([course]);

    /// <summary>Runs that lay a course.</summary>
    public IEnumerable<Run> RunsOf(Course course) => plan.Runs.Where(run => Lays(run, course));

    /// <summary>Whether a run lays a course: it names it, or none.</summary>
    public static bool Lays(Run run, Course course) => run.Courses.Count == 0 || run.Courses.Contains(course.Id, StringComparer.Ordinal);

    /// <summary>The paver that lays a course in a run: the one that the run names, else the one that names the course, else the only one.</summary>
    public Paver? PaverOf(Course course, Run? run = null)
    {
        if (run?.Paver is { } named)
        {
            return plan.Pavers.FirstOrDefault(paver => Same(paver.Id, named));
        }

        return plan.Pavers.FirstOrDefault(paver => paver.Courses.Contains(course.Id, StringComparer.Ordinal))
            ?? (plan.Pavers is [{ Courses.Count: 0 }] ? plan.Pavers[0] : null);
    }

    /// <summary>The paver of a course by its runs, or without.</summary>
    public Paver? AnyPaverOf(Course course) =>
        RunsOf(course).Select(run => PaverOf(course, run)).FirstOrDefault(paver => paver is not null) ?? PaverOf(course);

    /// <summary>Courses that a paver lays, from bottom to top.</summary>
    public IEnumerable<Course> CoursesOf(Paver paver) => plan.Courses.Where(course =>
        RunsOf(course).Any(run => ReferenceEquals(PaverOf(course, run), paver)) || ReferenceEquals(PaverOf(course), paver));

    /// <summary>The first two courses that a paver lays hot-on-hot, lower and upper; null when it lays no pair.</summary>
    public (Course Lower, Course Upper)? PairOf(Paver paver)
    {
        var laid = CoursesOf(paver).ToList();
        foreach (var pass in Passes.Where(pass => pass.Courses.Count > 1))
        {
            if (laid.Contains(pass.Courses[^2]) && laid.Contains(pass.Courses[^1]))
            {
                return (pass.Courses[^2], pass.Courses[^1]);
            }
        }

        return null;
    }

    /// <summary>The mix of a course.</summary>
    public Mix? MixOf(Course course) => plan.Mixes.FirstOrDefault(mix => Same(mix.Id, course.Mix));

    /// <summary>The element of a course, mix, paver and so on.</summary>
    public Element? Of(ElementKind kind, string id) => Elements.Find($"{Words.Of(kind)}:{id}");

    /// <summary>Whether two ids are the same.</summary>
    public static bool Same(string? a, string? b) => a is not null && string.Equals(a, b, StringComparison.Ordinal);

    private static List<PavingPass> FindPasses(IReadOnlyList<Course> courses)
    {
        var passes = new List<List<Course>>();
        foreach (var course in courses)
        {
            var below = course.Laid == Laying.HotOnHot ? passes.Find(pass => Same(pass[^1].Id, course.On)) : null;
            if (below is null)
            {
                passes.Add([course]);
            }
            else
            {
                below.Add(course);
            }
        }

        return [.. passes.Select(pass => new PavingPass(pass))];
    }
}
