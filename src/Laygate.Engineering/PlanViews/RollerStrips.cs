using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Quantities;
using Laygate.Engineering.Rolling;
using Laygate.Model.Measures;
using Laygate.Model.Plans;

namespace Laygate.Engineering.PlanViews;

/// <summary>Strips of one roller on the mats of a plan.</summary>
internal static class RollerStrips
{
    /// <summary>Most strips over the runs; null where an input is missing or does not go into the formula.</summary>
    public static int? Most(Calculation calculation, Roller roller)
    {
        var address = $"roller:{roller.Id}";
        var drum = calculation.Stated("b", roller.DrumWidth, address, "drum_width");
        var overlap = calculation.StatedOr(AssumptionIds.Overlap, "o", roller.Overlap, address, "overlap");
        var runs = calculation.Context.Plan.Runs;
        if (runs.Count == 0)
        {
            calculation.Miss("plan", "runs");
        }

        int? most = null;
        foreach (var run in runs)
        {
            var strips = OnRun(calculation, run, drum, overlap);
            most = most is null || strips > most ? strips : most;
        }

        return most;
    }

    private static int? OnRun(Calculation calculation, Run run, double drum, double overlap)
    {
        var address = $"run:{run.Id}";
        var widest = run.WidthAlong.MaxBy(width => width.Value.Si)?.Value;
        var width = calculation.Stated("W", widest, address, "width");
        return Strips.Count(width, LeftReach(calculation, run), RightReach(calculation, run), drum, overlap);
    }

    /// <summary>How far the drum reaches past the left edge of a run, m: stated, or assumed by the kind of the edge; below zero where it stays off.</summary>
    public static double LeftReach(Calculation calculation, Run run) => Reach(calculation, run, "hl", (run.LeftReach, "left_reach"), (run.LeftEdge, "left_edge"));

    /// <summary>How far the drum reaches past the right edge of a run, m.</summary>
    public static double RightReach(Calculation calculation, Run run) => Reach(calculation, run, "hr", (run.RightReach, "right_reach"), (run.RightEdge, "right_edge"));

    // Where the kind of the edge is not stated either, it is missing; where it is, the reach by its kind may still be stated.
    private static double Reach(Calculation calculation, Run run, string symbol, (Measure<Length>? Value, string Key) stated, (EdgeKind? Kind, string Key) edge)
    {
        var address = $"run:{run.Id}";
        return stated.Value is not null ? calculation.Stated(symbol, stated.Value, address, stated.Key)
            : edge.Kind is null ? calculation.Assumed(AssumptionIds.ReachOver(null), symbol, address, new InputReference(address, edge.Key))
            : calculation.Assumed(AssumptionIds.ReachOver(edge.Kind), symbol, address, null, new InputReference(address, stated.Key));
    }
}
