using Laygate.Engineering.Formulas;

namespace Laygate.Engineering.Records;

/// <summary>What was laid and what is left, from tickets and stations; no chance in it.</summary>
public static class LedgerFormulas
{
    /// <summary>Net mass of a load.</summary>
    /// <param name="gross">G, kg: mass of the full truck.</param>
    /// <param name="tare">T, kg: mass of the empty truck.</param>
    /// <returns>m, kg; null outside the range.</returns>
    [Formula("m", "m = G − T", Sources.Balance, "G above T, T not below zero; otherwise no result")]
    public static double? Net(double gross, double tare) => Finite.NotNegative(tare) && Finite.Positive(gross - tare) ? gross - tare : null;

    /// <summary>Mass that was laid.</summary>
    /// <param name="tickets">S, kg: sum of the tickets that were discharged.</param>
    /// <param name="notLaid">W, kg: what went back or was thrown away.</param>
    /// <param name="onMachine">B, kg: what is still in truck, feeder, hopper and auger box.</param>
    /// <returns>M, kg; null outside the range.</returns>
    [Formula("M", "M = S − W − B", Sources.Balance, "no input below zero, result not below zero; otherwise no result")]
    public static double? Laid(double tickets, double notLaid, double onMachine) =>
        Finite.NotNegative(notLaid) && Finite.NotNegative(onMachine) && Finite.NotNegative(tickets - notLaid - onMachine) ? tickets - notLaid - onMachine : null;

    /// <summary>Mass per length.</summary>
    /// <param name="mass">M, kg: mass that was laid.</param>
    /// <param name="length">L, m: length over which it was laid.</param>
    /// <returns>q, kg/m; null outside the range.</returns>
    [Formula("q", "q = M / L", Sources.Balance, "M not below zero, L above zero; otherwise no result")]
    public static double? PerLength(double mass, double length) => Finite.NotNegative(mass) && Finite.Positive(length) ? mass / length : null;

    /// <summary>Mass per area.</summary>
    /// <param name="mass">M, kg: mass that was laid.</param>
    /// <param name="area">A, m²: area that it covers.</param>
    /// <returns>r, kg/m²; null outside the range.</returns>
    [Formula("r", "r = M / A", Sources.Balance, "M not below zero, A above zero; otherwise no result")]
    public static double? PerArea(double mass, double area) => Finite.NotNegative(mass) && Finite.Positive(area) ? mass / area : null;

    /// <summary>Mean thickness of what was laid, compacted to a density.</summary>
    /// <param name="mass">M, kg: mass that was laid.</param>
    /// <param name="density">ρ, kg/m³: density of the finished course.</param>
    /// <param name="area">A, m²: area that it covers.</param>
    /// <returns>t, m; null outside the range.</returns>
    [Formula("t", "t = M / (ρ · A)", Sources.Balance, "M not below zero, ρ and A above zero; otherwise no result")]
    public static double? Thickness(double mass, double density, double area) => Finite.NotNegative(mass) && Finite.Positive(density * area) ? mass / (density * area) : null;

    /// <summary>Relative standard uncertainty of a mean thickness from independent parts. That of a scale does not shrink with more tickets.</summary>
    /// <param name="mass">uM, 1: of the mass.</param>
    /// <param name="density">uρ, 1: of the density.</param>
    /// <param name="width">uW, 1: of the width.</param>
    /// <param name="length">uL, 1: of the length.</param>
    /// <returns>u, 1; null outside the range.</returns>
    [Formula("u", "u = √(uM² + uρ² + uW² + uL²)", "JCGM 100:2008, 5.1.6, rule for products (recalled)", "no input below zero; otherwise no result")]
    public static double? Uncertainty(double mass, double density, double width, double length) =>
        Finite.NotNegative(mass) && Finite.NotNegative(density) && Finite.NotNegative(width) && Finite.NotNegative(length)
            ? Math.Sqrt((mass * mass) + (density * density) + (width * width) + (length * length))
            : null;

