namespace Laygate.Exchange.Records;

/// <summary>What <c>laygate ledger --format json</c> writes. Keys may be added; none is renamed or removed under the same ledger_version.</summary>
/// <param name="LedgerVersion">Version of this shape.</param>
/// <param name="Program">Name of the program.</param>
/// <param name="ProgramVersion">Version of the program.</param>
/// <param name="Plan">The plan.</param>
/// <param name="Record">The record.</param>
/// <param name="At">Moment of the ledger.</param>
/// <param name="LastRow">Moment of the last row that was used.</param>
/// <param name="Says">What it comes to, one sentence for each course.</param>
/// <param name="End">When all is laid; null where that cannot be told.</param>
/// <param name="Stops">Stops so far.</param>
/// <param name="Courses">Courses from bottom to top.</param>
/// <param name="Notes">What a reader must know, in sentences.</param>
/// <param name="Refused">Rows and files that were not read.</param>
/// <param name="Remarks">What was seen while the record was read.</param>
public sealed record LedgerShape(
    [property: Schema(Only = LedgerShape.Version)] int LedgerVersion, string Program, string ProgramVersion, RecordedPlanShape Plan, RecordShape Record, DateTimeOffset At, DateTimeOffset? LastRow, IReadOnlyList<string> Says,
    LedgerMomentShape? End, LedgerStopsShape Stops, IReadOnlyList<LedgerCourseShape> Courses, IReadOnlyList<string> Notes, IReadOnlyList<RowProblemShape> Refused, IReadOnlyList<RowProblemShape> Remarks)
{
    /// <summary>Version of the shape.</summary>
    public const int Version = 1;
}

/// <summary>The plan that was laid.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Title">Its title.</param>
/// <param name="Revision">Its revision.</param>
/// <param name="Hash">SHA-256 of its bytes, hexadecimal.</param>
public sealed record RecordedPlanShape(string Id, string? Title, string? Revision, string Hash);

/// <summary>The record.</summary>
/// <param name="About">What it says about itself.</param>
/// <param name="Files">Raw files.</param>
public sealed record RecordShape(string? About, IReadOnlyList<RawFileShape> Files);

/// <summary>A raw file.</summary>
/// <param name="File">Its name.</param>
/// <param name="Holds">What its rows are.</param>
/// <param name="Hash">SHA-256 of its bytes, hexadecimal.</param>
/// <param name="Rows">Rows that were read.</param>
/// <param name="Refused">Rows that were refused.</param>
public sealed record RawFileShape(string File, string Holds, string Hash, int Rows, int Refused);

/// <summary>Why a row or a file was not read, or what was seen on it.</summary>
/// <param name="File">The file.</param>
/// <param name="Line">Its line.</param>
/// <param name="Column">Its column.</param>
/// <param name="Message">What is wrong.</param>
/// <param name="Hint">What to do.</param>
public sealed record RowProblemShape(string File, int? Line, int? Column, string Message, string? Hint);

/// <summary>A figure.</summary>
/// <param name="Value">Value.</param>
/// <param name="Unit">Unit of all its numbers.</param>
/// <param name="Plan">What the plan has in its place.</param>
/// <param name="Uncertainty">Expanded uncertainty with factor 2.</param>
/// <param name="Low">Least.</param>
/// <param name="High">Most.</param>
public sealed record LedgerFigureShape(double Value, string Unit, double? Plan, double? Uncertainty, double? Low, double? High);

/// <summary>A step of the working.</summary>
/// <param name="Expression">The formula in symbols, or what an input is.</param>
/// <param name="Value">Value.</param>
/// <param name="Unit">Unit.</param>
public sealed record LedgerStepShape(string Expression, double Value, string Unit);

