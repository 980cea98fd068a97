using Laygate.Engineering.Formulas;

namespace Laygate.Engineering.Acceptance;

/// <summary>The result that lies farthest from the mean, against what chance gives. One pass only: repeating the test would change its level.</summary>
/// <param name="Index">Place of the result.</param>
/// <param name="Statistic">Its distance from the mean in deviations.</param>
/// <param name="Critical">Distance that chance exceeds at the level.</param>
public sealed record Outlier(int Index, double Statistic, double Critical)
{
    /// <summary>Whether chance alone would not put it there, at the level.</summary>
    public bool IsMarked => Statistic > Critical;
}

/// <summary>Test of a single outlier.</summary>
public static class Grubbs
{
    /// <summary>Critical distance.</summary>
    /// <param name="count">n, 1: results.</param>
    /// <param name="level">α, 1: level of the test.</param>
    /// <param name="isTwoSided">k, 1: whether either end may be the outlier.</param>
    /// <returns>G, 1; null outside the range.</returns>
    [Formula("G", "G = (n − 1) / √n · √(t² / (n − 2 + t²)), t at 1 − α/n or 1 − α/(2n) with n − 2 degrees", "ASTM E178 (recalled), agrees with the table of Grubbs 1950/1969 (second-hand)", "n at least 3, α above 0 and below 0.5; otherwise no result")]
    public static double? Critical(int count, double level, bool isTwoSided)
    {
        if (count < 3 || level is not (> 0 and < 0.5) || Tails.T(count - 2, level / count * (isTwoSided ? 1 : 2)) is not { } t)
        {
            return null;
        }

        return (count - 1) / Math.Sqrt(count) * Math.Sqrt(t * t / (count - 2 + (t * t)));
    }

    /// <summary>The result farthest from the mean, on either side.</summary>
    /// <param name="results">Results.</param>
    /// <param name="level">Level of the test.</param>
    /// <returns>It; null for fewer than three results or without spread.</returns>
    public static Outlier? Of(IReadOnlyList<double> results, double level)
    {
        var deviation = QualityLevel.Deviation(results);
        if (!(deviation > 0) || Critical(results.Count, level, isTwoSided: true) is not { } critical)
        {
            return null;
        }

        var mean = results.Average();
        var farthest = Enumerable.Range(0, results.Count).MaxBy(i => Math.Abs(results[i] - mean));
        return new Outlier(farthest, Math.Abs(results[farthest] - mean) / deviation, critical);
    }
}
