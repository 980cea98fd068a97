namespace Laygate.Exchange.Records;

/// <summary>What <c>laygate onward --format json</c> writes. Keys may be added; none is renamed or removed under the same onward_version.</summary>
/// <param name="OnwardVersion">Version of this shape.</param>
/// <param name="Program">Name of the program.</param>
/// <param name="ProgramVersion">Version of the program.</param>
/// <param name="Plan">The plan.</param>
/// <param name="Record">The record.</param>
/// <param name="At">Moment from which the shift was planned anew.</param>
/// <param name="LastRow">Moment of the last row that was used.</param>
/// <param name="Closing">When the site closes.</param>
/// <param name="Says">What it comes to, in sentences.</param>
/// <param name="LengthLeft">Length that is left.</param>
/// <param name="Forecast">What the simulated shifts say.</param>
/// <param name="SteadyEnd">End if nothing varied; null where it does not come.</param>
/// <param name="AtRisk">Mix on trucks and machine now.</param>
/// <param name="StopAt">What is left when rain or closing stops laying; null where no simulated shift is stopped by it.</param>
/// <param name="StopLimit">Longest stop by the plan, min.</param>
/// <param name="StandsSince">Since when a paver stands.</param>
/// <param name="JointBy">When a joint must be made: that the paver does not go on by then, or that no truck comes from now on.</param>
/// <param name="Courses">Courses from bottom to top.</param>
/// <param name="Change">The one change that helps most; null where none of those tried helps.</param>
/// <param name="Tried">Changes that were tried, each with fewer simulated shifts.</param>
/// <param name="StartedFrom">What it started from.</param>
/// <param name="Notes">What a reader must know, in sentences.</param>
/// <param name="Refused">Rows and files that were not read.</param>
/// <param name="Remarks">What was seen while the record was read.</param>
/// <param name="Phases">Phases of the rolling that lost a roller.</param>
/// <param name="BookHash">Hash of the merged rule book whose assumptions it rests on.</param>
public sealed record OnwardShape(
    [property: Schema(Only = OnwardShape.Version)] int OnwardVersion, string Program, string ProgramVersion, RecordedPlanShape Plan, RecordShape Record, DateTimeOffset At, DateTimeOffset? LastRow, DateTimeOffset Closing, IReadOnlyList<string> Says,
    LedgerFigureShape LengthLeft, OnwardForecastShape Forecast, DateTimeOffset? SteadyEnd, LedgerFigureShape AtRisk, OnwardStopShape? StopAt, double? StopLimit, DateTimeOffset? StandsSince, DateTimeOffset? JointBy,
    IReadOnlyList<OnwardCourseShape> Courses, OnwardChangeShape? Change, IReadOnlyList<OnwardChangeShape> Tried, IReadOnlyList<OnwardFactShape> StartedFrom, IReadOnlyList<string> Notes, IReadOnlyList<RowProblemShape> Refused,
    IReadOnlyList<RowProblemShape> Remarks, IReadOnlyList<OnwardPhaseShape> Phases, string BookHash)
{
    /// <summary>Version of the shape.</summary>
    public const int Version = 1;
}

/// <summary>A value over the simulated shifts.</summary>
/// <param name="Expected">Mean, or share.</param>
/// <param name="Low">Low end.</param>
/// <param name="High">High end.</param>
public sealed record OnwardBandShape(double Expected, double Low, double High);

/// <summary>A moment over the simulated shifts.</summary>
/// <param name="Expected">Middle; null where half of the shifts never get there.</param>
/// <param name="Low">One in twenty is earlier.</param>
/// <param name="High">One in twenty is later; null for never.</param>
public sealed record OnwardMomentShape(DateTimeOffset? Expected, DateTimeOffset? Low, DateTimeOffset? High);

/// <summary>What the simulated shifts say.</summary>
/// <param name="Shifts">How many were simulated.</param>
/// <param name="Finish">Chance that all is laid when the site closes, 0 to 1, with its 90 % confidence limits.</param>
/// <param name="End">When the last metre is laid.</param>
/// <param name="LongestStop">Longest stop from now on, min: mean, 5 % and 95 % points.</param>
/// <param name="OverLimit">Chance of a stop beyond the plan's limit, 0 to 1; null where it states none.</param>
/// <param name="Stops">Stops for want of mix, on average.</param>
public sealed record OnwardForecastShape(int Shifts, OnwardBandShape Finish, OnwardMomentShape End, OnwardBandShape LongestStop, OnwardBandShape? OverLimit, OnwardBandShape Stops);

/// <summary>What is left when laying stops before its end.</summary>
/// <param name="At">The moment.</param>
/// <param name="Because">rain or closing.</param>
/// <param name="Left">Mix on trucks and machine then.</param>
/// <param name="Reached">Length laid then.</param>
/// <param name="Run">Run that is reached on average.</param>
/// <param name="Station">Station, m.</param>
/// <param name="LastLoads">Last moment at which a load may leave to be laid before.</param>
public sealed record OnwardStopShape(DateTimeOffset At, string Because, LedgerFigureShape Left, LedgerFigureShape Reached, string? Run, double? Station, IReadOnlyList<OnwardLastLoadShape> LastLoads);

