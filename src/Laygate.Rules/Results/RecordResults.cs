using Laygate.Model.Plans;
using Laygate.Engineering.Measured;
using Laygate.Engineering.Onward;
using Laygate.Engineering.Records;
using Laygate.Model.Records;

namespace Laygate.Rules.Results;

/// <summary>The ledger of a shift with what it was made from.</summary>
/// <param name="PlanId">Id of the plan.</param>
/// <param name="PlanTitle">Title of the plan; null where it has none.</param>
/// <param name="Revision">Revision of the plan.</param>
/// <param name="PlanHash">SHA-256 of the bytes of the plan, hexadecimal.</param>
/// <param name="ProgramVersion">Version of the program.</param>
/// <param name="Record">The record.</param>
/// <param name="Ledger">The ledger.</param>
/// <param name="Refused">Rows and files that were not read.</param>
/// <param name="Remarks">What was seen while the record was read.</param>
public sealed record LedgerReport(
    string PlanId, string? PlanTitle, string? Revision, string PlanHash, string ProgramVersion, ShiftRecord Record, ShiftLedger Ledger, IReadOnlyList<Problem> Refused, IReadOnlyList<Problem> Remarks);

/// <summary>The rest of a shift with what it was planned from.</summary>
/// <param name="PlanId">Id of the plan.</param>
/// <param name="PlanTitle">Title of the plan; null where it has none.</param>
/// <param name="Revision">Revision of the plan.</param>
/// <param name="PlanHash">SHA-256 of the bytes of the plan, hexadecimal.</param>
/// <param name="ProgramVersion">Version of the program.</param>
/// <param name="Record">The record.</param>
/// <param name="Result">The rest of the shift.</param>
/// <param name="Refused">Rows and files that were not read.</param>
/// <param name="Remarks">What was seen while the record was read.</param>
public sealed record OnwardReport(
    string PlanId, string? PlanTitle, string? Revision, string PlanHash, string ProgramVersion, ShiftRecord Record, OnwardResult Result, IReadOnlyList<Problem> Refused, IReadOnlyList<Problem> Remarks)
{
    /// <summary>Hash of the merged rule book whose assumptions it rests on.</summary>
    public string BookHash { get; init; } = string.Empty;
}

/// <summary>A shift that something was learnt from.</summary>
/// <param name="PlanId">Id of its plan.</param>
/// <param name="Date">Its day; null where the plan states none.</param>
/// <param name="PlanHash">SHA-256 of the bytes of the plan, hexadecimal.</param>
/// <param name="RecordHash">SHA-256 over the names and hashes of the files of the record, hexadecimal.</param>
/// <param name="Uncertainty">Uncertainties of the record.</param>
public sealed record LearntShift(string PlanId, DateOnly? Date, string PlanHash, string RecordHash, RecordUncertainty Uncertainty);

/// <summary>What several shifts taught, or why they taught nothing.</summary>
/// <param name="Id">Id of the entry that plans name.</param>
/// <param name="Fit">The fit.</param>
/// <param name="Shifts">The shifts.</param>
/// <param name="Values">The entry with where it comes from; null where nothing may be stored.</param>
public sealed record LearnReport(string Id, MatFit Fit, IReadOnlyList<LearntShift> Shifts, LearntValues? Values);

/// <summary>Measured against computed temperatures of one shift.</summary>
/// <param name="PlanId">Id of the plan.</param>
/// <param name="PlanTitle">Title of the plan; null where it has none.</param>
/// <param name="PlanHash">SHA-256 of the bytes of the plan, hexadecimal.</param>
/// <param name="Record">The record.</param>
/// <param name="Comparison">The comparison.</param>
/// <param name="Refused">Rows and files that were not read.</param>
public sealed record MeasuredReport(string PlanId, string? PlanTitle, string PlanHash, ShiftRecord Record, MatComparison Comparison, IReadOnlyList<Problem> Refused)
{
    /// <summary>Revision of the plan; null where it has none.</summary>
    public string? Revision { get; init; }

    /// <summary>What recorded shifts taught of mixes of the plan, with which is computed because the plan names it.</summary>
    public IReadOnlyList<PlotLearnt> Learnt { get; init; } = [];

    /// <summary>Whether the whole record was read and a reading could be compared.</summary>
    public bool IsWhole => Refused.Count == 0 && Comparison.Compared.Count > 0;
}
