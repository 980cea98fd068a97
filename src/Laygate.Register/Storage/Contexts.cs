using System.Data.Common;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace Laygate.Register.Storage;

/// <summary>The register in a SQLite file.</summary>
internal sealed class SqliteContext(DbContextOptions<SqliteContext> options) : RegisterContext(options)
{
    // The one write lock of SQLite is held from the start of each transaction (BEGIN IMMEDIATE), so rows need none.
    protected override string DueSql => "SELECT * FROM jobs WHERE state IN ('Queued', 'Leased') AND due_at <= {0} ORDER BY due_at, number LIMIT 1";

    protected override string DueNoticeSql => Due(string.Empty);

    protected override string JobSql => "SELECT * FROM jobs WHERE number = {0} AND screening = {1}";

    protected override string SubmissionSql => "SELECT * FROM submissions WHERE id = {0}";

    protected override string? HoldKeysSql => null;

    protected override string? HoldBooksSql => null;

    public static DbContextOptions<SqliteContext> Options(string connection) =>
        new DbContextOptionsBuilder<SqliteContext>().UseSqlite(connection).AddInterceptors(new FullDurability()).Options;
}

/// <summary>The register in a PostgreSQL database.</summary>
internal sealed class PostgreSqlContext(DbContextOptions<PostgreSqlContext> options) : RegisterContext(options)
{
    protected override string DueSql =>
        "SELECT * FROM jobs WHERE state IN ('Queued', 'Leased') AND due_at <= {0} ORDER BY due_at, number LIMIT 1 FOR UPDATE SKIP LOCKED";

    protected override string DueNoticeSql => Due(" FOR UPDATE OF n SKIP LOCKED");

    protected override string JobSql => "SELECT * FROM jobs WHERE number = {0} AND screening = {1} FOR UPDATE";

    protected override string SubmissionSql => "SELECT * FROM submissions WHERE id = {0} FOR UPDATE";

    protected override string? HoldKeysSql => "LOCK TABLE access_keys IN SHARE ROW EXCLUSIVE MODE";

    protected override string? HoldBooksSql => "LOCK TABLE history, comments, key_history IN SHARE MODE";

    public static DbContextOptions<PostgreSqlContext> Options(string connection) =>
        new DbContextOptionsBuilder<PostgreSqlContext>().UseNpgsql(connection).Options;
}

/// <summary>Opens a context for the tool that writes migrations; it is never connected.</summary>
internal sealed class SqliteDesign : IDesignTimeDbContextFactory<SqliteContext>
{
    public SqliteContext CreateDbContext(string[] args) => new(SqliteContext.Options("Data Source=:memory:"));
}

/// <summary>Opens a context for the tool that writes migrations; it is never connected.</summary>
internal sealed class PostgreSqlDesign : IDesignTimeDbContextFactory<PostgreSqlContext>
{
    public PostgreSqlContext CreateDbContext(string[] args) => new(PostgreSqlContext.Options("Host=localhost"));
}

/// <summary>A commit that was acknowledged survives the loss of power, and what was replaced is written over, whatever the library was built with.</summary>
internal sealed class FullDurability : DbConnectionInterceptor
{
    public override void ConnectionOpened(DbConnection connection, ConnectionEndEventData eventData) => Set(connection);

    public override Task ConnectionOpenedAsync(DbConnection connection, ConnectionEndEventData eventData, CancellationToken cancellationToken = default)
    {
        Set(connection);
        return Task.CompletedTask;
    }

    private static void Set(DbConnection connection)
    {
        using var command = connection.CreateCommand();
        command.CommandText = "PRAGMA synchronous=FULL; PRAGMA foreign_keys=ON; PRAGMA secure_delete=ON";
        command.ExecuteNonQuery();
    }
}
