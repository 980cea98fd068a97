using System.Security.Cryptography;
using System.Text;
using Laygate.Register;
using Laygate.Register.Storage;
using Laygate.ServiceTests.Shared;
using Microsoft.EntityFrameworkCore;

namespace Laygate.ServiceTests.Register;

/// <summary>Plans, records, reports and documents: names in them are replaced by the one way that the database leaves open, and nothing of what stood there is left, not even a plain hash.</summary>
[Collection(SharedStores.Name)]
public sealed class ContentTests(Stores stores)
{
    private const string Name = "Otto Uhl";
    private static readonly RetentionRule FiveYears = new(5, Texts: false);

    private readonly TestClock clock = new();

    [SkippableTheory]
    [InlineData(Engine.Sqlite)]
    [InlineData(Engine.PostgreSql)]
    public async Task Contents_give_way_with_their_hashes_and_the_history_says_what_was_replaced_by_what(Engine engine)
    {
        var opened = await Opened.NewAsync(stores.New(engine), clock);
        var one = await KeptAsync(opened);
        var retention = new Retention(opened.Database, new OneName(Name));
        var before = await DigestsAsync(opened);
        List<string> hashes = [one.TextHash, one.Report!.Hash, Hash("plan: a\nprepared: Otto Uhl\n"), Hash("parts: Otto Uhl"), Hash("PK Otto Uhl"), Hash("by\nOtto Uhl\n"), Hash("<p>Otto Uhl</p>"), Hash("[Otto Uhl]"), .. before.Select(row => row.Salt)];
        var everything = await WholeDatabase.ReadAsync(opened.Database);
        Assert.All(new[] { one.TextHash, one.Report.Hash, Name }, word => Assert.Contains(everything, value => value.Text.Contains(word, StringComparison.Ordinal)));

        // A dry run says what would change, and changes nothing.
        var found = (await retention.FindAsync(one.Id, default))!;
        Assert.Equal([Name], found.Names, StringComparer.Ordinal);
        Assert.Equal([ContentKind.Text, ContentKind.File, ContentKind.Archive, ContentKind.Record, ContentKind.Report, ContentKind.Pictures, ContentKind.Document], found.Contents.Select(content => content.Kind));
        Assert.Equal(before.Select(row => row.Digest), (await DigestsAsync(opened)).Select(row => row.Digest), StringComparer.Ordinal);

        clock.Move(TimeSpan.FromDays(6 * 365.25));
        Assert.Equal(1, Assert.Single((await retention.DueAsync(FiveYears, default)).Series).Plans);
        Assert.Equal((1, 0), await retention.ReplaceAsync(FiveYears, default));
        Assert.Empty((await retention.DueAsync(FiveYears, default)).Series);
        var left = (await WholeDatabase.ReadAsync(opened.Database)).Where(value => hashes.Append(Name).Append("Otto").Any(word => value.Text.Contains(word, StringComparison.OrdinalIgnoreCase))).ToList();
        Assert.Empty(left);

        // What stands fits the hashes and digests that are shown of it; the entry leads from the old digests to the new ones.
        var now = (await opened.Reader.FindAsync(one.Id, Opened.Reviewer, default))!;
        var report = (await opened.Reader.ReportAsync(one.Id, 1, Opened.Reviewer, default))!;
        Assert.Equal("{\"by\": \"(name replaced)\", \"value\": 12.5}", Encoding.UTF8.GetString(report.Json));
        Assert.Equal((Convert.ToHexStringLower(SHA256.HashData(report.Json)), "Night of (name replaced)"), (report.Summary.Hash, now.Plan!.Title));
        Assert.All((await opened.Reader.HistoryAsync(one.Id, Opened.Reviewer, default)).Where(entry => entry.Screening == 1 && entry.ReportHash is not null), entry => Assert.Equal(report.Summary.Hash, entry.ReportHash));
        Assert.NotEqual(one.TextHash, now.TextHash, StringComparer.Ordinal);
        var after = await DigestsAsync(opened);
        await using var context = opened.Database.Open();
        var said = await context.Replacements.AsNoTracking().OrderBy(row => row.Line).ToListAsync();
        Assert.Equal(before.Select(row => row.Digest), said.Select(row => row.Before), StringComparer.Ordinal);
        Assert.Equal(after.Select(row => row.Digest), said.Select(row => row.After), StringComparer.Ordinal);
        Assert.All(after, row => Assert.Equal(SaltedText.Digest(row.Salt, row.Content), row.Digest));
        Assert.Equal(RegisterEvent.NamesReplaced, (await context.History.AsNoTracking().SingleAsync(entry => entry.Entry == said[0].Entry)).Event);
        Assert.Empty(await context.Idempotency.ToListAsync());
        Assert.Equal((0, 0), await retention.ReplaceAsync(FiveYears, default));
    }

