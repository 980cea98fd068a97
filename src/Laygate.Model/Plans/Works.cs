using Laygate.Model.Measures;
using UnitsNet;

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

/// <summary>A paving machine.</summary>
public sealed record Paver
{
    /// <summary>Id.</summary>
    public required string Id { get; init; }

    /// <summary>Ids of the courses it lays.</summary>
    public IReadOnlyList<string> Courses { get; init; } = [];

    /// <summary>What bears it.</summary>
    public CarriedBy? CarriedBy { get; init; }

    /// <summary>Speed while it moves.</summary>
    public Measure<Speed>? Speed { get; init; }

    /// <summary>Share of the time in which it moves.</summary>
    public Measure<Ratio>? Availability { get; init; }

    /// <summary>Screeds, in the order in which they pass a point.</summary>
    public IReadOnlyList<Screed> Screeds { get; init; } = [];

    /// <summary>Mix held on the machine.</summary>
    public IReadOnlyList<MixBuffer> Buffers { get; init; } = [];

    /// <summary>Planned stops.</summary>
    public IReadOnlyList<PlannedStop> Stops { get; init; } = [];

    /// <summary>Longest stop before a joint is made.</summary>
    public Measure<Duration>? StopLimit { get; init; }

    /// <summary>Mass when empty.</summary>
    public Measure<Mass>? MassEmpty { get; init; }
}

/// <summary>A screed.</summary>
/// <param name="Course">Id of the course it lays.</param>
/// <param name="Kind">What compacts under it.</param>
/// <param name="LevelledOn">What it is levelled against.</param>
/// <param name="WidthLowest">Narrowest width.</param>
/// <param name="WidthHighest">Widest width.</param>
public sealed record Screed(
    string Course, ScreedKind? Kind, string? LevelledOn, Measure<Length>? WidthLowest, Measure<Length>? WidthHighest);

/// <summary>Mix held on a machine for one course.</summary>
/// <param name="Course">Id of the course.</param>
/// <param name="Capacity">Capacity.</param>
/// <param name="Lowest">Lowest workable level.</param>
/// <param name="Call">Level at which the next load of this mix is called.</param>
public sealed record MixBuffer(string Course, Measure<Mass>? Capacity, Measure<Mass>? Lowest, Measure<Mass>? Call);

/// <summary>A planned stop of the paver.</summary>
/// <param name="Id">Id.</param>
/// <param name="After">Time after the start of laying.</param>
/// <param name="Length">Length.</param>
/// <param name="Reason">Reason.</param>
public sealed record PlannedStop(string Id, Measure<Duration>? After, Measure<Duration>? Length, string? Reason);

/// <summary>Phases and rollers.</summary>
public sealed record Rolling
{
    /// <summary>Phases in the order in which they pass a point.</summary>
    public IReadOnlyList<Phase> Phases { get; init; } = [];

    /// <summary>Rollers.</summary>
    public IReadOnlyList<Roller> Rollers { get; init; } = [];

    /// <summary>Time that one reversal of direction costs.</summary>
    public Measure<Duration>? Reversal { get; init; }

    /// <summary>Side of the crossfall at which the rolling begins.</summary>
    public FallSide? StartSide { get; init; }

    /// <summary>Distance of the first strip from an edge without support; the rest of the edge is rolled last.</summary>
    public Measure<Length>? FirstStripFromEdge { get; init; }

    /// <summary>How the places at which the rollers turn back lie to each other.</summary>
    public TurningPlaces? TurningPlaces { get; init; }

    /// <summary>Where rollers stand while they wait.</summary>
    public WaitingPlace? RollersWait { get; init; }
}

/// <summary>A phase of the rolling.</summary>
public sealed record Phase
{
    /// <summary>Id.</summary>
    public required string Id { get; init; }

    /// <summary>Part of the rolling.</summary>
    public PhaseKind? Kind { get; init; }

    /// <summary>How often every point of the mat is rolled in this phase.</summary>
    public int? Passes { get; init; }

    /// <summary>Distance of the zone's front behind the last screed.</summary>
    public Measure<Length>? ZoneFrom { get; init; }

