using System.Collections.Frozen;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Quantities.Safety;

/// <summary>All conditions of the site, with the data that decide them.</summary>
internal static class SiteConditionTable
{
    /// <summary>The conditions in the order of the plan's keys.</summary>
    public static IReadOnlyList<SiteCondition> All { get; } =
    [
        new("trucks_reverse", "Trucks reverse to the paver or feeder.", s => s.Conditions.TrucksReverse, ShownByMachines.TrucksReverse),
        new("raised_bodies", "Tipping bodies are raised on site.", s => s.Conditions.RaisedBodies, ShownByMachines.RaisedBodies),
        new("overhead_line", "An overhead line crosses or runs near the works or the haul route.", s => s.Conditions.OverheadLine, ShownByPlace.OverheadLine),
        new("buried_services", "Buried services or ironwork lie in or near the works.", s => s.Conditions.BuriedServices, ShownByPlace.BuriedServices) { LeftOpen = ShownByPlace.ObstacleOfNoKind },
        new("milling", "The existing surface is milled.", s => s.Conditions.Milling, ShownByTime.Milling) { LeftOpen = ShownByTime.MilledNobodyKnowsWhen },
        new("tar_suspected", "Existing layers may hold tar.", s => s.Conditions.TarSuspected),
        new("night", "The works go on at night, at dusk or in poor light.", s => s.Conditions.Night, ShownByTime.Night),
        new("enclosed", "The works lie in a tunnel, an underpass, a deep cutting or indoors.", s => s.Conditions.Enclosed, ShownByPlace.Enclosed),
        new("bridge_deck", "A bridge deck is laid upon or crossed by the plant.", s => s.Conditions.BridgeDeck, ShownByPlace.BridgeDeck),
        new("crew_on_foot", "People of the crew work on foot near machines.", s => s.Conditions.CrewOnFoot, ShownByMachines.CrewOnFoot),
        new("public_on_foot", "The public passes on foot or by cycle.", s => s.Conditions.PublicOnFoot, ShownByPlace.PublicOnFoot),
        new("gradient", "The works lie on a marked gradient.", s => s.Conditions.Gradient, ShownByPlace.Gradient),
        new("edge_drop", "An embankment, trench, retaining wall or step lies beside the works.", s => s.Conditions.EdgeDrop),
        new("water_edge", "Water, or the edge of a structure, lies beside the works.", s => s.Conditions.WaterEdge),
        new("drains", "A watercourse or gullies can take spills.", s => s.Conditions.Drains, ShownByPlace.Drains) { LeftOpen = ShownByPlace.ObstacleOfNoKind },
        new("railway", "A railway or tramway is near.", s => s.Conditions.Railway, ShownByPlace.Railway) { LeftOpen = ShownByPlace.ObstacleOfNoKind },
        new("neighbours", "Homes or other neighbours are near.", s => s.Conditions.Neighbours),
        new("access_closed", "The mat closes the only access of somebody, or the full width.", s => s.Conditions.AccessClosed, ShownByPlace.AccessClosed),
        new("spraying", "Bond coat or binder is sprayed.", s => s.Conditions.Spraying, ShownByMaterials.Spraying),
        new("hot_binder", "Hot binder is handled on site.", s => s.Conditions.HotBinder, ShownByMaterials.HotBinder),
        new("burners", "Gas or oil burners are in use.", s => s.Conditions.Burners, ShownByMachines.Burners),
        new("hot_weather", "Hot weather is expected.", s => s.Conditions.HotWeather),
        new("lone_work", "Somebody works alone or apart from the crew.", s => s.Conditions.LoneWork),
        new("remote", "The site is remote or has poor telephone cover.", s => s.Conditions.Remote),
        new("several_employers", "More than one employer works on site.", s => s.Conditions.SeveralEmployers),
        new("radioactive_gauge", "A gauge with a radioactive source is used.", s => s.Conditions.RadioactiveGauge),
        new("step_left", "A step or ramp stays under traffic between shifts.", s => s.Conditions.StepLeft),
        new("traffic_stopped", "Traffic is stopped or turned by people or by portable signals.", s => s.Conditions.TrafficStopped, ShownByPlace.TrafficStopped),
        new("long_works", "Traffic runs beside the works for longer than one day.", s => s.Conditions.LongWorks, ShownByPlace.LongWorks),
        new("work_on_trucks", "Somebody climbs onto a truck to sheet, sample or trim the load.", s => s.Conditions.WorkOnTrucks),
        new("trucks_dock", "Trucks dock at a paver or feeder.", s => s.Conditions.TrucksDock, ShownByMachines.TrucksDock),
        new("feeder", "A feeder passes the mix from truck to paver.", s => s.Conditions.Feeder, ShownByMachines.Feeder),
        new("several_machines", "Two or more machines or trucks work at the same time.", s => s.Conditions.SeveralMachines, ShownByMachines.SeveralMachines),
        new("hand_work", "Mix is laid, raked or carried by hand.", s => s.Conditions.HandWork, ShownByPlace.HandWork),
        new("vibrating_tools", "Vibrating rollers, plates, rammers, saws or breakers are used.", s => s.Conditions.VibratingTools, ShownByMachines.VibratingTools),
        new("tank_opened", "A tank of hot binder is opened, dipped or sampled.", s => s.Conditions.TankOpened),
        new("solvents", "Cut-back binder or a solvent is used.", s => s.Conditions.Solvents, ShownByMaterials.Solvents),
        new("release_agent", "Beds or tools are treated so that mix does not stick.", s => s.Conditions.ReleaseAgent),
        new("flame_cleaning", "Tools are cleaned or heated with a flame.", s => s.Conditions.FlameCleaning),
        new("dust", "Old pavement is sawn, ground or swept dry.", s => s.Conditions.Dust),
        new("long_shift", "The shift is long, one of several nights in a row, or followed by a long way home.", s => s.Conditions.LongShift, ShownByTime.LongShift),
        new("out_of_hours", "The works go on at a weekend or outside the usual hours for noise.", s => s.Conditions.OutOfHours, ShownByTime.OutOfHours),
        new("bad_weather", "Cold, rain, strong wind or lightning may meet the shift.", s => s.Conditions.BadWeather, ShownByTime.BadWeather),
        new("opened_warm", "People walk or drive on the new mat before it is cold.", s => s.Conditions.OpenedWarm),
        new("slippery_when_new", "The new surface opens before it grips, or with loose grit or spills on it.", s => s.Conditions.SlipperyWhenNew, ShownByMaterials.SlipperyWhenNew),
        new("public_road_access", "Trucks leave the site onto a public road.", s => s.Conditions.PublicRoadAccess),
        new("plant_left", "Machines or hot material stay on site after the shift.", s => s.Conditions.PlantLeft),
    ];

    /// <summary>Whether traffic runs beside the works: stated as a word, and shown by the closure.</summary>
    private static readonly SiteCondition Traffic = new(
        "traffic", "Traffic runs beside the works.", s => s.Traffic is { } traffic ? traffic != TrafficAlongside.None : null, ShownByPlace.Traffic)
    {
        Path = "traffic",
    };

    private static readonly FrozenDictionary<string, SiteCondition> ByKey = All.Append(Traffic).ToFrozenDictionary(condition => condition.Key, StringComparer.Ordinal);

    /// <summary>A condition by its key.</summary>
    public static SiteCondition Of(string key) => ByKey[key];

    /// <summary>Keys of everything that a plan can state against its own data.</summary>
    public static IReadOnlyList<string> Keys { get; } = [.. All.Select(condition => condition.Key), Traffic.Key];

    /// <summary>The conditions that a plan states, yes or no, and that its data may decide.</summary>
    public static IEnumerable<StatedCondition> StatedBy(Plan plan) =>
        All.Append(Traffic).Where(condition => condition.Shown is not null && condition.Stated(plan) is not null).Select(condition => new StatedCondition(condition.Key, condition.Stated(plan)!.Value));
}
