using Laygate.Register;
using Laygate.ServiceTests.Shared;
using Microsoft.EntityFrameworkCore;

namespace Laygate.ServiceTests.Register;

/// <summary>Comments on findings: of the series, by who may see it, and for ever.</summary>
[Collection(SharedStores.Name)]
public sealed class CommentTests(Stores stores)
{
    private static readonly FindingKey Finding = new(string.Empty, "SAF-083", "site");

    private readonly TestClock clock = new();

    [SkippableTheory]
    [InlineData(Engine.Sqlite)]
    [InlineData(Engine.PostgreSql)]
    public async Task What_is_written_stays_with_the_series_and_is_never_changed(Engine engine)
    {
        var opened = await Opened.NewAsync(stores.New(engine), clock);
        var comments = new Comments(opened.Database);
        var first = await opened.ScreenedAsync();
        await comments.AddAsync(first.Id, Finding, "Which step?\r\nSay it.", true, Opened.Reviewer, default);
        await comments.AddAsync(first.Id, Finding, "The ice.", false, Opened.Ada, default);
        var second = await opened.SubmitAsync("plan: b", revisionOf: first.Id);
        Assert.Equal(Refusal.WrongState, await RefusalAsync(() => comments.AddAsync(first.Id, Finding, "x", true, Opened.Ada, default)));
        await opened.ScreenAllAsync();
        await comments.AddAsync(second.Id, Finding with { Address = "course:a" }, "And here?", true, Opened.Second, default);
        var later = await comments.ListAsync(first.Series, 2, Opened.Ada, default);
        Assert.Equal([(1, "rev", true), (1, "ada", false), (2, "rev-2", true)], later.Select(one => (one.Revision, one.By, one.LeavesOpen)));
        Assert.Equal("Which step?\r\nSay it.", later[0].Text);
        Assert.Equal(2, (await comments.ListAsync(first.Series, 1, Opened.Reviewer, default)).Count);
        Assert.Empty(await comments.ListAsync(first.Series, 2, Opened.Bo, default));
        await using var context = opened.Database.Open();
        foreach (var sql in new[] { "UPDATE comments SET text = 'x'", "DELETE FROM comments" })
        {
            Assert.Contains("append-only", (await Assert.ThrowsAnyAsync<Exception>(() => context.Database.ExecuteSqlRawAsync(sql))).ToString(), StringComparison.Ordinal);
        }
    }

    [SkippableTheory]
    [InlineData(Engine.Sqlite)]
    [InlineData(Engine.PostgreSql)]
    public async Task Who_may_not_see_it_may_not_write_and_what_is_written_says_something(Engine engine)
    {
        var opened = await Opened.NewAsync(stores.New(engine), clock);
        var comments = new Comments(opened.Database);
        var waiting = await opened.SubmitAsync();
        Assert.Equal(Refusal.WrongState, await RefusalAsync(() => comments.AddAsync(waiting.Id, Finding, "x", true, Opened.Ada, default)));
        await opened.ScreenAllAsync();
        Assert.Equal(Refusal.NotFound, await RefusalAsync(() => comments.AddAsync(waiting.Id, Finding, "x", true, Opened.Bo, default)));
        Assert.Equal(Refusal.NotFound, await RefusalAsync(() => comments.AddAsync("none", Finding, "x", true, Opened.Reviewer, default)));
        foreach (var wrong in new[] { "", " \r\n", "a\0", new string('a', 10_001) })
        {
            Assert.Equal(Refusal.BadRequest, await RefusalAsync(() => comments.AddAsync(waiting.Id, Finding, wrong, true, Opened.Ada, default)));
        }

        Assert.Equal(Refusal.BadRequest, await RefusalAsync(() => comments.AddAsync(waiting.Id, Finding with { Address = "a\nb" }, "x", true, Opened.Ada, default)));
        Assert.Empty(await comments.ListAsync(waiting.Series, 1, Opened.Ada, default));
    }

    [SkippableTheory]
    [InlineData(Engine.Sqlite)]
    [InlineData(Engine.PostgreSql)]
    public async Task A_decision_does_not_pass_over_a_comment_that_came_meanwhile_and_keeps_what_was_open(Engine engine)
    {
        var opened = await Opened.NewAsync(stores.New(engine), clock);
        var comments = new Comments(opened.Database);
        var read = await opened.ScreenedAsync();
        await comments.AddAsync(read.Id, Finding, "We have changed it.", false, Opened.Ada, default);
        Assert.Equal(Refusal.Changed, await RefusalAsync(() => opened.Register.DecideAsync(read.Id, read.Version, Verdict.Returned, "x", Opened.Reviewer, default)));
        var now = (await opened.Reader.FindAsync(read.Id, Opened.Reviewer, default))!;
        await opened.Register.DecideAsync(now.Id, now.Version, Verdict.Returned, "x", Opened.Reviewer, default, "SAF-083 site\nLAY-001 course:a");
        var history = await opened.Reader.HistoryAsync(read.Id, Opened.Ada, default);
        Assert.Equal([null, "SAF-083 site\nLAY-001 course:a"], history.TakeLast(2).Select(entry => entry.OpenComments), StringComparer.Ordinal);
        Assert.Equal((RegisterEvent.Commented, "SAF-083 site: answered"), (history[^2].Event, history[^2].Comment));
    }

    private static async Task<Refusal?> RefusalAsync(Func<Task> work)
    {
        try
        {
            await work();
            return null;
        }
        catch (RefusedException refused)
        {
            return refused.Refusal;
        }
    }
}
