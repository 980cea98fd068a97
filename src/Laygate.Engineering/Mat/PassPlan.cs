using Laygate.Engineering.Formulas;
using Laygate.Engineering.Quantities;
using Laygate.Engineering.Rolling;
using Laygate.Model.Plans;
using Duration = UnitsNet.Duration;

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
            calculation.Block(AbsenceReason.OutsideRange, Note.Of(NoteIds.OutsideFormula, ("quantity", "phase.done_by")));
            return [];
        }

        return [.. Enumerable.Range(1, passes).Select(i => new PlannedPass(phase, i, times[i - 1], times[i]))];
    }

    private static List<double> Times(double start, double end, int passes)
    {
        var times = new List<double>();
        for (var i = 0; i <= passes && PassTimes.LatestOf(Si.Seconds(start), Si.Seconds(end), passes, i) is Duration time; i++)
        {
            times.Add(time.Seconds);
        }

        return times;
    }
}
