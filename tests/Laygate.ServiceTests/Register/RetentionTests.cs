using System.Security.Cryptography;
using System.Text;
using Laygate.Register;
using Laygate.Register.Storage;
using Laygate.ServiceTests.Shared;
using Microsoft.EntityFrameworkCore;

namespace Laygate.ServiceTests.Register;

/// <summary>Names of closed series are replaced, once, by the one way that the database leaves open; all else stays as it was.</summary>
[Collection(SharedStores.Name)]
public sealed class RetentionTests(Stores stores)
{
    private static readonly RetentionRule FiveYears = new(5, Texts: true);
    private static readonly FindingKey Finding = new(string.Empty, "SAF-083", "site");

    private readonly TestClock clock = new();

    [SkippableTheory]
    [InlineData(Engine.Sqlite)]
    [InlineData(Engine.PostgreSql)]
    public async Task Names_and_texts_of_a_closed_series_give_way_and_everything_else_stays(Engine engine)
    {
        var opened = await Opened.NewAsync(stores.New(engine), clock);
        var retention = new Retention(opened.Database, new NoNames());
        var closed = await ClosedAsync(opened);
        var open = await opened.ScreenedAsync("plan: open");
        clock.Move(TimeSpan.FromDays(6 * 365.25));
        var fresh = await ClosedAsync(opened, "plan: fresh");
        var before = await EverythingAsync(opened, closed);

        var due = await retention.DueAsync(FiveYears, default);
        var one = Assert.Single(due.Series);

        // Received twice and revised by Ada, returned and written on by the reviewer, whose comment has a name of its own; the comment and why it was returned.
        Assert.Equal((closed.Id, 6, 2), (one.Latest, one.Names, one.Texts));
        Assert.Equal((0, 0), await retention.ReplaceAsync(new RetentionRule(0, Texts: true), default));
        Assert.Equal((1, 0), await retention.ReplaceAsync(FiveYears, default));

        var after = await EverythingAsync(opened, closed);
        Assert.DoesNotContain("Ada", after, StringComparison.Ordinal);
        Assert.DoesNotContain("Reviewer", after, StringComparison.Ordinal);
        Assert.DoesNotContain("Mend it", after, StringComparison.Ordinal);
        Assert.DoesNotContain("Which step", after, StringComparison.Ordinal);
        Assert.Equal(Facts(before), Facts(after), StringComparer.Ordinal);
        var said = (await opened.Reader.HistoryAsync(closed.Id, Opened.Reviewer, default))[^1];
        Assert.Equal((RegisterEvent.NamesReplaced, "system"), (said.Event, said.By));
        Assert.StartsWith("replaced 8: 6 names, 2 texts", said.Comment, StringComparison.Ordinal);
        Assert.Equal(["Ada"], (await opened.Reader.RevisionsAsync(open.Series, Opened.Reviewer, default)).Select(row => row.SubmitterName).Distinct(StringComparer.Ordinal), StringComparer.Ordinal);
        Assert.Equal(["Ada"], (await opened.Reader.RevisionsAsync(fresh.Series, Opened.Reviewer, default)).Select(row => row.SubmitterName).Distinct(StringComparer.Ordinal), StringComparer.Ordinal);
        Assert.DoesNotContain((await opened.Reader.ListAsync(new SubmissionFilter { Search = "ada" }, null, 50, Opened.Reviewer, default)).Items, row => row.Series == closed.Series);

        Assert.Equal((0, 0), await retention.ReplaceAsync(FiveYears, default));
        Assert.Equal(after, await EverythingAsync(opened, closed));
    }

    [SkippableTheory]
    [InlineData(Engine.Sqlite)]
    [InlineData(Engine.PostgreSql)]
    public async Task Ended_half_way_it_goes_on_and_two_replicas_do_it_once(Engine engine)
    {
        var settings = stores.New(engine);
        var opened = await Opened.NewAsync(settings, clock);
        List<Submission> all = [await ClosedAsync(opened), await ClosedAsync(opened, "plan: b"), await ClosedAsync(opened, "plan: c")];
        var key = await opened.Keys.IssueAsync("Ines", Role.Submitter, null, Opened.Reviewer, default);
        await opened.Keys.RevokeAsync(key.Key.Id, Opened.Reviewer, default);
        clock.Move(TimeSpan.FromDays(6 * 365.25));
        var before = await EverythingAsync(opened, all[0]);
        await Assert.ThrowsAsync<DiedException>(() => new Retention(new Opened(settings, clock, 3, Moment.ReplacedBeforeCommit).Database, new NoNames()).ReplaceAsync(FiveYears, default));
        Assert.Equal(before, await EverythingAsync(opened, all[0]));

        var done = await Task.WhenAll(Enumerable.Range(0, 2).Select(replica => Task.Run(() => new Retention(new Opened(settings, clock, 20 + replica).Database, new NoNames()).ReplaceAsync(FiveYears, default))));
        Assert.Equal((3, 1), (done.Sum(one => one.Series), done.Sum(one => one.Keys)));
        foreach (var one in all)
        {
            Assert.Single(await opened.Reader.HistoryAsync(one.Id, Opened.Reviewer, default), entry => entry.Event == RegisterEvent.NamesReplaced);
        }

        var kept = Assert.Single(await opened.Keys.ListAsync(default));
        Assert.Equal((SaltedText.Name, SaltedText.Name, key.Key.Id), (kept.Name, kept.Issued!.ByName, kept.Id));
    }

