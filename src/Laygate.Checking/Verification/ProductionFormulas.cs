using Laygate.Engineering.Layers;
using Laygate.Engineering.Rolling;
using Laygate.Engineering.Supply;

namespace Laygate.Checking.Verification;

/// <summary>Formulas of supply, laying and rolling.</summary>
internal static class ProductionFormulas
{
    private static readonly CaseInput Thickness = new("thickness", CaseDimension.Length);
    private static readonly CaseInput Density = new("density", CaseDimension.Density);
    private static readonly CaseInput Width = new("width", CaseDimension.Length);
    private static readonly CaseInput Payload = new("payload", CaseDimension.Mass);
    private static readonly CaseInput Supply = new("supply", CaseDimension.MassFlow);
    private static readonly CaseInput Rate = new("rate", CaseDimension.MassFlow);
    private static readonly CaseInput Demand = new("demand", CaseDimension.MassFlow);
    private static readonly CaseInput PaverSpeed = new("paver_speed", CaseDimension.Speed);
    private static readonly CaseInput RollerSpeed = new("roller_speed", CaseDimension.Speed);
    private static readonly CaseInput Efficiency = new("efficiency", CaseDimension.Plain);
    private static readonly CaseInput Drum = new("drum", CaseDimension.Length);
    private static readonly CaseInput Overlap = new("overlap", CaseDimension.Length);
    private static readonly CaseInput Passes = new("passes", CaseDimension.Count);
    private static readonly CaseInput Strips = new("strips", CaseDimension.Count);
    private static readonly CaseInput Time = new("time", CaseDimension.Duration);

    private static readonly CaseInput[] Feeder =
    [
        new("feed_rate", CaseDimension.MassFlow), new("exchange", CaseDimension.Duration), new("changeover", CaseDimension.Duration),
    ];

    private static readonly CaseInput[] Lower = [new("lower_demand", CaseDimension.MassFlow), new("lower_payload", CaseDimension.Mass)];
    private static readonly CaseInput[] Upper = [new("upper_demand", CaseDimension.MassFlow), new("upper_payload", CaseDimension.Mass)];
    private static readonly CaseInput Lowest = new("lowest_level", CaseDimension.Mass);

    public static IReadOnlyList<CaseFormula> All { get; } = [.. Laying, .. Haul, .. Feeding, .. Rolling];

    private static IReadOnlyList<CaseFormula> Laying =>
    [
        new("spread-rate", CaseDimension.MassPerArea, [Thickness, Density], i => Spreading(i)),
        new("compacted-density", CaseDimension.Density, [new("reference_density", CaseDimension.Density), new("degree", CaseDimension.Proportion)],
            i => Spread.Compacted(i["reference_density"], i["degree"])),
        new("tonnage", CaseDimension.Mass, [new("length", CaseDimension.Length), Width, Thickness, Density, new CaseInput("waste", CaseDimension.Proportion).Optional()],
            i => Spreading(i) is { } rate ? Spread.Tonnage(rate, i["length"] * i["width"], i["waste"]) : null),
        new("run-per-load", CaseDimension.Length, [Payload, Width, Thickness, Density],
            i => Spreading(i) is { } rate ? Spread.RunPerLoad(i["payload"], i["width"], rate) : null),
        new("thickness-behind-screed", CaseDimension.Length, [Thickness, new("final_degree", CaseDimension.Proportion), new("degree_behind_screed", CaseDimension.Proportion)],
            i => CourseThickness.BehindScreed(i["thickness"], i["final_degree"], i["degree_behind_screed"])),
        new("paver-speed", CaseDimension.Speed, [Supply, Width, Thickness, Density],
            i => Spreading(i) is { } rate ? Engineering.Supply.Demand.PaverSpeed(i["supply"], i["width"], rate) : null),
        new("paver-demand", CaseDimension.MassFlow, [PaverSpeed, Width, Thickness, Density],
            i => Spreading(i) is { } rate ? Engineering.Supply.Demand.Of(i["paver_speed"], i["width"], rate) : null),
        new("speed-while-moving", CaseDimension.Speed, [new("average_speed", CaseDimension.Speed), new("availability", CaseDimension.Proportion)],
            i => Engineering.Supply.Demand.WhileMoving(i["average_speed"], i["availability"])),
    ];

    private static IReadOnlyList<CaseFormula> Haul =>
    [
        new("supply-with-stock", CaseDimension.MassFlow, [new("plant_output", CaseDimension.MassFlow), new("stock", CaseDimension.Mass), new("shift", CaseDimension.Duration)],
            i => Engineering.Supply.Demand.WithStock(i["plant_output"], i["stock"], i["shift"])),
        new("truck-cycle", CaseDimension.Duration,
            [new("loading", CaseDimension.Duration), new("haul_out", CaseDimension.Duration), new("discharge", CaseDimension.Duration), new("haul_back", CaseDimension.Duration), new CaseInput("waiting", CaseDimension.Duration).Optional()],
            i => Fleet.Cycle(i["loading"], i["haul_out"], i["waiting"], i["discharge"], i["haul_back"])),
        new("minimum-trucks", CaseDimension.Count, [Rate, new("cycle", CaseDimension.Duration), Payload],
            i => Fleet.MinimumCount(i["rate"], i["cycle"], i["payload"])),
        new("load-interval", CaseDimension.Duration, [Payload, Rate], i => Fleet.Interval(i["payload"], i["rate"])),
        new("discharge-time", CaseDimension.Duration, [Payload, Demand], i => Fleet.Discharge(i["payload"], i["demand"])),
        new("shift-tonnage", CaseDimension.Mass,
            [new("output", CaseDimension.MassFlow), new("productive", CaseDimension.Duration), new("availability", CaseDimension.Proportion), new("stock_used", CaseDimension.Mass)],
            i => ShiftTonnage.Of(i["output"], i["productive"], i["availability"], i["stock_used"])),
        new("loads", CaseDimension.Count, [new("mass", CaseDimension.Mass), Payload], i => ShiftTonnage.Loads(i["mass"], i["payload"])),
        new("start-delay", CaseDimension.Duration, [new("loads_waiting", CaseDimension.Count), Payload, new("output", CaseDimension.MassFlow)],
            i => ShiftTonnage.StartDelay(i.Whole("loads_waiting"), i["payload"], i["output"])),
        new("buffer-cover", CaseDimension.Duration, [new("held", CaseDimension.Mass), Demand], i => Fleet.BufferCover(i["held"], i["demand"])),
    ];

