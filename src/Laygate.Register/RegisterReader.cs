using System.Buffers.Binary;
using System.Buffers.Text;
using System.Runtime.CompilerServices;
using Laygate.Register.Storage;
using Microsoft.EntityFrameworkCore;

namespace Laygate.Register;

/// <summary>Reads the register. A submitter sees its own submissions only; what it may not see is not there.</summary>
public sealed class RegisterReader(RegisterDatabase database)
{
    // States that wait for a decision.
    private static readonly SubmissionState[] Open = [SubmissionState.Screened, SubmissionState.FailedToRead, SubmissionState.NotScreened];

    /// <summary>Most entries on one page.</summary>
    public const int LargestPage = 200;

    /// <summary>Finds a submission; null when there is none that the caller may see.</summary>
    public async Task<Submission?> FindAsync(string id, Caller caller, CancellationToken cancel)
    {
        CallerText.Id(id);
        await using var context = database.Open();
        var row = await Visible(context, caller).FirstOrDefaultAsync(one => one.Id == id, cancel);
        return row is null ? null : (await WithReportsAsync(context, [row], cancel))[0];
    }

    /// <summary>A submission with its latest report and its history as they belong together; null when there is none that the caller may see.</summary>
    /// <remarks>A screening or a decision may end while they are read: they are read again until none has.</remarks>
    public async Task<SubmissionWithReport?> WithReportAsync(string id, Caller caller, CancellationToken cancel)
    {
        var before = await FindAsync(id, caller, cancel);
        while (before is not null)
        {
            var (report, history) = (await ReportAsync(id, null, caller, cancel), await HistoryAsync(id, caller, cancel));
            var now = await FindAsync(id, caller, cancel);
            if (now?.Version == before.Version)
            {
                return new SubmissionWithReport(now, report, history);
            }

            before = now;
        }

        return null;
    }

    /// <summary>The text exactly as sent; null when there is none that the caller may see.</summary>
    public async Task<byte[]?> TextAsync(string id, Caller caller, CancellationToken cancel)
    {
        CallerText.Id(id);
        await using var context = database.Open();
        return await Visible(context, caller).Where(row => row.Id == id)
            .Join(context.Texts, row => row.Number, text => text.Number, (_, text) => text.Text).FirstOrDefaultAsync(cancel);
    }

    /// <summary>The files that came with a plan, in their order, exactly as sent; empty when there are none that the caller may see.</summary>
    public async Task<IReadOnlyList<HandedFile>> FilesAsync(string id, Caller caller, CancellationToken cancel)
    {
        CallerText.Id(id);
        await using var context = database.Open();
        return await Visible(context, caller).Where(row => row.Id == id)
            .Join(context.Files, row => row.Number, file => file.Number, (_, file) => file)
            .OrderBy(file => file.Place).Select(file => new HandedFile(file.Name, file.Bytes)).ToListAsync(cancel);
    }

    /// <summary>The archive in which a plan came, exactly as sent; null when there is none that the caller may see.</summary>
    public async Task<HandedFile?> ArchiveAsync(string id, Caller caller, CancellationToken cancel)
    {
        CallerText.Id(id);
        await using var context = database.Open();
        return await Visible(context, caller).Where(row => row.Id == id)
            .Join(context.Archives, row => row.Number, archive => archive.Number, (row, archive) => new HandedFile(row.ArchiveName!, archive.Bytes)).FirstOrDefaultAsync(cancel);
    }

    /// <summary>A report; null when there is none that the caller may see.</summary>
    /// <param name="id">Id of the submission.</param>
    /// <param name="screening">Number of the screening; null: the latest.</param>
    /// <param name="caller">Who asks.</param>
    /// <param name="cancel">Ends it.</param>
    public async Task<StoredReport?> ReportAsync(string id, int? screening, Caller caller, CancellationToken cancel)
    {
        CallerText.Id(id);
        await using var context = database.Open();
        var report = await Visible(context, caller).Where(row => row.Id == id)
            .Join(context.Reports, row => row.Number, one => one.Number, (row, one) => new { row.ReportScreening, Report = one })
            .Where(pair => pair.Report.Screening == (screening ?? pair.ReportScreening))
            .Select(pair => pair.Report).FirstOrDefaultAsync(cancel);
        database.Reach(Moment.ReportRead);
        return report is null ? null : new StoredReport(Summary(report), report.Json);
    }

