using Laygate.Register;
using Laygate.ServiceTests.Shared;

namespace Laygate.ServiceTests.Register;

/// <summary>The queue of reviewers: the same order on both databases, one reviewer at a time, and nothing passed over.</summary>
[Collection(SharedStores.Name)]
public sealed class QueueTests(Stores stores)
{
    private static readonly SubmissionFilter Waits = new() { OpenOnly = true };

    private readonly TestClock clock = new();

    [SkippableTheory]
    [InlineData(Engine.Sqlite)]
    [InlineData(Engine.PostgreSql)]
    public async Task The_queue_stands_in_the_order_that_is_asked_for_and_what_is_not_known_comes_last(Engine engine)
    {
        var opened = await Opened.NewAsync(stores.New(engine), clock);
        await AddAsync(opened, "b", new QueueFacts("release", new DateOnly(2027, 6, 2), "b 2", "fail: x", 3));
        await AddAsync(opened, "a", new QueueFacts("bid", new DateOnly(2027, 6, 1), "A 1", "fail: y", 0));
        await AddAsync(opened, "c", new QueueFacts("concept", null, null, null, null));
        Assert.Equal("abc", await OrderAsync(QueueOrder.Shift, false));
        Assert.Equal("bac", await OrderAsync(QueueOrder.Shift, true));
        Assert.Equal("bac", await OrderAsync(QueueOrder.Age, false));
        Assert.Equal("cab", await OrderAsync(QueueOrder.Age, true));
        Assert.Equal("abc", await OrderAsync(QueueOrder.Worst, false));
        Assert.Equal("abc", await OrderAsync(QueueOrder.Contract, false));
        Assert.Equal("bac", await OrderAsync(QueueOrder.Contract, true));
        Assert.Equal("acb", await OrderAsync(QueueOrder.Stage, false));
        Assert.Equal("abc", await OrderAsync(QueueOrder.Plan, false));
        Assert.Equal("cba", await OrderAsync(QueueOrder.Plan, true));
        foreach (var order in Enum.GetValues<QueueOrder>())
        {
            Assert.Equal(3, (await OrderAsync(order, true)).Length);
        }

        var part = await opened.Reader.QueueAsync(Waits, QueueOrder.Shift, false, 1, 1, Opened.Reviewer, default);
        Assert.Equal(("b", 3), (Assert.Single(part.Items).Plan!.Title, part.Count));
        Assert.Equal(0, (await opened.Reader.QueueAsync(Waits, QueueOrder.Shift, false, 0, 5, Opened.Bo, default)).Count);
        Assert.Equal("b", Assert.Single((await opened.Reader.QueueAsync(Waits with { Search = "B 2" }, QueueOrder.Shift, false, 0, 5, Opened.Reviewer, default)).Items).Plan!.Title);

        async Task<string> OrderAsync(QueueOrder order, bool descending) =>
            string.Concat((await opened.Reader.QueueAsync(Waits, order, descending, 0, 50, Opened.Reviewer, default)).Items.Select(one => one.Plan!.Title));
    }

    [SkippableTheory]
    [InlineData(Engine.Sqlite)]
    [InlineData(Engine.PostgreSql)]
    public async Task What_waits_is_latest_and_not_decided(Engine engine)
    {
        var opened = await Opened.NewAsync(stores.New(engine) with { MaxFailures = 1 }, clock);
        var first = await AddAsync(opened, "a", new QueueFacts("bid", null, null, null, null));
        var second = await AddAsync(opened, "b", new QueueFacts("bid", null, null, null, null), first.Id);
        var decided = await AddAsync(opened, "c", new QueueFacts("bid", null, null, null, null));
        await opened.Register.DecideAsync(decided.Id, decided.Version, Verdict.Returned, "x", Opened.Reviewer, default);
        var failing = await opened.SubmitAsync("plan: d");
        await opened.Queue.FailAsync((await opened.Queue.ClaimAsync("w", default))!, "broken", default);
        await opened.SubmitAsync("plan: waits for screening");
        var queue = await opened.Reader.QueueAsync(Waits, QueueOrder.Age, false, 0, 50, Opened.Reviewer, default);
        Assert.Equal([second.Id, failing.Id], queue.Items.Select(one => one.Id), StringComparer.Ordinal);
    }

    [SkippableTheory]
    [InlineData(Engine.Sqlite)]
    [InlineData(Engine.PostgreSql)]
    public async Task The_next_one_follows_in_the_order_of_the_list_and_is_nobody_elses(Engine engine)
    {
        var opened = await Opened.NewAsync(stores.New(engine), clock);
        var ids = new List<Submission>();
        foreach (var title in new[] { "a", "b", "c", "d", "e" })
        {
            ids.Add(await AddAsync(opened, title, new QueueFacts("bid", null, null, null, null), by: title is "c" ? Opened.Reviewer : null));
        }

        await opened.Register.TakeAsync(ids[1].Id, ids[1].Version, Opened.Second, default);
        Assert.Equal(ids[3].Id, await NextAsync(ids[0]));
        Assert.Equal(ids[4].Id, await NextAsync(ids[3]));
        Assert.Equal(ids[0].Id, await NextAsync(ids[4]));
        await opened.Register.DecideAsync(ids[0].Id, ids[0].Version, Verdict.Returned, "x", Opened.Reviewer, default);
        await opened.Register.DecideAsync(ids[3].Id, ids[3].Version, Verdict.Returned, "x", Opened.Reviewer, default);
        Assert.Null(await NextAsync(ids[4]));

        Task<string?> NextAsync(Submission one) => opened.Reader.NextAsync(one.Id, Waits, QueueOrder.Plan, false, Opened.Reviewer, default);
    }

