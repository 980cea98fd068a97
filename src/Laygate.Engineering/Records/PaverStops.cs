using Laygate.Model.Records;

namespace Laygate.Engineering.Records;

/// <summary>A time in which the paver stood, however many rows say so.</summary>
/// <param name="From">When it began.</param>
/// <param name="To">When it ended; null while it lasts.</param>
/// <param name="Rows">The rows, in the order of their times.</param>
internal sealed record StandingTime(DateTimeOffset From, DateTimeOffset? To, IReadOnlyList<PaverStop> Rows)
{
    /// <summary>How long it lasted, s; up to a moment while it lasts.</summary>
    public double Length(DateTimeOffset until) => ((To ?? until) - From).TotalSeconds;
}

/// <summary>Stops as times in which the paver stood: rows that overlap or follow on one another are one stop, so that a row written twice changes nothing.</summary>
internal static class PaverStops
{
    /// <summary>The union of stops.</summary>
    public static IReadOnlyList<StandingTime> Union(IEnumerable<PaverStop> stops)
    {
        var union = new List<StandingTime>();
        foreach (var stop in stops.OrderBy(stop => stop.From))
        {
            if (union.Count > 0 && union[^1] is var before && !(before.To < stop.From))
            {
                union[^1] = new StandingTime(before.From, before.To is { } a && stop.To is { } b ? a > b ? a : b : null, [.. before.Rows, stop]);
            }
            else
            {
                union.Add(new StandingTime(stop.From, stop.To, [stop]));
            }
        }

        return union;
    }
}