    /// <summary>The pictures that were kept with a report; null when there are none that the caller may see.</summary>
    /// <param name="id">Id of the submission.</param>
    /// <param name="screening">Number of the screening.</param>
    /// <param name="caller">Who asks.</param>
    /// <param name="cancel">Ends it.</param>
    public async Task<byte[]?> PicturesAsync(string id, int screening, Caller caller, CancellationToken cancel)
    {
        CallerText.Id(id);
        await using var context = database.Open();
        return await Visible(context, caller).Where(row => row.Id == id)
            .Join(context.Pictures, row => row.Number, one => one.Number, (_, one) => one)
            .Where(one => one.Screening == screening).Select(one => one.Bytes).FirstOrDefaultAsync(cancel);
    }

    /// <summary>A document that was kept with a report; null when there is none that the caller may see.</summary>
    /// <param name="id">Id of the submission.</param>
    /// <param name="screening">Number of the screening; null: that of the latest report.</param>
    /// <param name="name">Name of the document.</param>
    /// <param name="caller">Who asks.</param>
    /// <param name="cancel">Ends it.</param>
    public async Task<KeptDocument?> DocumentAsync(string id, int? screening, string name, Caller caller, CancellationToken cancel)
    {
        CallerText.Id(id);
        await using var context = database.Open();
        var kept = await Visible(context, caller).Where(row => row.Id == id)
            .Join(context.Documents, row => row.Number, one => one.Number, (row, one) => new { row.ReportScreening, Document = one })
            .Where(pair => pair.Document.Screening == (screening ?? pair.ReportScreening) && pair.Document.Name == name)
            .Select(pair => new KeptDocument(pair.Document.Name, pair.Document.Type, pair.Document.Policy, pair.Document.Bytes)).FirstOrDefaultAsync(cancel);
        database.Reach(Moment.ReportRead);
        return kept;
    }

    /// <summary>All documents that were kept with a report, by name; none when there are none that the caller may see.</summary>
    /// <param name="id">Id of the submission.</param>
    /// <param name="screening">Number of the screening.</param>
    /// <param name="caller">Who asks.</param>
    /// <param name="cancel">Ends it.</param>
    public async Task<IReadOnlyList<KeptDocument>> DocumentsAsync(string id, int screening, Caller caller, CancellationToken cancel)
    {
        CallerText.Id(id);
        await using var context = database.Open();
        return await Visible(context, caller).Where(row => row.Id == id)
            .Join(context.Documents, row => row.Number, one => one.Number, (_, one) => one).Where(one => one.Screening == screening).OrderBy(one => one.Name)
            .Select(one => new KeptDocument(one.Name, one.Type, one.Policy, one.Bytes)).ToListAsync(cancel);
    }

    /// <summary>The last decision on a series up to one of its revisions; null when there is none that the caller may see.</summary>
    /// <param name="series">Id of the first revision.</param>
    /// <param name="revision">The last revision that counts.</param>
    /// <param name="caller">Who asks.</param>
    /// <param name="cancel">Ends it.</param>
    public async Task<LastDecision?> LastDecisionAsync(string series, int revision, Caller caller, CancellationToken cancel)
    {
        await using var context = database.Open();
        var found = await Visible(context, caller).Where(row => row.Series == series && row.Revision <= revision)
            .Join(context.History, row => row.Number, entry => entry.Number, (row, entry) => new { row.Revision, Entry = entry })
            .Where(one => Decisions.Made.Contains(one.Entry.Event))
            .OrderByDescending(one => one.Revision).ThenByDescending(one => one.Entry.Entry).FirstOrDefaultAsync(cancel);
        return found is null ? null : new LastDecision(found.Revision, Mapping.ToEntry(found.Entry));
    }

    /// <summary>The history of a submission, the oldest entry first; empty when the caller may not see it.</summary>
    public async Task<IReadOnlyList<HistoryEntry>> HistoryAsync(string id, Caller caller, CancellationToken cancel)
    {
        CallerText.Id(id);
        await using var context = database.Open();
        var rows = await Visible(context, caller).Where(row => row.Id == id)
            .Join(context.History, row => row.Number, entry => entry.Number, (_, entry) => entry)
            .OrderBy(entry => entry.Entry).ToListAsync(cancel);
        return [.. rows.Select(Mapping.ToEntry)];
    }