    [SkippableTheory]
    [InlineData(Engine.Sqlite)]
    [InlineData(Engine.PostgreSql)]
    public async Task A_submission_is_taken_and_given_back_by_name_and_of_two_at_once_one_knows(Engine engine)
    {
        var opened = await Opened.NewAsync(stores.New(engine), clock);
        var one = await opened.ScreenedAsync();
        Assert.Equal(Refusal.NotAllowed, await RefusalAsync(() => opened.Register.TakeAsync(one.Id, one.Version, Opened.Ada, default)));
        Assert.Equal(Refusal.WrongState, await RefusalAsync(() => opened.Register.ReleaseAsync(one.Id, one.Version, Opened.Reviewer, default)));
        var both = await Task.WhenAll(new[] { Opened.Reviewer, Opened.Second }.Select(caller => Task.Run(() => RefusalAsync(() => opened.Register.TakeAsync(one.Id, one.Version, caller, default)))));
        Assert.Single(both, refusal => refusal is null);
        Assert.Single(both, refusal => refusal == Refusal.Changed);

        one = (await opened.Reader.FindAsync(one.Id, Opened.Ada, default))!;
        var (has, other) = one.Assignee!.Id == Opened.Reviewer.Id ? (Opened.Reviewer, Opened.Second) : (Opened.Second, Opened.Reviewer);
        Assert.Equal(Refusal.NotAllowed, await RefusalAsync(() => opened.Register.ReleaseAsync(one.Id, one.Version, other, default)));
        Assert.Equal(1, (await opened.Reader.QueueAsync(new SubmissionFilter { Assignee = has.Id }, QueueOrder.Shift, false, 0, 5, other, default)).Count);
        Assert.Equal(0, (await opened.Reader.QueueAsync(new SubmissionFilter { Assignee = string.Empty }, QueueOrder.Shift, false, 0, 5, other, default)).Count);
        one = await opened.Register.TakeAsync(one.Id, one.Version, other, default);
        Assert.Equal(other.Id, one.Assignee!.Id);
        one = await opened.Register.ReleaseAsync(one.Id, one.Version, other, default);
        Assert.Null(one.Assignee);
        Assert.Equal(
            [(RegisterEvent.Taken, has.Id), (RegisterEvent.Taken, other.Id), (RegisterEvent.Released, other.Id)],
            (await opened.Reader.HistoryAsync(one.Id, Opened.Ada, default)).TakeLast(3).Select(entry => (entry.Event, entry.By)));
        var own = await opened.ScreenedAsync("plan: own", Opened.Reviewer);
        Assert.Equal(Refusal.NotAllowed, await RefusalAsync(() => opened.Register.TakeAsync(own.Id, own.Version, Opened.Reviewer, default)));
    }

    [SkippableTheory]
    [InlineData(Engine.Sqlite)]
    [InlineData(Engine.PostgreSql)]
    public async Task What_could_not_be_screened_is_returned_with_a_word_and_nothing_else(Engine engine)
    {
        var opened = await Opened.NewAsync(stores.New(engine) with { MaxFailures = 1 }, clock);
        var one = await opened.SubmitAsync();
        await opened.Queue.FailAsync((await opened.Queue.ClaimAsync("w", default))!, "broken", default);
        one = (await opened.Reader.FindAsync(one.Id, Opened.Ada, default))!;
        Assert.Equal(SubmissionState.NotScreened, one.State);
        Assert.Equal(Refusal.WrongState, await RefusalAsync(() => DecideAsync(Verdict.Accepted, "x")));
        Assert.Equal(Refusal.BadRequest, await RefusalAsync(() => DecideAsync(Verdict.Returned, " ")));
        Assert.Null(await RefusalAsync(() => DecideAsync(Verdict.Returned, "Send it as one file.")));
        var last = (await opened.Reader.LastDecisionAsync(one.Series, 1, Opened.Ada, default))!.Entry;
        Assert.Equal((RegisterEvent.Returned, "Send it as one file.", null), (last.Event, last.Comment, last.ReportHash));

        Task DecideAsync(Verdict verdict, string comment) => opened.Register.DecideAsync(one.Id, one.Version, verdict, comment, Opened.Reviewer, default);
    }

    private async Task<Submission> AddAsync(Opened opened, string title, QueueFacts facts, string? revisionOf = null, Caller? by = null)
    {
        clock.Move(TimeSpan.FromMinutes(1));
        var one = await opened.SubmitAsync("plan: " + title, by, revisionOf);
        await opened.ScreenAllAsync(result: Opened.Result() with { Plan = new PlanName("id", title, null), Queue = facts });
        return (await opened.Reader.FindAsync(one.Id, Opened.Reviewer, default))!;
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
