using Laygate.Register.Storage;
using Microsoft.EntityFrameworkCore;

namespace Laygate.Register;

/// <summary>
/// Notices on their way. A sender takes one for the time of a lease; when the sender dies the lease ends and another sends it again under the same id. So each notice is
/// delivered at least once, or given up in sight of the administrator; a receiver that keeps the ids of what it has drops what comes twice.
/// </summary>
public sealed class OutgoingNotices(RegisterDatabase database)
{
    /// <summary>Most notices given up that are listed.</summary>
    public const int MostListed = 200;

    private const string Silent = "Each attempt ended without a word.";

    // Growing pauses after a failed attempt; after the last one it is given up, 44 h 36 min after the first. Our judgement: a receiver that was down over a night and a day
    // still gets all, and what is given up is no week old.
    private static readonly TimeSpan[] Pauses =
        [TimeSpan.FromMinutes(1), TimeSpan.FromMinutes(5), TimeSpan.FromMinutes(30), TimeSpan.FromHours(2), TimeSpan.FromHours(6), TimeSpan.FromHours(12), TimeSpan.FromHours(24)];

    private static readonly TimeSpan KeptFor = TimeSpan.FromDays(30);

    /// <summary>How long a sender may take: longer than the longest attempt.</summary>
    public static TimeSpan Lease { get; } = TimeSpan.FromSeconds(150);

    /// <summary>How often a notice is tried.</summary>
    public static int Attempts => Pauses.Length + 1;

    /// <summary>Takes one notice that is due; null when there is none.</summary>
    /// <param name="cancel">Ends it; nothing is taken then.</param>
    public async Task<NoticeClaim?> ClaimAsync(CancellationToken cancel)
    {
        while (await AnyDueAsync(cancel))
        {
            var (claim, taken) = await database.InTransactionAsync(context => ClaimAsync(context, cancel), cancel);
            if (claim is not null || !taken)
            {
                return claim;
            }
        }

        return null;
    }

    /// <summary>Writes down that a notice was taken by its receiver.</summary>
    /// <returns>Whether the claim still held.</returns>
    public Task<bool> SentAsync(NoticeClaim claim, CancellationToken cancel) => IfHeldAsync(claim, row => (row.State, row.DoneAt, row.Reason) = (NoticeState.Sent, database.Now, null), cancel);

    /// <summary>Writes down that an attempt failed. It is tried again after a pause, or given up.</summary>
    /// <param name="claim">The claim.</param>
    /// <param name="reason">Why, in a few words of our own.</param>
    /// <param name="forGood">Whether another attempt would end likewise.</param>
    /// <param name="cancel">Ends it; the lease then ends on its own.</param>
    /// <returns>Whether the claim still held.</returns>
    public Task<bool> FailAsync(NoticeClaim claim, string reason, bool forGood, CancellationToken cancel) => IfHeldAsync(claim, row => Fail(row, reason, forGood), cancel);

    /// <summary>Gives a notice back because the process stops; that is no failure.</summary>
    /// <returns>Whether the claim still held.</returns>
    public Task<bool> HandBackAsync(NoticeClaim claim, CancellationToken cancel) => IfHeldAsync(claim, row => (row.State, row.DueAt) = (NoticeState.Waiting, database.Now), cancel);

    /// <summary>Ends the subscription of a notice because its receiver wants no more, and gives the notice up.</summary>
    /// <returns>Whether the claim still held.</returns>
    public async Task<bool> GoneAsync(NoticeClaim claim, string reason, CancellationToken cancel)
    {
        await using (var context = database.Open())
        {
            await Subscriptions.EndAsync(context.Subscriptions.Where(one => one.Id == claim.To.Id && one.EndedAt == null), database.Now, cancel);
        }

        return await FailAsync(claim, reason, forGood: true, cancel);
    }

    /// <summary>Notices that were given up, the latest first.</summary>
    public async Task<IReadOnlyList<FailedNotice>> FailedAsync(CancellationToken cancel)
    {
        await using var context = database.Open();
        var rows = await context.Notices.AsNoTracking().Where(row => row.State == NoticeState.Failed)
            .Join(context.Subscriptions, row => row.Subscription, one => one.Id, (row, one) => new { Row = row, One = one })
            .OrderByDescending(pair => pair.Row.DoneAt).ThenBy(pair => pair.Row.Id).Take(MostListed).ToListAsync(cancel);
        return [.. rows.Select(pair => new FailedNotice(
            pair.Row.Id, pair.Row.Event, Outbox.Read(pair.Row.Facts).Submission, pair.One.Channel, pair.One.Target, pair.Row.At, pair.Row.Attempt, pair.Row.DoneAt!.Value, pair.Row.Reason ?? Silent))];
    }

