using Laygate.Engineering.Records.Happened;
using Laygate.Model.Measures;
using Laygate.Model.Records;

namespace Laygate.Rules.Results;

/// <summary>What became of a limit in the shift.</summary>
public enum HeldOutcome
{
    /// <summary>Every value that was recorded is within the limit by more than its uncertainty, and none that belongs to it is missing.</summary>
    Held,

    /// <summary>Beyond the limit, and a departure that was in force permits it.</summary>
    Departed,

    /// <summary>Beyond the limit by more than the uncertainty.</summary>
    Missed,

    /// <summary>The limit lies within the uncertainty of a value, or it is not known what holds.</summary>
    NotDecided,

    /// <summary>Nothing was recorded, or not all that belongs to it. Silence is never held.</summary>
    NotRecorded,
}

/// <summary>Why a limit is not decided.</summary>
public enum NotDecidedBecause
{
    /// <summary>It is decided, or not recorded.</summary>
    None,

    /// <summary>The limit lies within the uncertainty.</summary>
    Uncertainty,

    /// <summary>The record states no uncertainty for such a value.</summary>
    NoUncertainty,

    /// <summary>The reading came too late to tell the value: it shows only that it was no less.</summary>
    ReadLater,

    /// <summary>The limit, a condition, or the place of the temperature is not known.</summary>
    NoLimit,
}

/// <summary>A value that was judged.</summary>
/// <param name="Value">The value with its rows.</param>
/// <param name="Outcome">What it comes to.</param>
/// <param name="Number">In the unit of the finding.</param>
public sealed record JudgedValue(HappenedValue Value, HeldOutcome Outcome, double Number);

/// <summary>What a rule says of what happened at one element of the plan.</summary>
/// <param name="Finding">The finding of the rule, with the value that decided in place of the plan's.</param>
/// <param name="Outcome">What it comes to.</param>
/// <param name="Status">What the gate makes of it.</param>
/// <param name="Quantity">What was read.</param>
public sealed record HeldFinding(Finding Finding, HeldOutcome Outcome, Status Status, HappenedQuantity Quantity)
{
    /// <summary>The value that decided; null where none was recorded.</summary>
    public HappenedValue? Worst { get; init; }

    /// <summary>That value in the unit of the finding; 0 where there is none.</summary>
    public double Number { get; init; }

    /// <summary>Expanded uncertainty (k = 2) of that value in the unit of the finding; null where the record states none.</summary>
    public double? Uncertainty { get; init; }

    /// <summary>Why it is not decided.</summary>
    public NotDecidedBecause Because { get; init; }

    /// <summary>Number of values.</summary>
    public int Count { get; init; }

    /// <summary>Values that are not held, the worst first.</summary>
    public IReadOnlyList<JudgedValue> NotHeld { get; init; } = [];

    /// <summary>What is missing in the record.</summary>
    public IReadOnlyList<LackingRow> Lacking { get; init; } = [];

    /// <summary>What the same rule said of the plan.</summary>
    public Status PlanStatus { get; init; }
}

/// <summary>A hold point of the plan.</summary>
/// <param name="Use">What the record says of it.</param>
/// <param name="Outcome">What it comes to.</param>
/// <param name="Status">What the gate makes of it.</param>
public sealed record HeldPoint(HoldPointUse Use, HeldOutcome Outcome, Status Status);

/// <summary>How often each outcome occurs; each finding and each hold point is in exactly one.</summary>
/// <param name="Held">Held.</param>
/// <param name="Departed">Departed with permission.</param>
/// <param name="Missed">Missed.</param>
/// <param name="NotDecided">Not decided.</param>
/// <param name="NotRecorded">Not recorded.</param>
public sealed record HeldCounts(int Held, int Departed, int Missed, int NotDecided, int NotRecorded);

/// <summary>What became of the limits of a plan in its shift.</summary>
/// <param name="Plan">The report on which it rests: plan, date, layers of the rule book.</param>
/// <param name="Record">The record.</param>
/// <param name="Findings">What each rule says, in plan order, then by rule id.</param>
/// <param name="HoldPoints">Hold points of the plan with who released them.</param>
/// <param name="UnknownHoldPoints">Releases of hold points that the plan does not have.</param>
/// <param name="NotSeen">Ids of the rules in force that no record can show.</param>
/// <param name="SimpleBy">The clause by which readings are taken as they are; null: the uncertainty decides.</param>
/// <param name="Refused">Rows and files that were not read.</param>
/// <param name="Remarks">What was seen while the record was read.</param>
public sealed record HeldReport(
    Report Plan, ShiftRecord Record, IReadOnlyList<HeldFinding> Findings, IReadOnlyList<HeldPoint> HoldPoints, IReadOnlyList<HoldPointRelease> UnknownHoldPoints,
    IReadOnlyList<string> NotSeen, string? SimpleBy, IReadOnlyList<Problem> Refused, IReadOnlyList<Problem> Remarks)
{
    /// <summary>Courses along their runs.</summary>
    public IReadOnlyList<RunStrip> Strips { get; init; } = [];

    /// <summary>Unit of stations.</summary>
    public required Unit Length { get; init; }

    /// <summary>Counts over findings and hold points.</summary>
    public HeldCounts Counts => new(Of(HeldOutcome.Held), Of(HeldOutcome.Departed), Of(HeldOutcome.Missed), Of(HeldOutcome.NotDecided), Of(HeldOutcome.NotRecorded));

    /// <summary>The gate over all: the worst status of any finding or hold point; pass only where all is held or departed with permission.</summary>
    public Status Gate => Worst(Findings.Select(one => one.Status).Concat(HoldPoints.Select(point => point.Status)));

    private static Status Worst(IEnumerable<Status> all) => all.Aggregate(Status.Pass, (worst, one) => one == Status.Fail || worst == Status.Fail ? Status.Fail : one == Status.Warn ? Status.Warn : worst);

    private int Of(HeldOutcome outcome) => Findings.Count(one => one.Outcome == outcome) + HoldPoints.Count(point => point.Outcome == outcome);
}