    /// <summary>All revisions of a series that the caller may see, the first one first.</summary>
    public async Task<IReadOnlyList<Submission>> RevisionsAsync(string series, Caller caller, CancellationToken cancel)
    {
        await using var context = database.Open();
        var rows = await Visible(context, caller).Where(row => row.Series == series).OrderBy(row => row.Revision).ToListAsync(cancel);
        return await WithReportsAsync(context, rows, cancel);
    }

    /// <summary>One page of the submissions that a filter lets through, the latest first.</summary>
    /// <param name="filter">Which.</param>
    /// <param name="cursor">Where the page before ended; null: from the start.</param>
    /// <param name="limit">Most entries, 1 to <see cref="LargestPage"/>.</param>
    /// <param name="caller">Who asks.</param>
    /// <param name="cancel">Ends it.</param>
    /// <exception cref="RefusedException">The cursor or the limit is none of ours.</exception>
    public async Task<SubmissionPage> ListAsync(SubmissionFilter filter, string? cursor, int limit, Caller caller, CancellationToken cancel)
    {
        if (limit is < 1 or > LargestPage)
        {
            throw new RefusedException(Refusal.BadRequest, $"A page has 1 to {LargestPage} entries.");
        }

        CallerText.Search(filter.Search ?? string.Empty);
        await using var context = database.Open();
        var before = Cursor.Read(cursor);
        var rows = await Filtered(Visible(context, caller), filter)
            .Where(row => row.Number < before).OrderByDescending(row => row.Number).Take(limit + 1).ToListAsync(cancel);
        var more = rows.Count > limit;
        var shown = more ? rows[..limit] : rows;
        return new SubmissionPage(await WithReportsAsync(context, shown, cancel), more ? Cursor.Write(shown[^1].Number) : null);
    }

    /// <summary>A part of the queue, in the order that is asked for.</summary>
    /// <param name="filter">Which.</param>
    /// <param name="order">By what it is sorted.</param>
    /// <param name="descending">Whether the other way round.</param>
    /// <param name="skip">How many come before the part, 0 or more.</param>
    /// <param name="limit">Most entries, 1 to <see cref="LargestPage"/>.</param>
    /// <param name="caller">Who asks.</param>
    /// <param name="cancel">Ends it.</param>
    /// <exception cref="RefusedException">The limit or what is searched for is none of ours.</exception>
    public async Task<QueuePage> QueueAsync(SubmissionFilter filter, QueueOrder order, bool descending, int skip, int limit, Caller caller, CancellationToken cancel)
    {
        if (limit is < 1 or > LargestPage || skip < 0)
        {
            throw new RefusedException(Refusal.BadRequest, $"A page has 1 to {LargestPage} entries.");
        }

        CallerText.Search(filter.Search ?? string.Empty);
        await using var context = database.Open();
        var rows = Filtered(Visible(context, caller), filter);
        var shown = await QueueOrders.Sorted(rows, order, descending).Skip(skip).Take(limit).ToListAsync(cancel);
        return new QueuePage(await WithReportsAsync(context, shown, cancel), await rows.CountAsync(cancel));
    }

    /// <summary>What a reviewer looks at behind a submission in the order of the queue: the next that nobody else has taken and that is not the caller's own; null when none is left.</summary>
    /// <param name="id">Id of the submission.</param>
    /// <param name="filter">Which submissions the queue holds.</param>
    /// <param name="order">By what it is sorted.</param>
    /// <param name="descending">Whether the other way round.</param>
    /// <param name="caller">Who asks.</param>
    /// <param name="cancel">Ends it.</param>
    public async Task<string?> NextAsync(string id, SubmissionFilter filter, QueueOrder order, bool descending, Caller caller, CancellationToken cancel)
    {
        CallerText.Id(id);
        CallerText.Search(filter.Search ?? string.Empty);
        await using var context = database.Open();
        var rows = Filtered(Visible(context, caller), filter)
            .Where(row => row.Id == id || ((row.Assignee == null || row.Assignee == caller.Id) && (database.Settings.OwnDecisions || row.Submitter != caller.Id)));
        var ids = await QueueOrders.Sorted(rows, order, descending).Select(row => row.Id).ToListAsync(cancel);
        var at = ids.IndexOf(id);

        // After the last one, what was passed over.
        return ids.Skip(at + 1).Concat(ids.Take(Math.Max(at, 0))).FirstOrDefault();
    }