    [SkippableTheory]
    [InlineData(Engine.Sqlite)]
    [InlineData(Engine.PostgreSql)]
    public async Task An_administrator_replaces_them_sooner_and_says_why_once_it_is_decided(Engine engine)
    {
        var opened = await Opened.NewAsync(stores.New(engine), clock);
        var one = await KeptAsync(opened, decide: false);
        var (retention, chief) = (new Retention(opened.Database, new OneName(Name)), new Caller("chief", "Chief", Role.Administrator));
        Assert.Equal(Refusal.WrongState, await RefusedAsync(() => retention.ReplaceNowAsync(one.Id, "asked", false, chief, default)));
        await opened.Register.DecideAsync(one.Id, one.Version, Verdict.Returned, "Mend it.", Opened.Reviewer, default);
        Assert.Equal(Refusal.BadRequest, await RefusedAsync(() => retention.ReplaceNowAsync(one.Id, " ", false, chief, default)));
        Assert.Equal(Refusal.NotAllowed, await RefusedAsync(() => retention.ReplaceNowAsync(one.Id, "asked", false, Opened.Reviewer, default)));
        Assert.Equal(Refusal.NotFound, await RefusedAsync(() => retention.ReplaceNowAsync(new string('0', 32), "asked", false, chief, default)));
        Assert.True(await retention.ReplaceNowAsync(one.Id, "A former foreman has asked for it.", false, chief, default));
        Assert.DoesNotContain(await WholeDatabase.ReadAsync(opened.Database), value => value.Text.Contains("Otto", StringComparison.Ordinal));
        var history = await opened.Reader.HistoryAsync(one.Id, Opened.Reviewer, default);
        Assert.Equal([(RegisterEvent.NamesReplaced, "system"), (RegisterEvent.ReplacementAsked, "chief")], history.TakeLast(2).Select(entry => (entry.Event, entry.By)));
        Assert.Equal("A former foreman has asked for it.", history[^1].Comment);

        // A record that comes later brings its own names.
        await new ShiftRecords(opened.Database).AddAsync(one.Id, [new HandedFile("more.csv", Encoding.UTF8.GetBytes("by\nOtto Uhl\n"))], Opened.Ada, default);
        Assert.Equal("more.csv", Assert.Single((await retention.FindAsync(one.Id, default))!.Contents).Name);
        Assert.True(await retention.ReplaceNowAsync(one.Id, "again", false, chief, default));
        Assert.Empty((await retention.FindAsync(one.Id, default))!.Contents);
    }

