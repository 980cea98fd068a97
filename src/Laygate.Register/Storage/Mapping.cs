using System.Security.Cryptography;
using System.Text;

namespace Laygate.Register.Storage;

/// <summary>Rows to records and back.</summary>
internal static class Mapping
{
    public static string Hash(byte[] bytes) => Convert.ToHexStringLower(SHA256.HashData(bytes));

    /// <summary>The hash of what is handed in: of its text, or of the list of all its files as <c>sha256sum</c> writes it, in the order of the bytes of their names.</summary>
    public static string Hash(NewSubmission submission) => submission.Files.Count == 0 && submission.Archive is null
        ? Hash(submission.Text)
        : Hash(Encoding.UTF8.GetBytes(string.Concat(submission.Files.Append(new HandedFile(submission.FileName, submission.Text))
            .OrderBy(file => Convert.ToHexString(Encoding.UTF8.GetBytes(file.Name)), StringComparer.Ordinal)
            .Select(file => $"{Hash(file.Bytes)}  {file.Name}\n"))));

    public static Submission ToSubmission(SubmissionRow row, ReportSummary? report) => new(
        row.Id,
        row.Number,
        row.Series,
        row.Revision,
        row.RevisionOf,
        row.FileName,
        row.TextHash,
        row.Submitter,
        row.SubmitterName,
        row.State,
        row.Version,
        row.ReceivedAt,
        row.ChangedAt,
        row.PlanId is { } plan ? new PlanName(plan, row.PlanTitle, row.PlanRevision) : null,
        report,
        row.IsLatest)
    {
        Files = row.Files,
        Archive = row.ArchiveName,
        Queue = row.Stage is null && row.Worst is null ? null : new QueueFacts(row.Stage, row.ShiftDate, row.Contract, row.Worst, row.WorstRank),
        Assignee = row.Assignee is { } assignee ? new Assignee(assignee, row.AssigneeName ?? assignee) : null,
    };

    public static HistoryEntry ToEntry(HistoryRow row) => new(row.At, row.Event, row.By, row.ByName, row.Comment, row.ReportHash, row.Screening, row.OnOwn) { OpenComments = row.OpenComments };

    public static string SearchText(SubmissionRow row) =>
        string.Join('\n', row.FileName, row.ArchiveName, row.SubmitterName, row.PlanId, row.PlanTitle, row.PlanRevision, row.Contract, row.Id).ToLowerInvariant();

    public static ReportRow ToReport(Claim claim, ScreeningResult result, DateTimeOffset at) => new()
    {
        Number = claim.Number,
        Screening = claim.Screening,
        Attempt = claim.Attempt,
        Json = result.Json,
        Hash = Hash(result.Json),
        BookHash = result.BookHash,
        ProgramVersion = result.ProgramVersion,
        At = at,
        Readable = result.Readable,
        Failed = result.Counts.Failed,
        Warned = result.Counts.Warned,
        NotAssessed = result.Counts.NotAssessed,
        NeedsPerson = result.Counts.NeedsPerson,
        Passed = result.Counts.Passed,
        Departed = result.Counts.Departed,
        FailedA = result.Failing?.A,
        FailedB = result.Failing?.B,
        FailedC = result.Failing?.C,
    };

    /// <summary>Writes an entry of the history and moves the submission on.</summary>
    /// <returns>The entry, so that a caller can say otherwise what notices tell of it.</returns>
    public static HistoryRow Note(RegisterContext context, SubmissionRow row, RegisterEvent what, Caller who, DateTimeOffset at, string? comment = null, string? reportHash = null, int? screening = null, bool onOwn = false, string? openComments = null)
    {
        row.Version++;
        row.ChangedAt = at;
        var entry = new HistoryRow
        {
            Number = row.Number,
            At = at,
            Event = what,
            By = who.Id,
            ByName = who.Name,
            Comment = comment,
            ReportHash = reportHash,
            Screening = screening,
            OnOwn = onOwn,
            OpenComments = openComments,
            Tell = Outbox.Told(what),
        };
        context.History.Add(entry);
        return entry;
    }
}
