using Laygate.Register;
using Laygate.ServiceTests.Shared;

namespace Laygate.ServiceTests.Register;

[Collection(SharedStores.Name)]
public sealed class DecisionTests(Stores stores)
{
    private readonly TestClock clock = new();

    [SkippableTheory]
    [InlineData(Engine.Sqlite)]
    [InlineData(Engine.PostgreSql)]
    public async Task A_decision_carries_who_why_and_on_which_report(Engine engine)
    {
        var opened = await Opened.NewAsync(stores.New(engine), clock);
        var screened = await opened.ScreenedAsync();
        var decided = await opened.Register.DecideAsync(screened.Id, screened.Version, Verdict.AcceptedWithDepartures, "wind screen on site", Opened.Reviewer, default);
        Assert.Equal(SubmissionState.AcceptedWithDepartures, decided.State);
        var last = (await opened.Reader.HistoryAsync(screened.Id, Opened.Ada, default))[^1];
        Assert.Equal(
            (RegisterEvent.AcceptedWithDepartures, "rev", "Reviewer", "wind screen on site", screened.Report!.Hash),
            (last.Event, last.By, last.ByName, last.Comment, last.ReportHash));
    }

    [SkippableTheory]
    [InlineData(Engine.Sqlite)]
    [InlineData(Engine.PostgreSql)]
    public async Task Of_two_decisions_at_once_one_holds(Engine engine)
    {
        var opened = await Opened.NewAsync(stores.New(engine), clock);
        var screened = await opened.ScreenedAsync();
        var results = await Task.WhenAll(Enum.GetValues<Verdict>().Select(verdict => Task.Run(async () =>
        {
            try
            {
                await opened.Register.DecideAsync(screened.Id, screened.Version, verdict, "said", Opened.Reviewer, default);
                return (Refusal?)null;
            }
            catch (RefusedException refused)
            {
                return refused.Refusal;
            }
        })));
        Assert.Single(results, result => result is null);
        Assert.Equal(2, results.Count(result => result == Refusal.Changed));
    }

    [SkippableTheory]
    [InlineData(Engine.Sqlite)]
    [InlineData(Engine.PostgreSql)]
    public async Task What_may_not_be_decided_is_refused(Engine engine)
    {
        var opened = await Opened.NewAsync(stores.New(engine), clock);
        var waiting = await opened.SubmitAsync();
        Assert.Equal(Refusal.WrongState, await RefusalAsync(opened, waiting, Verdict.Accepted, "x", Opened.Reviewer));
        var claim = (await opened.Queue.ClaimAsync("w", default))!;
        await opened.Queue.CompleteAsync(claim, Opened.Result(readable: false), default);
        var unreadable = (await opened.Reader.FindAsync(waiting.Id, Opened.Ada, default))!;
        Assert.Equal(SubmissionState.FailedToRead, unreadable.State);
        Assert.Equal(Refusal.NotAllowed, await RefusalAsync(opened, unreadable, Verdict.Returned, "x", Opened.Ada));
        Assert.Equal(Refusal.WrongState, await RefusalAsync(opened, unreadable, Verdict.Accepted, "x", Opened.Reviewer));
        Assert.Equal(Refusal.BadRequest, await RefusalAsync(opened, unreadable, Verdict.Returned, "  ", Opened.Reviewer));
        Assert.Equal(Refusal.NotFound, await RefusalAsync(opened, unreadable with { Id = "none" }, Verdict.Returned, "x", Opened.Reviewer));
        Assert.Equal(Refusal.Changed, await RefusalAsync(opened, waiting, Verdict.Returned, "x", Opened.Reviewer));
        Assert.Null(await RefusalAsync(opened, unreadable, Verdict.Returned, "x", Opened.Reviewer));
    }

    [SkippableTheory]
    [InlineData(Engine.Sqlite)]
    [InlineData(Engine.PostgreSql)]
    public async Task A_plan_that_fails_is_not_accepted_without_a_word(Engine engine)
    {
        var opened = await Opened.NewAsync(stores.New(engine), clock);
        var fails = await opened.ScreenedAsync();
        Assert.Equal(Refusal.BadRequest, await RefusalAsync(opened, fails, Verdict.Accepted, " ", Opened.Reviewer));
        Assert.Null(await RefusalAsync(opened, fails, Verdict.Accepted, "the failing course is not laid", Opened.Reviewer));
        var passes = await PassingAsync(opened);
        Assert.Null(await RefusalAsync(opened, passes, Verdict.Accepted, null, Opened.Reviewer));
    }

