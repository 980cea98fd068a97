using Laygate.Model.Plans;

namespace Laygate.Reading.Plans.Consistency;

/// <summary>No two entries of a list may have one name: findings are addressed by it.</summary>
internal static class Identifiers
{
    public static void Check(Plan plan, PlanPart at)
    {
        Unique(at.Inside("plan"), "people", plan.Identity.People, person => person.Id);
        Unique(at.Inside("site"), "overhead_lines", plan.Site?.OverheadLines, line => line.Id);
        Unique(at.Inside("site"), "lights", plan.Site?.Lights, light => light.Id);
        Unique(at.Inside("site"), "exposures", plan.Site?.Exposures, exposure => exposure.Id);
        Unique(at, "sections", plan.Sections, section => section.Id);
        Unique(at.Inside("existing"), "layers", plan.Existing?.Layers, layer => layer.Id);
        Unique(at, "mixes", plan.Mixes, mix => mix.Id);
        Unique(at, "courses", plan.Courses, course => course.Id);
        Unique(at, "runs", plan.Runs, run => run.Id);
        Unique(at.Inside("supply"), "plants", plan.Supply?.Plants, plant => plant.Id);
        Unique(at.Inside("supply"), "trucks", plan.Supply?.Trucks, trucks => trucks.Id);
        Unique(at, "pavers", plan.Pavers, paver => paver.Id);
        Unique(at.Inside("rolling"), "phases", plan.Rolling?.Phases, phase => phase.Id);
        Unique(at.Inside("rolling"), "rollers", plan.Rolling?.Rollers, roller => roller.Id);
        Unique(at, "bond_coats", plan.BondCoats, coat => coat.Id);
        Unique(at, "joints", plan.Joints, joint => joint.Id);
        Unique(at, "tests", plan.Tests, test => test.Id);
        Unique(at, "hold_points", plan.HoldPoints, point => point.Id);
        Unique(at, "contingencies", plan.Contingencies, action => action.Id);
        Unique(at, "measures", plan.Measures, measure => measure.Id);
        Unique(at, "documents", plan.Documents, document => document.Id);
        CheckInside(plan, at);
    }

    private static void CheckInside(Plan plan, PlanPart at)
    {
        foreach (var (run, where) in at.Each("runs", plan.Runs))
        {
            Unique(where, "obstacles", run.Obstacles, obstacle => obstacle.Id);
            Unique(where, "levels", run.Levels, level => level.Id);
            Unique(where, "hand_laid", run.HandLaid, area => area.Id);
            Unique(where, "tie_ins", run.TieIns, end => end.Id);
        }

        foreach (var (paver, where) in at.Each("pavers", plan.Pavers))
        {
            Unique(where, "screeds", paver.Screeds, screed => screed.Course, "course");
            Unique(where, "buffers", paver.Buffers, buffer => buffer.Course, "course");
            Unique(where, "stops", paver.Stops, stop => stop.Id);
        }
    }

    private static void Unique<T>(PlanPart at, string list, IReadOnlyList<T>? items, Func<T, string> name, string key = "id")
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        foreach (var (item, where) in at.Each(list, items))
        {
            if (!seen.Add(name(item)))
            {
                where.Fail(key, $"`{list}` has two entries with the {key} `{name(item)}`.", key is "id" ? "Give one of them another id." : "Join the two entries.");
            }
        }
    }
}
