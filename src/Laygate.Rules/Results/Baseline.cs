using Laygate.Rules.Definitions;

namespace Laygate.Rules.Results;

/// <summary>Findings that are known earlier, so that only new ones count at the gate.</summary>
/// <param name="File">The file, as it is to be shown.</param>
/// <param name="Written">Day on which it was written.</param>
/// <param name="Entries">The known findings.</param>
public sealed record Baseline(string File, DateOnly Written, IReadOnlyList<BaselineEntry> Entries);

/// <summary>One known finding.</summary>
/// <param name="Plan">File of the plan, from the folder of the baseline.</param>
/// <param name="PlanId">Id of the plan.</param>
/// <param name="Rule">Id of the rule.</param>
/// <param name="Address">Address of the element.</param>
/// <param name="Status">What the gate made of it: warn or fail.</param>
/// <param name="Value">The value that missed; null where the finding had none.</param>
public sealed record BaselineEntry(string Plan, string PlanId, string Rule, string Address, Status Status, AcceptedValue? Value);

/// <summary>What a baseline did for one plan.</summary>
/// <param name="File">The file, as it is to be shown.</param>
/// <param name="Written">Day on which it was written.</param>
/// <param name="Known">Findings that it covers.</param>
/// <param name="Worse">Findings that it names but that have grown worse: they count.</param>
/// <param name="Gone">Entries for this plan without a finding that warns or fails: the baseline can be written anew.</param>
public sealed record BaselineUse(string File, DateOnly Written, int Known, int Worse, int Gone);
