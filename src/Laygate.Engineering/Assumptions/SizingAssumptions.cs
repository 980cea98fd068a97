using Laygate.Engineering.Quantities;

namespace Laygate.Engineering.Assumptions;

/// <summary>Usual values with which a job is sized before anything of it is fixed. Only the first sizing uses them; a check never takes one in place of what a plan leaves out.</summary>
public static class SizingAssumptions
{
#pragma warning disable CS1591 // The catalogue itself says what each means.
    public const string PaverSpeed = "size.paver_speed";
    public const string Availability = "size.availability";
    public const string ShiftLength = "size.shift_length";
    public const string Payload = "size.payload";
    public const string Haul = "size.haul";
    public const string InitialPasses = "size.passes_initial";
    public const string MainPasses = "size.passes_main";
    public const string FinishPasses = "size.passes_finish";
    public const string DrumWidth = "size.drum_width";
    public const string RollerSpeed = "size.roller_speed";
    public const string ZoneLength = "size.zone_length";
    public const string LayingTemperature = "size.laying_temperature";
    public const string Wind = "size.wind";
#pragma warning restore CS1591

    /// <summary>All of them.</summary>
    public static IReadOnlyList<Assumption> All { get; } =
    [
        new(PaverSpeed, "Speed of the paver while it lays, for a first sizing.", 11, "ft/min", 7, 20,
            "US Navy, NAVEDTRA 14080 Equipment Operator, \"Estimates for asphalt plants\": planning speed 11 ft/min (read); range judged", Evidence.Read),
        LaygateAssumptions.Judged(Availability, "Share of the time in which the paver moves, for a first sizing: trucks, joints and people stop it, and how often nobody knows before the plan.", 80, "%", 60, 95),
        new(ShiftLength, "Time from the first metre to the last in one shift, for a first sizing.", 6, "h", 5, 9,
            "Odisha Analysis of Rates 2006, item 46: 6 productive hours a day (from a copy in a works estimate); range judged", Evidence.SecondHand),
        new(Payload, "Payload of a truck, for a first sizing.", 20, "short ton", 12, 25,
            "NAPA, asphalt pavement handbook online, 6.3 Truck types: rigid 12 to 20, articulated 20 to 25 short tons (read)", Evidence.Read),
        LaygateAssumptions.Judged(Haul, "Journey of a truck each way, for a first sizing: where the plant lies is not known yet.", 30, "min", 10, 60),
        new(InitialPasses, "Passes of the initial phase, for a first sizing.", 3, string.Empty, 2, 4,
            "Foster, The effect of paver speed on roller requirements, Highway Research Record 316, 1970: charts for 2, 3 and 4 breakdown passes (abstract read, place recalled)", Evidence.SecondHand),
        LaygateAssumptions.Judged(MainPasses, "Passes of the main phase, for a first sizing; the trial length decides.", 4, string.Empty, 3, 8),
        LaygateAssumptions.Judged(FinishPasses, "Passes of the finish phase, for a first sizing.", 2, string.Empty, 1, 4),
        new(DrumWidth, "Width of the drum of a roller, for a first sizing.", 66, "in", 59, 84, "trade page: nominal drums of 66, 78 and 84 in (recalled); low end judged", Evidence.Recalled),
        new(RollerSpeed, "Speed of a roller, for a first sizing.", 2.5, "mph", 2, 3.5,
            "Hot-Mix Asphalt Paving Handbook 2000, section 18: vibratory rollers 2 to 3 1/2 mph (second-hand); value judged", Evidence.SecondHand),
        LaygateAssumptions.Judged(ZoneLength, "Length of the zone in which a roller goes to and fro, for a first sizing; shorter zones cost more reversals.", 40, "m", 20, 60),
        new(LayingTemperature, "Mean temperature of a course behind the screed, for a first sizing.", 150, "°C", 135, 160, "trade summary of ZTV Asphalt-StB 07: about 150 °C at laying (recalled); range judged", Evidence.Recalled),
        LaygateAssumptions.Judged(Wind, "Wind at ten metres, for a first sizing: a moderate breeze cools the mat faster than most hours do.", 5, "m/s", 1, 8),
    ];
}
