using System.Security.Cryptography;

namespace Laygate.Register.Storage;

/// <summary>Rows to records and back.</summary>
internal static class Mapping
{
    public static string Hash(byte[] bytes) => Convert.ToHexStringLower(SHA256.HashData(bytes));

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
        row.IsLatest);

    public static HistoryEntry ToEntry(HistoryRow row) => new(row.At, row.Event, row.By, row.ByName, row.Comment, row.ReportHash, row.Screening, row.OnOwn);

    public static string SearchText(SubmissionRow row) =>
        string.Join('\n', row.FileName, row.SubmitterName, row.PlanId, row.PlanTitle, row.PlanRevision, row.Id).ToLowerInvariant();

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
    };

    /// <summary>Writes an entry of the history and moves the submission on.</summary>
    public static void Note(RegisterContext context, SubmissionRow row, RegisterEvent what, Caller who, DateTimeOffset at, string? comment = null, string? reportHash = null, int? screening = null, bool onOwn = false)
    {
        row.Version++;
        row.ChangedAt = at;
        context.History.Add(new HistoryRow
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
        });
    }
}
