using Laygate.Engineering.Layers;
using Laygate.Engineering.Rolling;
using Laygate.Engineering.Supply;
using UnitsNet;

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
        new("spread-rate", CaseDimension.MassPerArea, [Thickness, Density], i => Spreading(i)?.KilogramsPerSquareMeter),
        new("compacted-density", CaseDimension.Density, [new("reference_density", CaseDimension.Density), new("degree", CaseDimension.Proportion)],
            i => Spread.Compacted(UnitsNet.Density.FromKilogramsPerCubicMeter(i["reference_density"]), Ratio.FromDecimalFractions(i["degree"]))?.KilogramsPerCubicMeter),
        new("tonnage", CaseDimension.Mass, [new("length", CaseDimension.Length), Width, Thickness, Density, new CaseInput("waste", CaseDimension.Proportion).Optional()],
            i => Spreading(i) is { } rate ? Spread.Tonnage(rate, Area.FromSquareMeters(i["length"] * i["width"]), Ratio.FromDecimalFractions(i["waste"]))?.Kilograms : null),
        new("run-per-load", CaseDimension.Length, [Payload, Width, Thickness, Density],
            i => Spreading(i) is { } rate ? Spread.RunPerLoad(Kilograms(i, "payload"), Metres(i, "width"), rate)?.Meters : null),
        new("thickness-behind-screed", CaseDimension.Length, [Thickness, new("final_degree", CaseDimension.Proportion), new("degree_behind_screed", CaseDimension.Proportion)],
            i => CourseThickness.BehindScreed(Metres(i, "thickness"), Ratio.FromDecimalFractions(i["final_degree"]), Ratio.FromDecimalFractions(i["degree_behind_screed"]))?.Meters),
        new("paver-speed", CaseDimension.Speed, [Supply, Width, Thickness, Density],
            i => Spreading(i) is { } rate ? Engineering.Supply.Demand.PaverSpeed(Flow(i, "supply"), Metres(i, "width"), rate)?.MetersPerSecond : null),
        new("paver-demand", CaseDimension.MassFlow, [PaverSpeed, Width, Thickness, Density],
            i => Spreading(i) is { } rate ? Engineering.Supply.Demand.Of(Velocity(i, "paver_speed"), Metres(i, "width"), rate)?.KilogramsPerSecond : null),
        new("speed-while-moving", CaseDimension.Speed, [new("average_speed", CaseDimension.Speed), new("availability", CaseDimension.Proportion)],
            i => Engineering.Supply.Demand.WhileMoving(Velocity(i, "average_speed"), Ratio.FromDecimalFractions(i["availability"]))?.MetersPerSecond),
    ];

    private static IReadOnlyList<CaseFormula> Haul =>
    [
        new("supply-with-stock", CaseDimension.MassFlow, [new("plant_output", CaseDimension.MassFlow), new("stock", CaseDimension.Mass), new("shift", CaseDimension.Duration)],
            i => Engineering.Supply.Demand.WithStock(Flow(i, "plant_output"), Kilograms(i, "stock"), Span(i, "shift"))?.KilogramsPerSecond),
        new("truck-cycle", CaseDimension.Duration,
            [new("loading", CaseDimension.Duration), new("haul_out", CaseDimension.Duration), new("discharge", CaseDimension.Duration), new("haul_back", CaseDimension.Duration), new CaseInput("waiting", CaseDimension.Duration).Optional()],
            i => Fleet.Cycle(Span(i, "loading"), Span(i, "haul_out"), Span(i, "waiting"), Span(i, "discharge"), Span(i, "haul_back"))?.Seconds),
        new("minimum-trucks", CaseDimension.Count, [Rate, new("cycle", CaseDimension.Duration), Payload],
            i => Fleet.MinimumCount(Flow(i, "rate"), Span(i, "cycle"), Kilograms(i, "payload"))),
        new("load-interval", CaseDimension.Duration, [Payload, Rate], i => Fleet.Interval(Kilograms(i, "payload"), Flow(i, "rate"))?.Seconds),
        new("discharge-time", CaseDimension.Duration, [Payload, Demand], i => Fleet.Discharge(Kilograms(i, "payload"), Flow(i, "demand"))?.Seconds),
        new("shift-tonnage", CaseDimension.Mass,
            [new("output", CaseDimension.MassFlow), new("productive", CaseDimension.Duration), new("availability", CaseDimension.Proportion), new("stock_used", CaseDimension.Mass)],
            i => ShiftTonnage.Of(Flow(i, "output"), Span(i, "productive"), Ratio.FromDecimalFractions(i["availability"]), Kilograms(i, "stock_used"))?.Kilograms),
        new("loads", CaseDimension.Count, [new("mass", CaseDimension.Mass), Payload], i => ShiftTonnage.Loads(Kilograms(i, "mass"), Kilograms(i, "payload"))),
        new("start-delay", CaseDimension.Duration, [new("loads_waiting", CaseDimension.Count), Payload, new("output", CaseDimension.MassFlow)],
            i => ShiftTonnage.StartDelay(i.Whole("loads_waiting"), Kilograms(i, "payload"), Flow(i, "output"))?.Seconds),
        new("buffer-cover", CaseDimension.Duration, [new("held", CaseDimension.Mass), Demand], i => Fleet.BufferCover(Kilograms(i, "held"), Flow(i, "demand"))?.Seconds),
    ];

    private static IReadOnlyList<CaseFormula> Feeding =>
    [
        new("feeder-occupation", CaseDimension.Plain, [.. Lower, .. Upper, .. Feeder], i => TwoMixFeeding.Occupation(Mix(i, "lower"), Mix(i, "upper"), Timing(i))),
        new("feeder-occupation-one-mix", CaseDimension.Plain, [Demand, Payload, .. Feeder],
            i => TwoMixFeeding.Occupation(new FedMix(Flow(i, "demand"), Kilograms(i, "payload")), Timing(i))),
        new("lower-buffer-needed", CaseDimension.Mass, [.. Lower, .. Upper, .. Feeder, Lowest],
            i => TwoMixFeeding.LowerBufferNeeded(Mix(i, "lower"), Mix(i, "upper"), Timing(i), Kilograms(i, "lowest_level"))?.Kilograms),
        new("call-level-lowest", CaseDimension.Mass, [.. Lower, .. Upper, .. Feeder, Lowest],
            i => TwoMixFeeding.CallLowest(Mix(i, "lower"), Mix(i, "upper"), Timing(i), Kilograms(i, "lowest_level"))?.Kilograms),
        new("call-level-highest", CaseDimension.Mass, [.. Upper, .. Feeder, new("capacity", CaseDimension.Mass)],
            i => TwoMixFeeding.CallHighest(Mix(i, "upper"), Timing(i), Kilograms(i, "capacity"))?.Kilograms),
    ];

    private static IReadOnlyList<CaseFormula> Rolling =>
    [
        new("roller-strips", CaseDimension.Count,
            [Width, new("left_overhang", CaseDimension.Length), new("right_overhang", CaseDimension.Length), Drum, Overlap],
            i => Engineering.Rolling.Strips.Count(Metres(i, "width"), Metres(i, "left_overhang"), Metres(i, "right_overhang"), Metres(i, "drum"), Metres(i, "overlap"))),
        new("roller-efficiency", CaseDimension.Plain, [new("zone", CaseDimension.Length), RollerSpeed, new("reversal", CaseDimension.Duration)],
            i => RollerOutput.Efficiency(Metres(i, "zone"), Velocity(i, "roller_speed"), Span(i, "reversal"))),
        new("speed-roller-follows", CaseDimension.Speed, [Efficiency, RollerSpeed, Strips, Passes],
            i => RollerOutput.SpeedItFollows(i["efficiency"], Velocity(i, "roller_speed"), i.Whole("strips"), i.Whole("passes"))?.MetersPerSecond),
        new("roller-effective-speed", CaseDimension.Speed, [Efficiency, RollerSpeed],
            i => PassTimes.EffectiveSpeed(i["efficiency"], Velocity(i, "roller_speed"))?.MetersPerSecond),
        new("pass-latest", CaseDimension.Duration,
            [new("start", CaseDimension.Duration), new("end", CaseDimension.Duration), Passes, new("pass", CaseDimension.Count)],
            i => PassTimes.LatestOf(Span(i, "start"), Span(i, "end"), i.Whole("passes"), i.Whole("pass"))?.Seconds),
        new("roller-area-output", CaseDimension.AreaPerTime, [Efficiency, RollerSpeed, Drum, Overlap, Passes],
            i => RollerOutput.AreaPerSecond(i["efficiency"], Velocity(i, "roller_speed"), Metres(i, "drum"), Metres(i, "overlap"), i.Whole("passes"))),
        new("rollers-by-tonnage", CaseDimension.Count, [Rate, new("per_roller", CaseDimension.MassFlow)],
            i => RollerOutput.CountByTonnage(Flow(i, "rate"), Flow(i, "per_roller"))),
        new("roller-tail-out", CaseDimension.Duration, [new("zone", CaseDimension.Length), Efficiency, RollerSpeed, Passes],
            i => RollerOutput.TailOut(Metres(i, "zone"), i["efficiency"], Velocity(i, "roller_speed"), i.Whole("passes"))?.Seconds),
        new("zone-length", CaseDimension.Length, [PaverSpeed, Time], i => RollerOutput.ZoneLength(Velocity(i, "paver_speed"), Span(i, "time"))?.Meters),
        new("zone-time", CaseDimension.Duration, [new("end", CaseDimension.Length), PaverSpeed], i => RollerOutput.ZoneTime(Metres(i, "end"), Velocity(i, "paver_speed"))?.Seconds),
        new("impact-spacing", CaseDimension.Length, [RollerSpeed, new("frequency", CaseDimension.Frequency)],
            i => RollerOutput.ImpactSpacing(Velocity(i, "roller_speed"), Frequency.FromHertz(i["frequency"]))?.Meters),
        new("linear-load", CaseDimension.LoadPerWidth, [new("mass", CaseDimension.Mass), Drum],
            i => RollerOutput.LinearLoad(Kilograms(i, "mass"), Metres(i, "drum"))?.NewtonsPerMeter),
    ];

    private static AreaDensity? Spreading(CaseInputs i) =>
        Spread.Rate(Metres(i, "thickness"), UnitsNet.Density.FromKilogramsPerCubicMeter(i["density"]));

    private static FedMix Mix(CaseInputs i, string which) => new(Flow(i, which + "_demand"), Kilograms(i, which + "_payload"));

    private static FeederTiming Timing(CaseInputs i) => new(Flow(i, "feed_rate"), Span(i, "exchange"), Span(i, "changeover"));

    private static Length Metres(CaseInputs i, string name) => Length.FromMeters(i[name]);

    private static Mass Kilograms(CaseInputs i, string name) => Mass.FromKilograms(i[name]);

    private static MassFlow Flow(CaseInputs i, string name) => MassFlow.FromKilogramsPerSecond(i[name]);

    private static Speed Velocity(CaseInputs i, string name) => Speed.FromMetersPerSecond(i[name]);

    private static Duration Span(CaseInputs i, string name) => Duration.FromSeconds(i[name]);
}
