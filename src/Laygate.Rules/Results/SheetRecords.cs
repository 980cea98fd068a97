using Laygate.Model.Plans;
using Laygate.Rules.Definitions;

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
public sealed record SheetFigure(ShownValue? Value, FigureKind Kind)
{
    /// <summary>Moment of laying to which a figure of the cooling mat belongs; null for any other figure and for the weather of an envelope.</summary>
    public DateTimeOffset? Laid { get; init; }
}

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
    SheetFigure Window)
{
    /// <summary>Id of its mix; null where the plan does not say.</summary>
    public string? MixId { get; init; }

    /// <summary>Mass laid on each unit of area.</summary>
    public SheetFigure? PerArea { get; init; }

    /// <summary>Mass that covers one unit of length at the first station.</summary>
    public SheetFigure? PerLength { get; init; }

    /// <summary>Expected densification window by the hour of laying.</summary>
    public IReadOnlyList<SheetHour> Hours { get; init; } = [];
}

/// <summary>A value that belongs to an hour of laying.</summary>
/// <param name="From">Begin of the hour.</param>
/// <param name="Value">The value.</param>
public sealed record SheetHour(DateTimeOffset From, ShownValue Value);

/// <summary>A limit that the crew watches.</summary>
/// <param name="Finding">The finding that it stands in.</param>
/// <param name="OnSite">What to watch, and what to do otherwise.</param>
/// <param name="IsOpening">Whether it is watched when the work is done: at the opening to traffic.</param>
public sealed record SheetLimit(Finding Finding, SiteInstruction OnSite, bool IsOpening);

/// <summary>A joint on the sheet, as stated.</summary>
/// <param name="Id">Id.</param>
/// <param name="Kind">Direction.</param>
/// <param name="Where">Where it lies, in words.</param>
/// <param name="Offset">Distance to the nearest parallel joint of the course below.</param>
/// <param name="Form">How the face is made.</param>
/// <param name="Height">Over what height.</param>
/// <param name="Removed">Length of the thin end that is cut off.</param>
/// <param name="Coated">Whether the face is cleaned and coated.</param>
public sealed record SheetJoint(
    string Id, JointKind? Kind, string? Where, SheetFigure Offset, JointForm? Form, JointHeight? Height, SheetFigure Removed, bool? Coated);

/// <summary>A bond coat on the sheet, as stated.</summary>
/// <param name="Below">Id of the course above it.</param>
/// <param name="Applied">Whether there is one.</param>
/// <param name="Reason">Why there is none.</param>
/// <param name="Binder">Binder.</param>
/// <param name="Rate">Rate.</param>
/// <param name="Basis">What the rate counts.</param>
/// <param name="Residue">Binder that stays.</param>
/// <param name="Sprayed">When it is sprayed.</param>
/// <param name="Trafficked">Whether traffic uses it before laying.</param>
public sealed record SheetBondCoat(
    string Below, bool? Applied, string? Reason, BondBinder? Binder, SheetFigure Rate, RateBasis? Basis, SheetFigure Residue, DateTimeOffset? Sprayed, bool? Trafficked);

/// <summary>Grit on the sheet, as stated.</summary>
/// <param name="Size">Size.</param>
/// <param name="Rate">Rate.</param>
/// <param name="By">Minute behind the last screed by which all of it is spread.</param>
/// <param name="Lowest">Temperature of the surface down to which it holds grit.</param>
public sealed record SheetGrit(string? Size, SheetFigure Rate, SheetFigure By, SheetFigure Lowest);

/// <summary>A group of trucks on the sheet.</summary>
/// <param name="Id">Id.</param>
/// <param name="Mix">Name of the mix.</param>
/// <param name="Plant">Id of the plant; null where the plan does not say.</param>
/// <param name="Interval">Time between its loads.</param>
/// <param name="Wait">Planned wait on site.</param>
/// <param name="Waiting">Trucks that then wait, on average.</param>
/// <param name="BeforeStart">Loads that are on site before laying starts; null where the plan does not say.</param>
public sealed record SheetTrucks(string Id, string Mix, string? Plant, SheetFigure Interval, SheetFigure Wait, SheetFigure Waiting, int? BeforeStart);

/// <summary>A figure of the plan that a test is held against.</summary>
/// <param name="Of">Course or mix to which it belongs.</param>
/// <param name="Figure">The figure.</param>
/// <param name="IsLeast">Whether it is a lower limit; otherwise a target.</param>
public sealed record SheetTestLimit(string Of, SheetFigure Figure, bool IsLeast);

/// <summary>A test on the sheet.</summary>
/// <param name="Test">As stated.</param>
/// <param name="Limits">Figures of the plan that it is held against.</param>
public sealed record SheetTest(Test Test, IReadOnlyList<SheetTestLimit> Limits);

/// <summary>A safety measure on the sheet.</summary>
/// <param name="Measure">As stated; not judged adequate.</param>
/// <param name="HasPerson">Whether somebody, and not everybody, answers for it.</param>
/// <param name="IsLifeCritical">Whether a rule of the gravest severity asks for it.</param>
public sealed record SheetMeasure(SafetyMeasure Measure, bool HasPerson, bool IsLifeCritical);

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

/// <summary>Mix between plant and mat.</summary>
/// <param name="Mix">Id of the mix.</param>
/// <param name="OnTheWay">In trucks that have been loaded and have not tipped.</param>
/// <param name="OnMachines">In full buffers and the feeder; null where none is stated.</param>
public sealed record SheetCommitted(string Mix, SheetFigure OnTheWay, SheetFigure OnMachines);
