using Laygate.Engineering.Formulas;
using MathNet.Numerics.Distributions;

namespace Laygate.Engineering.Acceptance;

/// <summary>Results of one side.</summary>
/// <param name="Mean">Mean.</param>
/// <param name="Deviation">Standard deviation with n − 1.</param>
/// <param name="Count">Number of results.</param>
public sealed record SetOfResults(double Mean, double Deviation, int Count)
{
    /// <summary>The set of single results; null for fewer than two.</summary>
    public static SetOfResults? Of(IReadOnlyList<double> results) => results.Count < 2 ? null : new SetOfResults(results.Average(), QualityLevel.Deviation(results), results.Count);
}

/// <summary>
/// Tests of the results of two laboratories, of contractor and agency for example: variances by F, means by t. Neither proves that two sets agree:
/// with few results they find only large differences.
/// </summary>
public static class TwoSets
{
    private const string Texts = "FHWA-RD-02-095, appendix F, and FHWA-HRT-04-046, chapter 7 (introductions read); formulas of any textbook of statistics (recalled), which agree with the published examples of docs/verification";

    /// <summary>Ratio of the larger to the smaller variance.</summary>
    /// <param name="first">s1, 1: deviation of one set.</param>
    /// <param name="second">s2, 1: deviation of the other.</param>
    /// <returns>F, 1; null outside the range.</returns>
    [Formula("F", "F = larger s² / smaller s²", Texts, "both deviations above zero; otherwise no result")]
    public static double? Ratio(double first, double second) =>
        first > 0 && second > 0 ? Math.Pow(Math.Max(first, second) / Math.Min(first, second), 2) : null;

    /// <summary>Ratio that equal variances exceed by chance at a level, either side being the larger.</summary>
    /// <param name="larger">n1, 1: results of the set with the larger variance.</param>
    /// <param name="smaller">n2, 1: results of the other.</param>
    /// <param name="level">α, 1.</param>
    /// <returns>F, 1; null outside the range.</returns>
    [Formula("Fc", "Fc = F at 1 − α/2 with n1 − 1 and n2 − 1 degrees", Texts, "at least two results each, α above 0 and below 1; otherwise no result")]
    public static double? CriticalRatio(int larger, int smaller, double level) =>
        larger < 2 || smaller < 2 || level is not (> 0 and < 1) ? null : Tails.F(larger - 1, smaller - 1, level / 2);

    /// <summary>Chance of a ratio at least so far from 1, either side being the larger.</summary>
    /// <param name="ratio">F, 1: at least 1.</param>
    /// <param name="larger">n1, 1: results of the set with the larger variance.</param>
    /// <param name="smaller">n2, 1: results of the other.</param>
    /// <returns>p, 1; null outside the range.</returns>
    [Formula("p", "p = 2 min(P(F), 1 − P(F)) with n1 − 1 and n2 − 1 degrees", Texts, "F above zero and at least two results each; otherwise no result")]
    public static double? ChanceOfRatio(double ratio, int larger, int smaller)
    {
        if (!(ratio > 0) || larger < 2 || smaller < 2)
        {
            return null;
        }

        var below = FisherSnedecor.CDF(larger - 1, smaller - 1, ratio);
        return Math.Min(1, 2 * Math.Min(below, 1 - below));
    }

    /// <summary>Common deviation of two sets.</summary>
    /// <param name="first">s1, 1: deviation of one set.</param>
    /// <param name="firstCount">n1, 1: its results.</param>
    /// <param name="second">s2, 1: deviation of the other.</param>
    /// <param name="secondCount">n2, 1: its results.</param>
    /// <returns>sp, 1; null outside the range.</returns>
    [Formula("sp", "sp = √(((n1 − 1) s1² + (n2 − 1) s2²) / (n1 + n2 − 2))", Texts, "at least one result each and three together, deviations not negative; otherwise no result")]
    public static double? Pooled(double first, int firstCount, double second, int secondCount) =>
        firstCount < 1 || secondCount < 1 || firstCount + secondCount < 3 || !(first >= 0) || !(second >= 0) ? null
            : Math.Sqrt((((firstCount - 1) * first * first) + ((secondCount - 1) * second * second)) / (firstCount + secondCount - 2));

