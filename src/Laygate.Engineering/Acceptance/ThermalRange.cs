using Laygate.Engineering.Numerics;

namespace Laygate.Engineering.Acceptance;

/// <summary>Range of the skin temperatures of one profile.</summary>
/// <param name="From">First station, m.</param>
/// <param name="To">Last station, m.</param>
/// <param name="Readings">Readings that were used.</param>
/// <param name="Low">Low percentile, °C.</param>
/// <param name="High">High percentile, °C.</param>
public sealed record ThermalRange(double From, double To, int Readings, double Low, double High)
{
    /// <summary>The range, K.</summary>
    public double Range => High - Low;

    /// <summary>The range of some readings; percentiles are straight between order statistics at rank 1 + (N − 1) p.</summary>
    /// <param name="from">First station, m.</param>
    /// <param name="to">Last station, m.</param>
    /// <param name="readings">Readings, °C.</param>
    /// <param name="low">Low percentile as a share; 0 for the least.</param>
    /// <param name="high">High percentile as a share; 1 for the greatest.</param>
    /// <returns>The range; null for fewer than two readings.</returns>
    public static ThermalRange? Of(double from, double to, IEnumerable<double> readings, double low, double high)
    {
        double[] ordered = [.. readings.Where(double.IsFinite).Order()];
        return ordered.Length < 2 ? null : new ThermalRange(from, to, ordered.Length, Quantiles.Of(ordered, low), Quantiles.Of(ordered, high));
    }
}
