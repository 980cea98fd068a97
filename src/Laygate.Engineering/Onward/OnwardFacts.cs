using Laygate.Engineering.Records;
using Laygate.Model.Records;

namespace Laygate.Engineering.Onward;

/// <summary>What a figure of the re-plan rests on: a fact beats what somebody says beforehand, that beats the plan, and the plan beats what is assumed.</summary>
public enum FactBasis
{
    /// <summary>The record.</summary>
    Record,

    /// <summary>What was said with the call.</summary>
    Said,

    /// <summary>The plan.</summary>
    Plan,

    /// <summary>Assumed, because neither says it.</summary>
    Assumed,
}

/// <summary>What a figure is of.</summary>
public enum FactKind
{
    /// <summary>Length laid.</summary>
    Laid,

    /// <summary>Mix on the machine, of a course.</summary>
    OnMachine,

    /// <summary>Least mix on the machine with which a course was laid.</summary>
    Lowest,

    /// <summary>Mass laid against that of the plan for the same length, of a course.</summary>
    Yield,

    /// <summary>Speed between stops.</summary>
    Speed,

    /// <summary>Trucks that drive, of a group.</summary>
    Trucks,

    /// <summary>How much later loads leave than by the timetable of the plan.</summary>
    TimetableLate,

    /// <summary>When the site closes.</summary>
    Closing,

    /// <summary>Air.</summary>
    Air,

    /// <summary>Surface that is laid upon.</summary>
    Base,

    /// <summary>Wind at the height of the forecast.</summary>
    Wind,

    /// <summary>Temperature of a course behind its screed.</summary>
    LayingTemperature,

    /// <summary>Mix in the silo of a plant, reckoned from its tickets.</summary>
    Silo,
}

/// <summary>A figure that the re-plan started from.</summary>
/// <param name="Kind">What it is of.</param>
/// <param name="Of">Course, group or plant; null for the shift.</param>
/// <param name="Basis">What it rests on.</param>
/// <param name="Value">The figure; null where it is a moment.</param>
public sealed record OnwardFact(FactKind Kind, string? Of, FactBasis Basis, LedgerFigure? Value)
{
    /// <summary>The moment that it is, or of which it is; null where that is the plan's.</summary>
    public DateTimeOffset? At { get; init; }

    /// <summary>Whether it is older than the interval in which it is decided anew.</summary>
    public bool IsStale { get; init; }
}

/// <summary>What a reader must know.</summary>
public enum OnwardNoteKind
{
    /// <summary>The last station is old: what was laid since is reckoned.</summary>
    OldStation,

    /// <summary>No weather was measured lately.</summary>
    OldWeather,

    /// <summary>What the machine holds is not recorded.</summary>
    NoLevel,

    /// <summary>More or less mix was discharged than what is laid and on the machine can explain.</summary>
    Unexplained,

    /// <summary>Loads of which the site wrote nothing, taken as empty because later ones are.</summary>
    TakenAsEmpty,

    /// <summary>Loads that have been on the road for longer than the journey of a bad day.</summary>
    Overdue,

    /// <summary>Loads that belong to no course or group of trucks of the plan.</summary>
    NoGroup,

    /// <summary>Trucks of the plan that were not seen for two rounds, and are taken as gone.</summary>
    TrucksGone,

    /// <summary>More trucks were seen than planned.</summary>
    MoreTrucks,

    /// <summary>No arrivals and discharges are recorded.</summary>
    NoDeliveries,

    /// <summary>Laying had not begun.</summary>
    NotBegun,

    /// <summary>The record names another plan.</summary>
    OtherPlan,

    /// <summary>The plant down sends nothing that is laid.</summary>
    OtherPlant,
}

/// <summary>A note with what it is about.</summary>
/// <param name="Kind">Kind.</param>
/// <param name="Of">Course, group or plant; null for the shift.</param>
/// <param name="Count">How many loads, trucks or minutes.</param>
/// <param name="Mass">Mass; null where it is of none.</param>
/// <param name="Place">First row that it is about.</param>
public sealed record OnwardNote(OnwardNoteKind Kind, string? Of, int Count, LedgerFigure? Mass = null, RowPlace? Place = null);