    [SkippableTheory]
    [InlineData(Engine.Sqlite)]
    [InlineData(Engine.PostgreSql)]
    public async Task Where_the_settings_ask_for_departures_a_plan_that_fails_is_accepted_with_them(Engine engine)
    {
        var opened = await Opened.NewAsync(stores.New(engine) with { AcceptFailing = FailingAcceptance.Departures }, clock);
        var fails = await opened.ScreenedAsync();
        Assert.Equal(Refusal.WrongState, await RefusalAsync(opened, fails, Verdict.Accepted, "because", Opened.Reviewer));
        Assert.Null(await RefusalAsync(opened, fails, Verdict.AcceptedWithDepartures, "LAY-001: trial section first", Opened.Reviewer));
        Assert.Null(await RefusalAsync(opened, await PassingAsync(opened), Verdict.Accepted, null, Opened.Reviewer));
    }

    [SkippableTheory]
    [InlineData(Engine.Sqlite)]
    [InlineData(Engine.PostgreSql)]
    public async Task Where_the_settings_ask_for_it_a_second_reviewer_accepts_a_plan_that_fails(Engine engine)
    {
        var opened = await Opened.NewAsync(stores.New(engine) with { AcceptFailing = FailingAcceptance.SecondReviewer }, clock);
        var id = (await opened.ScreenedAsync()).Id;
        Assert.Null(await RefusalAsync(opened, await NowAsync(opened, id), Verdict.Accepted, "because", Opened.Reviewer));
        Assert.Equal(SubmissionState.Screened, (await NowAsync(opened, id)).State);
        Assert.Equal(Refusal.WrongState, await RefusalAsync(opened, await NowAsync(opened, id), Verdict.Accepted, "again", Opened.Reviewer));
        Assert.Equal(Refusal.WrongState, await RefusalAsync(opened, await NowAsync(opened, id), Verdict.AcceptedWithDepartures, "otherwise", Opened.Second));

        // Another report: what was said of the first does not count.
        await opened.Register.RescreenAsync(id, "new edition", Opened.Reviewer, default);
        await opened.ScreenAllAsync();
        Assert.Null(await RefusalAsync(opened, await NowAsync(opened, id), Verdict.Accepted, "because", Opened.Second));
        Assert.Equal(SubmissionState.Screened, (await NowAsync(opened, id)).State);
        Assert.Null(await RefusalAsync(opened, await NowAsync(opened, id), Verdict.Accepted, "I agree", Opened.Reviewer));
        Assert.Equal(SubmissionState.Accepted, (await NowAsync(opened, id)).State);
        Assert.Equal(
            [RegisterEvent.FirstAccepted, RegisterEvent.Accepted],
            (await opened.Reader.HistoryAsync(id, Opened.Ada, default)).TakeLast(2).Select(entry => entry.Event));

        var alone = await opened.ScreenedAsync("plan: b");
        Assert.Null(await RefusalAsync(opened, alone, Verdict.Returned, "mend it", Opened.Reviewer));
        Assert.Equal(SubmissionState.Returned, (await NowAsync(opened, alone.Id)).State);
        Assert.Null(await RefusalAsync(opened, await PassingAsync(opened), Verdict.Accepted, null, Opened.Reviewer));
    }

    [SkippableTheory]
    [InlineData(Engine.Sqlite)]
    [InlineData(Engine.PostgreSql)]
    public async Task Nobody_decides_on_their_own_submission_unless_a_setting_allows_it_and_then_the_history_says_so(Engine engine)
    {
        var settings = stores.New(engine);
        var opened = await Opened.NewAsync(settings, clock);
        var own = await opened.ScreenedAsync(by: Opened.Reviewer);
        foreach (var verdict in Enum.GetValues<Verdict>())
        {
            Assert.Equal(Refusal.NotAllowed, await RefusalAsync(opened, own, verdict, "x", Opened.Reviewer));
        }

        var allowing = new Opened(settings with { OwnDecisions = true }, clock, 2);
        Assert.Null(await RefusalAsync(allowing, own, Verdict.Accepted, "alone today", Opened.Reviewer));
        Assert.Null(await RefusalAsync(allowing, await NowAsync(allowing, own.Id), Verdict.Returned, "seen by two", Opened.Second));
        Assert.Equal([false, false, false, true, false], (await opened.Reader.HistoryAsync(own.Id, Opened.Reviewer, default)).Select(entry => entry.OnOwn));
    }