    [SkippableTheory]
    [InlineData(Engine.Sqlite)]
    [InlineData(Engine.PostgreSql)]
    public async Task The_database_refuses_every_change_of_a_content_that_the_history_does_not_tell_of(Engine engine)
    {
        var opened = await Opened.NewAsync(stores.New(engine), clock);
        await KeptAsync(opened);
        await using var context = opened.Database.Open();
        var blob = engine == Engine.Sqlite ? "x'00ff'" : "'\\x00ff'::bytea";
        foreach (var (table, kind, bytes, kept) in ContentTriggers.All)
        {
            foreach (var change in new[] { $"{bytes[0]} = {blob}", $"{bytes[0]} = {blob}, salt = 'a', digest = 'b'", "salt = 'a', digest = 'b'", "salt = NULL, digest = NULL", "digest = NULL", "salt = NULL" })
            {
                await RefusedAsync(context, $"UPDATE {table} SET {change}");
            }

            // What the history tells of, but for another content, or with another column.
            await DoAsync(context, "INSERT INTO history (number, at, event, by, by_name, on_own) VALUES (1, 1, 'NamesReplaced', 'x', 'x', " + (engine == Engine.Sqlite ? "0" : "false") + ")");
            await DoAsync(context, $"INSERT INTO replacements (entry, line, number, kind, \"of\", place, name, \"before\", \"after\") SELECT (SELECT MAX(entry) FROM history), 1, number, '{kind}', 0, 0, 'n', digest, 'b' FROM {table}");
            await RefusedAsync(context, $"UPDATE {table} SET {bytes[0]} = {blob}, salt = 'a', digest = 'c'");
            await RefusedAsync(context, $"UPDATE {table} SET {bytes[0]} = {blob}, salt = salt, digest = 'b'");
            foreach (var column in kept)
            {
                await RefusedAsync(context, $"UPDATE {table} SET {bytes[0]} = {blob}, salt = 'a', digest = 'b', {column} = {RetentionTests.Other(context, table, column)}");
            }

            Assert.Equal(Columns(context, table).Order(StringComparer.Ordinal), kept.Concat(bytes).Concat(table is "record_files" ? ["salt", "digest", "by_name"] : ["salt", "digest"]).Order(StringComparer.Ordinal), StringComparer.Ordinal);
            Assert.Equal(1, await DoAsync(context, $"UPDATE {table} SET {bytes[0]} = {blob}, salt = 'a', digest = 'b'{(table is "reports" ? ", hash = 'other'" : string.Empty)}"));
            await RefusedAsync(context, $"UPDATE {table} SET {bytes[0]} = {blob}, salt = 'c', digest = 'b'");
        }

        // An entry takes the hash of its report as it stands, and no other one; nothing is said without such an entry, and what was said stays.
        await RefusedAsync(context, "UPDATE history SET report_hash = 'nowhere' WHERE report_hash IS NOT NULL");
        await RefusedAsync(context, "UPDATE history SET report_hash = NULL WHERE report_hash IS NOT NULL");
        await RefusedAsync(context, "UPDATE history SET report_hash = 'other', comment = 'x' WHERE report_hash IS NOT NULL");
        await RefusedAsync(context, "UPDATE history SET report_hash = 'other' WHERE report_hash IS NULL");
        Assert.NotEqual(0, await DoAsync(context, "UPDATE history SET report_hash = 'other' WHERE report_hash IS NOT NULL"));
        await RefusedAsync(context, "INSERT INTO replacements (entry, line, number, kind, \"of\", place, name, \"before\", \"after\") VALUES (1, 1, 1, 'Text', 0, 0, 'n', 'b', 'c')");
        await RefusedAsync(context, "UPDATE replacements SET \"after\" = 'd'");
        await RefusedAsync(context, "DELETE FROM replacements");
    }