    /// <summary>Difference of two means in its common standard error.</summary>
    /// <param name="difference">d, 1: first mean less second.</param>
    /// <param name="pooled">sp, 1: common deviation.</param>
    /// <param name="firstCount">n1, 1: results of one set.</param>
    /// <param name="secondCount">n2, 1: results of the other.</param>
    /// <returns>t, 1; null outside the range.</returns>
    [Formula("t", "t = d / (sp √(1/n1 + 1/n2))", Texts, "sp above zero, at least one result each; otherwise no result")]
    public static double? PooledT(double difference, double pooled, int firstCount, int secondCount) =>
        pooled > 0 && firstCount > 0 && secondCount > 0 ? difference / (pooled * Math.Sqrt((1.0 / firstCount) + (1.0 / secondCount))) : null;

    /// <summary>Difference of two means in its standard error, variances apart.</summary>
    /// <param name="difference">d, 1: first mean less second.</param>
    /// <param name="first">s1, 1: deviation of one set.</param>
    /// <param name="firstCount">n1, 1: its results.</param>
    /// <param name="second">s2, 1: deviation of the other.</param>
    /// <param name="secondCount">n2, 1: its results.</param>
    /// <returns>t, 1; null outside the range.</returns>
    [Formula("t", "t = d / √(s1²/n1 + s2²/n2)", Texts, "at least two results each, deviations not below zero and one of them above; otherwise no result")]
    public static double? WelchT(double difference, double first, int firstCount, double second, int secondCount) =>
        firstCount < 2 || secondCount < 2 || !Finite.NotNegative(first) || !Finite.NotNegative(second) || !((first * first / firstCount) + (second * second / secondCount) is > 0 and var variance) ? null : difference / Math.Sqrt(variance);

    /// <summary>Degrees of freedom where variances differ.</summary>
    /// <param name="first">s1, 1: deviation of one set.</param>
    /// <param name="firstCount">n1, 1: its results.</param>
    /// <param name="second">s2, 1: deviation of the other.</param>
    /// <param name="secondCount">n2, 1: its results.</param>
    /// <returns>ν, 1; null outside the range.</returns>
    [Formula("ν", "ν = (v1 + v2)² / (v1²/(n1 − 1) + v2²/(n2 − 1)), v = s²/n", Texts, "at least two results each, deviations not below zero and one of them above; otherwise no result")]
    public static double? WelchDegrees(double first, int firstCount, double second, int secondCount)
    {
        var (v1, v2) = (first * first / firstCount, second * second / secondCount);
        return firstCount < 2 || secondCount < 2 || !Finite.NotNegative(first) || !Finite.NotNegative(second) || !(v1 + v2 > 0) ? null : Math.Pow(v1 + v2, 2) / ((v1 * v1 / (firstCount - 1)) + (v2 * v2 / (secondCount - 1)));
    }

    /// <summary>Mean difference of split samples in its standard error.</summary>
    /// <param name="mean">d, 1: mean of the differences.</param>
    /// <param name="deviation">s, 1: their deviation.</param>
    /// <param name="count">n, 1: pairs.</param>
    /// <returns>t, 1; null outside the range.</returns>
    [Formula("t", "t = d √n / s", Texts, "at least two pairs and s above zero; otherwise no result")]
    public static double? PairedT(double mean, double deviation, int count) => count < 2 || !(deviation > 0) ? null : mean * Math.Sqrt(count) / deviation;

    /// <summary>Distance that equal means exceed by chance at a level, on either side.</summary>
    /// <param name="degrees">ν, 1: degrees of freedom.</param>
    /// <param name="level">α, 1.</param>
    /// <returns>t, 1; null outside the range.</returns>
    [Formula("tc", "tc = t at 1 − α/2 with ν degrees", Texts, "ν above zero, α above 0 and below 1; otherwise no result")]
    public static double? CriticalT(double degrees, double level) => !(degrees > 0) || level is not (> 0 and < 1) ? null : Tails.T(degrees, level);

