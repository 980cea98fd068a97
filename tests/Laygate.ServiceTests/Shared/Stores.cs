using Laygate.Register;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;

namespace Laygate.ServiceTests.Shared;

/// <summary>Makes empty registers on either database.</summary>
public sealed class Stores : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("laygate-register-").FullName;
    private readonly Lazy<PostgreSqlServer> server = new(() => new PostgreSqlServer());
    private int files;

    public PostgreSqlServer Server => server.Value;

    public string Folder => folder;

    /// <summary>Where a new register lies.</summary>
    public RegisterSettings New(Engine engine) => new(
        engine,
        engine == Engine.Sqlite ? Path.Combine(folder, $"{Interlocked.Increment(ref files)}", "register.db") : Server.NewDatabase())
    {
        Lease = TimeSpan.FromSeconds(60),
        RetryAfter = TimeSpan.FromSeconds(5),
    };

    public void Dispose()
    {
        if (server.IsValueCreated)
        {
            server.Value.Dispose();
        }

        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
        Directory.Delete(folder, recursive: true);
    }
}

[CollectionDefinition(Name)]
public sealed class SharedStores : ICollectionFixture<Stores>
{
    public const string Name = "stores";
}

/// <summary>A clock that stands still until it is moved.</summary>
internal sealed class TestClock : TimeProvider
{
    private long ticks = new DateTimeOffset(2027, 5, 14, 18, 30, 0, TimeSpan.Zero).UtcTicks;

    public override DateTimeOffset GetUtcNow() => new(Interlocked.Read(ref ticks), TimeSpan.Zero);

    public void Move(TimeSpan by) => Interlocked.Add(ref ticks, by.Ticks);
}

/// <summary>Random bytes with a seed, so that a failing test can be run again.</summary>
internal sealed class SeededSecrets(int seed) : ISecretSource
{
    private readonly Random random = new(seed);
    private readonly Lock guard = new();

    public void Fill(Span<byte> buffer)
    {
        lock (guard)
        {
            random.NextBytes(buffer);
        }
    }
}

/// <summary>Dies at one moment.</summary>
internal sealed class DiesAt(Moment? moment) : IMoments
{
    public void Reach(Moment reached)
    {
        if (reached == moment)
        {
            throw new DiedException();
        }
    }
}

/// <summary>Does something the first time that a moment is reached.</summary>
internal sealed class DoesOnceAt(Moment moment, Action act) : IMoments
{
    private bool isDone;

    public void Reach(Moment reached)
    {
        if (reached == moment && !isDone)
        {
            isDone = true;
            act();
        }
    }
}

#pragma warning disable CA1032, CA1064 // Stands for the end of the process in a test.
internal sealed class DiedException : Exception;
#pragma warning restore CA1032, CA1064

/// <summary>A register as one process sees it.</summary>
internal sealed class Opened
{
    public static readonly Caller Ada = new("ada", "Ada", Role.Submitter);
    public static readonly Caller Bo = new("bo", "Bo", Role.Submitter);
    public static readonly Caller Reviewer = new("rev", "Reviewer", Role.Reviewer);
    public static readonly Caller Second = new("rev-2", "Second reviewer", Role.Reviewer);

    public Opened(RegisterSettings settings, TestClock clock, int seed, Moment? diesAt = null)
        : this(settings, clock, seed, new DiesAt(diesAt))
    {
    }

    public Opened(RegisterSettings settings, TestClock clock, int seed, IMoments moments)
    {
        Database = new RegisterDatabase(settings, clock, new SeededSecrets(seed), moments);
        Register = new SubmissionRegister(Database);
        Reader = new RegisterReader(Database);
        Queue = new Screenings(Database);
        Keys = new AccessKeys(Database);
    }

    public RegisterDatabase Database { get; }

    public SubmissionRegister Register { get; }

    public RegisterReader Reader { get; }

    public Screenings Queue { get; }

    public AccessKeys Keys { get; }

    public static async Task<Opened> NewAsync(RegisterSettings settings, TestClock clock, int seed = 1)
    {
        var opened = new Opened(settings, clock, seed);
        await opened.Database.MigrateAsync(_ => Task.CompletedTask, default);
        return opened;
    }

    /// <summary>A register that was brought up to the migration of that name only, as an earlier version left it.</summary>
    public static async Task<Opened> EarlierAsync(RegisterSettings settings, TestClock clock, string migration)
    {
        if (settings.Engine == Engine.Sqlite)
        {
            Directory.CreateDirectory(Path.GetDirectoryName(settings.Connection)!);
        }

        var opened = new Opened(settings, clock, 1);
        await using var context = opened.Database.Open();
        await context.GetService<IMigrator>().MigrateAsync(context.Database.GetMigrations().Single(name => name.EndsWith("_" + migration, StringComparison.Ordinal)));
        return opened;
    }

    public static ScreeningResult Result(string json = "{}", bool readable = true, string book = "book-1") =>
        new(System.Text.Encoding.UTF8.GetBytes(json), readable, book, "0.0", new ReportCounts(1, 2, 3, 4, 5, 6), readable ? new PlanName("plan-a", "Title Ä", "C") : null);

    public async Task<Submission> SubmitAsync(string text = "plan: a", Caller? by = null, string? revisionOf = null, string? key = null, string name = "a.yaml") =>
        (await Register.SubmitAsync(new NewSubmission(name, System.Text.Encoding.UTF8.GetBytes(text), revisionOf, key), by ?? Ada, default)).Submission;

    public async Task<Submission> ScreenedAsync(string text = "plan: a", Caller? by = null)
    {
        var submission = await SubmitAsync(text, by);
        await ScreenAllAsync();
        return (await Reader.FindAsync(submission.Id, Reviewer, default))!;
    }

    public async Task<int> ScreenAllAsync(string book = "book-1", ScreeningResult? result = null)
    {
        var stored = 0;
        while (await Queue.ClaimAsync("w", default) is { } claim)
        {
            stored += await Queue.CompleteAsync(claim, result ?? Result(book: book), default) ? 1 : 0;
        }

        return stored;
    }
}
