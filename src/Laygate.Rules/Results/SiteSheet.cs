using Laygate.Model.Plans;

namespace Laygate.Rules.Results;

/// <summary>Where a figure on the site sheet comes from.</summary>
public enum FigureKind
{
    /// <summary>The plan states it.</summary>
    Stated,

    /// <summary>It is computed from what the plan states.</summary>
    Computed,

    /// <summary>It rests on a listed assumption in place of something that the plan does not state.</summary>
    Assumed,

    /// <summary>It is a limit.</summary>
    Limit,
}

/// <summary>A figure on the site sheet.</summary>
/// <param name="Value">Value; null when it is neither stated nor to be computed.</param>
/// <param name="Kind">Where it comes from.</param>
public sealed record SheetFigure(ShownValue? Value, FigureKind Kind);

/// <summary>Moments of the shift.</summary>
public enum SheetMomentKind
{
    /// <summary>The first load leaves its plant.</summary>
    FirstLoad,

    /// <summary>Setting up and heating begins.</summary>
    SetUp,

    /// <summary>Laying starts.</summary>
    Start,

    /// <summary>Half of the length is laid.</summary>
    HalfWay,

    /// <summary>Latest start with which the length is still laid by the end of the shift.</summary>
    LatestStart,

    /// <summary>The last metre is laid.</summary>
    LastMetre,

    /// <summary>The end of the shift as stated.</summary>
    ShiftEnd,

    /// <summary>The last densifying pass over the last metre is done.</summary>
    RolledOut,

    /// <summary>Expected: the whole mat is below the opening temperature.</summary>
    Firm,

    /// <summary>Opening as planned.</summary>
    Opening,
}

/// <summary>A moment of the shift.</summary>
/// <param name="Kind">Which.</param>
/// <param name="At">When, in local time.</param>
/// <param name="Origin">Where it comes from.</param>
public sealed record SheetMoment(SheetMomentKind Kind, DateTimeOffset At, FigureKind Origin);

/// <summary>One course on the sheet.</summary>
/// <param name="Id">Id.</param>
/// <param name="Mix">Name of its mix.</param>
/// <param name="Thickness">Nominal compacted thickness.</param>
/// <param name="Behind">Thickness behind the screed.</param>
/// <param name="LevelledOn">What its screed is levelled against.</param>
/// <param name="Tonnage">Tonnage computed.</param>
/// <param name="Ordered">Tonnage ordered.</param>
/// <param name="Demand">Mix that it takes while the paver moves.</param>
/// <param name="Loads">Number of loads; 0 where they cannot be counted.</param>
/// <param name="Payload">Payload.</param>
/// <param name="RunPerLoad">Length that one load covers at the first station.</param>
/// <param name="LastLoad">Size of the last load.</param>
/// <param name="Interval">Time between loads.</param>
/// <param name="Window">Densification window.</param>
public sealed record SheetCourse(
    string Id,
    string Mix,
    SheetFigure Thickness,
    SheetFigure Behind,
    string? LevelledOn,
    SheetFigure Tonnage,
    SheetFigure Ordered,
    SheetFigure Demand,
    int Loads,
    SheetFigure Payload,
    SheetFigure RunPerLoad,
    SheetFigure LastLoad,
    SheetFigure Interval,
    SheetFigure Window);

/// <summary>One load in its order.</summary>
/// <param name="Number">Number in that order, from 1.</param>
/// <param name="OfMix">Number among the loads of its mix, from 1.</param>
/// <param name="Course">Course for which it is meant.</param>
/// <param name="Mix">Id of the mix.</param>
/// <param name="Plant">Id of the plant; null where the plan does not say.</param>
/// <param name="Trucks">Group of trucks.</param>
/// <param name="Size">Size.</param>
/// <param name="IsLast">Whether it is the last of its mix.</param>
/// <param name="LeavesAt">Time to leave the plant; null without times.</param>
/// <param name="TipsBy">Time by which it is to tip; null without times.</param>
/// <param name="Run">Run in which it ends.</param>
/// <param name="EndsAt">Station at which it ends.</param>
public sealed record SheetLoad(
    int Number,
    int OfMix,
    string Course,
    string Mix,
    string? Plant,
    string Trucks,
    ShownValue Size,
    bool IsLast,
    DateTimeOffset? LeavesAt,
    DateTimeOffset? TipsBy,
    string? Run,
    ShownValue? EndsAt);