/// <summary>Last load of a group that is still laid.</summary>
/// <param name="Trucks">The group.</param>
/// <param name="LeavesBy">When it leaves at the latest.</param>
public sealed record OnwardLastLoadShape(string Trucks, DateTimeOffset LeavesBy);

/// <summary>Loads under way.</summary>
/// <param name="Loads">How many.</param>
/// <param name="Mass">Their mass.</param>
/// <param name="OldestAge">Age of the oldest since it was loaded, min.</param>
/// <param name="OldestTicket">Its ticket.</param>
public sealed record OnwardLoadsShape(int Loads, LedgerFigureShape Mass, double? OldestAge, string? OldestTicket);

/// <summary>Loads that have still to be called when nothing varies.</summary>
/// <param name="Loads">How many.</param>
/// <param name="Mass">Their mass.</param>
/// <param name="First">When the first leaves.</param>
/// <param name="Last">When the last leaves.</param>
/// <param name="LastMass">Mass of the last.</param>
public sealed record OnwardCallShape(int Loads, LedgerFigureShape Mass, DateTimeOffset? First, DateTimeOffset? Last, LedgerFigureShape? LastMass);

/// <summary>Densification window of what is laid at a moment.</summary>
/// <param name="At">The moment.</param>
/// <param name="Minutes">The window, min.</param>
/// <param name="Low">Its low end over what is not known of mat and weather, min.</param>
/// <param name="High">Its high end, min.</param>
public sealed record OnwardWindowShape(DateTimeOffset At, double Minutes, double Low, double High);

/// <summary>One course.</summary>
/// <param name="Course">Its id.</param>
/// <param name="Mix">Its mix.</param>
/// <param name="OnMachine">Mix on the machine at the last station.</param>
/// <param name="OnSite">Loads that wait or are being discharged.</param>
/// <param name="OnRoad">Loads on the road.</param>
/// <param name="LastsUntil">Until when the mix on site lasts if no truck comes.</param>
/// <param name="ToCall">Loads to call.</param>
/// <param name="Windows">Densification windows by what was measured.</param>
/// <param name="RolledWithin">Time from the screed to the last densifying pass by the plan, with the rollers that are left, min.</param>
/// <param name="Passes">Passes within the window of what is laid now, for each phase that densifies; empty where no roller is lost.</param>
public sealed record OnwardCourseShape(
    string Course, string Mix, LedgerFigureShape OnMachine, OnwardLoadsShape OnSite, OnwardLoadsShape OnRoad, DateTimeOffset? LastsUntil, OnwardCallShape ToCall, IReadOnlyList<OnwardWindowShape> Windows, double? RolledWithin, IReadOnlyList<OnwardPassesShape> Passes);

/// <summary>Passes of a phase within the window of what is laid now.</summary>
/// <param name="Phase">The phase.</param>
/// <param name="Planned">Passes of the plan.</param>
/// <param name="Expected">Passes within the expected window.</param>
/// <param name="Low">Passes within its low end.</param>
public sealed record OnwardPassesShape(string Phase, int Planned, int Expected, int Low);

/// <summary>A phase of the rolling that lost a roller.</summary>
/// <param name="Phase">The phase.</param>
/// <param name="Planned">Passes of the plan.</param>
/// <param name="Rollers">Rollers that are left in it.</param>
/// <param name="FollowsMPerMin">Paver speed at which they make all passes, m/min; 0 without a roller, null where it cannot be told.</param>
/// <param name="AtPlannedSpeed">Passes that they make at the speed of the plan; null where it cannot be told.</param>
public sealed record OnwardPhaseShape(string Phase, int Planned, int Rollers, double? FollowsMPerMin, int? AtPlannedSpeed);

/// <summary>A change and what it comes to.</summary>
/// <param name="Lever">What is changed.</param>
/// <param name="Of">Group of trucks, or run of an earlier end.</param>
/// <param name="From">Present value; of an earlier end the length that it leaves.</param>
/// <param name="To">New value; of an earlier end its station.</param>
/// <param name="Forecast">What it comes to.</param>
public sealed record OnwardChangeShape(string Lever, string? Of, LedgerFigureShape? From, LedgerFigureShape? To, OnwardForecastShape Forecast);

/// <summary>A figure that the re-plan started from.</summary>
/// <param name="What">What it is of.</param>
/// <param name="Of">Course, group of trucks or plant.</param>
/// <param name="Basis">record, said, plan or assumed.</param>
/// <param name="Value">The figure.</param>
/// <param name="At">Its moment.</param>
/// <param name="Stale">Whether it is older than the interval in which it is decided anew.</param>
public sealed record OnwardFactShape(string What, string? Of, string Basis, LedgerFigureShape? Value, DateTimeOffset? At, bool Stale);
