namespace Laygate.Service.Settings;

/// <summary>Settings of the service: section <c>Laygate</c> of appsettings.json, or environment variables such as <c>Laygate__Data</c>. Checked at start.</summary>
public sealed class ServiceSettings
{
    /// <summary>Name of the section.</summary>
    public const string Section = "Laygate";

    /// <summary>The one folder that the service writes to.</summary>
    public string Data { get; set; } = "laygate-data";

    /// <summary>Connection string of a PostgreSQL database; empty: a SQLite file in <see cref="Data"/>.</summary>
    public string Database { get; set; } = string.Empty;

    /// <summary>Specifications that are laid over general practice: names of shipped ones, or paths.</summary>
    public IReadOnlyList<string> Rules { get; set; } = [];

    /// <summary>Files of departures.</summary>
    public IReadOnlyList<string> Departures { get; set; } = [];

    /// <summary>Whether plans may be checked without a key; nothing is stored then.</summary>
    public bool AnonymousChecks { get; set; }

    /// <summary>Number of submissions that are screened at the same time; 0: none, this replica only answers requests.</summary>
    public int Workers { get; set; } = 1;

    /// <summary>Number of requests that are checked at the same time.</summary>
    public int CheckSlots { get; set; } = Math.Max(1, Environment.ProcessorCount);

    /// <summary>Number of requests that may wait for a slot; any further one is sent away at once.</summary>
    public int CheckQueue { get; set; } = 32;

    /// <summary>Longest time for the check of a request, waiting included, s.</summary>
    public double CheckSeconds { get; set; } = 30;

    /// <summary>Longest time for a screening, s.</summary>
    public double ScreeningSeconds { get; set; } = 300;

    /// <summary>Longest time that a screening waits with its begin while all places for checks of requests are taken, s; 0: it does not wait.</summary>
    public double ScreeningPatience { get; set; } = 30;

    /// <summary>How long a worker may hold a submission without renewing its lease, s.</summary>
    public double LeaseSeconds { get; set; } = 30;

    /// <summary>After how many failed attempts a submission is not tried again.</summary>
    public int MaxFailures { get; set; } = 3;

    /// <summary>Requests per minute and key, in bursts of the same size; without a key per address.</summary>
    public int RequestsPerMinute { get; set; } = 600;

    /// <summary>What accepting a plan with failures needs beside a comment: nothing else, departures, or a second reviewer.</summary>
    public Laygate.Register.FailingAcceptance AcceptFailing { get; set; }

    /// <summary>Whether a reviewer may decide on what the same key has submitted; the history then says so.</summary>
    public bool OwnDecisions { get; set; }

    /// <summary>Address under which people reach the service, for links in notices; empty: links name the path alone.</summary>
    public string PublicAddress { get; set; } = string.Empty;

    /// <summary>The mail server through which notices go.</summary>
    public MailSettings Mail { get; set; } = new();

    /// <summary>Where webhooks may lead.</summary>
    public WebhookSettings Webhooks { get; set; } = new();

    /// <summary>How long names of people are kept.</summary>
    public RetentionSettings Retention { get; set; } = new();

    /// <summary>Folder that is watched for plans; empty: none.</summary>
    public string Inbox { get; set; } = string.Empty;

    /// <summary>How long size and time of a file must stand still before it is read, s.</summary>
    public double InboxSettleSeconds { get; set; } = 2;

    /// <summary>Address of the identity provider (its issuer); empty: none.</summary>
    public string Authority { get; set; } = string.Empty;

    /// <summary>Audience that its bearer tokens must name; empty: none is accepted.</summary>
    public string Audience { get; set; } = string.Empty;

    /// <summary>Claim that names the role: submitter, reviewer or administrator, or the names that the provider has for them.</summary>
    public string RoleClaim { get; set; } = "role";

    /// <summary>Claim that names the person as shown; the subject where it is missing.</summary>
    public string NameClaim { get; set; } = "name";

    /// <summary>Under which id the provider knows this service; empty: nobody signs in there.</summary>
    public string ClientId { get; set; } = string.Empty;

    /// <summary>The secret that belongs to <see cref="ClientId"/>; empty: the provider knows the service as a public client.</summary>
    public string ClientSecret { get; set; } = string.Empty;

    /// <summary>Scopes that are asked for beside openid and profile, such as one that brings the claim of the role.</summary>
    public IReadOnlyList<string> Scopes { get; set; } = [];

    /// <summary>What the claim of the role holds for submitters; when any of the three lists has an entry, our own words count no more.</summary>
    public IReadOnlyList<string> SubmitterNames { get; set; } = [];

    /// <summary>What the claim of the role holds for reviewers.</summary>
    public IReadOnlyList<string> ReviewerNames { get; set; } = [];

    /// <summary>What the claim of the role holds for administrators.</summary>
    public IReadOnlyList<string> AdministratorNames { get; set; } = [];

    /// <summary>After how long without use a session of a browser ends, min.</summary>
    public double SessionIdleMinutes { get; set; } = 60;

    /// <summary>After how long a session ends, however much it is used, h.</summary>
    public double SessionHours { get; set; } = 12;

    /// <summary>Whether bearer tokens of the provider are accepted.</summary>
    internal bool TakesTokens => Authority.Length > 0 && Audience.Length > 0;

    /// <summary>Whether the provider has names of its own for roles.</summary>
    internal bool MapsRoles => SubmitterNames.Count + ReviewerNames.Count + AdministratorNames.Count > 0;

    /// <summary>Whether the provider runs on this very machine, where nothing travels in the clear.</summary>
    internal bool IsLoopbackAuthority => Uri.TryCreate(Authority, UriKind.Absolute, out var address) && address.IsLoopback;
}
