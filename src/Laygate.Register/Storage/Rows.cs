using System.ComponentModel.DataAnnotations.Schema;

namespace Laygate.Register.Storage;

internal sealed class SubmissionRow
{
    public long Number { get; set; }

    public required string Id { get; set; }

    public required string Series { get; set; }

    public int Revision { get; set; }

    public bool IsLatest { get; set; }

    public string? RevisionOf { get; set; }

    public required string FileName { get; set; }

    public required string TextHash { get; set; }

    public required string Submitter { get; set; }

    public required string SubmitterName { get; set; }

    public SubmissionState State { get; set; }

    public long Version { get; set; }

    public DateTimeOffset ReceivedAt { get; set; }

    public DateTimeOffset ChangedAt { get; set; }

    public string? PlanId { get; set; }

    public string? PlanTitle { get; set; }

    public string? PlanRevision { get; set; }

    public int? ReportScreening { get; set; }

    public required string SearchText { get; set; }

    public int Files { get; set; }

    public string? ArchiveName { get; set; }

    public string? Stage { get; set; }

    public DateOnly? ShiftDate { get; set; }

    public string? Contract { get; set; }

    public string? Worst { get; set; }

    public int? WorstRank { get; set; }

    public string? Assignee { get; set; }

    public string? AssigneeName { get; set; }

    // When its contents were last searched for names; null: not since something was added.
    public DateTimeOffset? SoughtAt { get; set; }
}

// What is kept byte for byte: the digest is salted, so that it tells nobody what stood there once salt and content are gone.
internal interface IContentRow
{
    long Number { get; }

    string? Salt { get; set; }

    string? Digest { get; set; }
}

// The text lies apart, so that lists do not carry it and a change of state does not write it again.
internal sealed class TextRow : IContentRow
{
    public long Number { get; set; }

    public required byte[] Text { get; set; }

    public string? Salt { get; set; }

    public string? Digest { get; set; }
}

// A file that came with the plan, by its place in the set.
internal sealed class FileRow : IContentRow
{
    public long Number { get; set; }

    public int Place { get; set; }

    public required string Name { get; set; }

    public required byte[] Bytes { get; set; }

    public string? Salt { get; set; }

    public string? Digest { get; set; }
}

internal sealed class ArchiveRow : IContentRow
{
    public long Number { get; set; }

    public required byte[] Bytes { get; set; }

    public string? Salt { get; set; }

    public string? Digest { get; set; }
}

internal sealed class ReportRow : IContentRow
{
    public long Number { get; set; }

    public int Screening { get; set; }

    public long Attempt { get; set; }

    public required byte[] Json { get; set; }

    public string? Salt { get; set; }

    public string? Digest { get; set; }

    public required string Hash { get; set; }

    public required string BookHash { get; set; }

    public required string ProgramVersion { get; set; }

    public DateTimeOffset At { get; set; }

    public bool Readable { get; set; }

    public int Failed { get; set; }

    public int Warned { get; set; }

    public int NotAssessed { get; set; }

    public int NeedsPerson { get; set; }

    public int Passed { get; set; }

    public int Departed { get; set; }

    // Of what fails, by severity; null in reports of an earlier version.
    public int? FailedA { get; set; }

    public int? FailedB { get; set; }

    public int? FailedC { get; set; }
}

// What was said on a finding; a thread is what has one series, plan, rule and address.
internal sealed class CommentRow
{
    public long Entry { get; set; }

    public long Number { get; set; }

    public required string Series { get; set; }

    public required string Plan { get; set; }

    public required string Rule { get; set; }

    public required string Address { get; set; }

    public DateTimeOffset At { get; set; }

    public required string By { get; set; }

    public required string ByName { get; set; }

    public required string Text { get; set; }

    public bool LeavesOpen { get; set; }

    public string? NameSalt { get; set; }

    public string? NameDigest { get; set; }

    public string? TextSalt { get; set; }

    public string? TextDigest { get; set; }
}

// A file of the record of a shift, exactly as it came.
internal sealed class RecordFileRow : IContentRow
{
    public long Number { get; set; }

    public int Upload { get; set; }

