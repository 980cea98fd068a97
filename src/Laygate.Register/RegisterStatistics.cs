using Microsoft.EntityFrameworkCore;

namespace Laygate.Register;

/// <summary>What became of the submissions of one submitter, by the last decision on each.</summary>
/// <param name="Submitter">Id of the submitter.</param>
/// <param name="Name">Name of the submitter, as on its last submission.</param>
/// <param name="Received">Submissions, each revision counted.</param>
/// <param name="Accepted">Accepted.</param>
/// <param name="WithDepartures">Accepted with departures.</param>
/// <param name="Returned">Returned.</param>
public sealed record SubmitterCounts(string Submitter, string Name, int Received, int Accepted, int WithDepartures, int Returned);

/// <summary>Counts over the submissions that were received in a time.</summary>
/// <param name="Received">Submissions, each revision counted.</param>
/// <param name="Superseded">Submissions that were revised before anybody decided.</param>
/// <param name="Waiting">Submissions that wait for a decision or for their screening.</param>
/// <param name="Days">How long each of the others waited for its first decision, days of 24 h from receipt, the shortest first.</param>
/// <param name="Submitters">By submitter, the one with most returns first.</param>
public sealed record RegisterCounts(int Received, int Superseded, int Waiting, IReadOnlyList<double> Days, IReadOnlyList<SubmitterCounts> Submitters);

/// <summary>Counts what the register holds, for those who look after it.</summary>
public sealed class RegisterStatistics(RegisterDatabase database)
{
    private static readonly RegisterEvent[] Counted = [RegisterEvent.Accepted, RegisterEvent.AcceptedWithDepartures, RegisterEvent.Returned];

    /// <summary>Counts the submissions that were received in a time.</summary>
    /// <param name="from">Received at or after.</param>
    /// <param name="until">Received before.</param>
    /// <param name="cancel">Ends it.</param>
    public async Task<RegisterCounts> CountAsync(DateTimeOffset from, DateTimeOffset until, CancellationToken cancel)
    {
        await using var context = database.Open();
        var rows = context.Submissions.AsNoTracking().Where(row => row.ReceivedAt >= from && row.ReceivedAt < until);
        var all = await rows.OrderBy(row => row.Number).Select(row => new Received(row.Number, row.Submitter, row.SubmitterName, row.ReceivedAt, row.IsLatest)).ToListAsync(cancel);
        var decisions = (await rows.Join(context.History, row => row.Number, entry => entry.Number, (_, entry) => entry)
            .Where(entry => Counted.Contains(entry.Event)).OrderBy(entry => entry.Entry)
            .Select(entry => new Decided(entry.Number, entry.At, entry.Event)).ToListAsync(cancel)).ToLookup(one => one.Number);
        return new RegisterCounts(
            all.Count,
            all.Count(one => !one.IsLatest && !decisions.Contains(one.Number)),
            all.Count(one => one.IsLatest && !decisions.Contains(one.Number)),
            [.. all.Where(one => decisions.Contains(one.Number)).Select(one => (decisions[one.Number].First().At - one.At).TotalDays).Order()],
            [.. all.GroupBy(one => one.Submitter, StringComparer.Ordinal).Select(group => Of(group, decisions)).OrderByDescending(one => one.Returned).ThenByDescending(one => one.Received).ThenBy(one => one.Name, StringComparer.Ordinal)]);
    }

    private static SubmitterCounts Of(IGrouping<string, Received> own, ILookup<long, Decided> decisions)
    {
        var last = own.Where(one => decisions.Contains(one.Number)).Select(one => decisions[one.Number].Last().Event).ToList();
        return new SubmitterCounts(
            own.Key,
            own.Last().Name,
            own.Count(),
            last.Count(one => one == RegisterEvent.Accepted),
            last.Count(one => one == RegisterEvent.AcceptedWithDepartures),
            last.Count(one => one == RegisterEvent.Returned));
    }

    private sealed record Received(long Number, string Submitter, string Name, DateTimeOffset At, bool IsLatest);

    private sealed record Decided(long Number, DateTimeOffset At, RegisterEvent Event);
}
