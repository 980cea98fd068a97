using System.Text.Json.Serialization;

namespace Laygate.Rules.Results;

/// <summary>A job of several shifts. Of the reports of its file the first is about what lies between the shifts, each of the others about one shift, in this order.</summary>
/// <param name="Id">Id of the job.</param>
/// <param name="Title">Its title; null where it has none.</param>
/// <param name="Shifts">Its shifts.</param>
/// <param name="Days">Mix that is needed on each day.</param>
public sealed record JobSummary(string Id, string? Title, IReadOnlyList<ShiftOfJob> Shifts, IReadOnlyList<MixOfDay> Days)
{
    /// <summary>Its lots of acceptance. In a JSON report they stand beside the job, so that reports written before there were lots keep their shape.</summary>
    [JsonIgnore]
    public IReadOnlyList<LotOfJob> Lots { get; init; } = [];
}

/// <summary>A shift of a job.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Plan">Id of its plan, by which its report is found.</param>
/// <param name="Starts">Start of laying; null where it is not known.</param>
/// <param name="Ends">End of laying; null where it is not known.</param>
/// <param name="Runs">Ids of its runs, in the order of laying.</param>
/// <param name="Courses">Ids of the courses that it lays, from bottom to top.</param>
/// <param name="Hours">Length of the shift; null where it is not known.</param>
/// <param name="Needed">Time that its runs need; null where it is not known.</param>
/// <param name="Mass">Mix that it takes; null where it is not known.</param>
public sealed record ShiftOfJob(
    string Id,
    string Plan,
    DateTimeOffset? Starts,
    DateTimeOffset? Ends,
    IReadOnlyList<string> Runs,
    IReadOnlyList<string> Courses,
    ShownValue? Hours,
    ShownValue? Needed,
    ShownValue? Mass);

/// <summary>Mix of one kind that is needed on one day, by the date on which the shifts begin.</summary>
/// <param name="Day">The day.</param>
/// <param name="Mix">Id of the mix.</param>
/// <param name="Mass">How much.</param>
public sealed record MixOfDay(DateOnly Day, string Mix, ShownValue Mass);

/// <summary>A lot of acceptance of a job.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Course">Id of its course.</param>
/// <param name="Test">Id of the test for which the course is divided so; null where it is for all of them.</param>
/// <param name="Size">Mass or length at which it is full; null where only a shift ends it.</param>
/// <param name="Tests">Tests that it needs; null where the plan does not say.</param>
/// <param name="After">The lot after each of its shifts, in the order of laying.</param>
/// <param name="EndsIn">Id of the shift in which it ends; null where it ends in none, or where that is not known.</param>
public sealed record LotOfJob(
    string Id,
    string Course,
    string? Test,
    ShownValue? Size,
    int? Tests,
    IReadOnlyList<LotAfterShift> After,
    string? EndsIn);

/// <summary>A lot when a shift has laid its part of it.</summary>
/// <param name="Shift">Id of the shift.</param>
/// <param name="SoFar">Mass or length that the lot holds then; null where it is not known.</param>
/// <param name="Sublots">Sublots that are begun by then; null where the plan states none, or the amount is not known.</param>
/// <param name="TestsLeft">Tests for which no sublot is begun yet; null where it is not known.</param>
/// <param name="IsOpen">Whether the lot goes on after the shift.</param>
public sealed record LotAfterShift(string Shift, ShownValue? SoFar, int? Sublots, int? TestsLeft, bool IsOpen);
