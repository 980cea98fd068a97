namespace Laygate.Register;

/// <summary>Who does something: the id and name of a key, or of a person known to an identity provider.</summary>
/// <param name="Id">Id that never changes.</param>
/// <param name="Name">Name as shown.</param>
/// <param name="Role">What it may do.</param>
public sealed record Caller(string Id, string Name, Role Role)
{
    /// <summary>The program itself.</summary>
    public static Caller Program { get; } = new("system", "Laygate", Role.Administrator);

    /// <summary>Whoever may start the program on its machine.</summary>
    public static Caller Machine { get; } = new("machine", "the service's own machine", Role.Administrator);

    /// <summary>Whether it sees the submissions of everybody.</summary>
    public bool SeesAll => Role is Role.Reviewer or Role.Administrator;
}

/// <summary>A plan that is handed in.</summary>
/// <param name="FileName">Name as shown; never used as a path.</param>
/// <param name="Text">The bytes exactly as sent.</param>
/// <param name="RevisionOf">Id of the submission that it revises; null for a new one.</param>
/// <param name="IdempotencyKey">The caller's word for this one request, so that it may be repeated; null when none was given.</param>
public sealed record NewSubmission(string FileName, byte[] Text, string? RevisionOf, string? IdempotencyKey)
{
    /// <summary>The files that came with the plan, in their order.</summary>
    public IReadOnlyList<HandedFile> Files { get; init; } = [];

    /// <summary>The archive in which plan and files came; null when they came by themselves.</summary>
    public HandedFile? Archive { get; init; }
}

/// <summary>A file that is handed in with a plan, exactly as it came.</summary>
/// <param name="Name">Its name, folders divided by <c>/</c>; never used as a path.</param>
/// <param name="Bytes">Its bytes.</param>
public sealed record HandedFile(string Name, byte[] Bytes);

/// <summary>A submission without its text and report.</summary>
/// <param name="Id">Id.</param>
/// <param name="Number">Number in the order of receipt.</param>
/// <param name="Series">Id of the first revision.</param>
/// <param name="Revision">Number of the revision in its series, from 1.</param>
/// <param name="RevisionOf">Id of the submission that it revises.</param>
/// <param name="FileName">Name as given.</param>
/// <param name="TextHash">SHA-256 of the text, lower-case hex; of a set of files, of the list that <c>sha256sum</c> writes of its files in the order of their names.</param>
/// <param name="Submitter">Who handed it in.</param>
/// <param name="SubmitterName">Name of who handed it in.</param>
/// <param name="State">Where it stands.</param>
/// <param name="Version">Rises with each change; a decision names the one it has seen.</param>
/// <param name="ReceivedAt">When it was received, UTC.</param>
/// <param name="ChangedAt">When it last changed, UTC.</param>
/// <param name="Plan">What the plan calls itself; null before it was read.</param>
/// <param name="Report">Its latest report; null when there is none.</param>
/// <param name="Latest">Whether it is the latest revision of its series; an earlier one is no longer decided on.</param>
public sealed record Submission(
    string Id,
    long Number,
    string Series,
    int Revision,
    string? RevisionOf,
    string FileName,
    string TextHash,
    string Submitter,
    string SubmitterName,
    SubmissionState State,
    long Version,
    DateTimeOffset ReceivedAt,
    DateTimeOffset ChangedAt,
    PlanName? Plan,
    ReportSummary? Report,
    bool Latest)
{
    /// <summary>Number of files that came with the plan.</summary>
    public int Files { get; init; }

    /// <summary>Name of the archive in which they came; null when they came by themselves.</summary>
    public string? Archive { get; init; }

    /// <summary>What its latest report says for the queue; null before it was screened by a version that writes it down.</summary>
    public QueueFacts? Queue { get; init; }

    /// <summary>The reviewer who has taken it; null: nobody.</summary>
    public Assignee? Assignee { get; init; }
}

/// <summary>A reviewer who has taken a submission.</summary>
/// <param name="Id">Id.</param>
/// <param name="Name">Name.</param>
public sealed record Assignee(string Id, string Name);

/// <summary>What a report says for the queue of reviewers.</summary>
/// <param name="Stage">Stage at which the plan was judged.</param>
/// <param name="ShiftDate">Date of the first shift; null where the plan states none.</param>
/// <param name="Contract">Number or name of the contract; null where the plan states none.</param>
/// <param name="Worst">The finding that decides first, in a few words; null where none fails, warns or is left undecided.</param>
/// <param name="WorstRank">Its weight, the smaller the graver: tens for the part of the report (0 fails), ones for the severity (0 is A, 3 is none).</param>
public sealed record QueueFacts(string? Stage, DateOnly? ShiftDate, string? Contract, string? Worst, int? WorstRank);

