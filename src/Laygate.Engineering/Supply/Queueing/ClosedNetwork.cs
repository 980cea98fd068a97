using System.Runtime.InteropServices;
using Laygate.Engineering.Formulas;

namespace Laygate.Engineering.Supply.Queueing;

/// <summary>Long-run state of a closed network.</summary>
/// <param name="Throughput">X, 1/s: rounds per second.</param>
/// <param name="Stay">R, s: mean wait and service at each station.</param>
/// <param name="Wait">Wq, s: mean wait at each station.</param>
/// <param name="Use">U, 1: share of time in which each station is busy.</param>
/// <param name="Cycle">C, s: mean time of one round.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct ClosedNetworkState(
    double Throughput, IReadOnlyList<double> Stay, IReadOnlyList<double> Wait, IReadOnlyList<double> Use, double Cycle);

/// <summary>Trucks between stations with one server each: loading, unloading and the journeys between.</summary>
public static class ClosedNetwork
{
    private const string Range = "N from 1 to 10 000, service times above zero, travel not below zero; otherwise no result";
    private const int Most = 10_000;

    /// <summary>Mean value analysis: exact for exponential service in order of arrival; the spread of the journeys does not matter.</summary>
    /// <param name="trucks">N, 1: number of trucks.</param>
    /// <param name="travel">Z, s: mean time of all journeys of a round.</param>
    /// <param name="services">si, s: mean service time at each station.</param>
    /// <returns>X, 1/s; and with it stay, wait and use of each station. Null outside the range.</returns>
    [Formula("X", "X = n / (Z + Σ Ri), Ri(n) = si · (1 + Li(n−1)), Li(n) = X(n) · Ri(n)", QueueSources.ClosedNetwork, Range)]
    public static ClosedNetworkState? MeanValues(int trucks, double travel, IReadOnlyList<double> services)
    {
        if (!Usable(trucks, travel, services))
        {
            return null;
        }

        var present = new double[services.Count];
        var stay = new double[services.Count];
        var throughput = 0.0;
        for (var n = 1; n <= trucks; n++)
        {
            for (var i = 0; i < stay.Length; i++)
            {
                stay[i] = services[i] * (1 + present[i]);
            }

            throughput = n / (travel + stay.Sum());
            for (var i = 0; i < stay.Length; i++)
            {
                present[i] = throughput * stay[i];
            }
        }

        return new ClosedNetworkState(
            throughput,
            stay,
            [.. stay.Select((time, i) => time - services[i])],
            [.. services.Select(service => throughput * service)],
            trucks / throughput);
    }

    /// <summary>Rounds when nothing varies: more is not possible with these means.</summary>
    /// <param name="trucks">N, 1: number of trucks.</param>
    /// <param name="travel">Z, s: time of all journeys of a round.</param>
    /// <param name="services">si, s: service time at each station.</param>
    /// <returns>X, 1/s; null outside the range.</returns>
    [Formula("X", "X = min( N / (Z + Σ si), 1 / max si )", QueueSources.Bound, Range)]
    public static double? DeterministicBound(int trucks, double travel, IReadOnlyList<double> services) => Usable(trucks, travel, services)
        ? Math.Min(trucks / (travel + services.Sum()), 1 / services.Max())
        : null;

    private static bool Usable(int trucks, double travel, IReadOnlyList<double> services) =>
        trucks is >= 1 and <= Most && Finite.NotNegative(travel) && services.Count > 0
        && services.All(Finite.Positive) && Finite.Positive(services.Sum());
}
