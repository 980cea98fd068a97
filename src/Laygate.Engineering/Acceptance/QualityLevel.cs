using Laygate.Engineering.Formulas;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.Statistics;

namespace Laygate.Engineering.Acceptance;

/// <summary>
/// Percent within limits by the standard-deviation method: random samples of one lot and one process, about normal. What no
/// spread is, and fewer than three results, have no quality level.
/// </summary>
public static class QualityLevel
{
    private const string Advisory = "FHWA Technical Advisory T 5080.12, 23 June 1989, standard-deviation method; the form of z recalled and confirmed by Table 1B (read)";

    /// <summary>Mean of some results; their sum over their number.</summary>
    /// <param name="results">Results; at least one.</param>
    public static double Mean(IReadOnlyList<double> results) => results.Average();

    /// <summary>Standard deviation with divisor n − 1, in two passes: the one-pass form loses digits where results are large against their spread.</summary>
    /// <param name="results">Results.</param>
    /// <returns>The deviation; NaN for fewer than two.</returns>
    public static double Deviation(IReadOnlyList<double> results) => results.StandardDeviation();

    /// <summary>Share of a lot within one limit.</summary>
    /// <param name="index">Q, 1: quality index, distance of the mean from the limit in deviations, above zero on the good side.</param>
    /// <param name="count">n, 1: results.</param>
    /// <returns>P, 1; null outside the range.</returns>
    [Formula("P", "P = 1 − I(z; a, a), z = 1/2 − Q · √n / (2 · (n − 1)) between 0 and 1, a = n/2 − 1", Advisory, "n at least 3; otherwise no result")]
    public static double? Within(double index, int count)
    {
        if (count < 3 || !double.IsFinite(index))
        {
            return null;
        }

        var z = Math.Clamp(0.5 - (index * Math.Sqrt(count) / (2 * (count - 1))), 0, 1);
        var a = (count / 2.0) - 1;
        return z switch
        {
            <= 0 => 1,
            >= 1 => 0,
            _ => 1 - Beta.CDF(a, a, z),
        };
    }

    /// <summary>Share of a lot within two limits.</summary>
    /// <param name="lower">PL, 1: share above the lower limit.</param>
    /// <param name="upper">PU, 1: share below the upper limit.</param>
    /// <returns>P, 1; null outside the range.</returns>
    [Formula("P", "P = PL + PU − 1, not below 0", Advisory, "both from 0 to 1; otherwise no result")]
    public static double? WithinBoth(double lower, double upper) => lower is >= 0 and <= 1 && upper is >= 0 and <= 1 ? Math.Max(0, lower + upper - 1) : null;

    /// <summary>Quality index that belongs to a share: a cell of the tables of Q.</summary>
    /// <param name="share">P, 1: share of the lot within the limit.</param>
    /// <param name="count">n, 1: results.</param>
    /// <returns>Q, 1; null outside the range.</returns>
    [Formula("Q", "Q = (1 − 2 · z) · (n − 1) / √n with I(z; a, a) = 1 − P", Advisory, "P above 0 and below 1, n at least 3; otherwise no result")]
    public static double? Index(double share, int count)
    {
        if (count < 3 || share is not (> 0 and < 1))
        {
            return null;
        }

        var (low, high) = (-(count - 1) / Math.Sqrt(count), (count - 1) / Math.Sqrt(count));
        for (var i = 0; i < 80; i++)
        {
            var middle = (low + high) / 2;
            (low, high) = Within(middle, count) < share ? (middle, high) : (low, middle);
        }

        return (low + high) / 2;
    }

    /// <summary>Percent by a table of Q for each whole percent from 50 on: the next higher one, or straight between two. Below zero, 100 less that of −Q.</summary>
    /// <param name="index">Q.</param>
    /// <param name="count">n, at least 3.</param>
    /// <param name="decimals">Decimals to which the cells of the table are rounded.</param>
    /// <param name="interpolated">Whether to go straight between two rows.</param>
    /// <returns>The percent; null outside the range.</returns>
    public static double? ByTable(double index, int count, int decimals, bool interpolated)
    {
        if (count < 3 || !double.IsFinite(index))
        {
            return null;
        }

        if (index < 0)
        {
            return 100 - ByTable(-index, count, decimals, interpolated);
        }

        var percent = 50;
        while (percent < 100 && Cell(percent, count, decimals) < index)
        {
            percent++;
        }

        if (!interpolated || percent == 50)
        {
            return percent;
        }

        var (below, above) = (Cell(percent - 1, count, decimals), Cell(percent, count, decimals));
        return above > below ? Math.Min(100, percent - 1 + ((index - below) / (above - below))) : percent;
    }

    /// <summary>A cell of a table of Q.</summary>
    /// <param name="percent">Percent, 50 to 100; at 100 the least Q that gives all.</param>
    /// <param name="count">n.</param>
    /// <param name="decimals">Decimals.</param>
    public static double Cell(int percent, int count, int decimals) =>
        percent >= 100 ? Math.Round((count - 1) / Math.Sqrt(count), decimals, MidpointRounding.AwayFromZero) : Math.Round(Index(percent / 100.0, count)!.Value, decimals, MidpointRounding.AwayFromZero);

    /// <summary>Lower end of the mean: what it is not below with a chance.</summary>
    /// <param name="mean">x, 1: mean.</param>
    /// <param name="deviation">s, 1: standard deviation.</param>
    /// <param name="count">n, 1: results.</param>
    /// <param name="chance">p, 1: chance.</param>
    /// <returns>X, 1; null outside the range.</returns>
    [Formula("X", "X = x − t(p; n − 1) · s / √n", "JTG F80/1, acceptance of thickness and compaction (recalled); coefficients from the t distribution", "n at least 2, s not below zero, p between 0.5 and 1; otherwise no result")]
    public static double? LowerMean(double mean, double deviation, int count, double chance) =>
        count < 2 || !Finite.NotNegative(deviation) || chance is not (>= 0.5 and < 1) || !double.IsFinite(mean) || Tails.T(count - 1, 2 * (1 - chance)) is not { } t
            ? null
            : mean - (t * deviation / Math.Sqrt(count));
}
