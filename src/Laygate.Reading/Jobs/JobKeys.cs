namespace Laygate.Reading.Jobs;

/// <summary>The keys of a job of several shifts that a plan does not have.</summary>
internal static class JobKeys
{
    /// <summary>The key by which a job is known.</summary>
    public const string Job = "job";

    /// <summary>The list of shifts.</summary>
    public const string Shifts = "shifts";

    /// <summary>Runs that a shift lays, by their ids.</summary>
    public const string Runs = "runs";

    /// <summary>The list of lots of acceptance.</summary>
    public const string Lots = "lots";

    /// <summary>What of the job is not there in a shift, by addresses.</summary>
    public const string Without = "without";

    /// <summary>Most shifts of a job: judgement, eight weeks of five nights; each is checked in full.</summary>
    public const int MostShifts = 40;

    /// <summary>Most keys and values of all shifts of a job together, each shift written out: judgement, forty shifts of the largest plan seen, twice over.</summary>
    public const int MostNodes = 400_000;

    /// <summary>Keys of a shift that stand in the block <c>shift</c> of its plan.</summary>
    public static IReadOnlyList<string> Times { get; } = ["date", "start", "end", "zone", "zone_at_end", "set_up"];

    /// <summary>Keys of a plan that a shift cannot state otherwise than the job.</summary>
    public static IReadOnlyList<string> OfTheJob { get; } = ["format", Job, Shifts, Lots, "shift", "uses"];
}