/// <summary>A width at a station.</summary>
/// <param name="Run">Run.</param>
/// <param name="At">Station; null where it holds everywhere.</param>
/// <param name="Width">Width.</param>
public sealed record SheetWidth(string Run, ShownValue? At, ShownValue Width);

/// <summary>Speed of a paver.</summary>
/// <param name="Paver">Id.</param>
/// <param name="Planned">Planned speed.</param>
/// <param name="Lowest">Lower end of the usual band; its kind is limit.</param>
/// <param name="Highest">Upper end of the usual band; its kind is limit.</param>
/// <param name="RollersAllow">Speed that the rollers can follow.</param>
/// <param name="SupplyAllows">Speed that the planned supply carries.</param>
/// <param name="StopLimit">Longest stop before a joint is made.</param>
public sealed record SheetSpeed(
    string Paver, SheetFigure Planned, SheetFigure Lowest, SheetFigure Highest, SheetFigure RollersAllow, SheetFigure SupplyAllows, SheetFigure StopLimit);

/// <summary>A buffer on a paver.</summary>
/// <param name="Paver">Paver.</param>
/// <param name="Course">Course.</param>
/// <param name="Capacity">Capacity.</param>
/// <param name="Lowest">Lowest workable level.</param>
/// <param name="Call">Call level.</param>
/// <param name="CallLowest">Lowest call level that comes in time.</param>
/// <param name="CallHighest">Highest call level at which the load fits.</param>
public sealed record SheetBuffer(
    string Paver, string Course, SheetFigure Capacity, SheetFigure Lowest, SheetFigure Call, SheetFigure CallLowest, SheetFigure CallHighest);

/// <summary>The feeder.</summary>
/// <param name="Id">Id.</param>
/// <param name="Exchange">Exchange of trucks.</param>
/// <param name="Changeover">Turn from one buffer to the other.</param>
/// <param name="EmptiedBeforeChange">Whether it is emptied before it changes the mix.</param>
/// <param name="RestGoesTo">Where the rest goes.</param>
/// <param name="Identification">How mixes are told apart.</param>
public sealed record SheetFeeder(
    string Id, SheetFigure Exchange, SheetFigure Changeover, bool? EmptiedBeforeChange, string? RestGoesTo, MixIdentification? Identification);

/// <summary>One roller.</summary>
/// <param name="Id">Id.</param>
/// <param name="IsSpare">Whether it stands by.</param>
/// <param name="Phase">Id of its phase; null for a spare.</param>
/// <param name="Passes">Passes over every point in the phase.</param>
/// <param name="ZoneFrom">Start of the zone behind the last screed.</param>
/// <param name="ZoneTo">End of the zone.</param>
/// <param name="FromMinutes">Minutes behind the last screed at which its zone begins.</param>
/// <param name="DoneBy">Minutes behind the last screed by which its phase is done.</param>
/// <param name="Mode">How it compacts.</param>
/// <param name="PassesInMode">Passes in that mode; null: all.</param>
/// <param name="Frequency">Frequency.</param>
/// <param name="Amplitude">Amplitude.</param>
/// <param name="Speed">Speed while rolling.</param>
/// <param name="Strips">Strips across the widest mat, from the left edge: beyond the edge below zero.</param>
/// <param name="Impact">Distance between two impacts, where it vibrates.</param>
/// <param name="WaterAndFuel">Where it takes water and fuel.</param>
/// <param name="Parking">Where it parks off the hot mat.</param>
/// <param name="Breaks">Breaks and relief.</param>
public sealed record SheetRoller(
    string Id,
    bool IsSpare,
    string? Phase,
    int? Passes,
    SheetFigure ZoneFrom,
    SheetFigure ZoneTo,
    SheetFigure FromMinutes,
    SheetFigure DoneBy,
    RollingMode? Mode,
    int? PassesInMode,
    SheetFigure Frequency,
    SheetFigure Amplitude,
    SheetFigure Speed,
    IReadOnlyList<SheetStrip> Strips,
    SheetFigure Impact,
    string? WaterAndFuel,
    string? Parking,
    string? Breaks);

