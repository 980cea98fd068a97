namespace Laygate.Rules.Results;

/// <summary>What a rule said of plans, and what came of it. Each finding is in exactly one count.</summary>
/// <param name="Rule">Id of the rule; own-limit for limits that plans set themselves.</param>
/// <param name="What">What was read.</param>
/// <param name="WarnedMissed">It warned or failed the plan, and the limit was missed, with permission or without.</param>
/// <param name="WarnedHeld">It warned or failed the plan, and the limit was held.</param>
/// <param name="PassedMissed">It passed the plan, and the limit was missed.</param>
/// <param name="PassedHeld">It passed the plan, and the limit was held.</param>
/// <param name="NotDecided">The record does not decide.</param>
/// <param name="NotRecorded">The record does not say it.</param>
public sealed record RuleFeedback(string Rule, string What, int WarnedMissed, int WarnedHeld, int PassedMissed, int PassedHeld, int NotDecided, int NotRecorded);

/// <summary>A record that was counted.</summary>
/// <param name="Folder">Its folder.</param>
/// <param name="PlanId">Id of its plan.</param>
/// <param name="About">What it says about itself.</param>
public sealed record CountedRecord(string Folder, string PlanId, string? About);

/// <summary>What came of findings over a folder of records.</summary>
/// <param name="Records">The records.</param>
/// <param name="Rules">One row for each rule that a record showed, by id.</param>
/// <param name="Problems">Records that could not be used.</param>
public sealed record FeedbackReport(IReadOnlyList<CountedRecord> Records, IReadOnlyList<RuleFeedback> Rules, IReadOnlyList<Problem> Problems);