    private static IReadOnlyList<CaseFormula> Feeding =>
    [
        new("feeder-occupation", CaseDimension.Plain, [.. Lower, .. Upper, .. Feeder], i => TwoMixFeeding.Occupation(Mix(i, "lower"), Mix(i, "upper"), Timing(i))),
        new("feeder-occupation-one-mix", CaseDimension.Plain, [Demand, Payload, .. Feeder],
            i => TwoMixFeeding.Occupation(new FedMix(i["demand"], i["payload"]), Timing(i))),
        new("lower-buffer-needed", CaseDimension.Mass, [.. Lower, .. Upper, .. Feeder, Lowest],
            i => TwoMixFeeding.LowerBufferNeeded(Mix(i, "lower"), Mix(i, "upper"), Timing(i), i["lowest_level"])),
        new("call-level-lowest", CaseDimension.Mass, [.. Lower, .. Upper, .. Feeder, Lowest],
            i => TwoMixFeeding.CallLowest(Mix(i, "lower"), Mix(i, "upper"), Timing(i), i["lowest_level"])),
        new("call-level-highest", CaseDimension.Mass, [.. Upper, .. Feeder, new("capacity", CaseDimension.Mass)],
            i => TwoMixFeeding.CallHighest(Mix(i, "upper"), Timing(i), i["capacity"])),
    ];

    private static IReadOnlyList<CaseFormula> Rolling =>
    [
        new("roller-strips", CaseDimension.Count,
            [Width, new("left_overhang", CaseDimension.Length), new("right_overhang", CaseDimension.Length), Drum, Overlap],
            i => Engineering.Rolling.Strips.Count(i["width"], i["left_overhang"], i["right_overhang"], i["drum"], i["overlap"])),
        new("roller-efficiency", CaseDimension.Plain, [new("zone", CaseDimension.Length), RollerSpeed, new("reversal", CaseDimension.Duration)],
            i => RollerOutput.Efficiency(i["zone"], i["roller_speed"], i["reversal"])),
        new("speed-roller-follows", CaseDimension.Speed, [Efficiency, RollerSpeed, Strips, Passes],
            i => RollerOutput.SpeedItFollows(i["efficiency"], i["roller_speed"], i.Whole("strips"), i.Whole("passes"))),
        new("roller-effective-speed", CaseDimension.Speed, [Efficiency, RollerSpeed],
            i => PassTimes.EffectiveSpeed(i["efficiency"], i["roller_speed"])),
        new("pass-latest", CaseDimension.Duration,
            [new("start", CaseDimension.Duration), new("end", CaseDimension.Duration), Passes, new("pass", CaseDimension.Count)],
            i => PassTimes.LatestOf(i["start"], i["end"], i.Whole("passes"), i.Whole("pass"))),
        new("roller-area-output", CaseDimension.AreaPerTime, [Efficiency, RollerSpeed, Drum, Overlap, Passes],
            i => RollerOutput.AreaPerSecond(i["efficiency"], i["roller_speed"], i["drum"], i["overlap"], i.Whole("passes"))),
        new("rollers-by-tonnage", CaseDimension.Count, [Rate, new("per_roller", CaseDimension.MassFlow)],
            i => RollerOutput.CountByTonnage(i["rate"], i["per_roller"])),
        new("roller-tail-out", CaseDimension.Duration, [new("zone", CaseDimension.Length), Efficiency, RollerSpeed, Passes],
            i => RollerOutput.TailOut(i["zone"], i["efficiency"], i["roller_speed"], i.Whole("passes"))),
        new("zone-length", CaseDimension.Length, [PaverSpeed, Time], i => RollerOutput.ZoneLength(i["paver_speed"], i["time"])),
        new("zone-time", CaseDimension.Duration, [new("end", CaseDimension.Length), PaverSpeed], i => RollerOutput.ZoneTime(i["end"], i["paver_speed"])),
        new("impact-spacing", CaseDimension.Length, [RollerSpeed, new("frequency", CaseDimension.Frequency)],
            i => RollerOutput.ImpactSpacing(i["roller_speed"], i["frequency"])),
        new("linear-load", CaseDimension.LoadPerWidth, [new("mass", CaseDimension.Mass), Drum],
            i => RollerOutput.LinearLoad(i["mass"], i["drum"])),
    ];

    private static double? Spreading(CaseInputs i) => Spread.Rate(i["thickness"], i["density"]);

    private static FedMix Mix(CaseInputs i, string which) => new(i[which + "_demand"], i[which + "_payload"]);

    private static FeederTiming Timing(CaseInputs i) => new(i["feed_rate"], i["exchange"], i["changeover"]);
}