    [SkippableTheory]
    [InlineData(Engine.Sqlite)]
    [InlineData(Engine.PostgreSql)]
    public async Task What_an_earlier_version_kept_gets_its_digests_once(Engine engine)
    {
        var opened = await Opened.EarlierAsync(stores.New(engine), clock, "Salts");
        await using var context = opened.Database.Open();
        var (no, many) = (engine == Engine.Sqlite ? "0" : "false", 20);
        for (var number = 1; number <= many; number++)
        {
            await DoAsync(context, $"INSERT INTO submissions (number, id, series, revision, is_latest, file_name, text_hash, submitter, submitter_name, state, version, received_at, changed_at, search_text, files) VALUES ({number}, 'i{number}', 'i{number}', 1, {no}, 'a', 'h', 'x', 'x', 'Received', 1, 1, 1, '', 0)");
            await DoAsync(context, $"INSERT INTO texts (number, text) VALUES ({number}, {{0}})", Encoding.UTF8.GetBytes($"plan {number}"));
        }

        await DoAsync(context, "INSERT INTO documents (number, screening, name, type, bytes) VALUES (1, 1, 'n', 't', {0})", Packed.Of(output => output.Write("page"u8)));
        await opened.Database.MigrateAsync(_ => Task.CompletedTask, default);
        var first = await DigestsAsync(opened);
        await opened.Database.MigrateAsync(_ => Task.CompletedTask, default);
        Assert.Equal(first.Select(row => row.Digest), (await DigestsAsync(opened)).Select(row => row.Digest), StringComparer.Ordinal);
        Assert.Equal(many + 1, first.Count);
        Assert.All(first, row => Assert.Equal(Convert.ToHexStringLower(SHA256.HashData([.. Encoding.ASCII.GetBytes(row.Salt), .. row.Content])), row.Digest));
        Assert.Contains(first, row => Encoding.UTF8.GetString(row.Content) is "page");
    }

    // A set with an archive, screened, decided, with a record; a name in each of its contents.
    private static async Task<Submission> KeptAsync(Opened opened, bool decide = true)
    {
        var set = new NewSubmission("a.yaml", Encoding.UTF8.GetBytes("plan: a\nprepared: Otto Uhl\n"), null, "key-1")
        {
            Files = [new HandedFile("crew.yaml", Encoding.UTF8.GetBytes("parts: Otto Uhl"))],
            Archive = new HandedFile("a.zip", Encoding.UTF8.GetBytes("PK Otto Uhl")),
        };
        var id = (await opened.Register.SubmitAsync(set, Opened.Ada, default)).Submission.Id;
        await opened.ScreenAllAsync(result: Opened.Result("{\"by\": \"Otto Uhl\", \"value\": 12.5}") with
        {
            Plan = new PlanName("a", "Night of Otto Uhl", null),
            Pictures = Packed.Of(output => output.Write("[Otto Uhl]"u8)),
            Documents = [new KeptDocument("report.html", "text/html", null, Packed.Of(output => output.Write("<p>Otto Uhl</p>"u8)))],
        });
        await new ShiftRecords(opened.Database).AddAsync(id, [new HandedFile("hold.csv", Encoding.UTF8.GetBytes("by\nOtto Uhl\n"))], Opened.Ada, default);
        var read = (await opened.Reader.FindAsync(id, Opened.Reviewer, default))!;
        return decide ? await opened.Register.DecideAsync(id, read.Version, Verdict.Returned, "Mend it.", Opened.Reviewer, default) : read;
    }

    private static async Task<List<(string Salt, string Digest, byte[] Content)>> DigestsAsync(Opened opened)
    {
        await using var context = opened.Database.Open();
        var rows = new List<(string, string, byte[])>();
        foreach (var one in await context.Submissions.AsNoTracking().OrderBy(row => row.Number).ToListAsync())
        {
            rows.AddRange((await ContentRows.AllAsync(context, one, default)).Select(kept => (kept.Row.Salt!, kept.Row.Digest!, kept.Content.Bytes)));
        }

        return rows;
    }

    private static IEnumerable<string> Columns(RegisterContext context, string table) =>
        context.Model.GetEntityTypes().Single(type => type.GetTableName() == table).GetProperties().Select(property => property.GetColumnName());

    private static string Hash(string text) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)));

    private static async Task<Refusal> RefusedAsync(Func<Task> act) => (await Assert.ThrowsAsync<RefusedException>(act)).Refusal;

    private static Task<int> DoAsync(RegisterContext context, string sql, params object[] values) => context.Database.ExecuteSqlRawAsync(sql, values);

    private static async Task RefusedAsync(RegisterContext context, string sql)
    {
        var refused = await Record.ExceptionAsync(() => DoAsync(context, sql));
        Assert.True(refused?.ToString().Contains("append-only", StringComparison.Ordinal) == true, $"{sql}: {refused?.Message ?? "was done"}");
    }
}
