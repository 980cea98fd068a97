namespace Laygate.Engineering.Supply.Simulation;

/// <summary>The order of loads of two mixes as a list.</summary>
public static class LoadOrder
{
    /// <summary>Most loads of a list.</summary>
    public const int Most = ShiftSimulator.MostLoads;

    /// <summary>
    /// Order by running balance: a load of the upper mix follows as soon as the loads of the lower mix so far call for a whole
    /// one. The upper mix never comes before it is needed, so the first group of the lower mix is the longest.
    /// </summary>
    /// <param name="lower">Loads of the lower mix in order, kg.</param>
    /// <param name="upper">Loads of the upper mix in order, kg.</param>
    /// <param name="ratio">Mass of the lower mix for one mass unit of the upper, above zero.</param>
    /// <returns>True for the upper mix, false for the lower; null for a ratio that is no number above zero, or too many loads.</returns>
    public static IReadOnlyList<bool>? ByBalance(IReadOnlyList<double> lower, IReadOnlyList<double> upper, double ratio)
    {
        if (!(ratio > 0) || !double.IsFinite(ratio) || lower.Count + upper.Count > Most || lower.Concat(upper).Any(load => !(load > 0)))
        {
            return null;
        }

        var order = new List<bool>(lower.Count + upper.Count);
        var (needed, sent, next) = (0.0, 0.0, 0);
        foreach (var load in lower)
        {
            order.Add(false);
            needed += load / ratio;
            while (next < upper.Count && sent + upper[next] <= needed + PavingSite.Tiny)
            {
                order.Add(true);
                sent += upper[next++];
            }
        }

        order.AddRange(Enumerable.Repeat(true, upper.Count - next));
        return order;
    }

    /// <summary>
    /// The next of the loads that carry a mass: a full one, or what is left, in whole steps. Where the load after it would be
    /// smaller than is useful, the two share what is left: nobody sends a truck with a tonne.
    /// </summary>
    /// <param name="rest">What is still to be sent, kg; above zero.</param>
    /// <param name="payload">A full load, kg; above zero.</param>
    /// <param name="step">Step to which loads below a full one are rounded up, kg; above zero.</param>
    /// <param name="smallest">Smallest useful load as a share of a full one, 0 to 1; above one half it can be kept only as far as two loads allow.</param>
    public static double Next(double rest, double payload, double step, double smallest)
    {
        var after = rest - payload;
        var share = after > PavingSite.Tiny && after < (smallest * payload) - PavingSite.Tiny ? rest / 2 : rest;
        return share >= payload ? payload : Math.Min(payload, Math.Ceiling((share - PavingSite.Tiny) / step) * step);
    }

    /// <summary>Loads of equal size that carry a mass; the last two are smaller where the last alone would be too small.</summary>
    /// <param name="mass">Mass, kg.</param>
    /// <param name="payload">Payload, kg.</param>
    /// <param name="step">Step to which loads below a full one are rounded up, kg.</param>
    /// <param name="smallest">Smallest useful load as a share of a full one, 0 to 1.</param>
    /// <returns>The loads; none where a figure is not above zero or there would be too many.</returns>
    public static IReadOnlyList<double> Loads(double mass, double payload, double step, double smallest = 0.5)
    {
        if (!(mass > 0) || !(payload > 0) || !(step > 0) || !(smallest >= 0) || !(mass / payload <= Most))
        {
            return [];
        }

        var loads = new List<double>();
        for (var rest = mass; rest > Math.Max(PavingSite.Tiny, 1e-9 * payload); rest -= loads[^1])
        {
            loads.Add(Next(rest, payload, step, smallest));
        }

        return loads;
    }
}
