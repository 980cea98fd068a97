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
/// <param name="Name">The name of who did it.</param>
/// <param name="Comment">What a person said; null when nothing was said, or by the program.</param>
public sealed record AuditEvent(long Number, string Submission, long Place, string Series, int Revision, HistoryEntry Said, SealedText Name, SealedText? Comment);

/// <summary>A comment with the submission on which it was written.</summary>
/// <param name="Number">Its number in its book.</param>
/// <param name="Submission">Id of the submission.</param>
/// <param name="Said">What was written.</param>
/// <param name="Name">The name of who wrote it.</param>
/// <param name="Text">What was written.</param>
public sealed record AuditComment(long Number, string Submission, FindingComment Said, SealedText Name, SealedText Text);

/// <summary>What was done to a key.</summary>
/// <param name="Number">Its number in its book.</param>
/// <param name="Key">Id of the key.</param>
/// <param name="Name">Name of its owner.</param>
/// <param name="Role">What it may do.</param>
/// <param name="Event"><c>issued</c>, <c>revoked</c> or <c>namereplaced</c>.</param>
/// <param name="Said">When and by whom.</param>
/// <param name="ByName">The name of who did it.</param>
public sealed record AuditKey(long Number, string Key, SealedText Name, Role Role, string Event, KeyAct Said, SealedText ByName);

/// <summary>A name or a text with its digest, which books are chained over.</summary>
/// <param name="Value">The text, or the word that has replaced it.</param>
/// <param name="Salt">Its salt; null once it was replaced.</param>
/// <param name="Digest">Its digest, see <see cref="SaltedText"/>.</param>
public sealed record SealedText(string Value, string? Salt, string Digest);

/// <summary>
/// Reads the books of the register from their first entry: histories, comments, keys. The database lets nobody change or remove an entry, but for a name or a text that was replaced
/// together with its salt: its digest stays. So the digests of a later reading begin with all that an earlier one held.
/// </summary>
public sealed class AuditReader(RegisterDatabase database)
{
    private const int PageSize = 500;

    /// <summary>Where the books end now. No entry that comes later gets a smaller number: whoever writes at this moment is waited for.</summary>
    public async Task<AuditEnd> EndAsync(CancellationToken cancel)
    {
        var end = await database.InTransactionAsync(
            async context =>
            {
                await context.HoldBooksAsync(cancel);
                return new AuditEnd(
                    await context.History.MaxAsync(row => (long?)row.Entry, cancel) ?? 0,
                    await context.Comments.MaxAsync(row => (long?)row.Entry, cancel) ?? 0,
                    await context.KeyHistory.MaxAsync(row => (long?)row.Entry, cancel) ?? 0);
            },
            cancel);

        // Replicas of an earlier version may still write beside this one.
        await Seals.AllAsync(database, cancel);
        return end;
    }

    /// <summary>The histories of all submissions, in the order in which they were written.</summary>
    /// <param name="end">Where to end.</param>
    /// <param name="cancel">Ends it.</param>
    public IAsyncEnumerable<AuditEvent> HistoryAsync(AuditEnd end, CancellationToken cancel) => PagesAsync(
        (context, after) => context.History.AsNoTracking().Where(row => row.Entry > after && row.Entry <= end.History).OrderBy(row => row.Entry).Take(PageSize)
            .Join(context.Submissions, row => row.Number, one => one.Number, (row, one) => new { Row = row, One = one }).OrderBy(pair => pair.Row.Entry),
        pair => new AuditEvent(pair.Row.Entry, pair.One.Id, pair.One.Number, pair.One.Series, pair.One.Revision, Mapping.ToEntry(pair.Row), new SealedText(pair.Row.ByName, pair.Row.NameSalt, pair.Row.NameDigest!), pair.Row.CommentDigest is { } said ? new SealedText(pair.Row.Comment!, pair.Row.CommentSalt, said) : null),
        one => one.Number,
        cancel);

    /// <summary>The comments on findings, in the order in which they were written.</summary>
    /// <param name="end">Where to end.</param>
    /// <param name="cancel">Ends it.</param>
    public IAsyncEnumerable<AuditComment> CommentsAsync(AuditEnd end, CancellationToken cancel) => PagesAsync(
        (context, after) => context.Comments.AsNoTracking().Where(row => row.Entry > after && row.Entry <= end.Comments).OrderBy(row => row.Entry).Take(PageSize)
            .Join(context.Submissions, row => row.Number, one => one.Number, (row, one) => new { Row = row, One = one }).OrderBy(pair => pair.Row.Entry),
        pair => new AuditComment(pair.Row.Entry, pair.One.Id, Comments.ToComment(pair.Row, pair.One.Revision), new SealedText(pair.Row.ByName, pair.Row.NameSalt, pair.Row.NameDigest!), new SealedText(pair.Row.Text, pair.Row.TextSalt, pair.Row.TextDigest!)),
        one => one.Number,
        cancel);

    /// <summary>What was done to keys, in the order in which it was done.</summary>
    /// <param name="end">Where to end.</param>
    /// <param name="cancel">Ends it.</param>
    public IAsyncEnumerable<AuditKey> KeysAsync(AuditEnd end, CancellationToken cancel) => PagesAsync(
        (context, after) => context.KeyHistory.AsNoTracking().Where(row => row.Entry > after && row.Entry <= end.Keys).OrderBy(row => row.Entry).Take(PageSize)
            .Join(context.Keys, row => row.KeyId, key => key.Id, (row, key) => new { Row = row, Key = key }).OrderBy(pair => pair.Row.Entry),
        pair => new AuditKey(pair.Row.Entry, pair.Key.Id, new SealedText(pair.Key.Name, pair.Key.NameSalt, pair.Key.NameDigest!), pair.Key.Role, pair.Row.Event.ToString().ToLowerInvariant(), new KeyAct(pair.Row.At, pair.Row.By, pair.Row.ByName), new SealedText(pair.Row.ByName, pair.Row.NameSalt, pair.Row.NameDigest!)),
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