/// <summary>A submission with what was said of it at the same moment.</summary>
/// <param name="Submission">The submission.</param>
/// <param name="Report">Its latest report; null when there is none.</param>
/// <param name="History">Its history, the oldest entry first.</param>
public sealed record SubmissionWithReport(Submission Submission, StoredReport? Report, IReadOnlyList<HistoryEntry> History);

/// <summary>What a plan calls itself.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Title">Its title.</param>
/// <param name="Revision">Its revision.</param>
public sealed record PlanName(string Id, string? Title, string? Revision);

/// <summary>Counts of a report's findings, by outcome.</summary>
/// <param name="Failed">Failed.</param>
/// <param name="Warned">Warned.</param>
/// <param name="NotAssessed">Not assessed.</param>
/// <param name="NeedsPerson">Needs a person.</param>
/// <param name="Passed">Passed.</param>
/// <param name="Departed">Covered by a departure.</param>
public sealed record ReportCounts(int Failed, int Warned, int NotAssessed, int NeedsPerson, int Passed, int Departed);

/// <summary>A report without its content.</summary>
/// <param name="Screening">Number of the screening, from 1.</param>
/// <param name="Hash">SHA-256 of the report, lower-case hex.</param>
/// <param name="BookHash">Hash of the rule book.</param>
/// <param name="ProgramVersion">Version of the program.</param>
/// <param name="At">When it was written, UTC.</param>
/// <param name="Counts">Counts.</param>
public sealed record ReportSummary(int Screening, string Hash, string BookHash, string ProgramVersion, DateTimeOffset At, ReportCounts Counts);

/// <summary>A report with its content.</summary>
/// <param name="Summary">What is known of it.</param>
/// <param name="Json">The report as JSON.</param>
public sealed record StoredReport(ReportSummary Summary, byte[] Json);

/// <summary>What a screening found, ready to be stored.</summary>
/// <param name="Json">The report as JSON.</param>
/// <param name="Readable">Whether the text could be read.</param>
/// <param name="BookHash">Hash of the rule book.</param>
/// <param name="ProgramVersion">Version of the program.</param>
/// <param name="Counts">Counts.</param>
/// <param name="Plan">What the plan calls itself; null when it could not be read.</param>
public sealed record ScreeningResult(byte[] Json, bool Readable, string BookHash, string ProgramVersion, ReportCounts Counts, PlanName? Plan)
{
    /// <summary>What the report says for the queue.</summary>
    public QueueFacts? Queue { get; init; }

    /// <summary>How many findings fail, by severity.</summary>
    public SeverityCounts? Failing { get; init; }

    /// <summary>What it says otherwise than the screening before; null where there is none before, or none that can be compared.</summary>
    public ScreeningChanges? Changes { get; init; }

    /// <summary>The documents of the screening, as they were made.</summary>
    public IReadOnlyList<KeptDocument> Documents { get; init; } = [];

    /// <summary>The pictures of the report, in a form of the caller's own; null when there are none.</summary>
    public byte[]? Pictures { get; init; }
}

/// <summary>A document of a screening, as it was made on that day.</summary>
/// <param name="Name">Its name among the documents of the screening.</param>
/// <param name="Type">Media type.</param>
/// <param name="Policy">What a browser may do on it; null where it is no page.</param>
/// <param name="Bytes">Its bytes, in a form of the caller's own.</param>
public sealed record KeptDocument(string Name, string Type, string? Policy, byte[] Bytes);

/// <summary>An entry of the history; none is ever changed or removed.</summary>
/// <param name="At">When, UTC.</param>
/// <param name="Event">What.</param>
/// <param name="By">Id of who did it.</param>
/// <param name="ByName">Name of who did it.</param>
/// <param name="Comment">What was said; null when nothing was.</param>
/// <param name="ReportHash">Hash of the report that it is about; null when about none.</param>
/// <param name="Screening">Number of the screening that it is about; null when about none.</param>
/// <param name="OnOwn">Whether it is a decision of the caller who had submitted it, which a setting must allow.</param>
public sealed record HistoryEntry(DateTimeOffset At, RegisterEvent Event, string By, string ByName, string? Comment, string? ReportHash, int? Screening, bool OnOwn)
{
    /// <summary>Of a decision: the findings on which comments were open, as rule and address, each on a line; null where none was.</summary>
    public string? OpenComments { get; init; }
}

/// <summary>The finding that a comment is about. It is the same finding in every revision.</summary>
/// <param name="Plan">Id of the plan; empty where the file holds one.</param>
/// <param name="Rule">Id of the rule.</param>
/// <param name="Address">Address of the element.</param>
public sealed record FindingKey(string Plan, string Rule, string Address);

/// <summary>A comment on a finding; none is ever changed or removed.</summary>
/// <param name="Finding">The finding.</param>
/// <param name="Revision">Revision on which it was written.</param>
/// <param name="At">When, UTC.</param>
/// <param name="By">Id of who wrote it.</param>
/// <param name="ByName">Name of who wrote it.</param>
/// <param name="Text">What was written.</param>
/// <param name="LeavesOpen">Whether the finding waits for an answer after it; the last comment on a finding says so.</param>
public sealed record FindingComment(FindingKey Finding, int Revision, DateTimeOffset At, string By, string ByName, string Text, bool LeavesOpen);

