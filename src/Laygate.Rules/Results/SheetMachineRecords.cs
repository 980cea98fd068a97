using Laygate.Model.Plans;

namespace Laygate.Rules.Results;

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
    string? Breaks)
{
    /// <summary>Kind of its phase; null for a spare, or where the plan does not say.</summary>
    public PhaseKind? Kind { get; init; }
}

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