/// <summary>What was laid over an interval between loads.</summary>
/// <param name="Loads">Loads that were discharged in it.</param>
/// <param name="From">When it begins; null: with the first load.</param>
/// <param name="To">When it ends.</param>
/// <param name="Mass">Mass that was laid.</param>
/// <param name="Length">Length.</param>
/// <param name="PerLength">Mass per length.</param>
/// <param name="PerArea">Mass per area.</param>
/// <param name="Thickness">Mean thickness.</param>
/// <param name="Proven">Whether the difference from the planned thickness is more than its uncertainty; null where that is not stated.</param>
/// <param name="Working">How they follow.</param>
public sealed record LedgerIntervalShape(
    int Loads, DateTimeOffset? From, DateTimeOffset To, LedgerFigureShape Mass, LedgerFigureShape Length, LedgerFigureShape PerLength, LedgerFigureShape PerArea, LedgerFigureShape Thickness, bool? Proven, IReadOnlyList<LedgerStepShape> Working);

/// <summary>A load that is on its way or waits.</summary>
/// <param name="Ticket">Number of the ticket.</param>
/// <param name="Mass">Mass.</param>
/// <param name="Loaded">When it was loaded.</param>
/// <param name="OnSite">Whether it has arrived.</param>
public sealed record LoadUnderWayShape(string Ticket, LedgerFigureShape Mass, DateTimeOffset? Loaded, bool OnSite);

/// <summary>A moment with its range.</summary>
/// <param name="Expected">Expected.</param>
/// <param name="Earliest">Earliest.</param>
/// <param name="Latest">Latest.</param>
public sealed record LedgerMomentShape(DateTimeOffset Expected, DateTimeOffset Earliest, DateTimeOffset Latest);

/// <summary>The end by one way of reckoning.</summary>
/// <param name="Basis">The way.</param>
/// <param name="Rate">Rate of laying.</param>
/// <param name="End">The end; null where it is never reached.</param>
public sealed record ReckonedEndShape(string Basis, LedgerFigureShape Rate, DateTimeOffset? End);

/// <summary>Stops so far.</summary>
/// <param name="Count">How many.</param>
/// <param name="Total">All together.</param>
/// <param name="Longest">The longest.</param>
/// <param name="Limit">Limit of the plan.</param>
public sealed record LedgerStopsShape(int Count, LedgerFigureShape Total, LedgerFigureShape? Longest, LedgerFigureShape? Limit);

/// <summary>One course.</summary>
/// <param name="Course">Its id.</param>
/// <param name="Mix">Its mix.</param>
/// <param name="Discharged">Loads that were discharged.</param>
/// <param name="Tickets">Mass of all tickets that count.</param>
/// <param name="Shift">The shift so far; null before the first station.</param>
/// <param name="LastLoads">The last five loads, or as many as there are.</param>
/// <param name="Laid">Length that is laid, against all of it.</param>
/// <param name="LengthLeft">Length that is left.</param>
/// <param name="LeftByPlan">Mass that is left by the plan.</param>
/// <param name="LeftByYield">Mass that is left by the yield so far.</param>
/// <param name="OnHand">On the machine, on the road and waiting.</param>
/// <param name="ToOrder">Still to be loaded.</param>
/// <param name="LoadsToOrder">Loads that this makes.</param>
/// <param name="LastLoad">The last of them.</param>
/// <param name="LastLeaves">When the last of them must leave at the latest.</param>
/// <param name="UnderWay">Loads on their way or waiting.</param>
/// <param name="End">When it is laid; null where it is not finished at the rates so far.</param>
/// <param name="Ends">The ways of reckoning it.</param>
/// <param name="Working">How what is left follows.</param>
public sealed record LedgerCourseShape(
    string Course, string Mix, int Discharged, LedgerFigureShape Tickets, LedgerIntervalShape? Shift, LedgerIntervalShape? LastLoads, LedgerFigureShape Laid, LedgerFigureShape LengthLeft, LedgerFigureShape LeftByPlan,
    LedgerFigureShape LeftByYield, LedgerFigureShape OnHand, LedgerFigureShape ToOrder, int? LoadsToOrder, LedgerFigureShape? LastLoad, DateTimeOffset? LastLeaves, IReadOnlyList<LoadUnderWayShape> UnderWay, LedgerMomentShape? End,
    IReadOnlyList<ReckonedEndShape> Ends, IReadOnlyList<LedgerStepShape> Working);
