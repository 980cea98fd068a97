using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Mat;

/// <summary>When a roller vibrates at one point of the mat.</summary>
/// <param name="Roller">Id of the roller.</param>
/// <param name="From">Start, s after the last screed.</param>
/// <param name="To">End, s after the last screed.</param>
internal sealed record VibrationSpan(string Roller, double From, double To)
{
    /// <summary>
    /// The spans of all steel rollers that vibrate, in plan order, where zone, speed and passes tell them. A roller that vibrates on some of its
    /// passes is taken to do so on the first ones, evenly spread over its zone.
    /// </summary>
    public static IReadOnlyList<VibrationSpan> Of(Calculation calculation)
    {
        var rolling = calculation.Context.Plan.Rolling;
        return
        [
            .. (rolling?.Rollers ?? [])
                .Where(roller => roller is { Mode: RollingMode.Vibration, Kind: not RollerKind.Pneumatic })
                .Select(roller => Of(calculation, roller, rolling!.Phases.FirstOrDefault(phase => string.Equals(phase.Id, roller.Phase, StringComparison.Ordinal))))
                .OfType<VibrationSpan>(),
        ];
    }

    /// <summary>The span of one roller; null where the plan does not tell it, which the calculation then says.</summary>
    public static VibrationSpan? Of(Calculation calculation, Roller roller, Phase? phase)
    {
        if (phase is null)
        {
            return null;
        }

        var from = PhaseQuantities.ZoneTime(calculation, calculation.Stated("x", phase.ZoneFrom, $"phase:{phase.Id}", "zone_from"));
        var to = PhaseQuantities.DoneBySeconds(calculation, phase);
        var share = roller.PassesInMode is { } vibrated && phase.Passes is { } passes and > 0 ? Math.Min(1, (double)vibrated / passes) : 1;
        return to >= from ? new VibrationSpan(roller.Id, from, from + (share * (to - from))) : null;
    }
}
