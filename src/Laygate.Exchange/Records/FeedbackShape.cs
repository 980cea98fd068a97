namespace Laygate.Exchange.Records;

/// <summary>What <c>laygate held --folder FOLDER --format json</c> writes. Keys may be added; none is renamed or removed under the same feedback_version.</summary>
/// <param name="FeedbackVersion">Version of this shape.</param>
/// <param name="Program">Name of the program.</param>
/// <param name="ProgramVersion">Version of the program.</param>
/// <param name="Says">What it comes to, in a sentence.</param>
/// <param name="Records">Records that were counted.</param>
/// <param name="Rules">One entry for each rule that a record showed, by id.</param>
/// <param name="NotCounted">Records that could not be used.</param>
public sealed record FeedbackShape(
    [property: Schema(Only = FeedbackShape.Version)] int FeedbackVersion, string Program, string ProgramVersion, string Says, IReadOnlyList<FeedbackRecordShape> Records, IReadOnlyList<FeedbackRuleShape> Rules, IReadOnlyList<RowProblemShape> NotCounted)
{
    /// <summary>Version of the shape.</summary>
    public const int Version = 1;
}

/// <summary>A record that was counted.</summary>
/// <param name="Folder">Its folder.</param>
/// <param name="Plan">Id of its plan.</param>
/// <param name="About">What it says about itself.</param>
public sealed record FeedbackRecordShape(string Folder, string Plan, string? About);

/// <summary>What a rule said of plans, and what came of it. Each finding is in exactly one count.</summary>
/// <param name="Rule">Id of the rule; own-limit for limits that plans set themselves.</param>
/// <param name="What">What was read.</param>
/// <param name="WarnedMissed">It warned or failed the plan, and the limit was missed, with permission or without.</param>
/// <param name="WarnedHeld">It warned or failed the plan, and the limit was held.</param>
/// <param name="PassedMissed">It passed the plan, and the limit was missed.</param>
/// <param name="PassedHeld">It passed the plan, and the limit was held.</param>
/// <param name="NotDecided">The record does not decide.</param>
/// <param name="NotRecorded">The record does not say it.</param>
public sealed record FeedbackRuleShape(string Rule, string What, int WarnedMissed, int WarnedHeld, int PassedMissed, int PassedHeld, int NotDecided, int NotRecorded);
