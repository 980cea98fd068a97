using Laygate.Engineering.Records;
using Laygate.Engineering.Supply.Simulation;

namespace Laygate.Engineering.Onward;

/// <summary>Why a shift cannot be planned anew.</summary>
public enum OnwardProblem
{
    /// <summary>The plan does not state enough for its shift to be simulated; the check says what is missing.</summary>
    NoShift,

    /// <summary>The plan states no start or end of the shift.</summary>
    NoTimes,

    /// <summary>Two trains lay one mix: whose load it is cannot be told from the record.</summary>
    SharedMix,

    /// <summary>An event names what the plan does not have.</summary>
    Unknown,

    /// <summary>The moment lies more than a day before the shift or after its end.</summary>
    OtherDay,
}

/// <summary>A moment with its range over the simulated shifts.</summary>
/// <param name="Expected">Middle of the shifts; null where half of them never get there.</param>
/// <param name="Low">One in twenty is earlier; null where so many never get there.</param>
/// <param name="High">One in twenty is later, or never; null for never.</param>
public sealed record MomentRange(DateTimeOffset? Expected, DateTimeOffset? Low, DateTimeOffset? High);

/// <summary>Loads of one mix that have still to be called.</summary>
/// <param name="Loads">How many.</param>
/// <param name="Mass">Their mass, kg.</param>
/// <param name="First">When the first leaves; null without any.</param>
/// <param name="Last">When the last leaves.</param>
/// <param name="LastMass">Mass of the last, kg.</param>
public sealed record LoadsToCall(int Loads, LedgerFigure Mass, DateTimeOffset? First, DateTimeOffset? Last, LedgerFigure? LastMass);

/// <summary>Loads under way.</summary>
/// <param name="Loads">How many.</param>
/// <param name="Mass">Their mass.</param>
/// <param name="Oldest">Age of the oldest since it was loaded, s; null without any.</param>
/// <param name="Ticket">Its ticket.</param>
public sealed record LoadsOut(int Loads, LedgerFigure Mass, double? Oldest, string? Ticket);

/// <summary>One course from now on.</summary>
/// <param name="Course">Its id.</param>
/// <param name="Mix">Its mix.</param>
/// <param name="OnMachine">Mix on the machine at the last station.</param>
/// <param name="OnSite">Loads that wait or are being discharged.</param>
/// <param name="OnRoad">Loads on the road.</param>
/// <param name="LastsUntil">Until when the mix on site lasts at this speed if no truck comes; null where it outlasts the work.</param>
/// <param name="ToCall">Loads of its mix that have still to be called when nothing varies.</param>
public sealed record OnwardCourse(string Course, string Mix, LedgerFigure OnMachine, LoadsOut OnSite, LoadsOut OnRoad, DateTimeOffset? LastsUntil, LoadsToCall ToCall)
{
    /// <summary>Windows for what is laid now and until the end; empty where mix or weather does not tell them.</summary>
    public IReadOnlyList<WindowAt> Windows { get; init; } = [];

    /// <summary>Time from the screed to the last densifying pass by the plan, s; null where it does not tell it.</summary>
    public double? RolledWithin { get; init; }

    /// <summary>Passes that come within the window of what is laid now, for each phase that densifies; empty where no roller is lost.</summary>
    public IReadOnlyList<PassesInWindow> Passes { get; init; } = [];
}

/// <summary>Passes of a phase within the window of what is laid now.</summary>
/// <param name="Phase">The phase.</param>
/// <param name="Planned">Passes of the plan.</param>
/// <param name="Expected">Passes within the expected window.</param>
/// <param name="Low">Passes within its low end.</param>
public sealed record PassesInWindow(string Phase, int Planned, int Expected, int Low);

/// <summary>Densification window of what is laid at a moment.</summary>
/// <param name="At">The moment.</param>
/// <param name="Seconds">The window, s.</param>
/// <param name="Low">Its low end over what is not known of mat and weather, s; never above the window.</param>
/// <param name="High">Its high end, s; never below the window.</param>
public sealed record WindowAt(DateTimeOffset At, double Seconds, double Low, double High);

/// <summary>What can be changed from now on.</summary>
public enum OnwardLever
{
    /// <summary>Trucks of a group.</summary>
    Trucks,

    /// <summary>Average speed of the paver.</summary>
    Speed,

    /// <summary>Loads leave as soon as they are loaded.</summary>
    SendAtOnce,

    /// <summary>Loads leave when the paver is far enough.</summary>
    SendOnCall,

    /// <summary>The work ends at a place before the last metre.</summary>
    EndSooner,

    /// <summary>The timetable is put back by as much as the paver is late.</summary>
    MoveTimetable,
}

