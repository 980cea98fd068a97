using Laygate.Engineering.Formulas;

namespace Laygate.Engineering.Supply;

/// <summary>One mix that a feeder passes on.</summary>
/// <param name="Demand">R, kg/s: demand of the paver.</param>
/// <param name="Payload">P, kg: payload of one truck.</param>
public sealed record FedMix(double Demand, double Payload);

/// <summary>The feeder's timing.</summary>
/// <param name="Rate">Q, kg/s: rate while it feeds.</param>
/// <param name="Exchange">e, s: one truck leaves and the next docks and tips. Counted twice where trucks may unload in parts.</param>
/// <param name="Changeover">c, s: turn from one buffer to the other, each way.</param>
public sealed record FeederTiming(double Rate, double Exchange, double Changeover);

/// <summary>
/// Two mixes through one feeder into two buffers: a worst-case bound. The feeder is away from the lower buffer for two
/// changeovers, two exchanges and one load of the upper mix; a whole load does not fit into a nearly full buffer.
/// </summary>
public static class TwoMixFeeding
{
    private const string Range = "all rates and payloads above zero, times not below zero; otherwise no result. A bound: a simulation of the haul decides";

    /// <summary>Capacity that the lower buffer needs so that the paver never waits while the upper mix is fed.</summary>
    /// <param name="lower">Lower mix: Rb, kg/s, and Pb, kg.</param>
    /// <param name="upper">Upper mix: Ps, kg.</param>
    /// <param name="feeder">Feeder: Q, kg/s, e, s, and c, s.</param>
    /// <param name="lowest">B0, kg: lowest workable level.</param>
    /// <returns>Cb, kg; null outside the range.</returns>
    [Formula("Cb", "Cb = B0 + Rb · (2c + 2e + Ps/Q) + Pb − Rb · (e + Pb/Q)", Sources.TwoMixes, Range)]
    public static double? LowerBufferNeeded(FedMix lower, FedMix upper, FeederTiming feeder, double lowest)
    {
        if (!Usable(lower, upper, feeder) || !Finite.NotNegative(lowest))
        {
            return null;
        }

        var (e, c) = (feeder.Exchange, feeder.Changeover);
        var away = (2 * c) + (2 * e) + Feeding(upper, feeder);
        return Finite.OrNull(lowest + lower.Payload
            + (lower.Demand * (away - e - Feeding(lower, feeder))));
    }

    /// <summary>Level of the upper buffer below which a call for its next load comes too late.</summary>
    /// <param name="lower">Lower mix: Pb, kg.</param>
    /// <param name="upper">Upper mix: Rs, kg/s.</param>
    /// <param name="feeder">Feeder: Q, kg/s, e, s, and c, s.</param>
    /// <param name="lowest">S0, kg: lowest workable level of the upper buffer.</param>
    /// <returns>Sl, kg; null outside the range.</returns>
    [Formula("Sl", "Sl = S0 + Rs · (e + Pb/Q + c + e)", Sources.TwoMixes, Range)]
    public static double? CallLowest(FedMix lower, FedMix upper, FeederTiming feeder, double lowest) =>
        Usable(lower, upper, feeder) && Finite.NotNegative(lowest)
            ? Finite.OrNull(lowest + (upper.Demand
                * ((2 * feeder.Exchange) + Feeding(lower, feeder) + feeder.Changeover)))
            : null;

    /// <summary>Level of the upper buffer above which a called load does not fit when it arrives.</summary>
    /// <param name="upper">Upper mix: Rs, kg/s, and Ps, kg.</param>
    /// <param name="feeder">Feeder: Q, kg/s, e, s, and c, s.</param>
    /// <param name="capacity">Cs, kg: capacity of the upper buffer.</param>
    /// <returns>Sh, kg; null outside the range. Below the lowest call level there is no workable level: the load is too large.</returns>
    [Formula("Sh", "Sh = Cs − Ps + Rs · (c + e + Ps/Q)", Sources.TwoMixes, Range)]
    public static double? CallHighest(FedMix upper, FeederTiming feeder, double capacity) =>
        Usable(upper, upper, feeder) && Finite.Positive(capacity)
            ? Finite.OrNull(capacity - upper.Payload + (upper.Demand
                * (feeder.Changeover + feeder.Exchange + Feeding(upper, feeder))))
            : null;

    /// <summary>Share of the time in which the feeder is busy with two mixes.</summary>
    /// <param name="lower">Lower mix: Rb, kg/s, and Pb, kg.</param>
    /// <param name="upper">Upper mix: Rs, kg/s, and Ps, kg.</param>
    /// <param name="feeder">Feeder: Q, kg/s, e, s, and c, s.</param>
    /// <returns>u, 1; null outside the range. At 1 or above the paver must wait.</returns>
    [Formula("u", "u = [(e + Pb/Q) · n + (e + Ps/Q) + 2c] / (Ps/Rs), n = (Rb/Pb) / (Rs/Ps)", Sources.TwoMixes, Range)]
    public static double? Occupation(FedMix lower, FedMix upper, FeederTiming feeder) =>
        Usable(lower, upper, feeder)
            ? OfOne(lower, feeder) + OfOne(upper, feeder) + (2 * feeder.Changeover * LoadsPerSecond(upper))
            : null;

    /// <summary>Share of the time in which the feeder is busy with one mix.</summary>
    /// <param name="mix">The mix: R, kg/s, and P, kg.</param>
    /// <param name="feeder">Feeder: Q, kg/s, and e, s.</param>
    /// <returns>u, 1; null outside the range. At 1 or above the paver must wait.</returns>
    [Formula("u", "u = (e + P/Q) / (P/R)", Sources.TwoMixes, Range)]
    public static double? Occupation(FedMix mix, FeederTiming feeder) => Usable(mix, mix, feeder) ? OfOne(mix, feeder) : null;

    private static double OfOne(FedMix mix, FeederTiming feeder) =>
        LoadsPerSecond(mix) * (feeder.Exchange + Feeding(mix, feeder));

    private static double LoadsPerSecond(FedMix mix) => mix.Demand / mix.Payload;

    private static double Feeding(FedMix mix, FeederTiming feeder) => mix.Payload / feeder.Rate;

    private static bool Usable(FedMix a, FedMix b, FeederTiming feeder) =>
        Finite.Positive(a.Demand, a.Payload, feeder.Rate)
        && Finite.Positive(b.Demand, b.Payload, feeder.Rate)
        && Finite.NotNegative(feeder.Exchange) && Finite.NotNegative(feeder.Changeover);
}
