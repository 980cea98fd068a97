namespace Laygate.Register;

/// <summary>Where a submission stands.</summary>
public enum SubmissionState
{
    /// <summary>On disk, waiting to be screened.</summary>
    Received,

    /// <summary>A worker is screening it.</summary>
    Screening,

    /// <summary>Screened: its report is on disk, a reviewer may decide.</summary>
    Screened,

    /// <summary>The text could not be read; the report says why and where.</summary>
    FailedToRead,

    /// <summary>Every attempt to screen it ended without a report; an administrator may have it screened again.</summary>
    NotScreened,

    /// <summary>Accepted by a reviewer.</summary>
    Accepted,

    /// <summary>Returned by a reviewer.</summary>
    Returned,

    /// <summary>Accepted by a reviewer with departures.</summary>
    AcceptedWithDepartures,
}

/// <summary>What the history of a submission records.</summary>
public enum RegisterEvent
{
    /// <summary>Received and on disk.</summary>
    Received,

    /// <summary>A worker took it.</summary>
    Claimed,

    /// <summary>A worker handed it back unfinished, because its process was stopping.</summary>
    HandedBack,

    /// <summary>An attempt to screen it failed.</summary>
    AttemptFailed,

    /// <summary>A report was written.</summary>
    Screened,

    /// <summary>A report was written that says why the text cannot be read.</summary>
    FailedToRead,

    /// <summary>No attempt is left.</summary>
    NotScreened,

    /// <summary>Someone asked for another screening, for example under a new edition of the rules.</summary>
    ScreeningAsked,

    /// <summary>Accepted.</summary>
    Accepted,

    /// <summary>Returned.</summary>
    Returned,

    /// <summary>Accepted with departures.</summary>
    AcceptedWithDepartures,

    /// <summary>A later revision was submitted.</summary>
    Revised,

    /// <summary>Accepted by the first of two reviewers; it counts when the second accepts it too.</summary>
    FirstAccepted,

    /// <summary>Accepted with departures by the first of two reviewers; it counts when the second accepts it likewise.</summary>
    FirstAcceptedWithDepartures,

    /// <summary>A reviewer took it, from nobody or from another.</summary>
    Taken,

    /// <summary>A reviewer gave it back to the queue.</summary>
    Released,

    /// <summary>Somebody wrote on a finding.</summary>
    Commented,

    /// <summary>The record of a shift was handed in.</summary>
    Recorded,

    /// <summary>Names, or names and comments, were replaced: the time for which they are kept was over, or an administrator had it done.</summary>
    NamesReplaced,

    /// <summary>An administrator had names replaced before that time; the comment says why.</summary>
    ReplacementAsked,
}

/// <summary>What a reviewer may decide.</summary>
public enum Verdict
{
    /// <summary>Accepted.</summary>
    Accepted,

    /// <summary>Returned.</summary>
    Returned,

    /// <summary>Accepted with departures.</summary>
    AcceptedWithDepartures,
}

/// <summary>What a key may do.</summary>
public enum Role
{
    /// <summary>Submits plans and sees its own.</summary>
    Submitter,

    /// <summary>Sees all submissions and decides.</summary>
    Reviewer,

    /// <summary>Issues and revokes keys, and may do what a reviewer may.</summary>
    Administrator,
}
