using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Timeline;

/// <summary>Which runs are laid one after the other: by their stated order, else as the plan lists them.</summary>
internal sealed class StripOrder(Calculation calculation)
{
    private readonly PlanView view = PlanView.Of(calculation.Context);
    private readonly List<PavingPass> joined = [];

    /// <summary>Strips in the order in which they are begun, without times; empty where the calculation says what is missing.</summary>
    public IReadOnlyList<LaidStrip> Strips()
    {
        var runs = InOrder(calculation.Context.Plan.Runs).Where(run => PassesOf(run).Count > 0).ToList();
        if (runs.Count == 0)
        {
            calculation.Miss("plan", "runs");
        }

        return Trains([.. Batches(runs).SelectMany(batch => batch.Passes.SelectMany(pass => batch.Runs.Select(run => Strip(run, pass)))).OfType<LaidStrip>()]);
    }

    /// <summary>Runs in their order: those that state one by it, the others at their place in the list.</summary>
    public static IEnumerable<Run> InOrder(IReadOnlyList<Run> runs) =>
        runs.Select((run, place) => (run, place)).OrderBy(item => item.run.Order ?? (item.place + 1)).ThenBy(item => item.place).Select(item => item.run);

    // A machine that carries the screeds of two courses lays both as it passes, also where the lower one is rolled in between.
    private List<PavingPass> PassesOf(Run run)
    {
        var passes = new List<PavingPass>();
        foreach (var pass in view.Passes.Where(pass => pass.Courses.Any(course => PlanView.Lays(run, course))))
        {
            if (passes.Count > 0 && pass.Courses[0].Laid == Laying.HotOnWarm && IsOneMachine(run, passes[^1].Top, pass.Courses[0]))
            {
                passes[^1] = Joined(passes[^1], pass);
            }
            else
            {
                passes.Add(pass);
            }
        }

        return passes;
    }

    private PavingPass Joined(PavingPass lower, PavingPass upper)
    {
        var courses = lower.Courses.Concat(upper.Courses).ToList();
        var known = joined.Find(pass => pass.Courses.SequenceEqual(courses));
        if (known is null)
        {
            joined.Add(known = new PavingPass(courses));
        }

        return known;
    }

    private bool IsOneMachine(Run run, Course lower, Course upper) => view.PaverOf(lower, run) is { } paver && ReferenceEquals(paver, view.PaverOf(upper, run))
        && paver.Screeds.Any(screed => PlanView.Same(screed.Course, lower.Id)) && paver.Screeds.Any(screed => PlanView.Same(screed.Course, upper.Id));

    // Neighbouring runs that all take the same several passes are laid pass by pass: a course over all of them, then the next upon it.
    private IEnumerable<(List<PavingPass> Passes, List<Run> Runs)> Batches(List<Run> runs)
    {
        (List<PavingPass> Passes, List<Run> Runs)? batch = null;
        foreach (var run in runs)
        {
            var passes = PassesOf(run);
            if (batch is { } open && passes.Count > 1 && open.Passes.SequenceEqual(passes))
            {
                open.Runs.Add(run);
                continue;
            }

            if (batch is { } full)
            {
                yield return full;
            }

            batch = (passes, [run]);
        }

        if (batch is { } last)
        {
            yield return last;
        }
    }

    private LaidStrip? Strip(Run run, PavingPass pass)
    {
        var address = $"run:{run.Id}";
        calculation.Stated("from", run.From, address, "from");
        calculation.Stated("to", run.To, address, "to");
        var courses = pass.Courses.Where(course => PlanView.Lays(run, course)).ToList();
        var pavers = courses.Select(course => view.PaverOf(course, run)).ToList();
        if (pavers.Contains(null))
        {
            calculation.Miss(run.Paver is { } named ? $"paver:{named}" : "plan", run.Paver is null ? "pavers" : string.Empty);
        }

        return RunProfile.Length(run) is { } length && !pavers.Contains(null)
            ? new LaidStrip(run, pass, courses, [.. pavers.OfType<Paver>().Distinct()], length)
            : null;
    }

    // Machines that work together anywhere are one train: none of them can be in two places.
    private static IReadOnlyList<LaidStrip> Trains(IReadOnlyList<LaidStrip> strips)
    {
        var trains = new List<HashSet<Paver>>();
        foreach (var strip in strips)
        {
            var met = trains.Where(train => train.Overlaps(strip.Pavers)).ToList();
            var machines = met.Count > 0 ? met[0] : [];
            foreach (var other in met.Skip(1))
            {
                machines.UnionWith(other);
                trains.Remove(other);
            }

            machines.UnionWith(strip.Pavers);
            if (met.Count == 0)
            {
                trains.Add(machines);
            }
        }

        return [.. strips.Select(strip => strip with { Train = trains.FindIndex(train => train.Overlaps(strip.Pavers)) })];
    }
}
