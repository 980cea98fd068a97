using Laygate.Rules.Results;

namespace Laygate.Checking.Jobs;

/// <summary>A departure of a job is for any of its shifts, or for what lies between them: where it finds its place in one report, the others need not say that it has none in them.</summary>
internal static class JobDepartures
{
    /// <summary>The reports of a job, each departure that is not used in it told once.</summary>
    /// <param name="reports">The report on what lies between, then those of the shifts.</param>
    public static IReadOnlyList<Report> Settled(IReadOnlyList<Report> reports)
    {
        var placed = reports.SelectMany(report => report.Departures).Where(use => use.State is not DepartureState.NoElement and not DepartureState.NoFinding and not DepartureState.Unused)
            .Select(use => use.Departure).ToHashSet();
        var told = new HashSet<Rules.Definitions.Departure>(placed);
        return [.. reports.Select(report => Without(report, use => IsIdle(use) && !told.Add(use.Departure)))];
    }

    private static bool IsIdle(DepartureUse use) => use.State is DepartureState.NoElement or DepartureState.NoFinding or DepartureState.Unused;

    private static Report Without(Report report, Func<DepartureUse, bool> leavesOut)
    {
        List<DepartureUse> kept = [.. report.Departures.Where(use => !leavesOut(use))];
        return kept.Count == report.Departures.Count ? report : report with
        {
            Departures = kept,
            Counts = report.Counts with { DepartureWarnings = kept.Count(use => use.State != DepartureState.Holds) },
        };
    }
}
