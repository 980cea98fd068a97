using Laygate.Engineering.Acceptance;
using Laygate.Engineering.Quantities;
using Laygate.Rules.Results;

namespace Laygate.Rules.Acceptance;

/// <summary>A limit, target or design value of one course, in the unit of the characteristic; null where nobody states it.</summary>
/// <param name="Lower">Lower limit.</param>
/// <param name="Upper">Upper limit.</param>
/// <param name="Target">Target.</param>
/// <param name="Design">Design value.</param>
public sealed record CourseLimits(double? Lower, double? Upper, double? Target, double? Design);

/// <summary>Judges the results of one characteristic of one lot, step by step, so that the other side can do it again.</summary>
public sealed class LotJudge
{
    private const string Plain = "";
    private readonly SchemeCharacteristic scheme;
    private readonly CourseLimits limits;
    private readonly List<AcceptanceStep> steps = [];

    private LotJudge(SchemeCharacteristic scheme, CourseLimits limits) => (this.scheme, this.limits) = (scheme, limits);

    /// <summary>Judges results.</summary>
    /// <param name="scheme">The characteristic.</param>
    /// <param name="limits">Its limits for this course.</param>
    /// <param name="results">Results in the unit of the characteristic.</param>
    /// <returns>The statistic with its steps, row, pay and verdict; no statistic where it is not defined.</returns>
    public static LotOutcome Judge(SchemeCharacteristic scheme, CourseLimits limits, IReadOnlyList<double> results) => new LotJudge(scheme, limits).Judge(results);

    /// <summary>Judges a statistic that somebody worked out already.</summary>
    /// <param name="scheme">The characteristic.</param>
    /// <param name="limits">Its limits for this course.</param>
    /// <param name="statistic">The statistic.</param>
    /// <param name="results">Number of results that it comes from.</param>
    public static LotOutcome JudgeStatistic(SchemeCharacteristic scheme, CourseLimits limits, double statistic, int results) => new LotJudge(scheme, limits).Decide(statistic, results);

    /// <summary>
    /// What one more result must reach so that the lot is accepted in full: the range that lies nearest to the mean; null where no single result does it.
    /// A search over results that could be measured: with a free spread a very good result can lower a percent within limits, so that the range has two ends.
    /// </summary>
    /// <param name="scheme">The characteristic.</param>
    /// <param name="limits">Its limits for this course.</param>
    /// <param name="results">Results so far; at least two.</param>
    public static (double Low, double High)? Next(SchemeCharacteristic scheme, CourseLimits limits, IReadOnlyList<double> results)
    {
        if (results.Count < 2)
        {
            return null;
        }

        const int Steps = 400;
        var (mean, spread) = (results.Average(), Math.Max(QualityLevel.Deviation(results), 1e-9));
        var (low, high) = (Math.Min(results.Min(), limits.Lower ?? mean) - (4 * spread), Math.Max(results.Max(), limits.Upper ?? limits.Lower ?? mean) + (4 * spread));
        bool[] good = [.. Enumerable.Range(0, Steps + 1).Select(i => Judge(scheme, limits, [.. results, low + ((high - low) * i / Steps)]).Verdict == LotVerdict.Accept)];
        var nearest = Enumerable.Range(0, Steps + 1).Where(i => good[i]).OrderBy(i => Math.Abs(low + ((high - low) * i / Steps) - mean)).Cast<int?>().FirstOrDefault();
        if (nearest is not { } at)
        {
            return null;
        }

        var (from, to) = (at, at);
        while (from > 0 && good[from - 1])
        {
            from--;
        }

        while (to < Steps && good[to + 1])
        {
            to++;
        }

        return (from == 0 ? double.NegativeInfinity : low + ((high - low) * from / Steps), to == Steps ? double.PositiveInfinity : low + ((high - low) * to / Steps));
    }

    private LotOutcome Judge(IReadOnlyList<double> results)
    {
        if (results.Count == 0 || Statistic(results) is not { } statistic)
        {
            return new LotOutcome(null, steps, null, null, LotVerdict.NotDecided);
        }

        return Decide(statistic, results.Count);
    }

    private LotOutcome Decide(double statistic, int results)
    {
        if (scheme.Rows.Count == 0)
        {
            return new LotOutcome(statistic, steps, null, null, Within(statistic));
        }

        if (scheme.Rows.FirstOrDefault(row => Matches(row, statistic, results)) is not { } row)
        {
            return new LotOutcome(statistic, steps, null, null, LotVerdict.NotDecided) { IsUnlisted = true };
        }

        var pay = row.Times is { } times ? (times * statistic) + (row.Pay ?? 0) : row.Pay;
        if (pay is { } factor)
        {
            Step(row.Times is null ? "pay" : "pay = times · statistic + plus", factor, "%");
        }

        // Nobody is turned away by a figure that is only remembered.
        var weak = row.Verdict == LotVerdict.Reject && scheme.Source.Evidence is not (Evidence.Read or Evidence.SecondHand or Evidence.Derived or Evidence.Confirmed);
        return new LotOutcome(statistic, steps, pay, row.Says, weak ? LotVerdict.NotDecided : row.Verdict) { IsWeak = weak };
    }

