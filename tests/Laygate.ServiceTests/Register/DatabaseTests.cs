#pragma warning disable CA1416 // Rights of files are those of Unix; the service is tested there.
using System.Diagnostics;
using System.Globalization;
using Laygate.Register;
using Laygate.Register.Storage;
using Laygate.ServiceTests.Shared;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace Laygate.ServiceTests.Register;

[Collection(SharedStores.Name)]
[Long]
public sealed class DatabaseTests(Stores stores)
{
    private readonly TestClock clock = new();

    private static int Kills => int.TryParse(Environment.GetEnvironmentVariable("LAYGATE_KILLS"), NumberStyles.None, CultureInfo.InvariantCulture, out var kills) ? kills : FullRun.IsAsked ? 3 : 1;

    [Fact]
    public void Migrations_are_up_to_date()
    {
        using var sqlite = new SqliteContext(SqliteContext.Options("Data Source=:memory:"));
        Assert.False(sqlite.Database.HasPendingModelChanges());
        using var server = new PostgreSqlContext(PostgreSqlContext.Options("Host=localhost"));
        Assert.False(server.Database.HasPendingModelChanges());
    }

    [Fact]
    public async Task Sqlite_writes_ahead_and_waits_for_the_disk()
    {
        var opened = await Opened.NewAsync(stores.New(Engine.Sqlite), clock);
        await using var context = opened.Database.Open();
        await context.Database.OpenConnectionAsync();
        Assert.Equal("wal", await ValueAsync(context, "PRAGMA journal_mode"));
        Assert.Equal("2", await ValueAsync(context, "PRAGMA synchronous"));
        Assert.Equal("1", await ValueAsync(context, "PRAGMA foreign_keys"));
    }

    [Fact]
    public async Task Only_the_account_of_the_service_reads_a_SQLite_register()
    {
        var settings = stores.New(Engine.Sqlite);
        var folder = Path.GetDirectoryName(settings.Connection)!;
        var opened = await Opened.NewAsync(settings, clock);
        await opened.SubmitAsync();
        Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute, File.GetUnixFileMode(folder));
        await opened.Database.BackUpAsync(Path.Combine(folder, "copy.db"), default);
        Closed(folder, "copy.db", "register.db", "register.db-shm", "register.db-wal", "register.db.lock");

        // One of an earlier version: everybody could read it.
        foreach (var file in Directory.GetFiles(folder))
        {
            File.SetUnixFileMode(file, File.GetUnixFileMode(file) | UnixFileMode.GroupRead | UnixFileMode.OtherRead);
        }

