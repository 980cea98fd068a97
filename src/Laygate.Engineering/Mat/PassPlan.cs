using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Quantities;
using Laygate.Engineering.Rolling;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Mat;

/// <summary>One planned pass over a point of the mat; times in s after the last screed.</summary>
/// <param name="Phase">Its phase.</param>
/// <param name="Number">Number within the phase, from 1.</param>
/// <param name="Earliest">Earliest time at which it can come.</param>
/// <param name="Latest">Time by which it has come everywhere.</param>
internal sealed record PlannedPass(Phase Phase, int Number, double Earliest, double Latest)
{
    /// <summary>Middle of its time.</summary>
    public double Middle => 0.5 * (Earliest + Latest);
}

/// <summary>When the planned passes come at one point of the mat: the passes of a phase share the time of its zone evenly.</summary>
internal static class PassPlan
{
    /// <summary>All passes that the plan tells, in order of time.</summary>
    public static IReadOnlyList<PlannedPass> Of(Calculation calculation)
    {
        var phases = calculation.Context.Plan.Rolling?.Phases ?? [];
        if (phases.Count == 0)
        {
            calculation.Miss("plan", "rolling.phases");
        }

        return [.. phases.SelectMany(phase => Of(calculation, phase)).OrderBy(pass => pass.Earliest)];
    }

    /// <summary>The passes of one phase; none where the plan does not tell them, which the calculation then says.</summary>
    public static IReadOnlyList<PlannedPass> Of(Calculation calculation, Phase phase)
    {
        var address = $"phase:{phase.Id}";
        var passes = calculation.Stated("n", phase.Passes, address, "passes");
        var start = PhaseQuantities.ZoneTime(calculation, calculation.Stated("x", phase.ZoneFrom, address, "zone_from"));
        var end = PhaseQuantities.DoneBySeconds(calculation, phase);
        if (phase.Passes is null || double.IsNaN(start) || double.IsNaN(end))
        {
            return [];
        }

        var times = Times(start, end, passes);
        if (times.Count < 2)
        {
            calculation.BlockOutside("phase.done_by");
            return [];
        }

        return [.. Enumerable.Range(1, passes).Select(i => new PlannedPass(phase, i, times[i - 1], times[i]))];
    }

    /// <summary>
    /// Moments at which temperatures are asked for: the middle of every pass, start and end of every phase, or only the start of the first pass, the end of finish rolling and the end of vibration.
    /// </summary>
    public static IEnumerable<double> Moments(Calculation calculation, bool everyPass)
    {
        var passes = Of(calculation);
        if (everyPass)
        {
            return passes.Select(pass => pass.Middle)
                .Concat(passes.Where(pass => pass.Number == 1).Select(pass => pass.Earliest))
                .Concat(passes.Where(pass => pass.Number == pass.Phase.Passes).Concat(Vibrated(passes)).Select(pass => pass.Latest));
        }

        return passes.Take(1).Select(pass => pass.Earliest)
            .Concat(passes.Where(pass => pass.Phase.Kind == PhaseKind.Finish && pass.Number == pass.Phase.Passes).Concat(Vibrated(passes)).Select(pass => pass.Latest));

        // The last vibrated pass of each roller.
        IEnumerable<PlannedPass> Vibrated(IReadOnlyList<PlannedPass> all) => (calculation.Context.Plan.Rolling?.Rollers ?? [])
            .Where(roller => roller is { Mode: RollingMode.Vibration, Kind: not RollerKind.Pneumatic })
            .SelectMany(roller => all.Where(pass => PlanView.Same(pass.Phase.Id, roller.Phase) && pass.Number == (roller.PassesInMode ?? pass.Phase.Passes)));
    }

    private static List<double> Times(double start, double end, int passes)
    {
        var times = new List<double>();
        for (var i = 0; i <= passes && PassTimes.LatestOf(start, end, passes, i) is { } time; i++)
        {
            times.Add(time);
        }

        return times;
    }
}
