namespace Laygate.Engineering.Numerics;

/// <summary>Points of samples below which a share of them lies.</summary>
public static class Quantiles
{
    /// <summary>
    /// A point of ordered samples, straight between neighbours: definition 7 of Hyndman and Fan 1996, The American Statistician
    /// 50(4) (recalled), R7 of MathNet.Numerics, which a test compares. That function is not called because it takes arrays only
    /// and gives no number beside a sample that is infinite: a time that is never reached.
    /// </summary>
    /// <param name="ordered">Samples in rising order; at least one.</param>
    /// <param name="share">Share from 0 to 1.</param>
    /// <returns>The point; infinite where the samples it lies between are.</returns>
    public static double Of(ReadOnlySpan<double> ordered, double share)
    {
        var place = Math.Clamp(share, 0, 1) * (ordered.Length - 1);
        var below = (int)place;
        var (a, b) = (ordered[below], ordered[Math.Min(below + 1, ordered.Length - 1)]);
        return a.Equals(b) || place.Equals(below) ? a : a + ((place - below) * (b - a));
    }
}