    /// <summary>Mass for what is left when it is laid as what was laid before.</summary>
    /// <param name="planned">Mp, kg: mass for what is left, by the plan.</param>
    /// <param name="laid">M, kg: mass that was laid.</param>
    /// <param name="plannedOfLaid">M0, kg: mass of the plan for what was laid.</param>
    /// <returns>My, kg; null outside the range.</returns>
    [Formula("My", "My = Mp · M / M0", Sources.Balance, "Mp and M not below zero, M0 above zero; otherwise no result")]
    public static double? ByYield(double planned, double laid, double plannedOfLaid) =>
        Finite.NotNegative(planned) && Finite.NotNegative(laid) && Finite.Positive(plannedOfLaid) ? planned * laid / plannedOfLaid : null;

    /// <summary>Mass that has still to be loaded; nothing where more is on hand than is needed.</summary>
    /// <param name="needed">M, kg: mass for what is left.</param>
    /// <param name="onHand">H, kg: on machines, on the road and waiting.</param>
    /// <returns>O, kg; null outside the range.</returns>
    [Formula("O", "O = max(0, M − H)", Sources.Balance, "no input below zero; otherwise no result")]
    public static double? ToLoad(double needed, double onHand) => Finite.NotNegative(needed) && Finite.NotNegative(onHand) ? Math.Max(0, needed - onHand) : null;

    /// <summary>Time until a mass is laid; at rate zero it is never laid and there is no result.</summary>
    /// <param name="mass">M, kg: mass still to be laid.</param>
    /// <param name="rate">R, kg/s: rate of laying.</param>
    /// <param name="stops">s, s: stops that are still planned.</param>
    /// <returns>T, s; null outside the range.</returns>
    [Formula("T", "T = M / R + s", Sources.Balance, "M and s not below zero, R above zero unless M is zero; otherwise no result")]
    public static double? TimeLeft(double mass, double rate, double stops) =>
        !Finite.NotNegative(mass) || !Finite.NotNegative(stops) ? null : mass <= 0 ? 0 : Finite.Positive(rate) ? Finite.OrNull((mass / rate) + stops) : null;

    /// <summary>Run that a mass covers at a rate per area.</summary>
    /// <param name="mass">m, kg: mass.</param>
    /// <param name="width">W, m: width.</param>
    /// <param name="rate">r, kg/m²: mass per area.</param>
    /// <returns>L, m; null outside the range.</returns>
    [Formula("L", "L = m / (W · r)", "Virginia study guide, chapter 9, paving math problems, 2011 v1.0: L = 9 T / (W R) in lb, ft and lb/yd2 (read)", "m not below zero, W and r above zero; otherwise no result")]
    public static double? Run(double mass, double width, double rate) => Finite.NotNegative(mass) && Finite.Positive(width * rate) ? mass / (width * rate) : null;

    /// <summary>Area of a strip whose width changes evenly.</summary>
    /// <param name="first">W0, m: width where it begins.</param>
    /// <param name="last">W1, m: width where it ends.</param>
    /// <param name="length">L, m: length.</param>
    /// <returns>A, m²; null outside the range.</returns>
    [Formula("A", "A = (W0 + W1) / 2 · L", Sources.Definition, "no input below zero; otherwise no result")]
    public static double? Taper(double first, double last, double length) =>
        Finite.NotNegative(first) && Finite.NotNegative(last) && Finite.NotNegative(length) ? 0.5 * (first + last) * length : null;

    /// <summary>Thickness that a mass per area comes to.</summary>
    /// <param name="rate">r, kg/m²: mass per area.</param>
    /// <param name="density">ρ, kg/m³: density of the finished course.</param>
    /// <returns>t, m; null outside the range.</returns>
    [Formula("t", "t = r / ρ", "Indiana technician manual, chapter 8: lb/yd2 over 110 (read)", "r not below zero, ρ above zero; otherwise no result")]
    public static double? ThicknessOfRate(double rate, double density) => Finite.NotNegative(rate) && Finite.Positive(density) ? rate / density : null;

    /// <summary>Mass that an area takes at a rate.</summary>
    /// <param name="rate">r, kg/m²: mass per area.</param>
    /// <param name="area">A, m²: area.</param>
    /// <returns>m, kg; null outside the range.</returns>
    [Formula("m", "m = r · A", Sources.Balance, "no input below zero; otherwise no result")]
    public static double? MassOfRate(double rate, double area) => Finite.NotNegative(rate) && Finite.NotNegative(area) ? rate * area : null;
}
