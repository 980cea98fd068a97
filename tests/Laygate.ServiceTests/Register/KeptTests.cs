using Laygate.Register;
using Laygate.Register.Storage;
using Laygate.ServiceTests.Shared;
using Microsoft.EntityFrameworkCore;

namespace Laygate.ServiceTests.Register;

/// <summary>What is kept beside a report, and that no table is left open to a change by mistake.</summary>
[Collection(SharedStores.Name)]
public sealed class KeptTests(Stores stores)
{
    // State, the queue, notices on their way and what is forgotten after 30 days; of a key its end is written once (a trigger of its own, see KeyTests); sessions come and go
    // with what was written in them, and whoever must replace the keys of the way through a provider deletes them.
    private static readonly string[] Changing = ["submissions", "jobs", "idempotency", "access_keys", "subscriptions", "notices", "sessions", "kept_forms", "protection_keys"];

    private readonly TestClock clock = new();

    [SkippableTheory]
    [InlineData(Engine.Sqlite)]
    [InlineData(Engine.PostgreSql)]
    public async Task Every_table_that_does_not_have_to_change_is_append_only(Engine engine)
    {
        var opened = await Opened.NewAsync(stores.New(engine), clock);
        await using var context = opened.Database.Open();
        var triggers = await context.Database.SqlQueryRaw<string>(engine == Engine.Sqlite
            ? "SELECT name AS \"Value\" FROM sqlite_master WHERE type = 'trigger'"
            : "SELECT tgname::text AS \"Value\" FROM pg_trigger WHERE NOT tgisinternal").ToListAsync();
        foreach (var table in context.Model.GetEntityTypes().Select(type => type.GetTableName()!).Except(Changing, StringComparer.Ordinal))
        {
            Assert.All(engine == Engine.Sqlite ? [$"{table}_no_update", $"{table}_no_delete"] : new[] { $"{table}_append_only" }, trigger => Assert.Contains(trigger, triggers, StringComparer.Ordinal));
        }
    }

    [SkippableTheory]
    [InlineData(Engine.Sqlite)]
    [InlineData(Engine.PostgreSql)]
    public async Task The_pictures_of_a_report_are_kept_with_it_for_whoever_may_see_it(Engine engine)
    {
        var opened = await Opened.NewAsync(stores.New(engine), clock);
        var one = await opened.SubmitAsync();
        await opened.ScreenAllAsync(result: Opened.Result() with { Pictures = [1, 2, 3] });
        await opened.Register.RescreenAsync(one.Id, "again", Opened.Reviewer, default);
        await opened.ScreenAllAsync(result: Opened.Result() with { Pictures = [4] });
        Assert.Equal([1, 2, 3], await opened.Reader.PicturesAsync(one.Id, 1, Opened.Ada, default));
        Assert.Equal([4], await opened.Reader.PicturesAsync(one.Id, 2, Opened.Reviewer, default));
        Assert.Null(await opened.Reader.PicturesAsync(one.Id, 3, Opened.Ada, default));
        Assert.Null(await opened.Reader.PicturesAsync(one.Id, 1, Opened.Bo, default));
        await using var context = opened.Database.Open();
        foreach (var sql in new[] { "UPDATE pictures SET bytes = bytes", "DELETE FROM pictures" })
        {
            Assert.Contains("append-only", (await Assert.ThrowsAnyAsync<Exception>(() => context.Database.ExecuteSqlRawAsync(sql))).ToString(), StringComparison.Ordinal);
        }
    }

    [SkippableTheory]
    [InlineData(Engine.Sqlite)]
    [InlineData(Engine.PostgreSql)]
    public async Task Records_of_a_shift_are_kept_as_they_came_and_numbered(Engine engine)
    {
        var opened = await Opened.NewAsync(stores.New(engine), clock);
        var one = await opened.SubmitAsync();
        var records = new ShiftRecords(opened.Database);
        Assert.Equal(1, await records.AddAsync(one.Id, [new HandedFile("record.yaml", [1, 2]), new HandedFile("stops.csv", [])], Opened.Ada, default));
        Assert.Equal(2, await records.AddAsync(one.Id, [new HandedFile("record.yaml", [3])], Opened.Reviewer, default));
        var kept = await records.ListAsync(one.Id, Opened.Ada, default);
        Assert.Equal([(1, "record.yaml", 2), (1, "stops.csv", 0), (2, "record.yaml", 1)], kept.SelectMany(record => record.Files.Select(file => (record.Upload, file.Name, file.Bytes.Length))));
        Assert.Empty(await records.ListAsync(one.Id, Opened.Bo, default));
        Assert.Equal(Refusal.NotFound, (await Assert.ThrowsAsync<RefusedException>(() => records.AddAsync(one.Id, [new HandedFile("record.yaml", [3])], Opened.Bo, default))).Refusal);
        Assert.Equal(2, (await opened.Reader.HistoryAsync(one.Id, Opened.Ada, default)).Count(entry => entry.Event == RegisterEvent.Recorded));
        await using var context = opened.Database.Open();
        foreach (var sql in new[] { "UPDATE record_files SET bytes = bytes", "DELETE FROM record_files" })
        {
            Assert.Contains("append-only", (await Assert.ThrowsAnyAsync<Exception>(() => context.Database.ExecuteSqlRawAsync(sql))).ToString(), StringComparison.Ordinal);
        }
    }

    [SkippableTheory]
    [InlineData(Engine.Sqlite)]
    [InlineData(Engine.PostgreSql)]
    public async Task The_last_decision_of_a_series_is_found_from_each_later_revision(Engine engine)
    {
        var opened = await Opened.NewAsync(stores.New(engine), clock);
        var first = await opened.ScreenedAsync();
        Assert.Null(await opened.Reader.LastDecisionAsync(first.Series, 1, Opened.Ada, default));
        await opened.Register.DecideAsync(first.Id, first.Version, Verdict.Returned, "mend it", Opened.Reviewer, default);
        await opened.Register.DecideAsync(first.Id, (await opened.Reader.FindAsync(first.Id, Opened.Ada, default))!.Version, Verdict.AcceptedWithDepartures, "read wrongly", Opened.Second, default);
        var second = await opened.SubmitAsync("plan: b", revisionOf: first.Id);
        var last = (await opened.Reader.LastDecisionAsync(first.Series, second.Revision, Opened.Ada, default))!;
        Assert.Equal((1, RegisterEvent.AcceptedWithDepartures, "read wrongly", "rev-2"), (last.Revision, last.Entry.Event, last.Entry.Comment, last.Entry.By));
        await opened.ScreenAllAsync();
        await opened.Register.DecideAsync(second.Id, (await opened.Reader.FindAsync(second.Id, Opened.Ada, default))!.Version, Verdict.Returned, "again", Opened.Reviewer, default);
        Assert.Equal((2, "again"), await SaidAsync(2));
        Assert.Equal((1, "read wrongly"), await SaidAsync(1));
        Assert.Null(await opened.Reader.LastDecisionAsync(first.Series, 2, Opened.Bo, default));

        async Task<(int, string?)> SaidAsync(int revision)
        {
            var found = (await opened.Reader.LastDecisionAsync(first.Series, revision, Opened.Ada, default))!;
            return (found.Revision, found.Entry.Comment);
        }
    }
}
