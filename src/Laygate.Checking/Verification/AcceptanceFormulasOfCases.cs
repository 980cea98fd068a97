using Laygate.Engineering.Acceptance;

namespace Laygate.Checking.Verification;

/// <summary>Formulas of lots: percent within limits, outliers, cores, places.</summary>
internal static class AcceptanceFormulasOfCases
{
    private static readonly CaseInput Results = new("results", CaseDimension.Count);

    private static readonly CaseInput[] Core = [new("dry", CaseDimension.Mass), new("surface_dry", CaseDimension.Mass), new("in_water", CaseDimension.Mass)];

    public static IReadOnlyList<CaseFormula> All { get; } =
    [
        new("percent-within", CaseDimension.Proportion, [new("index", CaseDimension.Plain), Results], i => QualityLevel.Within(i["index"], i.Whole("results"))),
        new("quality-index", CaseDimension.Plain, [new("share", CaseDimension.Proportion), Results], i => QualityLevel.Index(i["share"], i.Whole("results"))),
        new("percent-by-table", CaseDimension.Plain, [new("index", CaseDimension.Plain), Results, new("decimals", CaseDimension.Count)],
            i => QualityLevel.ByTable(i["index"], i.Whole("results"), Math.Clamp(i.Whole("decimals"), 0, 8), interpolated: false)),
        new("lower-mean", CaseDimension.Plain, [new("mean", CaseDimension.Plain), new("deviation", CaseDimension.Plain), Results, new("chance", CaseDimension.Proportion)],
            i => QualityLevel.LowerMean(i["mean"], i["deviation"], i.Whole("results"), i["chance"])),
        new("outlier-critical", CaseDimension.Plain, [Results, new("level", CaseDimension.Proportion)], i => Grubbs.Critical(i.Whole("results"), i["level"], isTwoSided: false)),
        new("bulk-gravity", CaseDimension.Plain, Core, i => CoreFormulas.Bulk(i["dry"], i["surface_dry"], i["in_water"])),
        new("water-absorbed", CaseDimension.Proportion, Core, i => CoreFormulas.Absorbed(i["dry"], i["surface_dry"], i["in_water"])),
        new("air-voids", CaseDimension.Proportion, [new("bulk", CaseDimension.Plain), new("maximum", CaseDimension.Plain)], i => CoreFormulas.Voids(i["bulk"], i["maximum"])),
        new("grid-along", CaseDimension.Length, [new("number", CaseDimension.Count), new("length", CaseDimension.Length), new("width", CaseDimension.Length), new("step", CaseDimension.Length)],
            i => SamplingPlaces.GridAlong(i.Whole("number"), i["length"], i["width"], i["step"])),
        new("grid-across", CaseDimension.Length, [new("number", CaseDimension.Count), new("width", CaseDimension.Length), new("step", CaseDimension.Length)],
            i => SamplingPlaces.GridAcross(i.Whole("number"), i["width"], i["step"])),
    ];
}