    /// <summary>Has a notice sent again that was given up, under the same id.</summary>
    /// <exception cref="RefusedException">There is no such notice, or its subscription has ended.</exception>
    public Task<bool> AgainAsync(string id, CancellationToken cancel)
    {
        CallerText.Id(id);
        return database.InTransactionAsync(
            async context =>
            {
                var row = await context.Notices.FirstOrDefaultAsync(one => one.Id == id && one.State == NoticeState.Failed, cancel) ?? throw new RefusedException(Refusal.NotFound, "There is no notice of that id that was given up.");
                if (!(await Outbox.LiveAsync(context, database.Now, cancel)).Any(one => string.Equals(one.Subscription.Id, row.Subscription, StringComparison.Ordinal)))
                {
                    throw new RefusedException(Refusal.WrongState, "Its subscription has ended. Set it up anew for what comes from now on.");
                }

                (row.State, row.Failures, row.DueAt, row.DoneAt) = (NoticeState.Waiting, 0, database.Now, null);
                return true;
            },
            cancel);
    }

    /// <summary>Forgets what was done 30 days ago: notices that were sent, dropped or given up, and subscriptions that have ended, by themselves or with the key of their owner.</summary>
    public async Task ForgetAsync(CancellationToken cancel)
    {
        var before = database.Now - KeptFor;
        await using var context = database.Open();
        await context.Notices.Where(row => row.DoneAt != null && row.DoneAt < before).ExecuteDeleteAsync(cancel);
        await context.Subscriptions
            .Where(one => (one.EndedAt != null && one.EndedAt < before)
                || (one.Channel == Channel.Mail && context.Keys.Any(key => key.Id == one.Owner && ((key.RevokedAt != null && key.RevokedAt < before) || (key.ExpiresAt != null && key.ExpiresAt < before)))))
            .Where(one => !context.Notices.Any(row => row.Subscription == one.Id)).ExecuteDeleteAsync(cancel);
    }

    // Asked before the one write lock of SQLite is taken.
    private async Task<bool> AnyDueAsync(CancellationToken cancel)
    {
        var now = database.Now;
        await using var context = database.Open();
        return await context.Notices.AnyAsync(row => (row.State == NoticeState.Waiting || row.State == NoticeState.Sending) && row.DueAt <= now, cancel);
    }

    private async Task<(NoticeClaim? Claim, bool Taken)> ClaimAsync(RegisterContext context, CancellationToken cancel)
    {
        var now = database.Now;
        if (await context.DueNoticeAsync(now, cancel) is not { } row)
        {
            return (null, false);
        }

        if (row.State == NoticeState.Sending)
        {
            // A lease that ran out is a failure without a word: whoever held it is dead or too slow.
            row.Failures++;
        }

        var live = await Outbox.LiveAsync(context, now, cancel);
        if (live.FirstOrDefault(one => string.Equals(one.Subscription.Id, row.Subscription, StringComparison.Ordinal)).Subscription is not { } to)
        {
            (row.State, row.DoneAt) = (NoticeState.Dropped, now);
            return (null, true);
        }

        if (row.Failures >= Attempts)
        {
            (row.State, row.DoneAt, row.Reason) = (NoticeState.Failed, now, Silent);
            return (null, true);
        }

        row.Attempt++;
        (row.State, row.DueAt) = (NoticeState.Sending, now + Lease);
        return (new NoticeClaim(row.Id, row.Attempt, row.Event, row.At, Subscriptions.ToSubscription(to), to.Secret, Outbox.Read(row.Facts)), true);
    }

    private void Fail(NoticeRow row, string reason, bool forGood)
    {
        row.Failures++;
        row.Reason = reason;
        (row.State, row.DueAt, row.DoneAt) = forGood || row.Failures >= Attempts
            ? (NoticeState.Failed, row.DueAt, database.Now)
            : (NoticeState.Waiting, database.Now + Pauses[row.Failures - 1], (DateTimeOffset?)null);
    }

    private async Task<bool> IfHeldAsync(NoticeClaim claim, Action<NoticeRow> change, CancellationToken cancel)
    {
        try
        {
            return await database.InTransactionAsync(
                async context =>
                {
                    if (await context.Notices.FirstOrDefaultAsync(row => row.Id == claim.Id, cancel) is not { State: NoticeState.Sending } row || row.Attempt != claim.Attempt)
                    {
                        return false;
                    }

                    change(row);
                    return true;
                },
                Moment.NoticeBeforeCommit,
                null,
                cancel);
        }
        catch (DbUpdateConcurrencyException)
        {
            // Taken by another sender between the two.
            return false;
        }
    }
}
