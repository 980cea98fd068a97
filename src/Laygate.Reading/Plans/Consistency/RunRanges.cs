using Laygate.Model.Measures;
using Laygate.Model.Plans;
using Laygate.Reading.Measures;

namespace Laygate.Reading.Plans.Consistency;

/// <summary>Values of runs that cannot be, and stations that the run does not reach.</summary>
internal static class RunRanges
{
    public static void Check(Plan plan, PlanPart at)
    {
        foreach (var (run, where) in at.Each("runs", plan.Runs))
        {
            where.Less("from", run.From, "to", run.To);
            where.AtLeast("order", run.Order, 1);
            where.NotNegative("move", run.Move);
            where.NotNegative("starts_after", run.StartsAfter);
            foreach (var (width, inside, key) in Entries(where, "width", run.WidthAlong))
            {
                Width(inside, key, width.Value);
            }

            AlongRun(run, where, "width", run.WidthAlong);
            AlongRun(run, where, "crossfall", run.CrossfallAlong);
            where.Positive("edge_slope", run.EdgeSlope);
            where.CanBe("gradient", run.Gradient, Possible.Gradient);
            foreach (var (level, inside) in where.Each("levels", run.Levels))
            {
                Reached(run, inside, level.At);
                inside.NotNegative("roll_down", level.RollDown);
            }

            Thickness(run, where);
            Details(run, where);
        }
    }

    private static void Width(PlanPart at, string key, IMeasure width)
    {
        at.Positive(key, width);
        at.CanBe(key, width, Possible.Width);
    }

    // A single value stands in front of the stations; the plan may have one or the other.
    private static void AlongRun<T>(Run run, PlanPart at, string key, IReadOnlyList<AtStation<T>> values)
        where T : IDimension
    {
        if (values.Count > 1 && values[0].At is null)
        {
            at.Fail($"{key}s", $"Both `{key}` and `{key}s` are stated.", $"Keep `{key}` when it is the same everywhere, else `{key}s`.");
        }

        Measure<Length>? before = null;
        foreach (var (value, where, _) in Entries(at, key, values))
        {
            Reached(run, where, value.At);
            if (before is not null && value.At is not null && !PlanPart.IsLess(before, value.At))
            {
                where.Fail("at", $"The station {MeasureReader.Write(value.At)} does not lie beyond the one above it ({MeasureReader.Write(before)}).", "Sort the stations, and keep one entry for each.");
            }

            before = value.At ?? before;
        }
    }

    private static IEnumerable<(AtStation<T> Value, PlanPart Where, string Key)> Entries<T>(PlanPart at, string key, IReadOnlyList<AtStation<T>> values)
        where T : IDimension
    {
        var stations = values.Where(value => value.At is not null).ToList();
        foreach (var single in values.Where(value => value.At is null))
        {
            yield return (single, at, key);
        }

        foreach (var (value, where) in at.Each($"{key}s", stations))
        {
            yield return (value, where, "value");
        }
    }

    private static void Thickness(Run run, PlanPart at)
    {
        foreach (var (thickness, where) in at.Each("thickness", run.Thickness))
        {
            Reached(run, where, thickness.At);
            where.Positive("nominal", thickness.Nominal);
            where.Positive("lowest", thickness.Lowest);
            where.Positive("highest", thickness.Highest);
            where.Ascending(("lowest", thickness.Lowest), ("nominal", thickness.Nominal), ("highest", thickness.Highest));
        }
    }

    private static void Details(Run run, PlanPart at)
    {
        foreach (var (obstacle, where) in at.Each("obstacles", run.Obstacles))
        {
            Reached(run, where, obstacle.At);
        }

        foreach (var (area, where) in at.Each("hand_laid", run.HandLaid))
        {
            where.Positive("area", area.Area);
            where.Positive("thickness", area.Thickness);
        }

        foreach (var (end, where) in at.Each("tie_ins", run.TieIns))
        {
            where.Positive("length", end.Length);
        }
    }

    private static void Reached(Run run, PlanPart at, Measure<Length>? station)
    {
        if (station is null || run is { From: { } first, To: { } last } && !PlanPart.IsLess(first, last))
        {
            return;
        }

        if (run.From is { } from && PlanPart.IsLess(station, from))
        {
            at.Fail("at", $"The station {MeasureReader.Write(station)} lies before the run, which begins at {MeasureReader.Write(from)}.", "Correct the station, or `from` of the run.");
        }

        if (run.To is { } to && PlanPart.IsLess(to, station))
        {
            at.Fail("at", $"The station {MeasureReader.Write(station)} lies beyond the run, which ends at {MeasureReader.Write(to)}.", "Correct the station, or `to` of the run.");
        }
    }
}
