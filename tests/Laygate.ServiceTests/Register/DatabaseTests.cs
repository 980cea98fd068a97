using System.Diagnostics;
using System.Globalization;
using Laygate.Register;
using Laygate.Register.Storage;
using Laygate.ServiceTests.Shared;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace Laygate.ServiceTests.Register;

[Collection(SharedStores.Name)]
public sealed class DatabaseTests(Stores stores)
{
    private readonly TestClock clock = new();

    private static int Kills => int.TryParse(Environment.GetEnvironmentVariable("LAYGATE_KILLS"), NumberStyles.None, CultureInfo.InvariantCulture, out var kills) ? kills : 3;

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
