namespace Laygate.Engineering.Acceptance;

/// <summary>The offset of one gauge for one course, from places where a core was cut. It is no regression: outside the densities of the pairs it says nothing.</summary>
/// <param name="Pairs">Number of pairs.</param>
/// <param name="Offset">Mean of core less gauge, kg/m³; added to each reading.</param>
/// <param name="Deviation">Standard deviation of the differences, kg/m³; NaN for one pair.</param>
/// <param name="Low">Least reading of the pairs, kg/m³.</param>
/// <param name="High">Greatest reading of the pairs, kg/m³.</param>
public sealed record GaugeOffset(int Pairs, double Offset, double Deviation, double Low, double High)
{
    /// <summary>The offset from pairs of gauge and core.</summary>
    /// <param name="pairs">Readings with the density of the core at the same place, kg/m³.</param>
    /// <returns>The offset; null without a pair.</returns>
    public static GaugeOffset? Of(IReadOnlyList<(double Gauge, double Core)> pairs)
    {
        double[] differences = [.. pairs.Select(pair => pair.Core - pair.Gauge)];
        return pairs.Count == 0 ? null : new GaugeOffset(pairs.Count, differences.Average(), QualityLevel.Deviation(differences), pairs.Min(pair => pair.Gauge), pairs.Max(pair => pair.Gauge));
    }

    /// <summary>Standard uncertainty of one corrected reading, kg/m³: that of the reading, that of the offset, that of the cores; derived.</summary>
    /// <param name="core">Standard uncertainty of the density of a core, kg/m³.</param>
    /// <returns>It; NaN for one pair.</returns>
    public double Uncertainty(double core) => Math.Sqrt((Deviation * Deviation) + (Deviation * Deviation / Pairs) + (core * core));
}
