using Laygate.Engineering.Formulas;

namespace Laygate.Engineering.Rolling;

/// <summary>What a roller can follow.</summary>
public static class RollerOutput
{
    private const string RollerKinematics = "kinematics, derived here; TxDOT, flexible pavement manual, roller variables, lists the same variables (read)";

    /// <summary>Share of its time in which a roller rolls, when it reverses at both ends of a zone.</summary>
    /// <param name="zone">L, m: length of the zone.</param>
    /// <param name="speed">vr, m/s: speed while rolling.</param>
    /// <param name="reversal">tr, s: time that one reversal costs.</param>
    /// <returns>E, 1; null outside the range.</returns>
    [Formula("E", "E = (L/vr) / (L/vr + tr)", Sources.Balance, "L and vr above zero, tr not below zero; otherwise no result")]
    public static double? Efficiency(double zone, double speed, double reversal)
    {
        var pass = zone / speed;
        return Finite.Positive(zone, speed, pass) && Finite.NotNegative(reversal)
            ? pass / (pass + reversal)
            : null;
    }

    /// <summary>Paver speed that one roller can follow in the long run.</summary>
    /// <param name="efficiency">E, 1: share of its time in which it rolls.</param>
    /// <param name="speed">vr, m/s: speed while rolling.</param>
    /// <param name="strips">k, 1: strips side by side.</param>
    /// <param name="passes">n, 1: passes over every point.</param>
    /// <returns>v, m/s; null outside the range.</returns>
    [Formula("v", "v = E · vr / (k · n)", RollerKinematics, "E above 0 and at most 1, all others above zero; otherwise no result")]
    public static double? SpeedItFollows(double efficiency, double speed, int strips, int passes) =>
        efficiency is > 0 and <= 1 && Finite.Positive(speed) && strips > 0 && passes > 0
            ? Finite.OrNull(efficiency * speed / ((double)strips * passes))
            : null;

    /// <summary>Area that one roller finishes per time.</summary>
    /// <param name="efficiency">E, 1: share of its time in which it rolls.</param>
    /// <param name="speed">vr, m/s: speed while rolling.</param>
    /// <param name="drum">b, m: width of the drum.</param>
    /// <param name="overlap">o, m: overlap of neighbouring strips.</param>
    /// <param name="passes">n, 1: passes over every point.</param>
    /// <returns>A, m²/s; null outside the range.</returns>
    [Formula("A", "A = (b − o) · vr · E / n", Sources.Balance, "overlap not below zero and narrower than the drum, E above 0 and at most 1; otherwise no result. Whole strips are not counted")]
    public static double? AreaPerSecond(double efficiency, double speed, double drum, double overlap, int passes)
    {
        var fresh = drum - overlap;
        return efficiency is > 0 and <= 1 && Finite.NotNegative(overlap) && Finite.Positive(fresh, speed, passes)
            ? fresh * speed * efficiency / passes
            : null;
    }

    /// <summary>Rollers that an old specification asks for by tonnage, two at the least. It knows nothing of mat, passes or cooling.</summary>
    /// <param name="rate">R, kg/s: mix laid.</param>
    /// <param name="perRoller">Q, kg/s: mix for which one roller is counted.</param>
    /// <returns>N, 1; null outside the range.</returns>
    [Formula("N", "N = max(2, ⌈R / Q⌉)", Sources.Kentucky157, "both inputs above zero, result below a million; otherwise no result. Historic, for comparison only")]
    public static int? CountByTonnage(double rate, double perRoller)
    {
        var rollers = rate / perRoller;
        return Finite.Positive(rate, perRoller, rollers) && rollers < 1e6
            ? Math.Max(2, (int)Math.Ceiling(rollers - Supply.Fleet.Rounding))
            : null;
    }

    /// <summary>Time in which one roller finishes the last zone when the paver lays no more.</summary>
    /// <param name="zone">L, m: length of the zone.</param>
    /// <param name="efficiency">E, 1: share of its time in which it rolls.</param>
    /// <param name="speed">vr, m/s: speed while rolling.</param>
    /// <param name="passes">m, 1: passes in all, over all strips side by side.</param>
    /// <returns>t, s; null outside the range.</returns>
    [Formula("t", "t = m · L / (E · vr)", Sources.Balance, "E above 0 and at most 1, all others above zero; otherwise no result")]
    public static double? TailOut(double zone, double efficiency, double speed, int passes) =>
        efficiency is > 0 and <= 1 && Finite.Positive(zone, speed, passes)
            ? Finite.OrNull(passes * zone / (efficiency * speed))
            : null;

    /// <summary>Minutes behind the screed at which a zone ends.</summary>
    /// <param name="end">x, m: distance of the zone's end behind the screed.</param>
    /// <param name="paver">v, m/s: paver speed.</param>
    /// <returns>t, s; null outside the range.</returns>
    [Formula("t", "t = x / v", Sources.Balance, "x not below zero, v above zero; otherwise no result")]
    public static double? ZoneTime(double end, double paver) =>
        Finite.NotNegative(end) && Finite.Positive(paver)
            ? Finite.OrNull(end / paver)
            : null;

    /// <summary>Length that the paver lays in a time: the longest zone that can be rolled in it.</summary>
    /// <param name="paver">v, m/s: paver speed.</param>
    /// <param name="time">t, s: time available.</param>
    /// <returns>L, m; null outside the range.</returns>
    [Formula("L", "L = v · t", Sources.Balance, "both inputs above zero; a ceiling, no aim: roll close behind the screed")]
    public static double? ZoneLength(double paver, double time) =>
        Finite.Positive(paver) && Finite.Positive(time)
            ? Finite.OrNull(paver * time)
            : null;

    /// <summary>Distance between two impacts of a vibrating drum.</summary>
    /// <param name="speed">vr, m/s: speed while rolling.</param>
    /// <param name="frequency">f, Hz: frequency of vibration.</param>
    /// <returns>s, m; null outside the range.</returns>
    [Formula("s", "s = vr / f", Sources.Definition, "both inputs above zero; otherwise no result")]
    public static double? ImpactSpacing(double speed, double frequency) =>
        Finite.Positive(speed) && Finite.Positive(frequency)
            ? Finite.OrNull(speed / frequency)
            : null;

    /// <summary>Static load of a drum per width.</summary>
    /// <param name="mass">m, kg: mass on the drum.</param>
    /// <param name="drum">b, m: width of the drum.</param>
    /// <returns>p, N/m; null outside the range.</returns>
    [Formula("p", "p = m · g / b, g = 9.80665 m/s²", Sources.Definition, "both inputs above zero; otherwise no result")]
    public static double? LinearLoad(double mass, double drum) =>
        Finite.Positive(mass) && Finite.Positive(drum)
            ? Finite.OrNull(mass * 9.80665 / drum)
            : null;
}
