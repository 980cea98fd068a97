using Laygate.Engineering.Acceptance;
using Laygate.Engineering.Quantities;
using Laygate.Model.Measures;
using Laygate.Rules.Acceptance;

namespace Laygate.Checking.Verification;

/// <summary>Formulas over lists of results: a lot, pairs of gauge and core, densities after each pass, readings of a thermal profile.</summary>
internal static class ResultFormulas
{
    private const string HalfEven = "half-even";
    private const string NextHigher = "table-next-higher";
    private const string Interpolated = "table-interpolated";

    private static readonly CaseInput Results = new CaseInput("results", CaseDimension.Plain).Many();
    private static readonly CaseInput Decimal = new CaseInput("decimals", CaseDimension.Count).Optional();
    private static readonly CaseInput Half = new CaseInput("half", null, Words: ["half-up", HalfEven]).Optional();

    private static readonly CaseInput[] Pairs = [new CaseInput("gauges", CaseDimension.Density).Many(), new CaseInput("cores", CaseDimension.Density).Many()];

    private static readonly CaseInput[] Curve =
    [
        new CaseInput("densities", CaseDimension.Plain).Many(), new("growth", CaseDimension.Plain),
        new CaseInput("target", CaseDimension.Plain).Optional(), new CaseInput("repeatability", CaseDimension.Plain).Optional(),
    ];

    public static IReadOnlyList<CaseFormula> All { get; } =
    [
        new("rounded", CaseDimension.Plain, [new("number", CaseDimension.Plain), Decimal, Half], i => Decimals.Round(i["number"], Places(i, "decimals") ?? 0, Rule(i))),
        new("lot-mean", CaseDimension.Plain, [Results, Decimal, Half], i => Lot(i, LotStatistic.Mean)),
        new("lot-deviation", CaseDimension.Plain, [Results], i => QualityLevel.Deviation(i.Many("results"))),
        new("lot-mean-absolute-deviation", CaseDimension.Plain, [Results, new("target", CaseDimension.Plain), Decimal, Half], i => Lot(i, LotStatistic.MeanDeviation)),
        new("lot-lower-mean", CaseDimension.Plain, [Results, new("chance", CaseDimension.Proportion)], i => Lot(i, LotStatistic.LowerMean)),
        new("lot-percent-within", CaseDimension.Proportion,
            [
                Results, new CaseInput("lower", CaseDimension.Plain).Optional(), new CaseInput("upper", CaseDimension.Plain).Optional(),
                new CaseInput("mode", null, Words: ["formula", NextHigher, Interpolated]).Optional(), new CaseInput("table_decimals", CaseDimension.Count).Optional(),
                new CaseInput("mean_decimals", CaseDimension.Count).Optional(), new CaseInput("deviation_decimals", CaseDimension.Count).Optional(),
                new CaseInput("index_decimals", CaseDimension.Count).Optional(), new CaseInput("percent_decimals", CaseDimension.Count).Optional(), Half,
            ],
            i => Lot(i, LotStatistic.PercentWithin) / 100),
        new("outlier-distance", CaseDimension.Plain, [Results], i => Grubbs.Of(i.Many("results"), 0.05)?.Statistic),
        new("gauge-offset", CaseDimension.Density, Pairs, i => Offset(i)?.Offset),
        new("gauge-deviation", CaseDimension.Density, Pairs, i => Offset(i)?.Deviation),
        new("gauge-uncertainty", CaseDimension.Density, [.. Pairs, new CaseInput("core_uncertainty", CaseDimension.Density).Optional()], i => Offset(i)?.Uncertainty(i["core_uncertainty"])),
        new("gauge-corrected", CaseDimension.Density, [.. Pairs, new("reading", CaseDimension.Density)], i => i["reading"] + Offset(i)?.Offset),
        new("growth-pattern", CaseDimension.Count, Curve, i => Growth(i)?.Pattern),
        new("growth-peak", CaseDimension.Count, Curve, i => Growth(i)?.Peak),
        new("mean-roughness", CaseDimension.Roughness, [new CaseInput("paths", CaseDimension.Roughness).Many()], i => QualityLevel.Mean(i.Many("paths"))),
        new("thermal-percentile", CaseDimension.Temperature, [new CaseInput("readings", CaseDimension.Temperature).Many(), new("share", CaseDimension.Proportion)],
            i => ThermalRange.Of(0, 0, i.Many("readings"), i["share"], i["share"])?.Low),
        new("thermal-range", CaseDimension.TemperatureDifference,
            [new CaseInput("readings", CaseDimension.Temperature).Many(), new CaseInput("low", CaseDimension.Proportion).Optional(), new CaseInput("high", CaseDimension.Proportion).Optional()],
            i => ThermalRange.Of(0, 0, i.Many("readings"), i["low"], i.Given("high") ?? 1)?.Range),
    ];

    // As a lot of the program is judged, with the roundings of a publication.
    private static double? Lot(CaseInputs i, LotStatistic statistic)
    {
        var source = new SchemeSource("case", Clause: null, Evidence.Derived, Remark: null);
        var scheme = new SchemeCharacteristic("case", MeasuredProperty.AirVoids, statistic, new Unit(string.Empty, Dimension.None, 1), source)
        {
            Mode = i.WordGiven("mode") switch { NextHigher => PercentMode.TableNextHigher, Interpolated => PercentMode.TableInterpolated, _ => PercentMode.Formula },
            TableDecimals = Places(i, "table_decimals") ?? 2,
            Rounding = new SchemeRounding(Places(i, "mean_decimals") ?? Places(i, "decimals"), Places(i, "deviation_decimals"), Places(i, "index_decimals"), Places(i, "percent_decimals"), Rule(i)),
            Chance = i["chance"],
        };
        return LotJudge.Judge(scheme, new CourseLimits(i.Given("lower"), i.Given("upper"), i.Given("target"), Design: null), i.Many("results")).Statistic;
    }

    private static int? Places(CaseInputs i, string name) => i.Given(name) is null ? null : Math.Clamp(i.Whole(name), 0, 8);

    private static HalfRule Rule(CaseInputs i) => string.Equals(i.WordGiven("half"), HalfEven, StringComparison.Ordinal) ? HalfRule.HalfEven : HalfRule.HalfUp;

    private static GaugeOffset? Offset(CaseInputs i)
    {
        var (gauges, cores) = (i.Many("gauges"), i.Many("cores"));
        return gauges.Count == cores.Count ? GaugeOffset.Of([.. gauges.Zip(cores)]) : null;
    }

    private static GrowthCurve? Growth(CaseInputs i) => GrowthCurve.Of(i.Many("densities"), i["growth"], i.Given("target"), i["repeatability"]);
}
