using Laygate.Model.Plans;
using Laygate.Reading.Schema;

namespace Laygate.Reading.Plans.Consistency;

/// <summary>Whatever is named must be there.</summary>
internal static class References
{
    public static void Check(Plan plan, PlanPart at)
    {
        var courses = new Names("course", "courses", plan.Courses.Select(course => course.Id));
        var mixes = new Names("mix", "mixes", plan.Mixes.Select(mix => mix.Id));
        Courses(plan, at, courses, mixes);
        Runs(plan, at, courses, mixes);
        Supply(plan, at.Inside("supply"), mixes);
        Pavers(plan, at, courses);
        Rollers(plan.Rolling, at.Inside("rolling"));
        Rest(plan, at, courses);
    }

    private static void Courses(Plan plan, PlanPart at, Names courses, Names mixes)
    {
        foreach (var (course, where) in at.Each("courses", plan.Courses))
        {
            mixes.Check(where, "mix", course.Mix);
            courses.Check(where, "on", course.On);
        }
    }

    private static void Runs(Plan plan, PlanPart at, Names courses, Names mixes)
    {
        var pavers = new Names("paver", "pavers", plan.Pavers.Select(paver => paver.Id));
        foreach (var (run, where) in at.Each("runs", plan.Runs))
        {
            courses.CheckAll(where, "courses", run.Courses);
            pavers.Check(where, "paver", run.Paver);
            foreach (var (thickness, inside) in where.Each("thickness", run.Thickness))
            {
                Own(courses, inside, thickness.Course, run.Courses, "run");
            }

            foreach (var (area, inside) in where.Each("hand_laid", run.HandLaid))
            {
                mixes.Check(inside, "mix", area.Mix);
            }
        }
    }

    private static void Supply(Plan plan, PlanPart at, Names mixes)
    {
        if (plan.Supply is not { } supply)
        {
            return;
        }

        var pavers = new Names("paver", "pavers", plan.Pavers.Select(paver => paver.Id));
        var plants = new Names("plant", "plants", supply.Plants.Select(plant => plant.Id));
        foreach (var (plant, where) in at.Each("plants", supply.Plants))
        {
            mixes.CheckAll(where, "mixes", plant.Mixes);
        }

        foreach (var (trucks, where) in at.Each("trucks", supply.Trucks))
        {
            plants.Check(where, "plant", trucks.Plant);
            mixes.Check(where, "mix", trucks.Mix);
            pavers.Check(where, "paver", trucks.Paver);
            var made = supply.Plants.FirstOrDefault(plant => string.Equals(plant.Id, trucks.Plant, StringComparison.Ordinal))?.Mixes ?? [];
            if (trucks.Mix is { } mix && mixes.Has(mix) && made.Count > 0 && !made.Contains(mix, StringComparer.Ordinal))
            {
                where.Fail("mix", $"The plant `{trucks.Plant}` does not make the mix `{mix}` that these trucks carry.", "Correct the plant or the mix of the trucks, or add the mix to the plant.");
            }
        }
    }

    private static void Pavers(Plan plan, PlanPart at, Names courses)
    {
        foreach (var (paver, where) in at.Each("pavers", plan.Pavers))
        {
            courses.CheckAll(where, "courses", paver.Courses);
            foreach (var (screed, inside) in where.Each("screeds", paver.Screeds))
            {
                Own(courses, inside, screed.Course, paver.Courses, "paver");
            }

            foreach (var (buffer, inside) in where.Each("buffers", paver.Buffers))
            {
                Own(courses, inside, buffer.Course, paver.Courses, "paver");
            }
        }
    }

    private static void Rollers(Rolling? rolling, PlanPart at)
    {
        if (rolling is null)
        {
            return;
        }

        var phases = new Names("phase", "phases", rolling.Phases.Select(phase => phase.Id));
        foreach (var (roller, where) in at.Each("rollers", rolling.Rollers))
        {
            phases.Check(where, "phase", roller.Phase);
        }
    }

    private static void Trials(Plan plan, PlanPart at)
    {
        var mixes = new Names("mix", "mixes", plan.Mixes.Select(mix => mix.Id));
        var phases = new Names("phase", "rolling.phases", (plan.Rolling?.Phases ?? []).Select(phase => phase.Id));
        var rollers = new Names("roller", "rolling.rollers", (plan.Rolling?.Rollers ?? []).Select(roller => roller.Id));
        foreach (var (test, where) in at.Each("tests", plan.Tests))
        {
            if (test.Reached is not { } reached)
            {
                continue;
            }

            var inside = where.Inside("reached");
            mixes.Check(inside, "mix", reached.Mix);
            rollers.CheckAll(inside, "rollers", reached.Rollers);
            foreach (var (passes, entry) in inside.Each("passes", reached.Passes))
            {
                phases.Check(entry, "phase", passes.Phase);
            }
        }
    }

    private static void Rest(Plan plan, PlanPart at, Names courses)
    {
        var runs = new Names("run", "runs", plan.Runs.Select(run => run.Id));
        foreach (var (coat, where) in at.Each("bond_coats", plan.BondCoats))
        {
            courses.Check(where, "below", coat.Below);
        }

        foreach (var (test, where) in at.Each("tests", plan.Tests))
        {
            courses.Check(where, "course", test.Course);
        }

        Trials(plan, at);
        foreach (var (action, where) in at.Each("contingencies", plan.Contingencies))
        {
            courses.Check(where, "goes_on_with", action.GoesOnWith);
        }

        foreach (var (joint, where) in at.Each("joints", plan.Joints))
        {
            courses.Check(where, "course", joint.Course);
            runs.Check(where, "run", joint.Run);
            runs.Check(where, "beside", joint.Beside);
            if (joint.Beside is not null && string.Equals(joint.Beside, joint.Run, StringComparison.Ordinal))
            {
                where.Fail("beside", $"The joint lies beside its own run `{joint.Run}`.", "Name the run on the other side, or leave `beside` out.");
            }
        }
    }

    // A part of a run or paver can only belong to a course that the run or paver has.
    private static void Own(Names courses, PlanPart at, string course, IReadOnlyList<string> own, string what)
    {
        courses.Check(at, "course", course);
        // An unknown course in that list is one mistake, not two.
        if (courses.Has(course) && own.Count > 0 && own.All(courses.Has) && !own.Contains(course, StringComparer.Ordinal))
        {
            at.Fail("course", $"The course `{course}` is not among the `courses` of this {what}.", "Add it there, or correct the course here.");
        }
    }

    /// <summary>The names of one list.</summary>
    private sealed class Names(string what, string list, IEnumerable<string> ids)
    {
        private readonly HashSet<string> known = ids.ToHashSet(StringComparer.Ordinal);

        public bool Has(string id) => known.Contains(id);

        public void Check(PlanPart at, string key, string? id)
        {
            if (id is not null && known.Count > 0 && !known.Contains(id))
            {
                at.Fail(key, Message(id), Hint(id));
            }
        }

        public void CheckAll(PlanPart at, string key, IReadOnlyList<string> named)
        {
            for (var index = 0; index < named.Count; index++)
            {
                Check(at, string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{key}[{index}]"), named[index]);
            }
        }

        private string Message(string id) => $"There is no {what} `{id}` among the `{list}`.";

        private string Hint(string id)
        {
            var near = NearestNames.Of(id, known);
            return near.Count > 0
                ? NearestNames.Asked(near)
                : $"Known: {string.Join(", ", known.Order(StringComparer.Ordinal).Select(name => $"`{name}`"))}.";
        }
    }
}