/// <summary>A strip of a roller.</summary>
/// <param name="From">Its left side, from the left edge of the mat.</param>
/// <param name="To">Its right side.</param>
public sealed record SheetStrip(ShownValue From, ShownValue To);

/// <summary>A mix on the sheet; temperatures as stated, in the load.</summary>
/// <param name="Id">Id.</param>
/// <param name="Name">Name.</param>
/// <param name="Lowest">Lowest at loading.</param>
/// <param name="Expected">Expected at loading.</param>
/// <param name="Highest">Highest at loading.</param>
/// <param name="RefuseBelow">Loads below it are refused.</param>
public sealed record SheetMix(string Id, string Name, SheetFigure Lowest, SheetFigure Expected, SheetFigure Highest, SheetFigure RefuseBelow);

/// <summary>Something inside the width.</summary>
/// <param name="Run">Run.</param>
/// <param name="At">Station.</param>
/// <param name="What">What it is.</param>
/// <param name="Treatment">How it is treated.</param>
/// <param name="Who">Who does it.</param>
/// <param name="When">When.</param>
public sealed record SheetObstacle(string Run, SheetFigure At, string? What, string? Treatment, string? Who, string? When);

/// <summary>An overhead line.</summary>
/// <param name="Id">Id.</param>
/// <param name="At">Station.</param>
/// <param name="Height">Height of the lowest conductor.</param>
public sealed record SheetOverheadLine(string Id, SheetFigure At, SheetFigure Height);

/// <summary>Opening to traffic.</summary>
/// <param name="Below">Temperature below which it is opened.</param>
/// <param name="ReleasedBy">Who opens.</param>
/// <param name="ClosureEnds">End of the closure.</param>
public sealed record SheetOpening(SheetFigure Below, string? ReleasedBy, DateTimeOffset? ClosureEnds);

/// <summary>A plant with what it sends.</summary>
/// <param name="Id">Id.</param>
/// <param name="Mixes">Mixes that it makes for this job.</param>
/// <param name="Planned">Planned output.</param>
/// <param name="Spare">Plant that stands in.</param>
public sealed record SheetPlant(string Id, IReadOnlyList<SheetMix> Mixes, SheetFigure Planned, string? Spare);

/// <summary>Mix between plant and mat while the work runs evenly.</summary>
/// <param name="Mix">Id of the mix.</param>
/// <param name="OnTheWay">In trucks that have been loaded and have not tipped.</param>
/// <param name="OnMachines">In full buffers and the feeder; null where none is stated.</param>
public sealed record SheetCommitted(string Mix, SheetFigure OnTheWay, SheetFigure OnMachines);

/// <summary>What a crew needs from one plan and its check, to be worded and laid out as cards by Reporting.</summary>
public sealed record SiteSheet
{
    /// <summary>Id of the plan.</summary>
    public required string PlanId { get; init; }

    /// <summary>Title of the plan.</summary>
    public string? PlanTitle { get; init; }

    /// <summary>Revision.</summary>
    public string? Revision { get; init; }

    /// <summary>ISO 639 code of the language of the plan's free texts; null where it does not say.</summary>
    public string? Language { get; init; }

    /// <summary>SHA-256 of the plan's bytes, lower-case hex.</summary>
    public required string PlanHash { get; init; }

    /// <summary>Hash of the rule book.</summary>
    public required string BookHash { get; init; }

    /// <summary>Version of the program.</summary>
    public required string ProgramVersion { get; init; }

    /// <summary>Day on which the sheet was made.</summary>
    public required DateOnly Issued { get; init; }

    /// <summary>Whether it is only a draft: the plan fails, or is not yet for release.</summary>
    public required bool IsDraft { get; init; }