    [SkippableTheory]
    [InlineData(Engine.Sqlite)]
    [InlineData(Engine.PostgreSql)]
    public async Task The_database_lets_a_name_go_with_its_salt_and_refuses_every_other_change(Engine engine)
    {
        var opened = await Opened.NewAsync(stores.New(engine), clock);
        var closed = await ClosedAsync(opened);
        await new ShiftRecords(opened.Database).AddAsync(closed.Id, [new HandedFile("record.yaml", [1])], Opened.Ada, default);
        await opened.Keys.IssueAsync("Ines", Role.Submitter, clock.GetUtcNow().AddDays(1), Opened.Reviewer, default);
        await using var context = opened.Database.Open();
        foreach (var (table, value, part, word) in new[]
        {
            ("history", "by_name", "name", SaltedText.Name), ("history", "comment", "comment", SaltedText.Text), ("comments", "by_name", "name", SaltedText.Name),
            ("comments", "text", "text", SaltedText.Text), ("key_history", "by_name", "name", SaltedText.Name), ("access_keys", "name", "name", SaltedText.Name),
        })
        {
            var where = $" WHERE {part}_salt IS NOT NULL";
            await RefusedAsync(context, $"UPDATE {table} SET {value} = 'somebody else'{where}");
            await RefusedAsync(context, $"UPDATE {table} SET {value} = '{word}'{where}");
            await RefusedAsync(context, $"UPDATE {table} SET {value} = 'somebody else', {part}_salt = NULL{where}");
            await RefusedAsync(context, $"UPDATE {table} SET {value} = '{word}', {part}_salt = 'other'{where}");
            await RefusedAsync(context, $"UPDATE {table} SET {value} = '{word}', {part}_salt = NULL, {part}_digest = NULL{where}");
            await RefusedAsync(context, $"UPDATE {table} SET {value} = '{word}', {part}_salt = NULL, {part}_digest = 'other'{where}");
            await RefusedAsync(context, $"DELETE FROM {table}");

            // No other column may change on the way, whatever columns there are.
            foreach (var column in Columns(context, table).Except([value, part + "_salt", part + "_digest"], StringComparer.Ordinal))
            {
                await RefusedAsync(context, $"UPDATE {table} SET {value} = '{word}', {part}_salt = NULL, {column} = {Other(context, table, column)}{where}");

                // A key that works may be revoked.
                if ((table, column) is not ("access_keys", "revoked_at"))
                {
                    await RefusedAsync(context, $"UPDATE {table} SET {column} = {Other(context, table, column)}{where}");
                }
            }
        }

        await RefusedAsync(context, "UPDATE history SET comment = 'words', comment_salt = 'a', comment_digest = 'b' WHERE comment IS NULL");
        await RefusedAsync(context, $"UPDATE record_files SET by_name = '{SaltedText.Name}', name = 'other'");
        await RefusedAsync(context, "UPDATE record_files SET by_name = 'somebody else'");
        await RefusedAsync(context, "UPDATE texts SET text = text");
        await RefusedAsync(context, "UPDATE reports SET failed = 0");

        // The one way, and once.
        Assert.NotEqual(0, await context.Database.ExecuteSqlRawAsync($"UPDATE history SET by_name = '{SaltedText.Name}', name_salt = NULL WHERE name_salt IS NOT NULL"));
        await RefusedAsync(context, "UPDATE history SET by_name = 'somebody else', name_salt = 'a'");
        await RefusedAsync(context, "UPDATE history SET by_name = 'somebody else'");
    }

