using Laygate.Engineering.Quantities;

namespace Laygate.Engineering.Assumptions;

/// <summary>What the simulation of the shift needs and plans leave out, or nobody can state.</summary>
public static class SimulationAssumptions
{
#pragma warning disable CS1591 // The catalogue itself says what each means.
    public const string BadDayPoint = "trucks.bad_day_point";
    public const string HaulSpread = "trucks.haul_spread";
    public const string ServiceSpread = "supply.service_spread";
    public const string TippingRate = "trucks.tipping_rate";
    public const string LoadsBeforeStart = "trucks.loads_before_start";
    public const string LoadStep = "supply.load_step";
    public const string SmallestLoad = "supply.smallest_load";
    public const string ByTimetable = "supply.sent_by_timetable";
    public const string TrucksStay = "trucks.stay_with_one_paver";
    public const string LoadingPlaces = "plant.loading_places";
    public const string HopperCapacity = "paver.hopper_capacity";
    public const string HopperLowest = "paver.hopper_lowest";
    public const string RestartShare = "paver.restart_share";
#pragma warning restore CS1591

    /// <summary>All assumptions of the simulation.</summary>
    public static IReadOnlyList<Assumption> All { get; } =
    [
        LaygateAssumptions.Judged(BadDayPoint, "Share of the journeys that are no longer than on a bad day; the spread is lognormal and the usual day is its median.", 95, "%", 90, 99),
        LaygateAssumptions.Judged(HaulSpread, "Coefficient of variation of a journey whose bad day is not stated.", 15, "%", 10, 25),
        LaygateAssumptions.Judged(ServiceSpread, "Coefficient of variation of loading and of the exchange of trucks.", 20, "%", 0, 30),
        LaygateAssumptions.Judged(TippingRate, "Rate at which a truck tips into a paver that has room.", 600, "t/h", 300, 1200),
        LaygateAssumptions.Judged(LoadsBeforeStart, "Loads that wait on site before the paver starts.", 2, string.Empty, 1, 5),
        LaygateAssumptions.Judged(LoadStep, "Step in which a load that is not a full one is ordered.", 1, "t", 0.5, 2),
        LaygateAssumptions.Judged(SmallestLoad, "Smallest useful load as a share of a full one: a smaller last load is shared with the one before it. A thin load cools faster, and a truck is sent for it.", 50, "%", 30, 50),
        LaygateAssumptions.Judged(ByTimetable, "Share of the loads that leave by timetable, where the plan does not say how loads are sent: 100 % by timetable, 0 % each as soon as it is loaded.", 100, "%", 0, 100),
        LaygateAssumptions.Judged(TrucksStay, "Share of the trucks that stay with one paver, where several lay their mix at the same time and the plan does not say whom they serve: dealt out by what each lays in an hour.", 100, "%", 100, 100),
        LaygateAssumptions.Judged(LoadingPlaces, "Trucks that are loaded with the same mix at the same time.", 1, string.Empty, 1, 2),
        new(HopperCapacity, "Mix that the hopper of a paver holds.", 12, "t", 10, 15, "plain hopper 10 to 15 t, recalled", Evidence.Recalled),
        LaygateAssumptions.Judged(HopperLowest, "Lowest workable level of a paver's hopper.", 3, "t", 1, 5),
        LaygateAssumptions.Judged(RestartShare, "Share of a buffer above its lowest level that is filled again before a paver that stopped for want of mix goes on.", 25, "%", 10, 50),
    ];
}
