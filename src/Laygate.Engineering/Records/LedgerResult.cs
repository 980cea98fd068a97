using Laygate.Model.Measures;
using Laygate.Model.Records;

namespace Laygate.Engineering.Records;

/// <summary>A figure of the ledger.</summary>
/// <param name="Si">Value in the SI unit.</param>
/// <param name="Unit">Unit in which it is shown.</param>
public sealed record LedgerFigure(double Si, Unit Unit)
{
    /// <summary>What the plan has in its place, SI; null where there is nothing to compare.</summary>
    public double? PlanSi { get; init; }

    /// <summary>Expanded uncertainty (k = 2), SI; null where the record does not state what it follows from.</summary>
    public double? UncertaintySi { get; init; }

    /// <summary>Least, SI; null without a range.</summary>
    public double? LowSi { get; init; }

    /// <summary>Most, SI; null without a range.</summary>
    public double? HighSi { get; init; }

    /// <summary>The value in its unit.</summary>
    public double Number => Unit.FromSi(Si);

    /// <summary>Another value of the same kind in the unit.</summary>
    /// <param name="si">Value in the SI unit.</param>
    public double? Of(double? si) => si is { } value ? Unit.FromSi(value) : null;
}

/// <summary>One step of the working.</summary>
/// <param name="Expression">The formula in symbols, or what an input is.</param>
/// <param name="Result">Its value.</param>
public sealed record LedgerStep(string Expression, LedgerFigure Result);

/// <summary>What was laid over an interval that begins and ends with loads.</summary>
/// <param name="Loads">Loads that were discharged in it.</param>
/// <param name="From">When it begins; null: with the first load.</param>
/// <param name="To">When it ends.</param>
/// <param name="Mass">Mass that was laid.</param>
/// <param name="Length">Length.</param>
/// <param name="PerLength">Mass per length against the plan.</param>
/// <param name="PerArea">Mass per area against the plan.</param>
/// <param name="Thickness">Mean thickness against the plan.</param>
/// <param name="Working">How they follow.</param>
public sealed record LedgerInterval(
    int Loads, DateTimeOffset? From, DateTimeOffset To, LedgerFigure Mass, LedgerFigure Length, LedgerFigure PerLength, LedgerFigure PerArea, LedgerFigure Thickness, IReadOnlyList<LedgerStep> Working)
{
    /// <summary>Whether the difference from the thickness of the plan is more than its uncertainty; null where that is not stated.</summary>
    public bool? IsProven => Thickness is { UncertaintySi: { } u, PlanSi: { } plan } ? Math.Abs(Thickness.Si - plan) > u : null;
}

/// <summary>A load that is on its way or waits.</summary>
/// <param name="Ticket">Number of the ticket.</param>
/// <param name="Mass">Its mass.</param>
/// <param name="Loaded">When it was loaded.</param>
/// <param name="OnSite">Whether it has arrived.</param>
public sealed record LoadUnderWay(string Ticket, LedgerFigure Mass, DateTimeOffset? Loaded, bool OnSite);

/// <summary>A moment of the ledger with its range.</summary>
/// <param name="Expected">Expected.</param>
/// <param name="Earliest">Earliest of the ways of reckoning.</param>
/// <param name="Latest">Latest of them.</param>
public sealed record LedgerMoment(DateTimeOffset Expected, DateTimeOffset Earliest, DateTimeOffset Latest);

/// <summary>A way of reckoning the end.</summary>
public enum EndBasis
{
    /// <summary>Rate of the last 30 minutes.</summary>
    LastHalfHour,

    /// <summary>Mean of the shift, stops counted.</summary>
    Shift,

    /// <summary>Rate of the plan.</summary>
    Plan,
}

/// <summary>The end by one way of reckoning.</summary>
/// <param name="Basis">The way.</param>
/// <param name="Rate">Rate of laying.</param>
/// <param name="End">The end; null where it is never reached.</param>
public sealed record ReckonedEnd(EndBasis Basis, LedgerFigure Rate, DateTimeOffset? End);

/// <summary>One course.</summary>
/// <param name="Course">Its id.</param>
/// <param name="Mix">Its mix.</param>
public sealed record CourseLedger(string Course, string Mix)
{
    /// <summary>Loads that were discharged.</summary>
    public int Discharged { get; init; }

    /// <summary>Mass of all tickets that count.</summary>
    public required LedgerFigure Tickets { get; init; }