    private LotVerdict Within(double statistic)
    {
        if (limits is { Lower: null, Upper: null } || scheme.Statistic is LotStatistic.PercentWithin or LotStatistic.MeanDeviation or LotStatistic.DeviationOfMean or LotStatistic.Shortfall)
        {
            // A share or a deviation is no result: without a table nothing says what it must be.
            return LotVerdict.NotDecided;
        }

        var isWithin = !(statistic < limits.Lower) && !(statistic > limits.Upper);
        var isStrong = scheme.Source.Evidence is Evidence.Read or Evidence.SecondHand or Evidence.Derived or Evidence.Confirmed;
        return isWithin ? LotVerdict.Accept : isStrong ? LotVerdict.Reject : LotVerdict.NotDecided;
    }

    private bool Matches(SchemeRow row, double statistic, int tests) =>
        (row.Tests is null || row.Tests == tests) && !(statistic < row.AtLeast) && !(statistic <= row.Above) && !(statistic > row.AtMost) && !(statistic >= row.Below)
        && (row.DesignAtLeast is null || limits.Design >= row.DesignAtLeast) && (row.DesignBelow is null || limits.Design < row.DesignBelow);

    private double? Statistic(IReadOnlyList<double> results)
    {
        var unit = scheme.Unit.Spelling;
        Step("n: results", results.Count, Plain);
        switch (scheme.Statistic)
        {
            case LotStatistic.PercentWithin:
                return Percent(results);
            case LotStatistic.Mean:
                return Mean(results);
            case LotStatistic.MeanDeviation when limits.Target is { } target:
                return Step("mean of |x − target|", Round(results.Average(result => Math.Abs(result - target)), scheme.Rounding.Mean), unit);
            case LotStatistic.DeviationOfMean when limits.Target is { } target:
                return Step("|mean − target|", Math.Abs(Mean(results) - target), unit);
            case LotStatistic.Least:
                return Step("least x", results.Min(), unit);
            case LotStatistic.Greatest:
                return Step("greatest x", results.Max(), unit);
            case LotStatistic.Shortfall when limits.Design is { } design:
                return Step("design − least x", Math.Max(0, design - results.Min()), unit);
            case LotStatistic.LowerMean:
                return LowerMean(results);
            default:
                return null;
        }
    }

    private double Mean(IReadOnlyList<double> results) => Step("x = Σx / n", Round(QualityLevel.Mean(results), scheme.Rounding.Mean), scheme.Unit.Spelling);

    private double? LowerMean(IReadOnlyList<double> results)
    {
        if (results.Count < 2)
        {
            return null;
        }

        var (mean, deviation) = (Mean(results), Deviation(results));
        return QualityLevel.LowerMean(mean, deviation, results.Count, scheme.Chance) is { } end ? Step("X = x − t(p; n − 1) · s / √n", end, scheme.Unit.Spelling) : null;
    }

    private double Deviation(IReadOnlyList<double> results) => Step("s = √(Σ(xi − x)² / (n − 1))", Round(QualityLevel.Deviation(results), scheme.Rounding.Deviation), scheme.Unit.Spelling);

    private double? Percent(IReadOnlyList<double> results)
    {
        if (results.Count < 3 || limits is { Lower: null, Upper: null })
        {
            return null;
        }

        var (mean, deviation) = (Mean(results), Deviation(results));
        var below = limits.Lower is { } lower ? Side("QL = (x − L) / s", "PL", mean - lower, deviation, results.Count) : 100;
        var above = limits.Upper is { } upper ? Side("QU = (U − x) / s", "PU", upper - mean, deviation, results.Count) : 100;
        return below is { } pl && above is { } pu ? Step("PWL = PL + PU − 100", Math.Max(0, Round(pl + pu - 100, scheme.Rounding.Percent)), "%") : null;
    }

    // Without spread an index has no value: all of the lot lies on the side of the mean.
    private double? Side(string expression, string name, double distance, double deviation, int count)
    {
        if (deviation == 0)
        {
            return Step($"{name}: no spread, all on the side of the mean", distance >= 0 ? 100 : 0, "%");
        }

        var index = Step(expression, Round(distance / deviation, scheme.Rounding.Index), Plain);
        var percent = scheme.Mode == PercentMode.Formula
            ? 100 * QualityLevel.Within(index, count)
            : QualityLevel.ByTable(index, count, scheme.TableDecimals, scheme.Mode == PercentMode.TableInterpolated);
        return percent is { } share ? Step(scheme.Mode == PercentMode.Formula ? $"{name} by the formula" : scheme.Mode == PercentMode.TableNextHigher ? $"{name} by the table, next higher" : $"{name} by the table, straight between rows", share, "%") : null;
    }

    private double Round(double number, int? decimals) => Decimals.Round(number, decimals, scheme.Rounding.Rule);

    private double Step(string expression, double value, string unit)
    {
        steps.Add(new AcceptanceStep(expression, value, unit));
        return value;
    }
}
