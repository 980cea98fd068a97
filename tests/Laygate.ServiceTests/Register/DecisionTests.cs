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

    private static async Task<Refusal?> RefusalAsync(Opened opened, Submission submission, Verdict verdict, string comment, Caller caller)
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