    /// <summary>Chance of a distance at least so large, on either side.</summary>
    /// <param name="t">t, 1: the distance in standard errors.</param>
    /// <param name="degrees">ν, 1: degrees of freedom.</param>
    /// <returns>p, 1; null outside the range.</returns>
    [Formula("p", "p = 2 (1 − P(|t|)) with ν degrees", Texts, "ν above zero; otherwise no result")]
    public static double? ChanceOfT(double t, double degrees) => degrees > 0 && double.IsFinite(t) ? 2 * StudentT.CDF(0, 1, degrees, -Math.Abs(t)) : null;

    /// <summary>Low end of the interval that holds the ratio of two variances with a chance.</summary>
    /// <param name="first">s1, 1: deviation of one set.</param>
    /// <param name="firstCount">n1, 1: its results.</param>
    /// <param name="second">s2, 1: deviation of the other.</param>
    /// <param name="secondCount">n2, 1: its results.</param>
    /// <param name="level">α, 1: chance that it does not hold it.</param>
    /// <returns>R, 1; null outside the range.</returns>
    [Formula("R", "R = (s1² / s2²) / F at 1 − α/2 with n1 − 1 and n2 − 1 degrees", Texts, "both deviations above zero, at least two results each, α above 0 and below 1; otherwise no result. The high end is 1 over the low end of the inverse ratio")]
    public static double? RatioLow(double first, int firstCount, double second, int secondCount, double level) =>
        first > 0 && second > 0 && CriticalRatio(firstCount, secondCount, level) is { } critical ? first * first / (second * second * critical) : null;

    /// <summary>Half of the interval that holds the mean of a population with a chance, from one set.</summary>
    /// <param name="deviation">s, 1: deviation.</param>
    /// <param name="count">n, 1: results.</param>
    /// <param name="level">α, 1: chance that it does not hold it.</param>
    /// <returns>h, 1; null outside the range.</returns>
    [Formula("h", "h = t at 1 − α/2 with n − 1 degrees · s / √n", Texts, "at least two results, s not below zero, α above 0 and below 1; otherwise no result")]
    public static double? HalfWidth(double deviation, int count, double level) =>
        count >= 2 && Finite.NotNegative(deviation) && CriticalT(count - 1, level) is { } t ? t * deviation / Math.Sqrt(count) : null;

    /// <summary>Half of the interval that holds the difference of two means with a chance, by the common deviation.</summary>
    /// <param name="pooled">sp, 1: common deviation.</param>
    /// <param name="firstCount">n1, 1: results of one set.</param>
    /// <param name="secondCount">n2, 1: results of the other.</param>
    /// <param name="level">α, 1: chance that it does not hold it.</param>
    /// <returns>h, 1; null outside the range.</returns>
    [Formula("h", "h = t at 1 − α/2 with n1 + n2 − 2 degrees · sp √(1/n1 + 1/n2)", Texts, "sp not below zero, at least one result each and three together; otherwise no result")]
    public static double? HalfWidthOfDifference(double pooled, int firstCount, int secondCount, double level) =>
        Finite.NotNegative(pooled) && firstCount > 0 && secondCount > 0 && CriticalT(firstCount + secondCount - 2, level) is { } t ? t * pooled * Math.Sqrt((1.0 / firstCount) + (1.0 / secondCount)) : null;