    /// <summary>All submissions that a filter lets through, the latest first, read page by page.</summary>
    public async IAsyncEnumerable<Submission> ExportAsync(SubmissionFilter filter, Caller caller, [EnumeratorCancellation] CancellationToken cancel)
    {
        string? cursor = null;
        do
        {
            var page = await ListAsync(filter, cursor, LargestPage, caller, cancel);
            foreach (var submission in page.Items)
            {
                yield return submission;
            }

            cursor = page.Next;
        }
        while (cursor is not null);
    }

    internal static ReportSummary Summary(ReportRow row) => new(
        row.Screening,
        row.Hash,
        row.BookHash,
        row.ProgramVersion,
        row.At,
        new ReportCounts(row.Failed, row.Warned, row.NotAssessed, row.NeedsPerson, row.Passed, row.Departed));

    private static IQueryable<SubmissionRow> Visible(RegisterContext context, Caller caller)
    {
        var rows = context.Submissions.AsNoTracking();
        return caller.SeesAll ? rows : rows.Where(row => row.Submitter == caller.Id);
    }

    private static IQueryable<SubmissionRow> Filtered(IQueryable<SubmissionRow> rows, SubmissionFilter filter)
    {
        if (filter.State is { } state)
        {
            rows = rows.Where(row => row.State == state);
        }

        // Both sides in lower case: the two databases do not agree on letter case.
        if (filter.Search?.Trim().ToLowerInvariant() is { Length: > 0 } part)
        {
            rows = rows.Where(row => row.SearchText.Contains(part));
        }

        if (filter.From is { } from)
        {
            rows = rows.Where(row => row.ReceivedAt >= from);
        }

        if (filter.Until is { } until)
        {
            rows = rows.Where(row => row.ReceivedAt < until);
        }

        if (filter.OpenOnly)
        {
            rows = rows.Where(row => row.IsLatest && Open.Contains(row.State));
        }

        if (filter.Assignee is { } assignee)
        {
            rows = assignee.Length == 0 ? rows.Where(row => row.Assignee == null) : rows.Where(row => row.Assignee == assignee);
        }

        return filter.LatestOnly ? rows.Where(row => row.IsLatest) : rows;
    }

    private static async Task<IReadOnlyList<Submission>> WithReportsAsync(RegisterContext context, IReadOnlyList<SubmissionRow> rows, CancellationToken cancel)
    {
        var numbers = rows.Where(row => row.ReportScreening is not null).Select(row => row.Number).ToList();
        var reports = await context.Reports.Where(report => numbers.Contains(report.Number))
            .Select(report => new
            {
                report.Number,
                Summary = new ReportSummary(
                    report.Screening,
                    report.Hash,
                    report.BookHash,
                    report.ProgramVersion,
                    report.At,
                    new ReportCounts(report.Failed, report.Warned, report.NotAssessed, report.NeedsPerson, report.Passed, report.Departed)),
            }).ToListAsync(cancel);
        return
        [
            .. rows.Select(row => Mapping.ToSubmission(
                row, reports.FirstOrDefault(report => report.Number == row.Number && report.Summary.Screening == row.ReportScreening)?.Summary)),
        ];
    }

    private static class Cursor
    {
        public static string Write(long number)
        {
            var bytes = new byte[sizeof(long)];
            BinaryPrimitives.WriteInt64BigEndian(bytes, number);
            return Base64Url.EncodeToString(bytes);
        }

        public static long Read(string? cursor)
        {
            if (cursor is null)
            {
                return long.MaxValue;
            }

            var bytes = new byte[sizeof(long)];
            return Base64Url.IsValid(cursor, out var length) && length == bytes.Length && Base64Url.TryDecodeFromChars(cursor, bytes, out _)
                ? BinaryPrimitives.ReadInt64BigEndian(bytes)
                : throw new RefusedException(Refusal.BadRequest, "The cursor is not known here. Take it from the answer before, or leave it out.");
        }
    }
}
