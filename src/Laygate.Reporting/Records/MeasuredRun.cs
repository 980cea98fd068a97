using Laygate.Rules.Results;

namespace Laygate.Reporting.Records;

/// <summary>What one call of <c>laygate measured</c> found.</summary>
/// <param name="Shifts">Shifts in the order in which they were named.</param>
/// <param name="Learnt">What they taught; null where nothing was to be learnt.</param>
/// <param name="LearntFile">The file to which it is written where it may be stored.</param>
/// <param name="NotCounted">Records below the folder that could not be used.</param>
public sealed record MeasuredRun(IReadOnlyList<MeasuredReport> Shifts, LearnReport? Learnt, string? LearntFile, IReadOnlyList<Problem> NotCounted);
