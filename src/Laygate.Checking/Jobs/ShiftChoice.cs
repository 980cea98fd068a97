using Laygate.Reading.Plans;
using Laygate.Rules.Results;

namespace Laygate.Checking.Jobs;

/// <summary>Chooses one shift of a job.</summary>
internal static class ShiftChoice
{
    /// <summary>The file with the chosen shift only, or why there is none.</summary>
    /// <param name="file">Name of the file, as it is to be shown.</param>
    /// <param name="read">What was read from it.</param>
    /// <param name="shift">Id of the shift; null for all plans.</param>
    public static PlanFile Of(string file, PlanFile read, string? shift)
    {
        if (shift is null || read.Problems.Count > 0)
        {
            return read;
        }

        if (read.Job is not { } job)
        {
            return new PlanFile([], [new Problem(file, "This is no job of several shifts.", "Leave `--shift` out.", null)]);
        }

        var index = job.Shifts.ToList().IndexOf(shift);
        return index >= 0 ? read with { Plans = [read.Plans[index]] }
            : new PlanFile([], [new Problem(file, $"There is no shift `{shift}` in the job.", $"Its shifts are {string.Join(", ", job.Shifts.Select(id => $"`{id}`"))}.", null)]);
    }
}