    [SkippableTheory]
    [InlineData(Engine.Sqlite)]
    [InlineData(Engine.PostgreSql)]
    public async Task A_superseded_revision_is_not_decided_and_a_changed_decision_says_why(Engine engine)
    {
        var opened = await Opened.NewAsync(stores.New(engine), clock);
        var first = await opened.ScreenedAsync();
        var second = await opened.SubmitAsync("plan: b", revisionOf: first.Id);
        await opened.ScreenAllAsync();
        Assert.False((await NowAsync(opened, first.Id)).Latest);
        Assert.Equal(Refusal.WrongState, await RefusalAsync(opened, await NowAsync(opened, first.Id), Verdict.Returned, "x", Opened.Reviewer));

        Assert.Null(await RefusalAsync(opened, await NowAsync(opened, second.Id), Verdict.Returned, "mend it", Opened.Reviewer));
        Assert.Equal(Refusal.BadRequest, await RefusalAsync(opened, await NowAsync(opened, second.Id), Verdict.Accepted, null, Opened.Reviewer));
        Assert.Null(await RefusalAsync(opened, await NowAsync(opened, second.Id), Verdict.Accepted, "read wrongly", Opened.Reviewer));
        var passes = await PassingAsync(opened);
        Assert.Null(await RefusalAsync(opened, passes, Verdict.Accepted, null, Opened.Reviewer));
        Assert.Equal(Refusal.BadRequest, await RefusalAsync(opened, await NowAsync(opened, passes.Id), Verdict.Accepted, null, Opened.Second));
    }

    [SkippableTheory]
    [InlineData(Engine.Sqlite)]
    [InlineData(Engine.PostgreSql)]
    public async Task Every_text_that_is_kept_has_a_length_and_no_control_characters(Engine engine)
    {
        var opened = await Opened.NewAsync(stores.New(engine), clock);
        var screened = await opened.ScreenedAsync();
        foreach (var wrong in new[] { new string('a', 10_001), "a\0", "a\u0001", "\ud800" })
        {
            Assert.Equal(Refusal.BadRequest, await RefusalAsync(opened, screened, Verdict.Returned, wrong, Opened.Reviewer));
            await BadAsync(() => opened.Register.RescreenAsync(screened.Id, wrong, Opened.Reviewer, default));
            await BadAsync(() => opened.Register.RescreenOpenAsync("book-2", wrong, Opened.Reviewer, default));
            await BadAsync(() => opened.SubmitAsync(name: wrong));
            await BadAsync(() => opened.SubmitAsync(key: wrong));
            await BadAsync(() => opened.SubmitAsync(revisionOf: wrong));
            await BadAsync(() => opened.Reader.FindAsync(wrong, Opened.Reviewer, default));
            await BadAsync(() => opened.Reader.ListAsync(new SubmissionFilter { Search = wrong }, null, 5, Opened.Reviewer, default));
        }

        await BadAsync(() => opened.Register.RescreenAsync(screened.Id, " ", Opened.Reviewer, default));
        Assert.Null(await RefusalAsync(opened, screened, Verdict.Returned, "two\r\n\tlines", Opened.Reviewer));

        // What a plan calls itself is the plan's: it is cut and shown, never refused.
        var odd = await opened.SubmitAsync("plan: odd");
        await opened.ScreenAllAsync(result: Opened.Result() with { Plan = new PlanName("id\0", new string('ä', 100_000), "\ud800") });
        var named = (await NowAsync(opened, odd.Id)).Plan!;
        Assert.Equal(("id\uFFFD", new string('ä', 299) + "…", "\uFFFD"), (named.Id, named.Title, named.Revision));
    }

    private static async Task BadAsync(Func<Task> refused) => Assert.Equal(Refusal.BadRequest, (await Assert.ThrowsAsync<RefusedException>(refused)).Refusal);

    private static async Task<Submission> NowAsync(Opened opened, string id) => (await opened.Reader.FindAsync(id, Opened.Reviewer, default))!;

    private static async Task<Submission> PassingAsync(Opened opened)
    {
        var submission = await opened.SubmitAsync("plan: passes");
        await opened.ScreenAllAsync(result: Opened.Result() with { Counts = new ReportCounts(0, 2, 0, 0, 5, 0) });
        return await NowAsync(opened, submission.Id);
    }

    private static async Task<Refusal?> RefusalAsync(Opened opened, Submission submission, Verdict verdict, string? comment, Caller caller)
    {
        try
        {
            await opened.Register.DecideAsync(submission.Id, submission.Version, verdict, comment, caller, default);
            return null;
        }
        catch (RefusedException refused)
        {
            return refused.Refusal;
        }
    }
}
