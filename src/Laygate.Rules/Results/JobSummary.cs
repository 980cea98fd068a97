namespace Laygate.Rules.Results;

/// <summary>A job of several shifts. Of the reports of its file the first is about what lies between the shifts, each of the others about one shift, in this order.</summary>
/// <param name="Id">Id of the job.</param>
/// <param name="Title">Its title; null where it has none.</param>
/// <param name="Shifts">Its shifts.</param>
/// <param name="Days">Mix that is needed on each day.</param>
public sealed record JobSummary(string Id, string? Title, IReadOnlyList<ShiftOfJob> Shifts, IReadOnlyList<MixOfDay> Days);

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
