using Laygate.Engineering.Records.Happened;
using Laygate.Exchange.Reports;
using Laygate.Rules.Results;

namespace Laygate.Exchange.Records;

/// <summary>What <c>laygate held --format json</c> writes. Keys may be added; none is renamed or removed under the same held_version.</summary>
/// <param name="HeldVersion">Version of this shape.</param>
/// <param name="Program">Name of the program.</param>
/// <param name="ProgramVersion">Version of the program.</param>
/// <param name="Plan">The plan.</param>
/// <param name="Record">The record.</param>
/// <param name="JudgedFor">Date by which limits and departures were judged.</param>
/// <param name="BookHash">Hash of the merged rule book.</param>
/// <param name="SimpleBy">The clause by which readings are taken as they are; null: the uncertainty decides.</param>
/// <param name="Says">What it comes to, in a sentence.</param>
/// <param name="Gate">The worst status of all; pass only where all is held or departed from with permission.</param>
/// <param name="Counts">Counts over limits and hold points.</param>
/// <param name="Findings">What each rule says, in plan order, then by rule id.</param>
/// <param name="HoldPoints">Hold points of the plan.</param>
/// <param name="ToRecord">What to write down, by file.</param>
/// <param name="NotSeen">Rules in force that no record can show.</param>
/// <param name="Refused">Rows and files that were not read.</param>
/// <param name="Remarks">What was seen while the record was read.</param>
public sealed record HeldShape(
    [property: Schema(Only = HeldShape.Version)] int HeldVersion, string Program, string ProgramVersion, RecordedPlanShape Plan, RecordShape Record, DateOnly JudgedFor, string BookHash, string? SimpleBy, string Says,
    Status Gate, HeldCounts Counts, IReadOnlyList<HeldFindingShape> Findings, IReadOnlyList<HoldPointShape> HoldPoints, IReadOnlyList<string> ToRecord, IReadOnlyList<string> NotSeen, IReadOnlyList<RowProblemShape> Refused, IReadOnlyList<RowProblemShape> Remarks)
{
    /// <summary>Version of the shape.</summary>
    public const int Version = 1;
}

/// <summary>What a rule says of what happened at one element of the plan.</summary>
/// <param name="Rule">Id of the rule.</param>
/// <param name="Address">Element of the plan.</param>
/// <param name="Outcome">What it comes to.</param>
/// <param name="Status">What the gate makes of it.</param>
/// <param name="Message">The same as a sentence.</param>
/// <param name="Quantity">Name of the quantity in the catalogue.</param>
/// <param name="What">What was read.</param>
/// <param name="Value">The value that decided, or that of the plan where what happened is the limit.</param>
/// <param name="Uncertainty">Expanded uncertainty (factor 2) of what was read, in the unit of the value; null where the record states none.</param>
/// <param name="Limit">The bound that decides.</param>
/// <param name="Source">Where it comes from.</param>
/// <param name="Because">Why it is not decided.</param>
/// <param name="Count">Number of values that were recorded.</param>
/// <param name="Decided">The value that decided, with its rows.</param>
/// <param name="NotHeld">All values that are not held, the worst first.</param>
/// <param name="Lacking">What is missing in the record.</param>
/// <param name="Departure">Departure that permits it.</param>
/// <param name="PlanStatus">What the same rule said of the plan.</param>
public sealed record HeldFindingShape(
    string Rule, string Address, HeldOutcome Outcome, Status Status, string Message, string Quantity, string What, ShownValue? Value, double? Uncertainty, LimitShape? Limit, SourceShape? Source,
    NotDecidedBecause Because, int Count, HappenedShape? Decided, IReadOnlyList<HappenedShape> NotHeld, IReadOnlyList<LackingShape> Lacking, string? Departure, Status PlanStatus);

/// <summary>A value that was recorded.</summary>
/// <param name="Number">In the unit of the finding.</param>
/// <param name="Outcome">What it comes to.</param>
/// <param name="At">When.</param>
/// <param name="StationM">Station, m.</param>
/// <param name="Of">What it is of.</param>
/// <param name="Rows">Rows from which it comes.</param>
public sealed record HappenedShape(double Number, HeldOutcome Outcome, DateTimeOffset? At, double? StationM, string? Of, IReadOnlyList<RowShape> Rows);

/// <summary>A row of a raw file.</summary>
/// <param name="File">The file.</param>
/// <param name="Line">The line.</param>
public sealed record RowShape(string File, int Line);

/// <summary>Something that is missing.</summary>
/// <param name="What">What; null: nothing of the kind was recorded.</param>
/// <param name="Row">The row in which it is missing.</param>
public sealed record LackingShape(string? What, RowShape? Row);

/// <summary>A hold point of the plan.</summary>
/// <param name="Id">Its id.</param>
/// <param name="State">What the record says.</param>
/// <param name="Outcome">What it comes to.</param>
/// <param name="Planned">Who releases it by the plan.</param>
/// <param name="At">When it was released.</param>
/// <param name="By">Who released it.</param>
/// <param name="Evidence">On what evidence.</param>
/// <param name="Row">The row that decides.</param>
public sealed record HoldPointShape(string Id, HoldPointState State, HeldOutcome Outcome, string? Planned, DateTimeOffset? At, string? By, string? Evidence, RowShape? Row);
