using Laygate.Model.Measures;

namespace Laygate.Model.Plans;

/// <summary>Plants, trucks and feeder.</summary>
public sealed record Supply
{
    /// <summary>Plants.</summary>
    public IReadOnlyList<Plant> Plants { get; init; } = [];

    /// <summary>Groups of trucks that carry one mix from one plant.</summary>
    public IReadOnlyList<TruckGroup> Trucks { get; init; } = [];

    /// <summary>The machine that passes mix from truck to paver.</summary>
    public Feeder? Feeder { get; init; }

    /// <summary>How loads of different mixes are told apart.</summary>
    public MixIdentification? Identification { get; init; }

    /// <summary>How loads are sent.</summary>
    public Dispatch? Dispatch { get; init; }

    /// <summary>Trucks that find room to wait on site.</summary>
    public int? WaitingPlaces { get; init; }

    /// <summary>Where mix goes that is left over at the end of the shift.</summary>
    public string? LeftOverGoesTo { get; init; }
}

/// <summary>A mixing plant.</summary>
public sealed record Plant
{
    /// <summary>Id.</summary>
    public required string Id { get; init; }

    /// <summary>Ids of the mixes it makes for this job.</summary>
    public IReadOnlyList<string> Mixes { get; init; } = [];

    /// <summary>Output on its name plate.</summary>
    public Measure<MassFlow>? Nameplate { get; init; }

    /// <summary>Average output planned for this job over the shift.</summary>
    public Measure<MassFlow>? Planned { get; init; }

    /// <summary>Mix in the silo at the start.</summary>
    public Measure<Mass>? SiloAtStart { get; init; }

    /// <summary>Capacity of the silo.</summary>
    public Measure<Mass>? SiloCapacity { get; init; }

    /// <summary>Trucks that can be loaded with the same mix at the same time.</summary>
    public int? LoadingPlaces { get; init; }

    /// <summary>Longest stop of the plant that the paver is to survive without stopping.</summary>
    public Measure<Duration>? LongestStop { get; init; }

    /// <summary>Plant that stands in.</summary>
    public string? Spare { get; init; }
}

/// <summary>Trucks that carry one mix from one plant.</summary>
public sealed record TruckGroup
{
    /// <summary>Id.</summary>
    public required string Id { get; init; }

    /// <summary>Id of the plant.</summary>
    public string? Plant { get; init; }

    /// <summary>Id of the mix.</summary>
    public string? Mix { get; init; }

    /// <summary>Id of the paver that they serve; null where they serve whichever lays their mix.</summary>
    public string? Paver { get; init; }

    /// <summary>Kind of body.</summary>
    public TruckKind? Kind { get; init; }

    /// <summary>Number of trucks.</summary>
    public int? Count { get; init; }

    /// <summary>Payload of one truck.</summary>
    public Measure<Mass>? Payload { get; init; }

    /// <summary>Insulated body.</summary>
    public bool? Insulated { get; init; }

    /// <summary>Covered load.</summary>
    public bool? Covered { get; init; }

    /// <summary>Loading at the plant.</summary>
    public Measure<Duration>? Loading { get; init; }

    /// <summary>Weighing, ticket and sheeting.</summary>
    public Measure<Duration>? Ticket { get; init; }

    /// <summary>Loaded journey on a usual day.</summary>
    public Measure<Duration>? HaulOut { get; init; }

    /// <summary>Loaded journey on a bad day.</summary>
    public Measure<Duration>? HaulOutBad { get; init; }

    /// <summary>Empty journey on a usual day.</summary>
    public Measure<Duration>? HaulBack { get; init; }

    /// <summary>Empty journey on a bad day.</summary>
    public Measure<Duration>? HaulBackBad { get; init; }

    /// <summary>Planned wait on site.</summary>
    public Measure<Duration>? Wait { get; init; }

    /// <summary>Cleaning after unloading.</summary>
    public Measure<Duration>? Cleaning { get; init; }

    /// <summary>Loads that wait on site before the paver starts.</summary>
    public int? LoadsBeforeStart { get; init; }
}

/// <summary>The machine that passes mix from truck to paver.</summary>
public sealed record Feeder
{
    /// <summary>Id.</summary>
    public required string Id { get; init; }

    /// <summary>Rate while it feeds.</summary>
    public Measure<MassFlow>? Rate { get; init; }

    /// <summary>Time for one truck to leave and the next to dock and tip.</summary>
    public Measure<Duration>? Exchange { get; init; }

    /// <summary>Time to turn from one buffer to the other, each way.</summary>
    public Measure<Duration>? Changeover { get; init; }

    /// <summary>Whether it remixes.</summary>
    public bool? Remixes { get; init; }

    /// <summary>Temperature lost in it.</summary>
    public Measure<TemperatureDelta>? TemperatureLoss { get; init; }

    /// <summary>Own storage.</summary>
    public Measure<Mass>? Storage { get; init; }

    /// <summary>Whether it is emptied before it changes the mix.</summary>
    public bool? EmptiedBeforeChange { get; init; }

    /// <summary>Where the rest of a mix goes.</summary>
    public string? RestGoesTo { get; init; }

    /// <summary>Whether a truck may unload in parts.</summary>
    public bool? UnloadingInParts { get; init; }

    /// <summary>Mass when empty.</summary>
    public Measure<Mass>? MassEmpty { get; init; }

    /// <summary>Mass when full.</summary>
    public Measure<Mass>? MassFull { get; init; }
}

/// <summary>How loads of different mixes are told apart.</summary>
/// <param name="OnTruck">Mark on the truck.</param>
/// <param name="OnTicket">Mark on the ticket.</param>
/// <param name="ReleasedBy">Who releases a load at the feeder.</param>
/// <param name="OnMismatch">What happens to a load of the wrong mix.</param>
public sealed record MixIdentification(string? OnTruck, string? OnTicket, string? ReleasedBy, string? OnMismatch);
