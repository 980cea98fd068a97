using System.Runtime.InteropServices;
using Laygate.Engineering.Formulas;

namespace Laygate.Engineering.Supply.Queueing;

/// <summary>Long-run state of a queue whose customers come back.</summary>
/// <param name="Throughput">X, 1/s: customers served per second.</param>
/// <param name="AtServers">L, 1: mean number waiting or in service.</param>
/// <param name="Waiting">Lq, 1: mean number waiting.</param>
/// <param name="Wait">Wq, s: mean wait.</param>
/// <param name="Stay">W, s: mean wait and service.</param>
/// <param name="ServerUse">U, 1: share of time in which a server is busy.</param>
/// <param name="AllIdle">P0, 1: share of time in which nobody is there.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct FiniteSourceState(
    double Throughput, double AtServers, double Waiting, double Wait, double Stay, double ServerUse, double AllIdle);

/// <summary>Chance of waiting and efficiency, as the finite-queue tables list them.</summary>
/// <param name="Delay">D, 1: chance that an arriving customer waits.</param>
/// <param name="Efficiency">F, 1: share of the customers that do not wait.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct FiniteQueueRow(double Delay, double Efficiency);

/// <summary>Trucks between a plant or a paver and the rest of their round as a queue with a finite source, M/M/c//N: exponential service, any time away.</summary>
public static class FiniteSource
{
    private const string Range = "N from 1 to 10 000, c from 1 on, times above zero; otherwise no result. Exponential service is the pessimistic side of real unloading";
    private const int Most = 10_000;

    /// <summary>Long-run state of N customers at c servers.</summary>
    /// <param name="away">Z, s: mean time away from the servers.</param>
    /// <param name="service">s, s: mean service time.</param>
    /// <param name="customers">N, 1: number of customers.</param>
    /// <param name="servers">c, 1: number of servers.</param>
    /// <returns>X, 1/s; and with it L, Lq, W, Wq, use and chance of nobody there. Null outside the range.</returns>
    [Formula("X", "X = λ · (N − L), λ = 1/Z, p(n) = p(n−1) · (N−n+1) · λ / (min(n,c) · μ)", QueueSources.FiniteSource, Range)]
    public static FiniteSourceState? Of(double away, double service, int customers, int servers)
    {
        if (!Usable(away, service, customers, servers))
        {
            return null;
        }

        var chances = Chances(service / away, customers, servers);
        var (present, waiting) = (0.0, 0.0);
        for (var n = 1; n <= customers; n++)
        {
            present += n * chances[n];
            waiting += Math.Max(0, n - servers) * chances[n];
        }

        var throughput = (customers - present) / away;
        var wait = waiting / throughput;
        return new FiniteSourceState(
            throughput, present, waiting, wait, wait + service, throughput * service / servers, chances[0]);
    }

    /// <summary>A row of the finite-queue tables.</summary>
    /// <param name="serviceFactor">X, 1: service time over service time and time away.</param>
    /// <param name="customers">N, 1: number of customers.</param>
    /// <param name="servers">M, 1: number of servers.</param>
    /// <returns>D, 1; and with it F. Null outside the range.</returns>
    [Formula("D", "D = P(at least M of N−1 are there), F = 1 − Lq/N", QueueSources.Table, Range)]
    public static FiniteQueueRow? TableRow(double serviceFactor, int customers, int servers)
    {
        if (serviceFactor is not (> 0 and < 1) || !Usable(1, 1, customers, servers))
        {
            return null;
        }

        var ratio = serviceFactor / (1 - serviceFactor);
        var others = Chances(ratio, customers - 1, servers);
        var all = Chances(ratio, customers, servers);
        var delay = others.Skip(servers).Sum();
        var waiting = all.Select((chance, n) => Math.Max(0, n - servers) * chance).Sum();
        return new FiniteQueueRow(delay, 1 - (waiting / customers));
    }

    private static bool Usable(double away, double service, int customers, int servers) =>
        Finite.Positive(away) && Finite.Positive(service) && Finite.Positive(service / away) && customers is >= 1 and <= Most && servers >= 1;

    /// <summary>Chance of each number of customers at the servers.</summary>
    private static double[] Chances(double ratio, int customers, int servers)
    {
        const double Large = 1e250;
        var chances = new double[customers + 1];
        chances[0] = 1;
        for (var n = 1; n <= customers; n++)
        {
            chances[n] = chances[n - 1] * (customers - n + 1) * ratio / Math.Min(n, servers);
            if (chances[n] > Large)
            {
                for (var i = 0; i <= n; i++)
                {
                    chances[i] /= Large;
                }
            }
        }

        var sum = chances.Sum();
        return [.. chances.Select(chance => chance / sum)];
    }
}