    /// <summary>Findings that fail.</summary>
    public required IReadOnlyList<Finding> Failing { get; init; }

    /// <summary>Findings that warn: what the crew must know besides.</summary>
    public required IReadOnlyList<Finding> Warnings { get; init; }

    /// <summary>Start of the shift; null where it is not stated.</summary>
    public DateTimeOffset? ShiftStart { get; init; }

    /// <summary>End of the shift.</summary>
    public DateTimeOffset? ShiftEnd { get; init; }

    /// <summary>Moments in their order.</summary>
    public required IReadOnlyList<SheetMoment> Moments { get; init; }

    /// <summary>Courses from bottom to top.</summary>
    public required IReadOnlyList<SheetCourse> Courses { get; init; }

    /// <summary>Loads in the order in which they are fed.</summary>
    public required IReadOnlyList<SheetLoad> Loads { get; init; }

    /// <summary>Widths by station.</summary>
    public required IReadOnlyList<SheetWidth> Widths { get; init; }

    /// <summary>Speeds of pavers.</summary>
    public required IReadOnlyList<SheetSpeed> Speeds { get; init; }

    /// <summary>Buffers.</summary>
    public required IReadOnlyList<SheetBuffer> Buffers { get; init; }

    /// <summary>The feeder; null where there is none.</summary>
    public SheetFeeder? Feeder { get; init; }

    /// <summary>Rollers.</summary>
    public required IReadOnlyList<SheetRoller> Rollers { get; init; }

    /// <summary>Plants.</summary>
    public required IReadOnlyList<SheetPlant> Plants { get; init; }

    /// <summary>Committed tonnes by mix while the work runs evenly.</summary>
    public required IReadOnlyList<SheetCommitted> Committed { get; init; }

    /// <summary>Time in which grit holds.</summary>
    public required SheetFigure GritWindow { get; init; }

    /// <summary>Findings whose limit is watched on site.</summary>
    public required IReadOnlyList<Finding> Limits { get; init; }

    /// <summary>Mixes.</summary>
    public required IReadOnlyList<SheetMix> Mixes { get; init; }

    /// <summary>Obstacles.</summary>
    public required IReadOnlyList<SheetObstacle> Obstacles { get; init; }

    /// <summary>Overhead lines.</summary>
    public required IReadOnlyList<SheetOverheadLine> OverheadLines { get; init; }

    /// <summary>Opening.</summary>
    public required SheetOpening Opening { get; init; }

    /// <summary>Whom to call, as stated.</summary>
    public required IReadOnlyList<Person> People { get; init; }

    /// <summary>Hold points, as stated.</summary>
    public required IReadOnlyList<HoldPoint> HoldPoints { get; init; }

    /// <summary>Actions for events, as stated.</summary>
    public required IReadOnlyList<Contingency> Contingencies { get; init; }

    /// <summary>Tests, as stated.</summary>
    public required IReadOnlyList<Test> Tests { get; init; }

    /// <summary>Safety measures, as stated; none is judged adequate. One that the check found harmful is left out: see <see cref="Wrong"/>.</summary>
    public required IReadOnlyList<SafetyMeasure> Measures { get; init; }

    /// <summary>Findings that something stated about safety is wrong; only drafts and warnings have any.</summary>
    public IReadOnlyList<Finding> Wrong { get; init; } = [];
}

/// <summary>What became of the request for a site sheet.</summary>
/// <param name="File">Name of the file as given.</param>
/// <param name="Sheets">Sheets; none when there are problems or a plan of the file fails.</param>
/// <param name="Refused">Reports of the plans for which a sheet is refused because they fail.</param>
/// <param name="Problems">Why the file could not be read.</param>
public sealed record SheetResult(
    string File, IReadOnlyList<SiteSheet> Sheets, IReadOnlyList<Report> Refused, IReadOnlyList<Problem> Problems)
{
    /// <summary>The reports that the sheets were made from or refused by, one for each plan.</summary>
    public IReadOnlyList<Report> Reports { get; init; } = [];
}
