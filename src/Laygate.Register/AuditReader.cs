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

/// <summary>A plan, file, record, report or document as it stands, with its digests.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Bytes">Its bytes, unpacked.</param>
/// <param name="Salt">The salt of the digest of what stands.</param>
/// <param name="Digest">The digest of what stands, see <see cref="SaltedText.Digest(string, byte[])"/>.</param>
/// <param name="First">The digest of what was kept first; the same where nothing was replaced.</param>
public sealed record AuditContent(string Name, byte[] Bytes, string Salt, string Digest, string First);

/// <summary>That names in a content were replaced.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Submission">Id of the submission.</param>
/// <param name="Before">The digest of what stood there.</param>
/// <param name="Digest">The digest of what stands there since.</param>
public sealed record AuditReplacement(string Name, string Submission, string Before, string Digest);

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

    /// <summary>What was kept with an entry: what was handed in with its receipt, a record, or what a screening made.</summary>
    /// <param name="one">The entry.</param>
    /// <param name="record">Number of the record, where the entry tells of one.</param>
    /// <param name="cancel">Ends it.</param>
    public async Task<IReadOnlyList<AuditContent>> ContentsAsync(AuditEvent one, int record, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(one);
        await using var context = database.Open();
        var row = await context.Submissions.AsNoTracking().FirstAsync(submission => submission.Number == one.Place, cancel);
        List<IContentRow> rows = one.Said.Event switch
        {
            RegisterEvent.Received =>
            [
                .. await context.Texts.AsNoTracking().Where(kept => kept.Number == one.Place).ToListAsync(cancel),
                .. await context.Files.AsNoTracking().Where(kept => kept.Number == one.Place).OrderBy(kept => kept.Place).ToListAsync(cancel),
                .. await context.Archives.AsNoTracking().Where(kept => kept.Number == one.Place).ToListAsync(cancel),
            ],
            RegisterEvent.Recorded => [.. await context.RecordFiles.AsNoTracking().Where(kept => kept.Number == one.Place && kept.Upload == record).OrderBy(kept => kept.Place).ToListAsync(cancel)],
            RegisterEvent.Screened or RegisterEvent.FailedToRead when one.Said.Screening is { } screening =>
            [
                .. await context.Reports.AsNoTracking().Where(kept => kept.Number == one.Place && kept.Screening == screening).ToListAsync(cancel),
                .. await context.Pictures.AsNoTracking().Where(kept => kept.Number == one.Place && kept.Screening == screening).ToListAsync(cancel),
                .. await context.Documents.AsNoTracking().Where(kept => kept.Number == one.Place && kept.Screening == screening).OrderBy(kept => kept.Name).ToListAsync(cancel),
            ],
            _ => [],
        };
        var contents = new List<AuditContent>();
        foreach (var (kept, content) in ContentRows.Of(row, rows))
        {
            contents.Add(new AuditContent(content.Name, content.Bytes, kept.Salt!, kept.Digest!, await FirstAsync(context, one.Place, content, cancel) ?? kept.Digest!));
        }

        return contents;
    }

    /// <summary>The digest of what a screening reported first; null where there is no such report.</summary>
    /// <param name="one">An entry about the report.</param>
    /// <param name="cancel">Ends it.</param>
    public async Task<string?> ReportAsync(AuditEvent one, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(one);
        if (one.Said.ReportHash is null || one.Said.Screening is not { } screening)
        {
            return null;
        }

        await using var context = database.Open();
        return await FirstAsync(context, one.Place, new KeptContent(ContentKind.Report, screening, 0, "report.json", []), cancel)
            ?? await context.Reports.AsNoTracking().Where(kept => kept.Number == one.Place && kept.Screening == screening).Select(kept => kept.Digest).FirstOrDefaultAsync(cancel);
    }

    /// <summary>The contents whose names were replaced, as an entry says.</summary>
    /// <param name="one">The entry.</param>
    /// <param name="cancel">Ends it.</param>
    public async Task<IReadOnlyList<AuditReplacement>> ReplacementsAsync(AuditEvent one, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(one);
        if (one.Said.Event != RegisterEvent.NamesReplaced)
        {
            return [];
        }

        await using var context = database.Open();
        return await context.Replacements.AsNoTracking().Where(row => row.Entry == one.Number).OrderBy(row => row.Line)
            .Join(context.Submissions, row => row.Number, submission => submission.Number, (row, submission) => new { Row = row, submission.Id }).OrderBy(pair => pair.Row.Line)
            .Select(pair => new AuditReplacement(pair.Row.Name, pair.Id, pair.Row.Before, pair.Row.After)).ToListAsync(cancel);
    }

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

    private static Task<string?> FirstAsync(RegisterContext context, long number, KeptContent content, CancellationToken cancel) => context.Replacements.AsNoTracking()
        .Where(row => row.Number == number && row.Kind == content.Kind && row.Of == content.Of && row.Place == content.Place && (content.Kind != ContentKind.Document || row.Name == content.Name))
        .OrderBy(row => row.Entry).Select(row => row.Before).FirstOrDefaultAsync(cancel);

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