    /// <summary>Distance of the zone's end behind the last screed.</summary>
    public Measure<Length>? ZoneTo { get; init; }

    /// <summary>Minutes after the last screed by which the phase is to be done.</summary>
    public Measure<Duration>? DoneWithin { get; init; }
}

/// <summary>A roller.</summary>
public sealed record Roller
{
    /// <summary>Id.</summary>
    public required string Id { get; init; }

    /// <summary>Id of its phase; null for a spare.</summary>
    public string? Phase { get; init; }

    /// <summary>Kind.</summary>
    public RollerKind? Kind { get; init; }

    /// <summary>Mass.</summary>
    public Measure<Mass>? Mass { get; init; }

    /// <summary>Static load of the heavier drum per width, from the maker's sheet.</summary>
    public Measure<ForcePerLength>? LinearLoad { get; init; }

    /// <summary>Width of the drum, or over the tyres.</summary>
    public Measure<Length>? DrumWidth { get; init; }

    /// <summary>Diameter of the drum.</summary>
    public Measure<Length>? DrumDiameter { get; init; }

    /// <summary>Overlap of neighbouring strips.</summary>
    public Measure<Length>? Overlap { get; init; }

    /// <summary>How it compacts.</summary>
    public RollingMode? Mode { get; init; }

    /// <summary>Passes in that mode; the others are static. Null: all.</summary>
    public int? PassesInMode { get; init; }

    /// <summary>Frequency of vibration or oscillation.</summary>
    public Measure<Frequency>? Frequency { get; init; }

    /// <summary>Amplitude of vibration.</summary>
    public Measure<Length>? Amplitude { get; init; }

    /// <summary>Speed while rolling.</summary>
    public Measure<Speed>? Speed { get; init; }

    /// <summary>Whether it stands by as a spare.</summary>
    public bool? Spare { get; init; }

    /// <summary>Where it takes water and fuel.</summary>
    public string? WaterAndFuel { get; init; }

    /// <summary>Where it parks off the hot mat.</summary>
    public string? Parking { get; init; }

    /// <summary>Breaks of its driver and who stands in.</summary>
    public string? Breaks { get; init; }
}

/// <summary>Tack between courses.</summary>
public sealed record BondCoat
{
    /// <summary>Id.</summary>
    public required string Id { get; init; }

    /// <summary>Id of the course above it.</summary>
    public required string Below { get; init; }

    /// <summary>Whether a coat is applied; a plan may state that there is none.</summary>
    public bool? Applied { get; init; }

    /// <summary>Binder.</summary>
    public BondBinder? Binder { get; init; }

    /// <summary>Rate as mass per area.</summary>
    public Measure<AreaDensity>? MassRate { get; init; }

    /// <summary>Rate as volume per area.</summary>
    public Measure<FilmThickness>? VolumeRate { get; init; }

    /// <summary>What the rate counts.</summary>
    public RateBasis? Basis { get; init; }

    /// <summary>Binder that stays, as a share of what is sprayed.</summary>
    public Measure<Ratio>? Residue { get; init; }

    /// <summary>When it is sprayed.</summary>
    public Moment? Sprayed { get; init; }

    /// <summary>Whether it has broken before laying.</summary>
    public bool? Broken { get; init; }

    /// <summary>Whether traffic uses it before laying.</summary>
    public bool? Trafficked { get; init; }
}

/// <summary>A joint.</summary>
public sealed record Joint
{
    /// <summary>Id.</summary>
    public required string Id { get; init; }

    /// <summary>Direction.</summary>
    public JointKind? Kind { get; init; }

    /// <summary>Id of the uppermost course it cuts.</summary>
    public string? Course { get; init; }

    /// <summary>Id of the run at whose side or end it lies.</summary>
    public string? Run { get; init; }

    /// <summary>Where it lies, in words.</summary>
    public string? Where { get; init; }

    /// <summary>Distance to the nearest parallel joint of the course below.</summary>
    public Measure<Length>? OffsetBelow { get; init; }

    /// <summary>Time at one point between the paver that makes the edge and the one that lays against it.</summary>
    public Measure<Duration>? Delay { get; init; }

    /// <summary>How the face is made.</summary>
    public JointForm? Form { get; init; }

