using System.Collections.Concurrent;
using Laygate.Register;
using Laygate.ServiceTests.Shared;

namespace Laygate.ServiceTests.Register;

/// <summary>The queue: each submission is screened once in effect, whoever dies when.</summary>
[Collection(SharedStores.Name)]
public sealed class ScreeningTests(Stores stores)
{
    private readonly TestClock clock = new();

    // What comes after a screening has deaths of its own: see NoticeTests and RetentionTests.
    private static readonly Moment[] Elsewhere = [Moment.NoticeBeforeCommit, Moment.ReplacedBeforeCommit];

    public static TheoryData<Engine, Moment> Deaths()
    {
        var data = new TheoryData<Engine, Moment>();
        foreach (var engine in Enum.GetValues<Engine>())
        {
            foreach (var moment in Enum.GetValues<Moment>().Except(Elsewhere))
            {
                data.Add(engine, moment);
            }
        }

        return data;
    }

    [SkippableTheory]
    [MemberData(nameof(Deaths))]
    public async Task Whoever_dies_at_any_moment_loses_nothing_and_nothing_counts_twice(Engine engine, Moment moment)
    {
        var settings = stores.New(engine);
        var before = await Opened.NewAsync(settings, clock);
        var kept = await before.SubmitAsync("plan: kept");
        var dying = new Opened(settings, clock, 7, moment);
        await Assert.ThrowsAsync<DiedException>(() => LiveAsync(dying));

        // The next process starts after the lease; its caller repeats the request that was not acknowledged.
        clock.Move(settings.Lease + TimeSpan.FromSeconds(1));
        var next = new Opened(settings, clock, 8);
        var repeated = await next.SubmitAsync("plan: second", key: "once");
        await next.ScreenAllAsync();
        var all = (await next.Reader.ListAsync(new SubmissionFilter(), null, 50, Opened.Reviewer, default)).Items;
        Assert.Equal(repeated.Id + kept.Id, string.Concat(all.Select(one => one.Id)));
        foreach (var one in all)
        {
            var history = await next.Reader.HistoryAsync(one.Id, Opened.Reviewer, default);
            Assert.Single(history, entry => entry.Event == RegisterEvent.Received);
            Assert.Single(history, entry => entry.Event == RegisterEvent.Screened);
            Assert.NotNull(one.Report);
            Assert.Equal("{}"u8.ToArray(), (await next.Reader.ReportAsync(one.Id, null, Opened.Reviewer, default))!.Json);
        }

        var decided = moment == Moment.DecisionCommitted;
        Assert.Equal(decided ? SubmissionState.Accepted : SubmissionState.Screened, all[1].State);
    }

    [SkippableTheory]
    [InlineData(Engine.Sqlite)]
    [InlineData(Engine.PostgreSql)]
    public async Task A_report_of_an_attempt_that_no_longer_holds_is_not_stored(Engine engine)
    {
        var settings = stores.New(engine);
        var opened = await Opened.NewAsync(settings, clock);
        var submission = await opened.SubmitAsync();
        var slow = (await opened.Queue.ClaimAsync("slow", default))!;
        Assert.Null(await opened.Queue.ClaimAsync("other", default));
        clock.Move(settings.Lease + TimeSpan.FromSeconds(1));
        var quick = (await opened.Queue.ClaimAsync("quick", default))!;
        Assert.True(quick.Attempt > slow.Attempt);

        Assert.False(await opened.Queue.RenewAsync(slow, default));
        Assert.False(await opened.Queue.CompleteAsync(slow, Opened.Result("\"slow\""), default));
        Assert.False(await opened.Queue.HandBackAsync(slow, default));
        Assert.False(await opened.Queue.FailAsync(slow, "slow", default));
        Assert.True(await opened.Queue.CompleteAsync(quick, Opened.Result("\"quick\""), default));
        Assert.False(await opened.Queue.CompleteAsync(quick, Opened.Result("\"twice\""), default));
        Assert.Equal("\"quick\""u8.ToArray(), (await opened.Reader.ReportAsync(submission.Id, null, Opened.Ada, default))!.Json);
    }

    [SkippableTheory]
    [InlineData(Engine.Sqlite)]
    [InlineData(Engine.PostgreSql)]
    public async Task State_report_and_history_belong_together_when_the_screening_ends_while_they_are_read(Engine engine)
    {
        var settings = stores.New(engine);
        var screens = await Opened.NewAsync(settings, clock);
        var id = (await screens.SubmitAsync()).Id;
        var claim = (await screens.Queue.ClaimAsync("w", default))!;
        var reads = new Opened(settings, clock, 2, new DoesOnceAt(
            Moment.ReportRead,
            () => Assert.True(screens.Queue.CompleteAsync(claim, Opened.Result(), default).GetAwaiter().GetResult())));

        var shown = (await reads.Reader.WithReportAsync(id, Opened.Ada, default))!;

        Assert.Equal(SubmissionState.Screened, shown.Submission.State);
        Assert.NotNull(shown.Report);
        Assert.Equal(RegisterEvent.Screened, shown.History[^1].Event);
    }

    [SkippableTheory]
    [InlineData(Engine.Sqlite)]
    [InlineData(Engine.PostgreSql)]
    public async Task A_renewed_lease_is_not_taken_away(Engine engine)
    {
        var settings = stores.New(engine);
        var opened = await Opened.NewAsync(settings, clock);
        await opened.SubmitAsync();
        var claim = (await opened.Queue.ClaimAsync("w", default))!;
        for (var beat = 0; beat < 5; beat++)
        {
            clock.Move(settings.Lease * 0.8);
            Assert.True(await opened.Queue.RenewAsync(claim, default));
            Assert.Null(await opened.Queue.ClaimAsync("other", default));
        }

        Assert.True(await opened.Queue.CompleteAsync(claim, Opened.Result(), default));
    }