    // The digests are worked out here by the platform alone.
    [SkippableTheory]
    [InlineData(Engine.Sqlite)]
    [InlineData(Engine.PostgreSql)]
    public async Task What_an_earlier_version_wrote_gets_its_digests_once(Engine engine)
    {
        var opened = await Opened.EarlierAsync(stores.New(engine), clock, "Notices");
        await using var context = opened.Database.Open();
        await context.Database.ExecuteSqlRawAsync("INSERT INTO access_keys (id, prefix, secret_hash, name, role, created_at) VALUES ('k', 'p', {0}, 'Ines', 'Submitter', 1)", new byte[] { 1 });
        await context.Database.ExecuteSqlRawAsync("INSERT INTO key_history (key_id, at, event, by, by_name) VALUES ('k', 1, 'Issued', 'chief', 'Über \"Otto\"')");
        await opened.Database.MigrateAsync(_ => Task.CompletedTask, default);
        await opened.Database.MigrateAsync(_ => Task.CompletedTask, default);
        var act = Assert.Single(await context.KeyHistory.AsNoTracking().ToListAsync());
        Assert.Equal(64, act.NameSalt!.Length);
        Assert.Equal(Convert.ToHexStringLower(SHA256.HashData(Encoding.ASCII.GetBytes(act.NameSalt + "\"\\u00dcber \\u0022Otto\\u0022\""))), act.NameDigest);
        var key = Assert.Single(await context.Keys.AsNoTracking().ToListAsync());
        Assert.Equal(Convert.ToHexStringLower(SHA256.HashData(Encoding.ASCII.GetBytes(key.NameSalt + "\"Ines\""))), key.NameDigest);
    }

    // Two revisions, a comment, a decision with a comment.
    private static async Task<Submission> ClosedAsync(Opened opened, string text = "plan: a")
    {
        var first = await opened.ScreenedAsync(text);
        await new Comments(opened.Database).AddAsync(first.Id, Finding, "Which step?", true, Opened.Reviewer, default);
        var second = await opened.SubmitAsync(text + "2", revisionOf: first.Id);
        await opened.ScreenAllAsync();
        var read = (await opened.Reader.FindAsync(second.Id, Opened.Reviewer, default))!;
        return await opened.Register.DecideAsync(read.Id, read.Version, Verdict.Returned, "Mend it.", Opened.Reviewer, default);
    }

    // All that a reader sees of a series, line by line.
    private static async Task<string> EverythingAsync(Opened opened, Submission of)
    {
        var lines = new List<string>();
        foreach (var one in await opened.Reader.RevisionsAsync(of.Series, Opened.Reviewer, default))
        {
            lines.Add($"{one.SubmitterName} {one.Assignee?.Name}");
            lines.AddRange((await opened.Reader.HistoryAsync(one.Id, Opened.Reviewer, default)).Select(entry => $"{one.Revision}|{entry.At:O}|{entry.Event}|{entry.By}|{entry.ReportHash}|{entry.Screening}|{entry.OnOwn}|{entry.OpenComments}#{entry.ByName}#{entry.Comment}"));
        }

        lines.AddRange((await new Comments(opened.Database).ListAsync(of.Series, 9, Opened.Reviewer, default)).Select(said => $"{said.Revision}|{said.At:O}|{said.Finding}|{said.By}|{said.LeavesOpen}#{said.ByName}#{said.Text}"));
        return string.Join('\n', lines);
    }

    // What no replacement may touch: everything but names and words.
    private static List<string> Facts(string everything) => [.. everything.Split('\n').Where(line => line.Contains('|', StringComparison.Ordinal) && !line.Contains(nameof(RegisterEvent.NamesReplaced), StringComparison.Ordinal)).Select(line => line.Split('#')[0])];

    private static IEnumerable<string> Columns(RegisterContext context, string table) =>
        context.Model.GetEntityTypes().Single(type => type.GetTableName() == table).GetProperties().Select(property => property.GetColumnName());

    // Another value of the same type.
    internal static string Other(RegisterContext context, string table, string column)
    {
        var property = context.Model.GetEntityTypes().Single(type => type.GetTableName() == table).GetProperties().Single(one => one.GetColumnName() == column);
        var type = property.GetProviderClrType() ?? property.GetValueConverter()?.ProviderClrType ?? property.ClrType;
        type = Nullable.GetUnderlyingType(type) ?? type;
        return type == typeof(string) ? $"COALESCE({column}, '') || 'x'"
            : type == typeof(bool) ? $"NOT {column}"
            : type == typeof(byte[]) ? context.Database.IsSqlite() ? "x'00ff'" : "'\\x00ff'::bytea"
            : $"COALESCE({column}, 0) + 1000";
    }

    private static async Task RefusedAsync(RegisterContext context, string sql)
    {
        var refused = await Record.ExceptionAsync(() => context.Database.ExecuteSqlRawAsync(sql));
        Assert.True(refused?.ToString().Contains("append-only", StringComparison.Ordinal) == true, $"{sql}: {refused?.Message ?? "was done"}");
    }
}