    /// <summary>Over what height it is treated.</summary>
    public JointHeight? Height { get; init; }

    /// <summary>Whether the face is cleaned and coated.</summary>
    public bool? Coated { get; init; }
}

/// <summary>What is done for the skid resistance of the fresh surface.</summary>
public sealed record EarlyFriction
{
    /// <summary>Whether grit is spread.</summary>
    public bool? Grit { get; init; }

    /// <summary>Size of the grit, for example <c>1/3 mm</c>.</summary>
    public string? GritSize { get; init; }

    /// <summary>Rate.</summary>
    public Measure<AreaDensity>? Rate { get; init; }

    /// <summary>Minutes behind the last screed at which the last grit is spread.</summary>
    public Measure<Duration>? GritBy { get; init; }

    /// <summary>Warning signs for a slippery surface.</summary>
    public bool? Signs { get; init; }

    /// <summary>Temporary speed limit.</summary>
    public Measure<Speed>? TemporaryLimit { get; init; }
}

/// <summary>When traffic may use the surface.</summary>
public sealed record Opening
{
    /// <summary>Planned time of opening.</summary>
    public Moment? At { get; init; }

    /// <summary>Planned time from the last metre laid to opening.</summary>
    public Measure<Duration>? After { get; init; }

    /// <summary>Temperature below which it is opened.</summary>
    public PlacedTemperature? Below { get; init; }

    /// <summary>Who opens.</summary>
    public string? ReleasedBy { get; init; }
}

/// <summary>A test.</summary>
public sealed record Test
{
    /// <summary>Id.</summary>
    public required string Id { get; init; }

    /// <summary>What it examines.</summary>
    public TestKind? Kind { get; init; }

    /// <summary>Id of the course.</summary>
    public string? Course { get; init; }

    /// <summary>Where.</summary>
    public string? Where { get; init; }

    /// <summary>When.</summary>
    public string? When { get; init; }

    /// <summary>By whom.</summary>
    public string? By { get; init; }

    /// <summary>How many or how often.</summary>
    public string? HowMany { get; init; }

    /// <summary>Criterion.</summary>
    public string? Criterion { get; init; }
}

/// <summary>A step that waits for a criterion.</summary>
public sealed record HoldPoint
{
    /// <summary>Id.</summary>
    public required string Id { get; init; }

    /// <summary>The step that waits.</summary>
    public string? Before { get; init; }

    /// <summary>Criterion.</summary>
    public string? Criterion { get; init; }

    /// <summary>Evidence.</summary>
    public string? Evidence { get; init; }

    /// <summary>Owner on this shift.</summary>
    public string? Owner { get; init; }

    /// <summary>Who releases.</summary>
    public string? ReleasedBy { get; init; }
}

/// <summary>An action held ready for an event.</summary>
public sealed record Contingency
{
    /// <summary>Id.</summary>
    public required string Id { get; init; }

    /// <summary>Event.</summary>
    public ContingencyEvent? Event { get; init; }

    /// <summary>When the action begins, for example a length of stop.</summary>
    public string? When { get; init; }

    /// <summary>Action.</summary>
    public string? Action { get; init; }

    /// <summary>Who decides.</summary>
    public string? DecidedBy { get; init; }

    /// <summary>Id of the course of a pair that is laid on alone meanwhile; null: both stop.</summary>
    public string? GoesOnWith { get; init; }

    /// <summary>Place or spare that is used.</summary>
    public string? Spare { get; init; }
}

/// <summary>A safety, health or environment measure.</summary>
public sealed record SafetyMeasure
{
    /// <summary>Id.</summary>
    public required string Id { get; init; }

    /// <summary>Kind.</summary>
    public MeasureKind? Kind { get; init; }

    /// <summary>What is done.</summary>
    public string? What { get; init; }

    /// <summary>Where.</summary>
    public string? Where { get; init; }

    /// <summary>Who answers for it.</summary>
    public string? Who { get; init; }

    /// <summary>When.</summary>
    public string? When { get; init; }

    /// <summary>How it is checked.</summary>
    public string? Checked { get; init; }

    /// <summary>Document that it refers to.</summary>
    public string? Reference { get; init; }
}
