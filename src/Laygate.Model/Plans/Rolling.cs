using Laygate.Model.Measures;

namespace Laygate.Model.Plans;

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
