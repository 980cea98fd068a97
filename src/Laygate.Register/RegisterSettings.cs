namespace Laygate.Register;

/// <summary>Where the register lies.</summary>
public enum Engine
{
    /// <summary>A SQLite file on a local disk: one machine.</summary>
    Sqlite,

    /// <summary>A PostgreSQL database: any number of replicas.</summary>
    PostgreSql,
}

/// <summary>What accepting a plan with failures needs beside a comment.</summary>
public enum FailingAcceptance
{
    /// <summary>Nothing else.</summary>
    Comment,

    /// <summary>It is accepted with departures, which the comment names.</summary>
    Departures,

    /// <summary>A second reviewer accepts it too, on the same report.</summary>
    SecondReviewer,
}

/// <summary>Where the register lies and how its queue behaves.</summary>
/// <param name="Engine">Kind of database.</param>
/// <param name="Connection">Path of the file, or connection string.</param>
public sealed record RegisterSettings(Engine Engine, string Connection)
{
    /// <summary>How long a worker may hold a submission without renewing its lease.</summary>
    public TimeSpan Lease { get; init; } = TimeSpan.FromSeconds(60);

    /// <summary>After how many attempts that failed, or ended without a word, a submission is not tried again.</summary>
    public int MaxFailures { get; init; } = 3;

    /// <summary>Pause before the second attempt; it doubles with each further one.</summary>
    public TimeSpan RetryAfter { get; init; } = TimeSpan.FromSeconds(5);

    /// <summary>How long an idempotency key is remembered.</summary>
    public TimeSpan IdempotencyFor { get; init; } = TimeSpan.FromDays(30);

    /// <summary>After how long without use a session of a browser ends.</summary>
    public TimeSpan SessionIdle { get; init; } = TimeSpan.FromHours(1);

    /// <summary>After how long a session ends, however much it is used.</summary>
    public TimeSpan SessionLength { get; init; } = TimeSpan.FromHours(12);

    /// <summary>What accepting a plan with failures needs beside a comment.</summary>
    public FailingAcceptance AcceptFailing { get; init; } = FailingAcceptance.Comment;

    /// <summary>Whether a reviewer may decide on what the same caller has submitted; the history then says so.</summary>
    public bool OwnDecisions { get; init; }
}