    public int Place { get; set; }

    public required string Name { get; set; }

    public required byte[] Bytes { get; set; }

    public string? Salt { get; set; }

    public string? Digest { get; set; }

    public DateTimeOffset At { get; set; }

    public required string By { get; set; }

    public required string ByName { get; set; }
}

// The pictures of a report, kept because later rules or programs may draw others.
internal sealed class PictureRow : IContentRow
{
    public long Number { get; set; }

    public int Screening { get; set; }

    public required byte[] Bytes { get; set; }

    public string? Salt { get; set; }

    public string? Digest { get; set; }
}

// A document as it was made at a screening: later programs word and draw otherwise.
internal sealed class DocumentRow : IContentRow
{
    public long Number { get; set; }

    public int Screening { get; set; }

    public required string Name { get; set; }

    public required string Type { get; set; }

    public string? Policy { get; set; }

    public required byte[] Bytes { get; set; }

    public string? Salt { get; set; }

    public string? Digest { get; set; }
}

internal enum JobState
{
    Queued,
    Leased,
    Done,
    GivenUp,
}

internal sealed class JobRow
{
    public long Number { get; set; }

    public int Screening { get; set; }

    public JobState State { get; set; }

    // Rises with each claim and never falls: whoever holds an older number may write nothing.
    public long Attempt { get; set; }

    public int Failures { get; set; }

    // When it may be claimed: after a pause while queued, after the end of the lease while leased.
    public DateTimeOffset DueAt { get; set; }

    public string? Worker { get; set; }
}

internal sealed class HistoryRow
{
    public long Entry { get; set; }

    public long Number { get; set; }

    public DateTimeOffset At { get; set; }

    public RegisterEvent Event { get; set; }

    public required string By { get; set; }

    public required string ByName { get; set; }

    public string? Comment { get; set; }

    public string? ReportHash { get; set; }

    public int? Screening { get; set; }

    public bool OnOwn { get; set; }

    public string? OpenComments { get; set; }

    public string? NameSalt { get; set; }

    public string? NameDigest { get; set; }

    // Of a comment that a person wrote; the program's own words have none.
    public string? CommentSalt { get; set; }

    public string? CommentDigest { get; set; }

    // What notices tell of it, until it is written; null: nothing.
    [NotMapped]
    public NoticeEvent? Tell { get; set; }

    [NotMapped]
    public ScreeningChanges? Changes { get; set; }
}

// That names in a content were replaced: what it was and what stands there now, by their salted digests.
internal sealed class ReplacementRow
{
    public long Entry { get; set; }

    // The entry of the history that says so; its number is known when both are written.
    public HistoryRow? Said { get; set; }

    public int Line { get; set; }

    public long Number { get; set; }

    public ContentKind Kind { get; set; }

    public int Of { get; set; }

    public int Place { get; set; }

    public required string Name { get; set; }

    public required string Before { get; set; }

    public required string After { get; set; }
}

internal sealed class KeyRow
{
    public required string Id { get; set; }

    public required string Prefix { get; set; }

    public required byte[] SecretHash { get; set; }

    public required string Name { get; set; }

    public Role Role { get; set; }

    public DateTimeOffset CreatedAt { get; set; }

    public DateTimeOffset? ExpiresAt { get; set; }

    public DateTimeOffset? RevokedAt { get; set; }

    public string? NameSalt { get; set; }

    public string? NameDigest { get; set; }
}

internal enum KeyEvent
{
    Issued,
    Revoked,
    NameReplaced,
}

internal sealed class KeyHistoryRow
{
    public long Entry { get; set; }

    public required string KeyId { get; set; }

    public DateTimeOffset At { get; set; }

    public KeyEvent Event { get; set; }

    public required string By { get; set; }

    public required string ByName { get; set; }

    public string? NameSalt { get; set; }

    public string? NameDigest { get; set; }
}

internal sealed class IdempotencyRow
{
    public required string Caller { get; set; }

    public required string Key { get; set; }

    public required string ContentHash { get; set; }

    public required string SubmissionId { get; set; }

    public DateTimeOffset At { get; set; }
}
