using Laygate.Model.Measures;

namespace Laygate.Model.Plans;

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

    /// <summary>Cores, where it is made on them.</summary>
    public Cores? Cores { get; init; }

    /// <summary>Date on which a trial length was laid, or is to be laid.</summary>
    public DateOnly? Done { get; init; }

    /// <summary>Whether a trial length has the mixes and machines of this plan.</summary>
    public bool? SameMixAndMachines { get; init; }

    /// <summary>What a trial length was laid with, and what it reached.</summary>
    public TrialResult? Reached { get; init; }
}

/// <summary>What a trial length of one course was laid with, and what it reached.</summary>
public sealed record TrialResult
{
    /// <summary>Id of the mix.</summary>
    public string? Mix { get; init; }

    /// <summary>Compacted thickness.</summary>
    public Measure<Length>? Thickness { get; init; }

    /// <summary>Temperature behind the screed, at the place for which the course states its own.</summary>
    public Measure<Temperature>? LayingTemperature { get; init; }

    /// <summary>Density behind the screed, as a share of the reference density of the mix.</summary>
    public Measure<Ratio>? DensityBehindScreed { get; init; }

    /// <summary>Passes of each phase.</summary>
    public IReadOnlyList<TrialPasses> Passes { get; init; } = [];

    /// <summary>Ids of the rollers.</summary>
    public IReadOnlyList<string> Rollers { get; init; } = [];

    /// <summary>Density that was reached, as a share of the reference density of the mix.</summary>
    public Measure<Ratio>? Density { get; init; }
}

/// <summary>How often every point of a trial length was rolled in one phase.</summary>
/// <param name="Phase">Id of the phase.</param>
/// <param name="Passes">How often.</param>
public sealed record TrialPasses(string Phase, int? Passes);

/// <summary>Cores on which a test is made.</summary>
/// <param name="Count">How many.</param>
/// <param name="MatCold">Whether the mat is cold when they are taken.</param>
/// <param name="CutAtInterface">Whether they are cut apart at the interface of the courses, and each course is tested.</param>
/// <param name="DensityMethod">How the bulk density of each course is found and judged, as agreed.</param>
public sealed record Cores(int? Count, bool? MatCold, bool? CutAtInterface, string? DensityMethod = null);

/// <summary>A step that waits for a criterion.</summary>
public sealed record HoldPoint
{
    /// <summary>Id.</summary>
    public required string Id { get; init; }

    /// <summary>Part of the shift in which it lies; null where the plan does not say.</summary>
    public HoldStep? Step { get; init; }

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
