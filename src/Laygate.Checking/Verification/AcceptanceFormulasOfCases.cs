using Laygate.Engineering.Acceptance;

namespace Laygate.Checking.Verification;

/// <summary>Formulas of lots: percent within limits, outliers, cores, places.</summary>
internal static class AcceptanceFormulasOfCases
{
    private static readonly CaseInput Results = new("results", CaseDimension.Count);

    private static readonly CaseInput[] Core = [new("dry", CaseDimension.Mass), new("surface_dry", CaseDimension.Mass), new("in_water", CaseDimension.Mass)];

    private static readonly CaseInput Sides = new CaseInput("sides", null, Words: ["one", "two"]).Optional();

    private static readonly CaseInput Level = new("level", CaseDimension.Proportion);

    private static readonly CaseInput[] Means = [new("first_mean", CaseDimension.Plain), new("second_mean", CaseDimension.Plain)];

    private static readonly CaseInput[] Deviations = [new("first_deviation", CaseDimension.Plain), new("second_deviation", CaseDimension.Plain)];

    private static readonly CaseInput[] Counts = [new("first_results", CaseDimension.Count), new("second_results", CaseDimension.Count)];

    public static IReadOnlyList<CaseFormula> All { get; } =
    [
        new("percent-within", CaseDimension.Proportion, [new("index", CaseDimension.Plain), Results], i => QualityLevel.Within(i["index"], i.Whole("results"))),
        new("quality-index", CaseDimension.Plain, [new("share", CaseDimension.Proportion), Results], i => QualityLevel.Index(i["share"], i.Whole("results"))),
        new("percent-by-table", CaseDimension.Plain, [new("index", CaseDimension.Plain), Results, new("decimals", CaseDimension.Count)],
            i => QualityLevel.ByTable(i["index"], i.Whole("results"), Math.Clamp(i.Whole("decimals"), 0, 8), interpolated: false)),
        new("lower-mean", CaseDimension.Plain, [new("mean", CaseDimension.Plain), new("deviation", CaseDimension.Plain), Results, new("chance", CaseDimension.Proportion)],
            i => QualityLevel.LowerMean(i["mean"], i["deviation"], i.Whole("results"), i["chance"])),
        new("upper-mean", CaseDimension.Plain, [new("mean", CaseDimension.Plain), new("deviation", CaseDimension.Plain), Results, new("chance", CaseDimension.Proportion)],
            i => 2 * i["mean"] - QualityLevel.LowerMean(i["mean"], i["deviation"], i.Whole("results"), i["chance"])),
        new("percent-within-both", CaseDimension.Proportion, [new("lower", CaseDimension.Proportion), new("upper", CaseDimension.Proportion)], i => QualityLevel.WithinBoth(i["lower"], i["upper"])),
        new("outlier-critical", CaseDimension.Plain, [Results, new("level", CaseDimension.Proportion), Sides], i => Grubbs.Critical(i.Whole("results"), i["level"], isTwoSided: !IsOne(i, one: true))),
        new("bulk-gravity", CaseDimension.Plain, Core, i => CoreFormulas.Bulk(i["dry"], i["surface_dry"], i["in_water"])),
        new("water-absorbed", CaseDimension.Proportion, Core, i => CoreFormulas.Absorbed(i["dry"], i["surface_dry"], i["in_water"])),
        new("air-voids", CaseDimension.Proportion, [new("bulk", CaseDimension.Plain), new("maximum", CaseDimension.Plain)], i => CoreFormulas.Voids(i["bulk"], i["maximum"])),
        new("grid-along", CaseDimension.Length, [new("number", CaseDimension.Count), new("length", CaseDimension.Length), new("width", CaseDimension.Length), new("step", CaseDimension.Length)],
            i => SamplingPlaces.GridAlong(i.Whole("number"), i["length"], i["width"], i["step"])),
        new("grid-across", CaseDimension.Length, [new("number", CaseDimension.Count), new("width", CaseDimension.Length), new("step", CaseDimension.Length)],
            i => SamplingPlaces.GridAcross(i.Whole("number"), i["width"], i["step"])),
        new("random-along", CaseDimension.Length, [new CaseInput("start", CaseDimension.Length).Optional(), new("length", CaseDimension.Length), new("random", CaseDimension.Plain)],
            i => SamplingPlaces.RandomAlong(i["start"], i["length"], i["random"])),
        new("random-across", CaseDimension.Length, [new("width", CaseDimension.Length), new CaseInput("margin", CaseDimension.Length).Optional(), new("random", CaseDimension.Plain)],
            i => SamplingPlaces.RandomAcross(i["width"], i["margin"], i["random"])),
        new("loads-of-sublot", CaseDimension.Plain, [new("lot", CaseDimension.Mass), new("sublots", CaseDimension.Count), new("payload", CaseDimension.Mass)],
            i => SamplingPlaces.LoadsOfSublot(i["lot"], i.Whole("sublots"), i["payload"])),
        new("skin-uncertainty", CaseDimension.TemperatureDifference,
            [new("reading", CaseDimension.Temperature), new("accuracy", CaseDimension.Proportion), new CaseInput("emissivity", CaseDimension.TemperatureDifference).Optional()],
            i => ThermalRange.SkinUncertainty(i["reading"], i["accuracy"], i["emissivity"])),
        new("variance-ratio", CaseDimension.Plain, Deviations, i => TwoSets.Ratio(i["first_deviation"], i["second_deviation"])),
        new("variance-ratio-critical", CaseDimension.Plain, [.. Counts, Level], i => TwoSets.CriticalRatio(i.Whole("first_results"), i.Whole("second_results"), i["level"])),
        new("variance-ratio-chance", CaseDimension.Plain, [new("ratio", CaseDimension.Plain), .. Counts], i => TwoSets.ChanceOfRatio(i["ratio"], i.Whole("first_results"), i.Whole("second_results"))),
        new("pooled-deviation", CaseDimension.Plain, [.. Deviations, .. Counts], i => Pooled(i)),
        new("pooled-t", CaseDimension.Plain, [.. Means, .. Deviations, .. Counts],
            i => Pooled(i) is { } pooled ? TwoSets.PooledT(i["first_mean"] - i["second_mean"], pooled, i.Whole("first_results"), i.Whole("second_results")) : null),
        new("welch-t", CaseDimension.Plain, [.. Means, .. Deviations, .. Counts],
            i => TwoSets.WelchT(i["first_mean"] - i["second_mean"], i["first_deviation"], i.Whole("first_results"), i["second_deviation"], i.Whole("second_results"))),
        new("welch-degrees", CaseDimension.Plain, [.. Deviations, .. Counts], i => TwoSets.WelchDegrees(i["first_deviation"], i.Whole("first_results"), i["second_deviation"], i.Whole("second_results"))),
        new("paired-t", CaseDimension.Plain, [new("mean", CaseDimension.Plain), new("deviation", CaseDimension.Plain), Results], i => TwoSets.PairedT(i["mean"], i["deviation"], i.Whole("results"))),
        new("t-critical", CaseDimension.Plain, [new("degrees", CaseDimension.Plain), Level, Sides], i => TwoSets.CriticalT(i["degrees"], IsOne(i, one: false) ? 2 * i["level"] : i["level"])),
        new("t-chance", CaseDimension.Plain, [new("t", CaseDimension.Plain), new("degrees", CaseDimension.Plain), Sides], i => TwoSets.ChanceOfT(i["t"], i["degrees"]) / (IsOne(i, one: false) ? 2 : 1)),
    ];

    // What no word says is one side for an outlier, as its tables have it, and both for a t.
    private static bool IsOne(CaseInputs i, bool one) => i.WordGiven("sides") is { } sides ? string.Equals(sides, "one", StringComparison.Ordinal) : one;

    private static double? Pooled(CaseInputs i) => TwoSets.Pooled(i["first_deviation"], i.Whole("first_results"), i["second_deviation"], i.Whole("second_results"));
}
