using Laygate.Register;
using Laygate.ServiceTests.Shared;

namespace Laygate.ServiceTests.Register;

/// <summary>Counts for those who look after the register, and its books from their first entry, on both databases.</summary>
[Collection(SharedStores.Name)]
public sealed class RegisterStatisticsTests(Stores stores)
{
    private readonly TestClock clock = new();

    [SkippableTheory]
    [InlineData(Engine.Sqlite)]
    [InlineData(Engine.PostgreSql)]
    public async Task Waits_count_from_receipt_to_the_first_decision_and_outcomes_by_the_last(Engine engine)
    {
        var opened = await Opened.NewAsync(stores.New(engine), clock);
        var begin = clock.GetUtcNow();
        var first = await opened.ScreenedAsync();
        var second = await opened.ScreenedAsync("plan: b", Opened.Bo);
        var third = await opened.ScreenedAsync("plan: c");
        clock.Move(TimeSpan.FromDays(2));
        first = await opened.Register.DecideAsync(first.Id, first.Version, Verdict.Returned, "Mend it.", Opened.Reviewer, default);
        clock.Move(TimeSpan.FromDays(1));

        // The last decision says what became of it, the first one how long it waited.
        await opened.Register.DecideAsync(first.Id, first.Version, Verdict.AcceptedWithDepartures, "Seen.", Opened.Reviewer, default);
        await opened.Register.DecideAsync(second.Id, second.Version, Verdict.Returned, "Mend it.", Opened.Reviewer, default);
        _ = await opened.SubmitAsync("plan: d", revisionOf: third.Id);
        _ = await opened.SubmitAsync("plan: e", revisionOf: second.Id, by: Opened.Bo);
        var counts = await new RegisterStatistics(opened.Database).CountAsync(begin, clock.GetUtcNow().AddDays(1), default);
        Assert.Equal((5, 1, 2), (counts.Received, counts.Superseded, counts.Waiting));
        Assert.Equal([2, 3], counts.Days);
        Assert.Equal(
            [new SubmitterCounts(Opened.Bo.Id, Opened.Bo.Name, 2, 0, 0, 1), new SubmitterCounts(Opened.Ada.Id, Opened.Ada.Name, 3, 0, 1, 0)],
            counts.Submitters);
        Assert.Equal(2, (await new RegisterStatistics(opened.Database).CountAsync(clock.GetUtcNow(), clock.GetUtcNow().AddDays(1), default)).Received);
        Assert.Equal(3, (await new RegisterStatistics(opened.Database).CountAsync(begin, clock.GetUtcNow(), default)).Received);
    }

    [SkippableTheory]
    [InlineDataOfFullRun(Engine.Sqlite)]
    [InlineData(Engine.PostgreSql)]
    public async Task The_books_are_read_in_order_page_by_page_and_end_where_they_were_asked_to(Engine engine)
    {
        var opened = await Opened.NewAsync(stores.New(engine), clock);
        var audit = new AuditReader(opened.Database);
        Assert.Equal(new AuditEnd(0, 0, 0), await audit.EndAsync(default));
        for (var i = 0; i < 260; i++)
        {
            await opened.SubmitAsync($"plan: p{i}"); // Each leaves one entry, each take of one more.
            _ = await opened.Queue.ClaimAsync("w", default);
        }

        var one = await opened.ScreenedAsync();
        await new Comments(opened.Database).AddAsync(one.Id, new FindingKey(string.Empty, "SAF-083", "site"), "Which step?", true, Opened.Reviewer, default);
        var key = await opened.Keys.IssueAsync("Works office", Role.Submitter, null, Caller.Machine, default);
        var end = await audit.EndAsync(default);
        await opened.Keys.RevokeAsync(key.Key.Id, Caller.Machine, default);
        await opened.SubmitAsync("plan: later");

        var history = await audit.HistoryAsync(end, default).ToListAsync();
        Assert.True(history.Count > 500, "more than a page");
        Assert.Equal(history.Select(entry => entry.Number).Order(), history.Select(entry => entry.Number));
        Assert.Equal(history.Count, history.Select(entry => entry.Number).Distinct().Count());
        Assert.Equal(261, history.Count(entry => entry.Said.Event == RegisterEvent.Received));
        Assert.Equal(end.History, history[^1].Number);
        Assert.Equal("Which step?", Assert.Single(await audit.CommentsAsync(end, default).ToListAsync()).Said.Text);
        Assert.Equal(("Works office", "issued"), Assert.Single(await audit.KeysAsync(end, default).Select(act => (act.Name.Value, act.Event)).ToListAsync()));
        var later = await audit.HistoryAsync(await audit.EndAsync(default), default).ToListAsync();
        Assert.Equal(history, later.Take(history.Count));
        Assert.True(later.Count > history.Count, "what came later");
    }
}
