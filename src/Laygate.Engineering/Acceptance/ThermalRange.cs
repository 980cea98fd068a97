using Laygate.Engineering.Formulas;
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

    /// <summary>Standard uncertainty of an infrared reading from the accuracy of its instrument, evenly spread, and from emissivity.</summary>
    /// <param name="reading">T, °C: the reading.</param>
    /// <param name="accuracy">a, 1: accuracy, as a share of the reading in °C.</param>
    /// <param name="emissivity">ue, K: standard uncertainty from emissivity and surroundings.</param>
    /// <returns>u, K; null outside the range.</returns>
    [Formula("u", "u = √((a · T / √3)² + ue²)", "JCGM 100:2008, 4.3.7 and 5.1.2 (recalled)", "T, a and ue not below zero; otherwise no result")]
    public static double? SkinUncertainty(double reading, double accuracy, double emissivity) =>
        Finite.NotNegative(reading) && Finite.NotNegative(accuracy) && Finite.NotNegative(emissivity) ? Math.Sqrt((accuracy * reading * accuracy * reading / 3) + (emissivity * emissivity)) : null;

    /// <summary>The range of some readings; percentiles are straight between order statistics at rank 1 + (N − 1) p.</summary>
    /// <param name="from">First station, m.</param>
    /// <param name="to">Last station, m.</param>
    /// <param name="readings">Readings, °C.</param>
    /// <param name="low">Low percentile as a share; 0 for the least.</param>
    /// <param name="high">High percentile as a share; 1 for the greatest.</param>
    /// <returns>The range; null for fewer than two readings and percentiles outside 0 to 1.</returns>
    public static ThermalRange? Of(double from, double to, IEnumerable<double> readings, double low, double high)
    {
        double[] ordered = [.. readings.Where(double.IsFinite).Order()];
        return ordered.Length < 2 || low is not (>= 0 and <= 1) || high is not (>= 0 and <= 1) ? null : new ThermalRange(from, to, ordered.Length, Quantiles.Of(ordered, low), Quantiles.Of(ordered, high));
    }
}