/// <summary>What a change comes to, simulated anew with the same luck.</summary>
/// <param name="Lever">What is changed.</param>
/// <param name="Of">Group of trucks, or run of an earlier end; null for others.</param>
/// <param name="To">The new value, of an earlier end its station; null where it has none.</param>
/// <param name="From">The present value, of an earlier end what it leaves unlaid.</param>
/// <param name="Forecast">What it comes to.</param>
public sealed record OnwardChange(OnwardLever Lever, string? Of, LedgerFigure? To, LedgerFigure? From, OnwardForecast Forecast);

/// <summary>What the simulated shifts say.</summary>
/// <param name="Shifts">How many were simulated.</param>
/// <param name="Finish">Chance that all is laid when the site closes, with its 90 % limits.</param>
/// <param name="End">When the last metre is laid.</param>
/// <param name="LongestStop">Longest stop from now on, one under way included, s: mean, 5 % and 95 % points.</param>
/// <param name="OverLimit">Chance that a stop is longer than the plan's limit; null where it states none.</param>
/// <param name="Stops">Stops for want of mix from now on, on average.</param>
public sealed record OnwardForecast(int Shifts, Band Finish, MomentRange End, Band LongestStop, Band? OverLimit, Band Stops);

/// <summary>What is left when laying must stop at a moment before its end.</summary>
/// <param name="At">The moment.</param>
/// <param name="IsRain">Whether it is the rain that was said, else the closing.</param>
/// <param name="Left">Mix in buffers and on trucks at that moment: mean, 5 % and 95 % points.</param>
/// <param name="Reached">Length laid then: mean, 5 % and 95 % points.</param>
/// <param name="Place">Run and station that are reached on average.</param>
/// <param name="StopLoading">Last moment at which a load of each group may leave so that it is laid before, the mix on site counted; by group.</param>
public sealed record StopAt(DateTimeOffset At, bool IsRain, LedgerFigure Left, LedgerFigure Reached, (string Run, double Station)? Place, IReadOnlyList<(string Group, DateTimeOffset At)> StopLoading);

/// <summary>The rest of a shift from now on.</summary>
public sealed record OnwardResult
{
    /// <summary>The moment.</summary>
    public required DateTimeOffset At { get; init; }

    /// <summary>Moment of the last row that was used; null without any.</summary>
    public DateTimeOffset? LastRow { get; init; }

    /// <summary>What was said with the call.</summary>
    public required OnwardEvents Events { get; init; }

    /// <summary>When the site closes.</summary>
    public required DateTimeOffset Closing { get; init; }

    /// <summary>States from which each train goes on.</summary>
    public required IReadOnlyList<OnwardStart> Starts { get; init; }

    /// <summary>Length that is left.</summary>
    public required LedgerFigure LengthLeft { get; init; }

    /// <summary>What the simulated shifts say.</summary>
    public required OnwardForecast Forecast { get; init; }

    /// <summary>End when nothing varies; null where it does not come.</summary>
    public DateTimeOffset? SteadyEnd { get; init; }

    /// <summary>Mix on trucks, in the feeder and on the machine now: what is lost if laying stops at once.</summary>
    public required LedgerFigure AtRisk { get; init; }

    /// <summary>What is left when the rain or the closing stops laying; null where no simulated shift is stopped by it.</summary>
    public StopAt? StopAt { get; init; }

    /// <summary>Longest stop by the plan, s; null where it states none.</summary>
    public double? StopLimit { get; init; }

    /// <summary>Since when a paver stands; null while none does.</summary>
    public DateTimeOffset? StandsSince { get; init; }

    /// <summary>When a joint must be made: that the paver stands now and does not go on by then, or that no truck comes from now on; null without a limit.</summary>
    public DateTimeOffset? JointBy { get; init; }

    /// <summary>Courses from bottom to top.</summary>
    public required IReadOnlyList<OnwardCourse> Courses { get; init; }

    /// <summary>Phases of the rolling that lost a roller.</summary>
    public IReadOnlyList<PhaseLeft> Phases { get; init; } = [];

    /// <summary>Speed of the paver by the plan, m/s.</summary>
    public double PlannedSpeed { get; init; }

    /// <summary>Speed that the rollers which are left can follow, where it is below that of the plan, m/s; null else.</summary>
    public double? SpeedLeft { get; init; }

    /// <summary>The one change that helps most; null where none of those tried helps.</summary>
    public OnwardChange? Change { get; init; }

    /// <summary>All changes that were tried.</summary>
    public IReadOnlyList<OnwardChange> Tried { get; init; } = [];

    /// <summary>What it started from.</summary>
    public required IReadOnlyList<OnwardFact> Facts { get; init; }

    /// <summary>Notes.</summary>
    public required IReadOnlyList<OnwardNote> Notes { get; init; }
}
