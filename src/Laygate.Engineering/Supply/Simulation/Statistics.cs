using Laygate.Engineering.Numerics;
using MathNet.Numerics.Distributions;

namespace Laygate.Engineering.Supply.Simulation;

/// <summary>Means, points and confidence limits of replications.</summary>
internal static class Statistics
{
    /// <summary>Two-sided 90 % point of the normal distribution.</summary>
    private static readonly double Ninety = Normal.InvCDF(0, 1, 0.95);

    /// <summary>A share with its exact 90 % confidence limits (Clopper and Pearson 1934, from memory: quantiles of the beta distribution).</summary>
    public static Band Share(int hits, int count) => new(
        (double)hits / count,
        hits == 0 ? 0 : Beta.InvCDF(hits, count - hits + 1, 0.05),
        hits == count ? 1 : Beta.InvCDF(hits + 1, count - hits, 0.95));

    /// <summary>A mean with its 90 % confidence limits, never below zero.</summary>
    public static Band MeanOf(double[] values)
    {
        var mean = values.Sum() / values.Length;
        var square = values.Sum(value => (value - mean) * (value - mean));
        var half = values.Length < 2 ? 0 : Ninety * Math.Sqrt(square / (values.Length - 1) / values.Length);
        return new Band(mean, Math.Min(mean, Math.Max(0, mean - half)), mean + half);
    }

    /// <summary>A mean with the 5 % and 95 % points of the samples.</summary>
    public static Band Spread(double[] values)
    {
        var mean = values.Sum() / values.Length;
        Array.Sort(values);
        return new Band(mean, Math.Min(mean, Quantiles.Of(values, 0.05)), Math.Max(mean, Quantiles.Of(values, 0.95)));
    }

    /// <summary>The class in whose middle a point of counted values lies.</summary>
    public static double PointOfClasses(ReadOnlySpan<int> classes, long count, double share)
    {
        var left = share * count;
        for (var i = 0; i < classes.Length; i++)
        {
            left -= classes[i];
            if (left <= 0)
            {
                return i + 0.5;
            }
        }

        return classes.Length;
    }
}