        File.Delete(Path.Combine(folder, "copy.db"));
        await new Opened(settings, clock, 2).Database.MigrateAsync(_ => Task.CompletedTask, default);
        Closed(folder, "register.db", "register.db-shm", "register.db-wal", "register.db.lock");
    }

    [Fact]
    public async Task A_copy_replaces_nothing_and_follows_no_link()
    {
        var opened = await Opened.NewAsync(stores.New(Engine.Sqlite), clock);
        var (victim, link) = (Path.Combine(stores.Folder, "victim"), Path.Combine(stores.Folder, "link.db"));
        await File.WriteAllTextAsync(victim, string.Empty);
        File.CreateSymbolicLink(link, victim);
        await Assert.ThrowsAsync<IOException>(() => opened.Database.BackUpAsync(link, default));
        Assert.Equal(0, new FileInfo(victim).Length);
    }

    [SkippableTheory]
    [InlineData(Engine.Sqlite)]
    [InlineData(Engine.PostgreSql)]
    public async Task A_register_of_an_earlier_version_is_brought_up_to_date_with_what_it_holds(Engine engine)
    {
        var settings = stores.New(engine);
        var early = await Opened.EarlierAsync(settings, clock, "AppendOnly");
        await using (var context = early.Database.Open())
        {
            await context.Database.ExecuteSqlRawAsync("INSERT INTO access_keys (id, prefix, secret_hash, name, role, created_at, revoked_at) VALUES ('k1', 'p1', {0}, 'Ada', 'Submitter', 5, NULL), ('k2', 'p2', {0}, 'Ada', 'Submitter', 6, 7)", new byte[32]);
            await context.Database.ExecuteSqlRawAsync("INSERT INTO submissions (id, series, revision, is_latest, file_name, text_hash, submitter, submitter_name, state, version, received_at, changed_at, search_text) VALUES ('s1', 's1', 1, {0}, 'a.yaml', 'h', 'ada', 'Ada', 'Received', 1, 5, 5, '')", true);
            await context.Database.ExecuteSqlRawAsync("INSERT INTO history (number, at, event, by, by_name) SELECT number, 5, 'Received', 'ada', 'Ada' FROM submissions");
        }

        var now = await Opened.NewAsync(settings, clock, 2);
        Assert.False(Assert.Single(await now.Reader.HistoryAsync("s1", Opened.Ada, default)).OnOwn);
        Assert.All(await now.Keys.ListAsync(default), key => Assert.Null(key.Issued));
        await now.Keys.RevokeAsync("k1", Caller.Machine, default);
        Assert.Equal("machine", (await now.Keys.ListAsync(default))[0].Revoked!.By);
    }

    [SkippableFact]
    public async Task Only_a_database_that_cannot_be_reached_is_away()
    {
        var sqlite = await Opened.NewAsync(stores.New(Engine.Sqlite), clock);
        var server = await Opened.NewAsync(stores.New(Engine.PostgreSql), clock);
        foreach (var opened in new[] { sqlite, server })
        {
            await using var context = opened.Database.Open();
            foreach (var sql in new[] { "SELECT nonsense", "INSERT INTO submissions (id) VALUES (NULL)", "DELETE FROM history", "SELECT * FROM nowhere" })
            {
                Assert.False(RegisterDatabase.IsAway((await Record.ExceptionAsync(() => context.Database.ExecuteSqlRawAsync(sql)))!), sql);
            }
        }

        await using (var context = server.Database.Open())
        {
            var odd = "\0";
            foreach (var text in new[] { await Record.ExceptionAsync(() => context.Submissions.FirstOrDefaultAsync(row => row.Id == "\0")), await Record.ExceptionAsync(() => context.Submissions.FirstOrDefaultAsync(row => row.Id == odd)) })
            {
                Assert.False(RegisterDatabase.IsAway(text!));
                Assert.True(RegisterDatabase.IsOfDatabase(text!));
            }
        }

        var nowhere = new Opened(new RegisterSettings(Engine.PostgreSql, $"Host=127.0.0.1;Port={ServiceProcess.FreePort()};Username=x;Timeout=5"), clock, 1);
        Assert.True(RegisterDatabase.IsAway((await Record.ExceptionAsync(() => nowhere.Keys.ListAsync(default)))!));
        var noFolder = new Opened(new RegisterSettings(Engine.Sqlite, "/nowhere/at/all/register.db"), clock, 1);
        Assert.True(RegisterDatabase.IsAway((await Record.ExceptionAsync(() => noFolder.Keys.ListAsync(default)))!));
    }

    [Fact]
    public async Task A_lock_left_behind_by_a_killed_migration_does_not_block()
    {
        var settings = stores.New(Engine.Sqlite);
        Directory.CreateDirectory(Path.GetDirectoryName(settings.Connection)!);
        await using (var connection = new SqliteConnection("Data Source=" + settings.Connection))
        {
            await connection.OpenAsync();
            await using var command = connection.CreateCommand();
            command.CommandText = """
                CREATE TABLE "__EFMigrationsLock" ("Id" INTEGER NOT NULL CONSTRAINT "PK___EFMigrationsLock" PRIMARY KEY, "Timestamp" TEXT NOT NULL);
                INSERT INTO "__EFMigrationsLock" VALUES (1, '2026-01-01 00:00:00+00:00')
                """;
            await command.ExecuteNonQueryAsync();
        }

        using var patience = new CancellationTokenSource(Patience.Longest);
        await new Opened(settings, clock, 1).Database.MigrateAsync(_ => Task.CompletedTask, patience.Token);
        await new Opened(settings, clock, 1).SubmitAsync();
    }

    [Fact]
    public async Task A_copy_of_a_SQLite_register_in_use_can_be_restored()
    {
        var settings = stores.New(Engine.Sqlite);
        var opened = await Opened.NewAsync(settings, clock);
        var before = await opened.ScreenedAsync("plan: kept");
        var copy = Path.Combine(stores.Folder, "copy.db");
        var writing = Task.Run(async () =>
        {
            for (var index = 0; index < 20; index++)
            {
                await opened.SubmitAsync($"plan: {index}");
            }
        });
        await opened.Database.BackUpAsync(copy, default);
        await writing;

        var restored = await Opened.NewAsync(settings with { Connection = copy }, clock, 2);
        Assert.Equal("plan: kept"u8.ToArray(), await restored.Reader.TextAsync(before.Id, Opened.Ada, default));
        Assert.Equal(before, await restored.Reader.FindAsync(before.Id, Opened.Ada, default));
        await restored.ScreenedAsync("plan: after");
    }

    [SkippableFact]
    public async Task A_dump_of_a_PostgreSQL_register_can_be_restored()
    {
        var settings = stores.New(Engine.PostgreSql);
        var opened = await Opened.NewAsync(settings, clock);
        var before = await opened.ScreenedAsync("plan: kept");
        var dump = Path.Combine(stores.Folder, "register.dump");
        Run("pg_dump", "-Fc", "-f", dump, Name(settings));
        var empty = stores.New(Engine.PostgreSql);
        Run("pg_restore", "--exit-on-error", "-d", Name(empty), dump);

        var restored = await Opened.NewAsync(empty, clock, 2);
        Assert.Equal("plan: kept"u8.ToArray(), await restored.Reader.TextAsync(before.Id, Opened.Ada, default));
        Assert.Equal(before, await restored.Reader.FindAsync(before.Id, Opened.Ada, default));
        await restored.ScreenedAsync("plan: after");
    }

    [SkippableFact]
    public async Task What_was_acknowledged_survives_the_kill_of_the_server()
    {
        // A server of its own: after a kill it flushes every file of every database before it answers.
        using var server = new PostgreSqlServer();
        var settings = new RegisterSettings(Engine.PostgreSql, server.NewDatabase());
        var opened = await Opened.NewAsync(settings, clock);
        var acknowledged = new List<string>();
        for (var kill = 0; kill < Kills; kill++)
        {
            using var stop = new CancellationTokenSource();
            var writers = Enumerable.Range(0, 3).Select(_ => Task.Run(() => WriteAsync(opened, acknowledged, stop.Token))).ToList();
            await MoreAsync(acknowledged, 5);
            server.KillAndRestart();
            await MoreAsync(acknowledged, 2);
            await stop.CancelAsync();
            await Task.WhenAll(writers);
        }

        Assert.NotEmpty(acknowledged);
        clock.Move(settings.Lease * 2);
        await opened.ScreenAllAsync();
        foreach (var id in acknowledged)
        {
            var found = await opened.Reader.FindAsync(id, Opened.Reviewer, default);
            Assert.NotNull(found?.Report);
            Assert.Single(await opened.Reader.HistoryAsync(id, Opened.Reviewer, default), entry => entry.Event == RegisterEvent.Screened);
        }
    }

    private static Task MoreAsync(List<string> acknowledged, int more)
    {
        var enough = Count() + more;
        return Patience.UntilAsync(() => Count() >= enough, "acknowledged submissions");

        int Count()
        {
            lock (acknowledged)
            {
                return acknowledged.Count;
            }
        }
    }

    private static void Closed(string folder, params string[] expected)
    {
        var files = Directory.GetFiles(folder).Order(StringComparer.Ordinal).ToList();
        Assert.Equal(expected, files.Select(file => Path.GetFileName(file)), StringComparer.Ordinal);
        Assert.All(files, file => Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(file)));
    }

    private static async Task WriteAsync(Opened opened, List<string> acknowledged, CancellationToken stop)
    {
        while (!stop.IsCancellationRequested)
        {
            try
            {
                var taken = await opened.SubmitAsync();
                lock (acknowledged)
                {
                    acknowledged.Add(taken.Id);
                }

                if (await opened.Queue.ClaimAsync("w", default) is { } claim)
                {
                    await opened.Queue.CompleteAsync(claim, Opened.Result(), default);
                }
            }
            catch (Exception error) when (error is System.Data.Common.DbException or DbUpdateException or InvalidOperationException or System.Net.Sockets.SocketException)
            {
                await Task.Delay(20, CancellationToken.None);
            }
        }
    }

    private static string Name(RegisterSettings settings) => new Npgsql.NpgsqlConnectionStringBuilder(settings.Connection).Database!;

    private static async Task<string> ValueAsync(RegisterContext context, string sql)
    {
        await using var command = context.Database.GetDbConnection().CreateCommand();
#pragma warning disable CA2100 // Text of the test itself.
        command.CommandText = sql;
#pragma warning restore CA2100
        return Convert.ToString(await command.ExecuteScalarAsync(), CultureInfo.InvariantCulture)!;
    }

    private void Run(string program, params string[] arguments)
    {
        var start = new ProcessStartInfo(Path.Combine(stores.Server.Programs, program), arguments) { UseShellExecute = false, RedirectStandardError = true };
        (start.Environment["PGHOST"], start.Environment["PGPORT"], start.Environment["PGUSER"]) = ("127.0.0.1", stores.Server.Port.ToString(CultureInfo.InvariantCulture), "laygate");
        using var process = Process.Start(start)!;
        var error = process.StandardError.ReadToEnd();
        process.WaitForExit();
        Assert.True(process.ExitCode == 0, error);
    }
}
