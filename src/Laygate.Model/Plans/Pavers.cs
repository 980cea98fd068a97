using Laygate.Model.Measures;

namespace Laygate.Model.Plans;

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

    /// <summary>Share of the time in which it moves, planned stops and moves between runs not counted.</summary>
    public Measure<Ratio>? Availability { get; init; }

    /// <summary>Speed at which it moves to the next run, screed lifted.</summary>
    public Measure<Speed>? TravelSpeed { get; init; }

    /// <summary>Time to lift the screed, and to set it down and level it at the next run.</summary>
    public Measure<Duration>? Reset { get; init; }

    /// <summary>Screeds, in the order in which they pass a point.</summary>
    public IReadOnlyList<Screed> Screeds { get; init; } = [];

    /// <summary>Mix held on the machine.</summary>
    public IReadOnlyList<MixBuffer> Buffers { get; init; } = [];

    /// <summary>Planned stops.</summary>
    public IReadOnlyList<PlannedStop> Stops { get; init; } = [];

    /// <summary>Whether the hopper is kept filled between trucks, so that mix always lies before the screed.</summary>
    public bool? HopperKeptFilled { get; init; }

    /// <summary>Whether the hopper is run empty before a transverse joint.</summary>
    public bool? HopperEmptiedBeforeJoint { get; init; }

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
    string Course, ScreedKind? Kind, string? LevelledOn, Measure<Length>? WidthLowest, Measure<Length>? WidthHighest)
{
    /// <summary>What heats it; null where the plan does not say.</summary>
    public ScreedHeating? Heating { get; init; }
}

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
