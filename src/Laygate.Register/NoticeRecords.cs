namespace Laygate.Register;

/// <summary>What a notice can tell of.</summary>
public enum NoticeEvent
{
    /// <summary>A plan, or a revision of one, was submitted.</summary>
    Submitted,

    /// <summary>It was screened for the first time, could not be read, or could not be screened.</summary>
    Screened,

    /// <summary>It was screened again, and the report says otherwise than before.</summary>
    ScreenedAgain,

    /// <summary>It was accepted, with or without departures.</summary>
    Accepted,

    /// <summary>It was returned.</summary>
    Returned,

    /// <summary>A comment on a finding waits for an answer.</summary>
    CommentOpen,
}

/// <summary>How a notice travels.</summary>
public enum Channel
{
    /// <summary>As a mail.</summary>
    Mail,

    /// <summary>As a signed request over HTTP.</summary>
    Webhook,
}

/// <summary>Notices that are asked for.</summary>
/// <param name="Channel">How they travel.</param>
/// <param name="Target">Address of the mail, or of the webhook.</param>
/// <param name="Events">What they tell of.</param>
/// <param name="Contract">Number or name of the contract, as plans state it; null: all.</param>
/// <param name="Secret">What requests are signed with; null for mail.</param>
public sealed record NewSubscription(Channel Channel, string Target, IReadOnlyList<NoticeEvent> Events, string? Contract, string? Secret = null);

/// <summary>A standing request for notices.</summary>
/// <param name="Id">Id.</param>
/// <param name="Channel">How they travel.</param>
/// <param name="Target">Address of the mail, or of the webhook.</param>
/// <param name="Events">What they tell of.</param>
/// <param name="Contract">Number or name of the contract, as plans state it; null: all.</param>
/// <param name="Owner">Id of who has asked.</param>
/// <param name="OwnerName">Name of who has asked.</param>
/// <param name="CreatedAt">When, UTC.</param>
public sealed record Subscription(string Id, Channel Channel, string Target, IReadOnlyList<NoticeEvent> Events, string? Contract, string Owner, string OwnerName, DateTimeOffset CreatedAt);

/// <summary>How many findings fail, by severity.</summary>
/// <param name="A">Can kill or maim in one event.</param>
/// <param name="B">Serious injury or lasting ill health.</param>
/// <param name="C">Lesser harm.</param>
public sealed record SeverityCounts(int A, int B, int C);

/// <summary>How many findings another screening says otherwise.</summary>
/// <param name="Worse">Worse than before.</param>
/// <param name="Better">Better than before.</param>
/// <param name="New">Not there before.</param>
/// <param name="Gone">No longer there.</param>
/// <param name="Otherwise">Changed in value, limit or inputs only; or the plan can be read now, or no longer.</param>
public sealed record ScreeningChanges(int Worse, int Better, int New, int Gone, int Otherwise)
{
    /// <summary>Whether there is any.</summary>
    public bool Any => Worse + Better + New + Gone + Otherwise > 0;
}

/// <summary>What a notice says: no text of the plan but its title.</summary>
/// <param name="Submission">Id of the submission.</param>
/// <param name="Series">Id of the first revision.</param>
/// <param name="Revision">Number of the revision.</param>
/// <param name="Title">Title of the plan; null before it was read.</param>
/// <param name="State">Where the submission stands after the event.</param>
/// <param name="Counts">Counts of its latest report; null when there is none.</param>
/// <param name="Failing">How many findings fail, by severity; null where the report does not say.</param>
/// <param name="Changes">What another screening says otherwise; null for other events.</param>
public sealed record NoticeFacts(
    string Submission, string Series, int Revision, string? Title, SubmissionState State, ReportCounts? Counts, SeverityCounts? Failing, ScreeningChanges? Changes);

/// <summary>A notice that a sender holds until its lease ends.</summary>
/// <param name="Id">Id of the notice: the same with each attempt, so that a receiver can drop what it has.</param>
/// <param name="Attempt">Number of the attempt: what became of it is written only while this is still the latest.</param>
/// <param name="Event">What it tells of.</param>
/// <param name="At">When that happened, UTC.</param>
/// <param name="To">Whom it goes to.</param>
/// <param name="Secret">What the request is signed with; null for mail.</param>
/// <param name="Facts">What it says.</param>
public sealed record NoticeClaim(string Id, long Attempt, NoticeEvent Event, DateTimeOffset At, Subscription To, string? Secret, NoticeFacts Facts);

/// <summary>A notice that was given up.</summary>
/// <param name="Id">Id of the notice.</param>
/// <param name="Event">What it tells of.</param>
/// <param name="Submission">Id of the submission.</param>
/// <param name="Channel">How it was to travel.</param>
/// <param name="Target">Whom it was to go to.</param>
/// <param name="At">When the event happened, UTC.</param>
/// <param name="Attempts">How often it was tried.</param>
/// <param name="GivenUpAt">When it was given up, UTC.</param>
/// <param name="Reason">What the last attempt ended with.</param>
public sealed record FailedNotice(string Id, NoticeEvent Event, string Submission, Channel Channel, string Target, DateTimeOffset At, long Attempts, DateTimeOffset GivenUpAt, string Reason);
