using Laygate.Engineering.Supply.Simulation;

namespace Laygate.Engineering.SheetData;

/// <summary>Loads of one mix for the courses of one pass.</summary>
/// <param name="Name">Name, such as the id of the course.</param>
/// <param name="Total">Mix needed, kg; above zero.</param>
/// <param name="Payloads">Payload of each load in turn, kg, above zero; asked for with the number of the load from 0.</param>
/// <param name="Reaches">Distance along the pass that a mass of this mix covers, m; rising.</param>
/// <param name="Step">Step to which loads below a full one are rounded up, kg; above zero.</param>
/// <param name="Smallest">Smallest useful load as a share of a full one; a smaller last load is shared with the one before it.</param>
public sealed record LoadSeries(
    string Name, double Total, Func<int, double> Payloads, Func<double, double> Reaches, double Step = 1000, double Smallest = 0.5);

/// <summary>A load in its place in the order.</summary>
/// <param name="Series">Series to which it belongs.</param>
/// <param name="OfSeries">Number in the series, from 0.</param>
/// <param name="Size">Size, kg; the last load of a series is what is left, in whole steps.</param>
/// <param name="NeededAt">Distance at which the mix before it is used up, m.</param>
/// <param name="EndsAt">Distance at which it is used up itself, m.</param>
/// <param name="IsLast">Whether it is the last of its series.</param>
public sealed record OrderedLoad(LoadSeries Series, int OfSeries, double Size, double NeededAt, double EndsAt, bool IsLast);

/// <summary>
/// Order of loads by running balance: the next load is always of the mix that would run out first. No chance, no buffers and
/// no feeder are in it; where a simulation of the shift gives an order, that one holds.
/// </summary>
public static class LoadsByNeed
{
    /// <summary>Most loads of one pass; more would be a slip of units.</summary>
    public const int MostLoads = 5000;

    /// <summary>The order.</summary>
    /// <param name="all">One series per mix; of two that run out at the same place the one named first goes first.</param>
    /// <returns>All loads; empty where a total or payload is no positive number or there would be too many loads.</returns>
    public static IReadOnlyList<OrderedLoad> By(params IReadOnlyList<LoadSeries> all)
    {
        var loads = new List<OrderedLoad>();
        var sent = new double[all.Count];
        var number = new int[all.Count];
        while (Next(all, sent) is var next and >= 0)
        {
            var series = all[next];
            var payload = series.Payloads(number[next]);
            if (!(payload > 0) || !double.IsFinite(series.Total) || loads.Count >= MostLoads)
            {
                return [];
            }

            var left = series.Total - sent[next];
            var size = LoadOrder.Next(left, payload, series.Step, series.Smallest);
            var isLast = left <= size * (1 + 1e-9);
            var neededAt = series.Reaches(sent[next]);
            sent[next] = isLast ? series.Total : sent[next] + size;
            loads.Add(new OrderedLoad(series, number[next]++, size, neededAt, series.Reaches(sent[next]), isLast));
        }

        return loads;
    }

    private static int Next(IReadOnlyList<LoadSeries> all, double[] sent)
    {
        var (next, nearest) = (-1, double.PositiveInfinity);
        for (var i = 0; i < all.Count; i++)
        {
            if (sent[i] < all[i].Total && all[i].Reaches(sent[i]) is var at && at < nearest - 1e-9)
            {
                (next, nearest) = (i, at);
            }
        }

        return next;
    }
}
