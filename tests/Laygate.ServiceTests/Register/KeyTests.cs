using Laygate.Register;
using Laygate.ServiceTests.Shared;

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
        var issued = await opened.Keys.IssueAsync("Ada", Role.Submitter, clock.GetUtcNow().AddDays(1), default);
        Assert.Equal(new Caller(issued.Key.Id, "Ada", Role.Submitter), await opened.Keys.FindAsync(issued.Secret, default));
        foreach (var forged in new[] { "", "laygate_", issued.Secret[..^1], issued.Secret + "A", issued.Secret.ToUpperInvariant(), "laygate_" + issued.Key.Prefix, "laygate_' OR 1=1 --", new string('x', 100_000), "laygate_%_x" })
        {
            Assert.Null(await opened.Keys.FindAsync(forged, default));
        }

        var revoked = await opened.Keys.IssueAsync("Bo", Role.Reviewer, null, default);
        await opened.Keys.RevokeAsync(revoked.Key.Id, default);
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
        var issued = await opened.Keys.IssueAsync("Ada", Role.Submitter, null, default);
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
}
