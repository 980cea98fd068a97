using Laygate.Engineering.Formulas;

namespace Laygate.Engineering.Rolling;

/// <summary>When the passes of a phase come at one point of the mat.</summary>
public static class PassTimes
{
    /// <summary>Time by which one pass of a phase has been made everywhere: the passes of a phase share the time of its zone evenly.</summary>
    /// <param name="start">ts, s: when the front of the zone reaches the point, after the last screed.</param>
    /// <param name="end">te, s: when the phase is done at the point, after the last screed.</param>
    /// <param name="passes">n, 1: passes of the phase over every point.</param>
    /// <param name="pass">i, 1: which of them, from 1; 0 gives the start.</param>
    /// <returns>t, s; null outside the range.</returns>
    [Formula("t", "t = ts + i · (te − ts) / n", Sources.Balance, "te not before ts, ts not below zero, n from 1 to 200, i from 0 to n; otherwise no result. In which strip the point lies decides when within its share it is rolled")]
    public static double? LatestOf(double start, double end, int passes, int pass) =>
        Finite.NotNegative(start) && Finite.NotNegative(end - start) && passes is > 0 and <= 200 && pass >= 0 && pass <= passes
            ? Finite.OrNull(start + (pass * (end - start) / passes))
            : null;

    /// <summary>Speed at which a roller gets on, reversals counted.</summary>
    /// <param name="efficiency">E, 1: share of its time in which it rolls.</param>
    /// <param name="speed">vr, m/s: speed while rolling.</param>
    /// <returns>ve, m/s; null outside the range.</returns>
    [Formula("ve", "ve = E · vr", Sources.Balance, "E above 0 and at most 1, vr above zero; otherwise no result")]
    public static double? EffectiveSpeed(double efficiency, double speed) => efficiency is > 0 and <= 1 && Finite.Positive(speed)
        ? Finite.OrNull(efficiency * speed)
        : null;
}
