using Laygate.Register;
using Laygate.ServiceTests.Shared;
using Microsoft.EntityFrameworkCore;

namespace Laygate.ServiceTests.Register;

[Collection(SharedStores.Name)]
public sealed class KeyTests(Stores stores)
{
    private readonly TestClock clock = new();

    [SkippableTheory]
    [InlineData(Engine.Sqlite)]
    [InlineData(Engine.PostgreSql)]
    public async Task A_key_works_until_it_ends_or_is_revoked_and_a_forged_one_never(Engine engine)
    {
        var opened = await Opened.NewAsync(stores.New(engine), clock);
        var issued = await opened.Keys.IssueAsync("Ada", Role.Submitter, clock.GetUtcNow().AddDays(1), Caller.Machine, default);
        Assert.Equal(new Caller(issued.Key.Id, "Ada", Role.Submitter), await opened.Keys.FindAsync(issued.Secret, default));
        foreach (var forged in new[] { "", "laygate_", issued.Secret[..^1], issued.Secret + "A", issued.Secret.ToUpperInvariant(), "laygate_" + issued.Key.Prefix, "laygate_' OR 1=1 --", new string('x', 100_000), "laygate_%_x" })
        {
            Assert.Null(await opened.Keys.FindAsync(forged, default));
        }

        var revoked = await opened.Keys.IssueAsync("Bo", Role.Reviewer, null, Caller.Machine, default);
        await opened.Keys.RevokeAsync(revoked.Key.Id, Caller.Machine, default);
        Assert.Null(await opened.Keys.FindAsync(revoked.Secret, default));
        clock.Move(TimeSpan.FromDays(1));
        Assert.Null(await opened.Keys.FindAsync(issued.Secret, default));
    }

    [SkippableTheory]
    [InlineData(Engine.Sqlite)]
    [InlineData(Engine.PostgreSql)]
    public async Task No_secret_is_stored(Engine engine)
    {
        var opened = await Opened.NewAsync(stores.New(engine), clock);
        var issued = await opened.Keys.IssueAsync("Ada", Role.Submitter, null, Caller.Machine, default);
        await using var context = opened.Database.Open();
        var row = context.Keys.Single();
        var random = issued.Secret.Split('_', 3)[2];
        Assert.True(random.Length * 6 >= 128);
        Assert.DoesNotContain(random, string.Join(' ', row.Id, row.Prefix, row.Name, Convert.ToBase64String(row.SecretHash)), StringComparison.Ordinal);
        Assert.Equal(32, row.SecretHash.Length);
    }

    [SkippableTheory]
    [InlineData(Engine.Sqlite)]
    [InlineData(Engine.PostgreSql)]
    public async Task Processes_that_start_together_migrate_once_and_issue_one_first_administrator(Engine engine)
    {
        var settings = stores.New(engine);
        var issued = new System.Collections.Concurrent.ConcurrentBag<IssuedKey>();
        await Task.WhenAll(Enumerable.Range(0, 4).Select(index => Task.Run(() =>
        {
            var own = new Opened(settings, clock, index);
            return own.Database.MigrateAsync(
                async cancel =>
                {
                    if (await own.Keys.FirstAdministratorAsync(cancel) is { } key)
                    {
                        issued.Add(key);
                    }
                },
                default);
        })));
        Assert.Single(issued);
    }

    [SkippableTheory]
    [InlineData(Engine.Sqlite)]
    [InlineData(Engine.PostgreSql)]
    public async Task Who_issued_and_revoked_a_key_is_kept_for_good(Engine engine)
    {
        var opened = await Opened.NewAsync(stores.New(engine), clock);
        var (office, other) = (new Caller("adm-1", "Office", Role.Administrator), new Caller("adm-2", "Second office", Role.Administrator));
        var issued = await opened.Keys.IssueAsync("Ada", Role.Submitter, null, office, default);
        Assert.Equal((new KeyAct(clock.GetUtcNow(), "adm-1", "Office"), null), (issued.Key.Issued, issued.Key.Revoked));
        clock.Move(TimeSpan.FromHours(1));
        var at = clock.GetUtcNow();
        await opened.Keys.RevokeAsync(issued.Key.Id, other, default);
        clock.Move(TimeSpan.FromHours(1));
        await opened.Keys.RevokeAsync(issued.Key.Id, office, default);
        var kept = Assert.Single(await opened.Keys.ListAsync(default));
        Assert.Equal((at, new KeyAct(at, "adm-2", "Second office"), "adm-1"), (kept.RevokedAt!.Value, kept.Revoked, kept.Issued!.By));

        await opened.Keys.IssueAsync("Bo", Role.Submitter, null, office, default);
        await using var context = opened.Database.Open();
        foreach (var sql in new[]
        {
            "UPDATE key_history SET by_name = 'x'", "DELETE FROM key_history", "DELETE FROM access_keys", "UPDATE access_keys SET revoked_at = NULL",
            "UPDATE access_keys SET role = 'Administrator'", "UPDATE access_keys SET revoked_at = 1, role = 'Administrator'", "UPDATE access_keys SET revoked_at = 1 WHERE name = 'Ada'", "UPDATE access_keys SET expires_at = 1",
        })
        {
            var refused = await Assert.ThrowsAnyAsync<System.Data.Common.DbException>(() => context.Database.ExecuteSqlRawAsync(sql));
            Assert.Contains("append-only", refused.Message, StringComparison.Ordinal);
        }
    }

    [SkippableTheory]
    [InlineData(Engine.Sqlite)]
    [InlineData(Engine.PostgreSql)]
    public async Task Of_keys_that_work_no_two_have_one_name(Engine engine)
    {
        var opened = await Opened.NewAsync(stores.New(engine), clock);
        var results = await Task.WhenAll(Enumerable.Range(0, 6).Select(index => Task.Run(async () =>
        {
            try
            {
                return await opened.Keys.IssueAsync(index % 2 == 0 ? " Works Office" : "works office", Role.Submitter, clock.GetUtcNow().AddDays(1), Caller.Machine, default);
            }
            catch (RefusedException refused) when (refused.Refusal == Refusal.WrongState)
            {
                return null;
            }
        })));
        Assert.Single(results, result => result is not null);
        clock.Move(TimeSpan.FromDays(1));
        var second = await opened.Keys.IssueAsync("Works office", Role.Submitter, null, Caller.Machine, default);
        await opened.Keys.RevokeAsync(second.Key.Id, Caller.Machine, default);
        await opened.Keys.IssueAsync("Works office", Role.Submitter, null, Caller.Machine, default);
        foreach (var wrong in new[] { "", "  ", new string('a', 101), "a\0", "a\u0007", "a\nb", "a\ud800" })
        {
            Assert.Equal(Refusal.BadRequest, (await Assert.ThrowsAsync<RefusedException>(() => opened.Keys.IssueAsync(wrong, Role.Submitter, null, Caller.Machine, default))).Refusal);
        }
    }
}
