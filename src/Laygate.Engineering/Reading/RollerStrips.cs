using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Formulas;
using Laygate.Engineering.Quantities;
using Laygate.Engineering.Rolling;
using Laygate.Model.Plans;
using UnitsNet;

namespace Laygate.Engineering.Reading;

/// <summary>Strips of one roller on the mats of a plan.</summary>
internal static class RollerStrips
{
    /// <summary>Most strips over the runs; null where an input is missing or does not go into the formula.</summary>
    public static int? Most(Calculation calculation, Roller roller)
    {
        var address = $"roller:{roller.Id}";
        var drum = Si.Metres(calculation.Stated("b", roller.DrumWidth, address, "drum_width"));
        var overlap = Si.Metres(calculation.StatedOr(AssumptionIds.Overlap, "o", roller.Overlap, address, "overlap"));
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

    private static int? OnRun(Calculation calculation, Run run, Length drum, Length overlap)
    {
        var address = $"run:{run.Id}";
        var widest = run.Width.MaxBy(width => width.Value.Si)?.Value;
        var width = calculation.Stated("W", widest, address, "width");
        var left = Reach(calculation, run.LeftEdge, "hl", address, "left_edge");
        var right = Reach(calculation, run.RightEdge, "hr", address, "right_edge");
        return Strips.Count(Si.Metres(width), left, right, drum, overlap);
    }

    private static Length Reach(Calculation calculation, EdgeKind? edge, string symbol, string address, string key) =>
        Si.Metres(calculation.Assumed(
            AssumptionIds.ReachOver(edge), symbol, address, edge is null ? new InputReference(address, key) : null));
}
