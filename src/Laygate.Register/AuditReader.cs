using System.Runtime.CompilerServices;
using Laygate.Register.Storage;
using Microsoft.EntityFrameworkCore;

namespace Laygate.Register;

/// <summary>Number of the last entry of each book of the register at one moment; 0 where a book is empty.</summary>
/// <param name="History">Of the histories of all submissions.</param>
/// <param name="Comments">Of the comments on findings.</param>
/// <param name="Keys">Of the history of keys.</param>
public sealed record AuditEnd(long History, long Comments, long Keys);

/// <summary>An entry of a history with the submission that it is about.</summary>
/// <param name="Number">Its number in its book; numbers rise, and some may be missing where a transaction was undone.</param>
/// <param name="Submission">Id of the submission.</param>
/// <param name="Place">Number of the submission in the order of receipt.</param>
/// <param name="Series">Id of the first revision.</param>
/// <param name="Revision">Number of the revision.</param>
/// <param name="Said">What happened.</param>
public sealed record AuditEvent(long Number, string Submission, long Place, string Series, int Revision, HistoryEntry Said);

/// <summary>A comment with the submission on which it was written.</summary>
/// <param name="Number">Its number in its book.</param>
/// <param name="Submission">Id of the submission.</param>
/// <param name="Said">What was written.</param>
public sealed record AuditComment(long Number, string Submission, FindingComment Said);

/// <summary>What was done to a key.</summary>
/// <param name="Number">Its number in its book.</param>
/// <param name="Key">Id of the key.</param>
/// <param name="Name">Name of its owner.</param>
/// <param name="Role">What it may do.</param>
/// <param name="Event"><c>issued</c> or <c>revoked</c>.</param>
/// <param name="Said">When and by whom.</param>
public sealed record AuditKey(long Number, string Key, string Name, Role Role, string Event, KeyAct Said);

/// <summary>
/// Reads the books of the register from their first entry: histories, comments, keys. The database lets nobody change or remove an entry, so a later reading begins
/// with all that an earlier one held.
/// </summary>
public sealed class AuditReader(RegisterDatabase database)
{
    private const int PageSize = 500;

    /// <summary>Where the books end now. No entry that comes later gets a smaller number: whoever writes at this moment is waited for.</summary>
    public Task<AuditEnd> EndAsync(CancellationToken cancel) => database.InTransactionAsync(
        async context =>
        {
            await context.HoldBooksAsync(cancel);
            return new AuditEnd(
                await context.History.MaxAsync(row => (long?)row.Entry, cancel) ?? 0,
                await context.Comments.MaxAsync(row => (long?)row.Entry, cancel) ?? 0,
                await context.KeyHistory.MaxAsync(row => (long?)row.Entry, cancel) ?? 0);
        },
        cancel);

    /// <summary>The histories of all submissions, in the order in which they were written.</summary>
    /// <param name="end">Where to end.</param>
    /// <param name="cancel">Ends it.</param>
    public IAsyncEnumerable<AuditEvent> HistoryAsync(AuditEnd end, CancellationToken cancel) => PagesAsync(
        (context, after) => context.History.AsNoTracking().Where(row => row.Entry > after && row.Entry <= end.History).OrderBy(row => row.Entry).Take(PageSize)
            .Join(context.Submissions, row => row.Number, one => one.Number, (row, one) => new { Row = row, One = one }).OrderBy(pair => pair.Row.Entry),
        pair => new AuditEvent(pair.Row.Entry, pair.One.Id, pair.One.Number, pair.One.Series, pair.One.Revision, Mapping.ToEntry(pair.Row)),
        one => one.Number,
        cancel);

    /// <summary>The comments on findings, in the order in which they were written.</summary>
    /// <param name="end">Where to end.</param>
    /// <param name="cancel">Ends it.</param>
    public IAsyncEnumerable<AuditComment> CommentsAsync(AuditEnd end, CancellationToken cancel) => PagesAsync(
        (context, after) => context.Comments.AsNoTracking().Where(row => row.Entry > after && row.Entry <= end.Comments).OrderBy(row => row.Entry).Take(PageSize)
            .Join(context.Submissions, row => row.Number, one => one.Number, (row, one) => new { Row = row, One = one }).OrderBy(pair => pair.Row.Entry),
        pair => new AuditComment(pair.Row.Entry, pair.One.Id, Comments.ToComment(pair.Row, pair.One.Revision)),
        one => one.Number,
        cancel);

    /// <summary>What was done to keys, in the order in which it was done.</summary>
    /// <param name="end">Where to end.</param>
    /// <param name="cancel">Ends it.</param>
    public IAsyncEnumerable<AuditKey> KeysAsync(AuditEnd end, CancellationToken cancel) => PagesAsync(
        (context, after) => context.KeyHistory.AsNoTracking().Where(row => row.Entry > after && row.Entry <= end.Keys).OrderBy(row => row.Entry).Take(PageSize)
            .Join(context.Keys, row => row.KeyId, key => key.Id, (row, key) => new { Row = row, Key = key }).OrderBy(pair => pair.Row.Entry),
        pair => new AuditKey(pair.Row.Entry, pair.Key.Id, pair.Key.Name, pair.Key.Role, pair.Row.Event.ToString().ToLowerInvariant(), new KeyAct(pair.Row.At, pair.Row.By, pair.Row.ByName)),
        one => one.Number,
        cancel);

    // Page by page, so that neither the memory nor a transaction grows with the register.
    private async IAsyncEnumerable<T> PagesAsync<TRow, T>(Func<RegisterContext, long, IQueryable<TRow>> query, Func<TRow, T> map, Func<T, long> number, [EnumeratorCancellation] CancellationToken cancel)
    {
        for (var after = 0L; ;)
        {
            List<T> page;
            await using (var context = database.Open())
            {
                page = [.. (await query(context, after).ToListAsync(cancel)).Select(map)];
            }

            foreach (var one in page)
            {
                yield return one;
            }

            if (page.Count < PageSize)
            {
                yield break;
            }

            after = number(page[^1]);
        }
    }
}
