using Laygate.Engineering.Acceptance;

namespace Laygate.Checking.Verification;

/// <summary>Two laboratories from the lists of their results, or of the differences of split samples.</summary>
internal static class TwoSetFormulas
{
    private static readonly CaseInput[] Sets = [new CaseInput("first", CaseDimension.Plain).Many(), new CaseInput("second", CaseDimension.Plain).Many()];
    private static readonly CaseInput Differences = new CaseInput("differences", CaseDimension.Plain).Many();
    private static readonly CaseInput Level = new("level", CaseDimension.Proportion);
    private static readonly CaseInput Sides = new CaseInput("sides", null, Words: ["two", "one"]).Optional();

    public static IReadOnlyList<CaseFormula> All { get; } =
    [
        new("sets-variance-ratio", CaseDimension.Plain, Sets, i => Of(i)?.Ratio),
        new("sets-variance-ratio-chance", CaseDimension.Plain, Sets, i => Of(i)?.ChanceOfRatio),
        new("sets-variance-ratio-low", CaseDimension.Plain, [.. Sets, Level], i => Pair(i) is var (a, b) ? TwoSets.RatioLow(a.Deviation, a.Count, b.Deviation, b.Count, i["level"]) : null),
        new("sets-variance-ratio-high", CaseDimension.Plain, [.. Sets, Level], i => Pair(i) is var (a, b) ? 1 / TwoSets.RatioLow(b.Deviation, b.Count, a.Deviation, a.Count, i["level"]) : null),
        new("sets-pooled-deviation", CaseDimension.Plain, Sets, i => Pair(i) is var (a, b) ? TwoSets.Pooled(a.Deviation, a.Count, b.Deviation, b.Count) : null),
        new("sets-pooled-t", CaseDimension.Plain, Sets,
            i => Pair(i) is var (a, b) && TwoSets.Pooled(a.Deviation, a.Count, b.Deviation, b.Count) is { } pooled ? TwoSets.PooledT(a.Mean - b.Mean, pooled, a.Count, b.Count) : null),
        new("sets-welch-t", CaseDimension.Plain, Sets, i => Pair(i) is var (a, b) ? TwoSets.WelchT(a.Mean - b.Mean, a.Deviation, a.Count, b.Deviation, b.Count) : null),
        new("sets-pooled-chance", CaseDimension.Plain, Sets,
            i => Pair(i) is var (a, b) && TwoSets.Pooled(a.Deviation, a.Count, b.Deviation, b.Count) is { } pooled && TwoSets.PooledT(a.Mean - b.Mean, pooled, a.Count, b.Count) is { } t ? TwoSets.ChanceOfT(t, a.Count + b.Count - 2) : null),
        new("sets-welch-chance", CaseDimension.Plain, Sets,
            i => Pair(i) is var (a, b) && TwoSets.WelchT(a.Mean - b.Mean, a.Deviation, a.Count, b.Deviation, b.Count) is { } t && TwoSets.WelchDegrees(a.Deviation, a.Count, b.Deviation, b.Count) is { } degrees ? TwoSets.ChanceOfT(t, degrees) : null),
        new("sets-welch-degrees", CaseDimension.Plain, Sets, i => Pair(i) is var (a, b) ? TwoSets.WelchDegrees(a.Deviation, a.Count, b.Deviation, b.Count) : null),
        new("sets-least-difference", CaseDimension.Plain, [.. Sets, Level], i => Pair(i) is var (a, b) ? TwoSets.Compare(a, b, i["level"])?.LeastDifference : null),
        new("pairs-mean", CaseDimension.Plain, [Differences], i => i.Many("differences").Average()),
        new("pairs-deviation", CaseDimension.Plain, [Differences], i => QualityLevel.Deviation(i.Many("differences"))),
        new("pairs-t", CaseDimension.Plain, [Differences], i => T(i)),
        new("pairs-chance", CaseDimension.Plain, [Differences, Sides], i => T(i) is { } t ? TwoSets.ChanceOfT(t, i.Many("differences").Count - 1) / (string.Equals(i.WordGiven("sides"), "one", StringComparison.Ordinal) ? 2 : 1) : null),
        new("mean-half-width", CaseDimension.Plain, [new("deviation", CaseDimension.Plain), new("results", CaseDimension.Count), Level], i => TwoSets.HalfWidth(i["deviation"], i.Whole("results"), i["level"])),
        new("difference-half-width", CaseDimension.Plain, [new("pooled", CaseDimension.Plain), new("first_results", CaseDimension.Count), new("second_results", CaseDimension.Count), Level],
            i => TwoSets.HalfWidthOfDifference(i["pooled"], i.Whole("first_results"), i.Whole("second_results"), i["level"])),
    ];

    // The level changes no ratio and no chance of one.
    private static SetComparison? Of(CaseInputs i) => Pair(i) is var (a, b) ? TwoSets.Compare(a, b, 0.05) : null;

    private static (SetOfResults First, SetOfResults Second)? Pair(CaseInputs i) =>
        SetOfResults.Of(i.Many("first")) is { } first && SetOfResults.Of(i.Many("second")) is { } second ? (first, second) : null;

    private static double? T(CaseInputs i) => i.Many("differences") is { Count: > 1 } all ? TwoSets.PairedT(all.Average(), QualityLevel.Deviation(all), all.Count) : null;
}