    [SkippableTheory]
    [InlineData(Engine.Sqlite)]
    [InlineData(Engine.PostgreSql)]
    public async Task Many_workers_take_each_submission_once(Engine engine)
    {
        var settings = stores.New(engine);
        var opened = await Opened.NewAsync(settings, clock);
        for (var index = 0; index < 40; index++)
        {
            await opened.SubmitAsync($"plan: {index}");
        }

        var taken = new ConcurrentBag<long>();
        await Task.WhenAll(Enumerable.Range(0, 6).Select(worker => Task.Run(async () =>
        {
            var own = new Opened(settings, clock, worker);
            while (await own.Queue.ClaimAsync($"w{worker}", default) is { } claim)
            {
                taken.Add(claim.Number);
                Assert.True(await own.Queue.CompleteAsync(claim, Opened.Result(), default));
            }
        })));
        Assert.Equal(40, taken.Count);
        Assert.Equal(40, taken.Distinct().Count());
    }

    [SkippableTheory]
    [InlineData(Engine.Sqlite)]
    [InlineData(Engine.PostgreSql)]
    public async Task A_submission_that_always_fails_is_given_up_and_can_be_asked_for_again(Engine engine)
    {
        var settings = stores.New(engine);
        var opened = await Opened.NewAsync(settings, clock);
        var submission = await opened.SubmitAsync();
        for (var attempt = 1; attempt <= settings.MaxFailures; attempt++)
        {
            var claim = (await opened.Queue.ClaimAsync("w", default))!;
            Assert.True(await opened.Queue.FailAsync(claim, "TimeoutException", default));
            Assert.Null(await opened.Queue.ClaimAsync("w", default));
            clock.Move(settings.RetryAfter * 8);
        }

        Assert.Equal(SubmissionState.NotScreened, (await opened.Reader.FindAsync(submission.Id, Opened.Ada, default))!.State);
        await opened.Register.RescreenAsync(submission.Id, "mended", Opened.Reviewer, default);
        Assert.Equal(1, await opened.ScreenAllAsync());
        Assert.Equal(SubmissionState.Screened, (await opened.Reader.FindAsync(submission.Id, Opened.Ada, default))!.State);
    }

    [SkippableTheory]
    [InlineData(Engine.Sqlite)]
    [InlineData(Engine.PostgreSql)]
    public async Task A_submission_that_kills_each_worker_is_given_up(Engine engine)
    {
        var settings = stores.New(engine);
        var opened = await Opened.NewAsync(settings, clock);
        var deadly = await opened.SubmitAsync();
        for (var death = 0; death < settings.MaxFailures; death++)
        {
            Assert.NotNull(await opened.Queue.ClaimAsync("w", default));
            clock.Move(settings.Lease * 2);
        }

        var other = await opened.SubmitAsync("plan: other");
        Assert.Equal(other.Id, (await opened.Queue.ClaimAsync("w", default))!.SubmissionId);
        Assert.Equal(SubmissionState.NotScreened, (await opened.Reader.FindAsync(deadly.Id, Opened.Ada, default))!.State);
    }

    [SkippableTheory]
    [InlineData(Engine.Sqlite)]
    [InlineData(Engine.PostgreSql)]
    public async Task Handing_back_is_no_failure_and_the_next_takes_it_at_once(Engine engine)
    {
        var settings = stores.New(engine);
        var opened = await Opened.NewAsync(settings, clock);
        await opened.SubmitAsync();
        for (var stop = 0; stop < settings.MaxFailures + 2; stop++)
        {
            var claim = (await opened.Queue.ClaimAsync("w", default))!;
            Assert.True(await opened.Queue.HandBackAsync(claim, default));
        }

        Assert.Equal(1, await opened.ScreenAllAsync());
    }

    [SkippableTheory]
    [InlineData(Engine.Sqlite)]
    [InlineData(Engine.PostgreSql)]
    public async Task Open_submissions_are_screened_again_under_a_new_rule_book_and_keep_their_earlier_reports(Engine engine)
    {
        var opened = await Opened.NewAsync(stores.New(engine), clock);
        var open = await opened.ScreenedAsync("plan: open");
        var decided = await opened.ScreenedAsync("plan: decided");
        await opened.Register.DecideAsync(decided.Id, decided.Version, Verdict.Accepted, "as agreed", Opened.Reviewer, default);

        Assert.Empty(await opened.Register.RescreenOpenAsync("book-1", "same", Opened.Reviewer, default));
        Assert.Equal([open.Id], await opened.Register.RescreenOpenAsync("book-2", "new edition", Opened.Reviewer, default));
        await opened.ScreenAllAsync("book-2");
        var again = (await opened.Reader.FindAsync(open.Id, Opened.Ada, default))!;
        Assert.Equal((2, "book-2"), (again.Report!.Screening, again.Report.BookHash));
        Assert.Equal("book-1", (await opened.Reader.ReportAsync(open.Id, 1, Opened.Ada, default))!.Summary.BookHash);
        Assert.Equal("book-1", (await opened.Reader.FindAsync(decided.Id, Opened.Ada, default))!.Report!.BookHash);
    }

    private static async Task LiveAsync(Opened opened)
    {
        await opened.SubmitAsync("plan: second", key: "once");
        await opened.ScreenAllAsync();
        var first = (await opened.Reader.ListAsync(new SubmissionFilter(), null, 50, Opened.Reviewer, default)).Items[^1];
        await opened.Reader.ReportAsync(first.Id, null, Opened.Reviewer, default);
        await opened.Register.DecideAsync(first.Id, first.Version, Verdict.Accepted, "as agreed", Opened.Reviewer, default);
    }
}