    /// <summary>The shift so far; null before the first station.</summary>
    public LedgerInterval? Shift { get; init; }

    /// <summary>The last five loads, or as many as there are; null before the second station.</summary>
    public LedgerInterval? LastLoads { get; init; }

    /// <summary>Length that is laid.</summary>
    public required LedgerFigure Laid { get; init; }

    /// <summary>Length that is left.</summary>
    public required LedgerFigure LengthLeft { get; init; }

    /// <summary>Mass that is left by the plan.</summary>
    public required LedgerFigure LeftByPlan { get; init; }

    /// <summary>Mass that is left by the yield of the shift so far; as by the plan before there is a yield.</summary>
    public required LedgerFigure LeftByYield { get; init; }

    /// <summary>On the machine, on the road and waiting.</summary>
    public required LedgerFigure OnHand { get; init; }

    /// <summary>Still to be loaded, with the range of the yields.</summary>
    public required LedgerFigure ToOrder { get; init; }

    /// <summary>Loads that this makes.</summary>
    public int? LoadsToOrder { get; init; }

    /// <summary>The last of them.</summary>
    public LedgerFigure? LastLoad { get; init; }

    /// <summary>When the last of them must leave at the latest.</summary>
    public DateTimeOffset? LastLeaves { get; init; }

    /// <summary>Loads on their way or waiting.</summary>
    public IReadOnlyList<LoadUnderWay> UnderWay { get; init; } = [];

    /// <summary>When it is laid; null where it is not finished at the rates so far.</summary>
    public LedgerMoment? End { get; init; }

    /// <summary>The ways of reckoning it.</summary>
    public IReadOnlyList<ReckonedEnd> Ends { get; init; } = [];

    /// <summary>How what is left follows.</summary>
    public IReadOnlyList<LedgerStep> Working { get; init; } = [];
}

/// <summary>What a reader of the ledger must know.</summary>
public enum LedgerNoteKind
{
    /// <summary>No station is recorded for the course, so that nothing can be said about its yield.</summary>
    NoStation,

    /// <summary>Times of discharge are missing; the journey of the plan stands in.</summary>
    NoDischarge,

    /// <summary>What the machine holds is not recorded; it counts as laid.</summary>
    NoLevel,

    /// <summary>The density is that of the plan or assumed; cores are not there yet.</summary>
    DensityOfPlan,

    /// <summary>The density is the mean of the cores.</summary>
    DensityOfCores,

    /// <summary>Loads that belong to no course.</summary>
    NoCourse,

    /// <summary>Stations that lie in no run, or in several.</summary>
    NoRun,

    /// <summary>Stations behind one that was read before.</summary>
    Backwards,

    /// <summary>The uncertainty is not stated.</summary>
    NoUncertainty,

    /// <summary>The last row is old.</summary>
    Old,

    /// <summary>The record names another plan.</summary>
    OtherPlan,

    /// <summary>A paver stands now.</summary>
    Standing,

    /// <summary>Tickets that are void, refused or returned.</summary>
    NotCounted,
}

/// <summary>A note with what it is about.</summary>
/// <param name="Kind">Kind.</param>
/// <param name="Course">Course; null for the whole record.</param>
/// <param name="Count">How many rows, loads, minutes or cores.</param>
/// <param name="Place">The first row that it is about.</param>
public sealed record LedgerNote(LedgerNoteKind Kind, string? Course, int Count, RowPlace? Place = null);

/// <summary>Stops so far.</summary>
/// <param name="Count">How many.</param>
/// <param name="Total">All together.</param>
/// <param name="Longest">The longest; null without stops.</param>
/// <param name="Limit">Limit of the plan; null where it states none.</param>
public sealed record StopLedger(int Count, LedgerFigure Total, LedgerFigure? Longest, LedgerFigure? Limit);

/// <summary>The ledger of a shift at a moment.</summary>
/// <param name="At">The moment.</param>
/// <param name="LastRow">Moment of the last row that was used; null without rows.</param>
/// <param name="Courses">Courses from bottom to top.</param>
/// <param name="Stops">Stops.</param>
/// <param name="End">When all is laid; null where that cannot be told.</param>
/// <param name="Notes">Notes.</param>
public sealed record ShiftLedger(DateTimeOffset At, DateTimeOffset? LastRow, IReadOnlyList<CourseLedger> Courses, StopLedger Stops, LedgerMoment? End, IReadOnlyList<LedgerNote> Notes);