    /// <summary>Compares two sets.</summary>
    /// <param name="first">One side.</param>
    /// <param name="second">The other.</param>
    /// <param name="level">α of both tests.</param>
    /// <returns>The comparison; null where a set has no spread.</returns>
    public static SetComparison? Compare(SetOfResults first, SetOfResults second, double level)
    {
        var (larger, smaller) = first.Deviation >= second.Deviation ? (first, second) : (second, first);
        if (Ratio(first.Deviation, second.Deviation) is not { } ratio || CriticalRatio(larger.Count, smaller.Count, level) is not { } criticalRatio
            || Pooled(first.Deviation, first.Count, second.Deviation, second.Count) is not { } pooled)
        {
            return null;
        }

        var isAlike = ratio <= criticalRatio;
        var difference = first.Mean - second.Mean;
        var degrees = isAlike ? first.Count + second.Count - 2 : WelchDegrees(first.Deviation, first.Count, second.Deviation, second.Count)!.Value;
        var t = isAlike ? PooledT(difference, pooled, first.Count, second.Count) : WelchT(difference, first.Deviation, first.Count, second.Deviation, second.Count);
        return t is not { } distance || CriticalT(degrees, level) is not { } critical ? null : new SetComparison(
            level, ratio, criticalRatio, ChanceOfRatio(ratio, larger.Count, smaller.Count)!.Value, difference, distance, degrees, critical, ChanceOfT(distance, degrees)!.Value,
            critical * StandardError(isAlike, pooled, first, second));
    }

    /// <summary>Compares split samples, result by result.</summary>
    /// <param name="differences">First less second, for each sample.</param>
    /// <param name="level">α.</param>
    /// <returns>The comparison; null for fewer than two pairs or without spread.</returns>
    public static PairComparison? Compare(IReadOnlyList<double> differences, double level)
    {
        var deviation = QualityLevel.Deviation(differences);
        return differences.Count < 2 || PairedT(differences.Average(), deviation, differences.Count) is not { } t || CriticalT(differences.Count - 1, level) is not { } critical ? null
            : new PairComparison(level, differences.Count, differences.Average(), deviation, t, critical, ChanceOfT(t, differences.Count - 1)!.Value, critical * deviation / Math.Sqrt(differences.Count));
    }

    private static double StandardError(bool isAlike, double pooled, SetOfResults first, SetOfResults second) => isAlike
        ? pooled * Math.Sqrt((1.0 / first.Count) + (1.0 / second.Count))
        : Math.Sqrt((first.Deviation * first.Deviation / first.Count) + (second.Deviation * second.Deviation / second.Count));
}

/// <summary>Two sets of results against each other.</summary>
/// <param name="Level">α of both tests.</param>
/// <param name="Ratio">F.</param>
/// <param name="CriticalRatio">F that chance exceeds at the level.</param>
/// <param name="ChanceOfRatio">Chance of such a ratio of equal variances.</param>
/// <param name="Difference">First mean less second.</param>
/// <param name="T">It in standard errors.</param>
/// <param name="Degrees">Degrees of freedom.</param>
/// <param name="CriticalT">Distance that chance exceeds at the level.</param>
/// <param name="ChanceOfT">Chance of such a distance of equal means.</param>
/// <param name="LeastDifference">Smallest difference that the test could have found.</param>
public sealed record SetComparison(
    double Level, double Ratio, double CriticalRatio, double ChanceOfRatio, double Difference, double T, double Degrees, double CriticalT, double ChanceOfT, double LeastDifference)
{
    /// <summary>Whether the variances differ at the level.</summary>
    public bool VariancesDiffer => Ratio > CriticalRatio;

    /// <summary>Whether the means differ at the level.</summary>
    public bool MeansDiffer => Math.Abs(T) > CriticalT;
}

/// <summary>Split samples of two laboratories.</summary>
/// <param name="Level">α.</param>
/// <param name="Pairs">Samples.</param>
/// <param name="Difference">Mean of first less second.</param>
/// <param name="Deviation">Deviation of the differences.</param>
/// <param name="T">The mean in standard errors.</param>
/// <param name="CriticalT">Distance that chance exceeds at the level.</param>
/// <param name="Chance">Chance of such a distance of equal methods.</param>
/// <param name="LeastDifference">Smallest difference that the test could have found.</param>
public sealed record PairComparison(double Level, int Pairs, double Difference, double Deviation, double T, double CriticalT, double Chance, double LeastDifference)
{
    /// <summary>Whether the laboratories differ at the level.</summary>
    public bool Differ => Math.Abs(T) > CriticalT;
}