/// <summary>The last decision on a series of revisions.</summary>
/// <param name="Revision">The revision that it is about.</param>
/// <param name="Entry">What the history says of it.</param>
public sealed record LastDecision(int Revision, HistoryEntry Entry);

/// <summary>A piece of work that a worker holds until its lease ends.</summary>
/// <param name="SubmissionId">Id of the submission.</param>
/// <param name="Number">Its number.</param>
/// <param name="Screening">Number of the screening.</param>
/// <param name="Attempt">Number of the attempt: a report is stored only while this is still the latest.</param>
/// <param name="FileName">Name of the file as given.</param>
/// <param name="Text">The text.</param>
/// <param name="LeaseUntil">When the lease ends, UTC.</param>
public sealed record Claim(string SubmissionId, long Number, int Screening, long Attempt, string FileName, byte[] Text, DateTimeOffset LeaseUntil)
{
    /// <summary>The files that came with the plan, in their order.</summary>
    public IReadOnlyList<HandedFile> Files { get; init; } = [];

    /// <summary>The latest report before this screening; null when there is none.</summary>
    public StoredReport? Before { get; init; }
}

/// <summary>Which submissions are listed; null: all.</summary>
public sealed record SubmissionFilter
{
    /// <summary>State.</summary>
    public SubmissionState? State { get; init; }

    /// <summary>Part of file name, plan id, plan title or submitter's name; letter case does not matter.</summary>
    public string? Search { get; init; }

    /// <summary>Received at or after, UTC.</summary>
    public DateTimeOffset? From { get; init; }

    /// <summary>Received before, UTC.</summary>
    public DateTimeOffset? Until { get; init; }

    /// <summary>Whether only the latest revision of each series is listed.</summary>
    public bool LatestOnly { get; init; }

    /// <summary>Whether only those are listed that wait for a decision: screened, unreadable or not screened, and not superseded.</summary>
    public bool OpenOnly { get; init; }

    /// <summary>Id of the reviewer who has taken them; empty: nobody has.</summary>
    public string? Assignee { get; init; }
}

/// <summary>By what a queue is sorted.</summary>
public enum QueueOrder
{
    /// <summary>Date of the shift, the next one first.</summary>
    Shift,

    /// <summary>When it was received, the oldest first.</summary>
    Age,

    /// <summary>The worst finding, the gravest first.</summary>
    Worst,

    /// <summary>Contract.</summary>
    Contract,

    /// <summary>Stage.</summary>
    Stage,

    /// <summary>Title of the plan.</summary>
    Plan,

    /// <summary>Revision, the first one first.</summary>
    Revision,

    /// <summary>Who has taken it; what nobody has taken first.</summary>
    Assignee,

    /// <summary>Where it stands.</summary>
    State,
}

/// <summary>A part of a queue in the order that was asked for.</summary>
/// <param name="Items">Submissions.</param>
/// <param name="Count">Number of all that the filter lets through.</param>
public sealed record QueuePage(IReadOnlyList<Submission> Items, int Count);

/// <summary>A page of a list.</summary>
/// <param name="Items">Submissions, the latest first.</param>
/// <param name="Next">Cursor of the next page; null at the end.</param>
public sealed record SubmissionPage(IReadOnlyList<Submission> Items, string? Next);

/// <summary>A key without its secret.</summary>
/// <param name="Id">Id.</param>
/// <param name="Prefix">The first characters, by which its owner knows it.</param>
/// <param name="Name">Name of its owner.</param>
/// <param name="Role">What it may do.</param>
/// <param name="CreatedAt">When it was issued, UTC.</param>
/// <param name="ExpiresAt">When it ends, UTC; null when it does not.</param>
/// <param name="RevokedAt">When it was revoked, UTC; null when it was not.</param>
/// <param name="Issued">Who issued it; null for a key of a version that did not write that down.</param>
/// <param name="Revoked">Who revoked it; null when it was not, or by a version that did not write that down.</param>
public sealed record AccessKey(
    string Id, string Prefix, string Name, Role Role, DateTimeOffset CreatedAt, DateTimeOffset? ExpiresAt, DateTimeOffset? RevokedAt, KeyAct? Issued, KeyAct? Revoked);

/// <summary>What was done to a key; none is ever changed or removed.</summary>
/// <param name="At">When, UTC.</param>
/// <param name="By">Id of who did it.</param>
/// <param name="ByName">Name of who did it.</param>
public sealed record KeyAct(DateTimeOffset At, string By, string ByName);

/// <summary>A key at the one moment when its secret is known.</summary>
/// <param name="Key">The key.</param>
/// <param name="Secret">The secret; only its hash is stored.</param>
public sealed record IssuedKey(AccessKey Key, string Secret);
