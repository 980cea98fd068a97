using System.Collections.Frozen;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Quantities.Safety;

/// <summary>All conditions of the site, with the data that decide them.</summary>
internal static class SiteConditionTable
{
    /// <summary>The conditions in the order of the plan's keys.</summary>
    public static IReadOnlyList<SiteCondition> All { get; } = [.. SiteConditions.Keys.Select(flag =>
        new SiteCondition(flag.Key, flag.Meaning, site => site.Conditions is { } stated ? flag.Read(stated) : null, ShownBy(flag.Key)) { LeftOpen = LeftOpenBy(flag.Key) })];

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

    // What other data of a plan decide.
    private static Func<QuantityContext, ShownCondition?>? ShownBy(string key) => key switch
    {
        "trucks_reverse" => ShownByMachines.TrucksReverse,
        "raised_bodies" => ShownByMachines.RaisedBodies,
        "overhead_line" => ShownByPlace.OverheadLine,
        "buried_services" => ShownByPlace.BuriedServices,
        "milling" => ShownByTime.Milling,
        "night" => ShownByTime.Night,
        "enclosed" => ShownByPlace.Enclosed,
        "bridge_deck" => ShownByPlace.BridgeDeck,
        "crew_on_foot" => ShownByMachines.CrewOnFoot,
        "public_on_foot" => ShownByPlace.PublicOnFoot,
        "gradient" => ShownByPlace.Gradient,
        "drains" => ShownByPlace.Drains,
        "railway" => ShownByPlace.Railway,
        "access_closed" => ShownByPlace.AccessClosed,
        "spraying" => ShownByMaterials.Spraying,
        "hot_binder" => ShownByMaterials.HotBinder,
        "burners" => ShownByMachines.Burners,
        "traffic_stopped" => ShownByPlace.TrafficStopped,
        "long_works" => ShownByPlace.LongWorks,
        "trucks_dock" => ShownByMachines.TrucksDock,
        "feeder" => ShownByMachines.Feeder,
        "several_machines" => ShownByMachines.SeveralMachines,
        "hand_work" => ShownByPlace.HandWork,
        "vibrating_tools" => ShownByMachines.VibratingTools,
        "solvents" => ShownByMaterials.Solvents,
        "long_shift" => ShownByTime.LongShift,
        "out_of_hours" => ShownByTime.OutOfHours,
        "bad_weather" => ShownByTime.BadWeather,
        "slippery_when_new" => ShownByMaterials.SlipperyWhenNew,
        _ => null,
    };

    // Of what other data may begin to speak and say too little.
    private static Func<QuantityContext, InputReference?>? LeftOpenBy(string key) => key switch
    {
        "buried_services" or "drains" or "railway" => ShownByPlace.ObstacleOfNoKind,
        "milling" => ShownByTime.MilledNobodyKnowsWhen,
        _ => null,
    };
}
