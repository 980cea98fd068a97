using Laygate.Register.Storage;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;

namespace Laygate.Register;

/// <summary>The database of the register, and what the register needs from outside.</summary>
/// <param name="settings">Where it lies.</param>
/// <param name="clock">The clock.</param>
/// <param name="secrets">Random bytes.</param>
/// <param name="moments">Is told of the moments at which a process may die.</param>
public sealed class RegisterDatabase(RegisterSettings settings, TimeProvider clock, ISecretSource secrets, IMoments moments)
{
    // Any number, as long as every replica takes the same.
    private const long MigrationLock = 0x4C61_7967_6174_65;

    private readonly string connection = settings.Engine == Engine.Sqlite
        ? new SqliteConnectionStringBuilder { DataSource = settings.Connection, ForeignKeys = true, DefaultTimeout = 30 }.ToString()
        : settings.Connection;

    /// <summary>Where it lies and how its queue behaves.</summary>
    public RegisterSettings Settings { get; } = settings;

    internal DateTimeOffset Now => clock.GetUtcNow();

    /// <summary>Brings the tables up to this version of the program. Processes that start together wait for each other.</summary>
    /// <param name="firstUse">Done once the tables are there, still under the lock.</param>
    /// <param name="cancel">Ends the wait.</param>
    public Task MigrateAsync(Func<CancellationToken, Task> firstUse, CancellationToken cancel) => Settings.Engine == Engine.Sqlite
        ? MigrateSqliteAsync(firstUse, cancel)
        : MigratePostgreSqlAsync(firstUse, cancel);

    /// <summary>Whether the database answers.</summary>
    public async Task<bool> AnswersAsync(CancellationToken cancel)
    {
        await using var context = Open();
        return await context.Database.CanConnectAsync(cancel);
    }

    /// <summary>Makes a copy of a SQLite register while it is in use.</summary>
    /// <param name="path">Where to; the file must not exist.</param>
    /// <param name="cancel">Ends it.</param>
    /// <exception cref="RefusedException">The register lies in PostgreSQL: use <c>pg_dump</c>.</exception>
    /// <exception cref="IOException">The file is there already, or cannot be written.</exception>
    public async Task BackUpAsync(string path, CancellationToken cancel)
    {
        if (Settings.Engine != Engine.Sqlite)
        {
            throw new RefusedException(Refusal.WrongState, "A register in PostgreSQL is backed up with pg_dump.");
        }

        PrivateFiles.Make(path);
        try
        {
            await using var context = Open();
            await context.Database.ExecuteSqlAsync($"VACUUM INTO {path}", cancel);
        }
        catch
        {
            File.Delete(path);
            throw;
        }
    }

    /// <summary>Whether an exception says that the database is away or was lost under way: what was asked for may be tried again.</summary>
    /// <remarks>A database that answers and refuses is not away: asking again would not help.</remarks>
    public static bool IsAway(Exception error) => Connectivity.IsAway(error);

    /// <summary>Whether an exception comes from the database at all, away or not.</summary>
    public static bool IsOfDatabase(Exception error) => error is System.Data.Common.DbException or DbUpdateException || IsAway(error);

    /// <summary>Takes what was replaced out of the log beside a SQLite register, too; PostgreSQL does so by itself in time.</summary>
    internal async Task WipeAsync(CancellationToken cancel)
    {
        if (Settings.Engine == Engine.Sqlite)
        {
            await using var context = Open();
            await context.Database.ExecuteSqlRawAsync("PRAGMA wal_checkpoint(TRUNCATE)", cancel);
        }
    }

    internal RegisterContext Open() => Settings.Engine == Engine.Sqlite
        ? new SqliteContext(SqliteContext.Options(connection)) { Owner = this }
        : new PostgreSqlContext(PostgreSqlContext.Options(connection)) { Owner = this };

    internal void Reach(Moment? moment)
    {
        if (moment is { } reached)
        {
            moments.Reach(reached);
        }
    }

    internal string NewId() => Convert.ToHexStringLower(Bytes(16));

    internal byte[] Bytes(int count)
    {
        var bytes = new byte[count];
        secrets.Fill(bytes);
        return bytes;
    }

    /// <summary>Does something in one transaction; an exception undoes it. On SQLite it holds the write lock from the start.</summary>
    internal Task<T> InTransactionAsync<T>(Func<RegisterContext, Task<T>> work, CancellationToken cancel) => InTransactionAsync(work, null, null, cancel);

    /// <summary>Does something in one transaction and says when it is written and when it is committed.</summary>
    internal async Task<T> InTransactionAsync<T>(Func<RegisterContext, Task<T>> work, Moment? before, Moment? after, CancellationToken cancel)
    {
        await using var context = Open();
        await using IDbContextTransaction transaction = await context.Database.BeginTransactionAsync(cancel);
        var result = await work(context);
        await context.SaveChangesAsync(cancel);
        Reach(before);
        await transaction.CommitAsync(cancel);
        Reach(after);
        return result;
    }

    private async Task MigrateSqliteAsync(Func<CancellationToken, Task> firstUse, CancellationToken cancel)
    {
        PrivateFiles.MakeFolder(Path.GetDirectoryName(Path.GetFullPath(Settings.Connection))!);
        await using var held = await FileLock.TakeAsync(Settings.Connection + ".lock", clock, cancel);

        // SQLite gives the files beside it the rights of the register.
        PrivateFiles.MakeFile(Settings.Connection);
        PrivateFiles.Close(Settings.Connection + ".lock");
        PrivateFiles.Close(Settings.Connection + "-wal");
        PrivateFiles.Close(Settings.Connection + "-shm");
        await using (var context = Open())
        {
            // Whoever migrates holds our lock, and the system drops that lock with the process. A row in EF's own lock table is
            // therefore left over from a process that was killed, and EF would wait for it for ever.
            await context.Database.OpenConnectionAsync(cancel);
            await context.Database.ExecuteSqlRawAsync("PRAGMA journal_mode=WAL", cancel);
            await context.Database.ExecuteSqlRawAsync("DROP TABLE IF EXISTS \"__EFMigrationsLock\"", cancel);
            await context.Database.MigrateAsync(cancel);
        }

        await Seals.AllAsync(this, cancel);
        await firstUse(cancel);
    }

    private async Task MigratePostgreSqlAsync(Func<CancellationToken, Task> firstUse, CancellationToken cancel)
    {
        // The lock belongs to this connection, and the server drops it with the connection.
        await using var holder = Open();
        await holder.Database.OpenConnectionAsync(cancel);
        await holder.Database.ExecuteSqlAsync($"SELECT pg_advisory_lock({MigrationLock})", cancel);
        await using (var context = Open())
        {
            await context.Database.MigrateAsync(cancel);
        }

        await Seals.AllAsync(this, cancel);
        await firstUse(cancel);
        await holder.Database.ExecuteSqlAsync($"SELECT pg_advisory_unlock({MigrationLock})", cancel);
    }
}
