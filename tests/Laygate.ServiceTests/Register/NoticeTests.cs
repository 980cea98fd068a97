using Laygate.Register;
using Laygate.Register.Storage;
using Laygate.ServiceTests.Shared;
using Microsoft.EntityFrameworkCore;

namespace Laygate.ServiceTests.Register;

/// <summary>Notices in the register: written with their event or not at all, once for each who wants to know, sent again under the same id, given up in sight.</summary>
[Collection(SharedStores.Name)]
public sealed class NoticeTests(Stores stores)
{
    private static readonly Caller Chief = new("chief", "Chief", Role.Administrator);
    private static readonly FindingKey Finding = new(string.Empty, "SAF-083", "site");
    private static readonly NoticeEvent[] All = Enum.GetValues<NoticeEvent>();

    private readonly TestClock clock = new();

    [SkippableTheory]
    [InlineData(Engine.Sqlite)]
    [InlineData(Engine.PostgreSql)]
    public async Task Every_event_gives_its_notice_once_to_whoever_wants_to_know(Engine engine)
    {
        var opened = await Opened.NewAsync(stores.New(engine), clock);
        var subscriptions = new Subscriptions(opened.Database);
        await MailAsync(subscriptions, Opened.Ada, "ada@example.org", All);
        await MailAsync(subscriptions, Opened.Bo, "bo@example.org", All);
        await MailAsync(subscriptions, Opened.Reviewer, "rev@example.org", NoticeEvent.Returned);
        await HookAsync(subscriptions, "https://hook.example.org/", All);

        var one = await opened.SubmitAsync();
        await opened.ScreenAllAsync(result: Opened.Result() with { Failing = new SeverityCounts(1, 0, 0) });
        await new Comments(opened.Database).AddAsync(one.Id, Finding, "Which?", true, Opened.Reviewer, default);
        await new Comments(opened.Database).AddAsync(one.Id, Finding, "That.", false, Opened.Ada, default);
        await opened.Register.RescreenAsync(one.Id, "again", Opened.Reviewer, default);
        await opened.ScreenAllAsync(result: Opened.Result() with { Changes = new ScreeningChanges(0, 0, 0, 0, 0) });
        await opened.Register.RescreenAsync(one.Id, "again", Opened.Reviewer, default);
        await opened.ScreenAllAsync(result: Opened.Result() with { Changes = new ScreeningChanges(2, 0, 1, 0, 0) });
        await DecideAsync(opened, one.Id, Verdict.Returned);
        await DecideAsync(opened, one.Id, Verdict.AcceptedWithDepartures);

        NoticeEvent[] told = [NoticeEvent.Submitted, NoticeEvent.Screened, NoticeEvent.CommentOpen, NoticeEvent.ScreenedAgain, NoticeEvent.Returned, NoticeEvent.Accepted];
        var sent = await DrainAsync(opened);
        Assert.Equal(told, sent.Where(notice => notice.To.Target == "ada@example.org").Select(notice => notice.Event));
        Assert.Equal(told, sent.Where(notice => notice.To.Channel == Channel.Webhook).Select(notice => notice.Event));
        Assert.Equal([NoticeEvent.Returned], sent.Where(notice => notice.To.Target == "rev@example.org").Select(notice => notice.Event));
        Assert.DoesNotContain(sent, notice => notice.To.Target == "bo@example.org");
        Assert.Equal(sent.Count, sent.Select(notice => notice.Id).Distinct(StringComparer.Ordinal).Count());
        var facts = sent.Where(notice => notice.To.Channel == Channel.Webhook).Select(notice => notice.Facts).ToList();
        Assert.Equal((null, null), (facts[0].Title, facts[0].Counts));
        Assert.Equal(("Title Ä", SubmissionState.Screened, new ReportCounts(1, 2, 3, 4, 5, 6), new SeverityCounts(1, 0, 0)), (facts[1].Title, facts[1].State, facts[1].Counts, facts[1].Failing));
        Assert.Equal(new ScreeningChanges(2, 0, 1, 0, 0), facts[3].Changes);
        Assert.Equal(SubmissionState.AcceptedWithDepartures, facts[5].State);
        Assert.Empty(await DrainAsync(opened));
    }

    [SkippableTheory]
    [InlineData(Engine.Sqlite)]
    [InlineData(Engine.PostgreSql)]
    public async Task A_notice_is_there_if_and_only_if_its_event_is(Engine engine)
    {
        var settings = stores.New(engine);
        var opened = await Opened.NewAsync(settings, clock);
        await HookAsync(new Subscriptions(opened.Database), "https://hook.example.org/", All);
        var seed = 10;
        foreach (var (dies, there) in new[] { (Moment.SubmissionBeforeCommit, 0), (Moment.SubmissionCommitted, 1), (Moment.ReportBeforeCommit, 0), (Moment.ReportCommitted, 1), (Moment.DecisionBeforeCommit, 0), (Moment.DecisionCommitted, 1) })
        {
            var before = await CountAsync(opened);
            var dying = new Opened(settings, clock, ++seed, dies);
            if (dies is Moment.SubmissionBeforeCommit or Moment.SubmissionCommitted)
            {
                await Assert.ThrowsAsync<DiedException>(() => dying.SubmitAsync());
                await opened.ScreenAllAsync();
                Assert.Equal(before + (2 * there), await CountAsync(opened));
            }
            else if (dies is Moment.ReportBeforeCommit or Moment.ReportCommitted)
            {
                await opened.SubmitAsync();
                await Assert.ThrowsAsync<DiedException>(() => dying.ScreenAllAsync());
                Assert.Equal(before + 1 + there, await CountAsync(opened));
                clock.Move(TimeSpan.FromMinutes(2));
                await opened.ScreenAllAsync();
                Assert.Equal(before + 2, await CountAsync(opened));
            }
            else
            {
                var read = await opened.ScreenedAsync();
                await Assert.ThrowsAsync<DiedException>(() => DecideAsync(dying, read.Id, Verdict.Returned));
                Assert.Equal(before + 2 + there, await CountAsync(opened));
            }
        }

        await using var context = opened.Database.Open();
        Assert.Equal(0, await NumberAsync(context, "SELECT count(*) AS \"Value\" FROM history h WHERE h.event IN ('Received', 'Screened', 'Returned') AND (SELECT count(*) FROM notices n WHERE n.entry = h.entry) <> 1"));
    }

    [SkippableTheory]
    [InlineData(Engine.Sqlite)]
    [InlineData(Engine.PostgreSql)]
    public async Task Who_dies_between_sending_and_writing_it_down_lets_it_be_sent_again_under_the_same_id(Engine engine)
    {
        var settings = stores.New(engine);
        var opened = await Opened.NewAsync(settings, clock);
        await HookAsync(new Subscriptions(opened.Database), "https://hook.example.org/", NoticeEvent.Submitted);
        await opened.SubmitAsync();
        var dying = new OutgoingNotices(new Opened(settings, clock, 2, Moment.NoticeBeforeCommit).Database);
        var first = (await new OutgoingNotices(opened.Database).ClaimAsync(default))!;
        await Assert.ThrowsAsync<DiedException>(() => dying.SentAsync(first, default));
        var queue = new OutgoingNotices(opened.Database);
        Assert.Null(await queue.ClaimAsync(default));
        clock.Move(OutgoingNotices.Lease);
        var second = (await queue.ClaimAsync(default))!;
        Assert.Equal((first.Id, first.Attempt + 1), (second.Id, second.Attempt));
        Assert.False(await queue.SentAsync(first, default), "an older claim writes nothing");
        Assert.True(await queue.SentAsync(second, default));
        clock.Move(TimeSpan.FromDays(1));
        Assert.Null(await queue.ClaimAsync(default));
    }

    [SkippableTheory]
    [InlineData(Engine.Sqlite)]
    [InlineData(Engine.PostgreSql)]
    public async Task Two_senders_never_hold_the_same_notice(Engine engine)
    {
        var settings = stores.New(engine);
        var opened = await Opened.NewAsync(settings, clock);
        var subscriptions = new Subscriptions(opened.Database);
        for (var hook = 0; hook < 5; hook++)
        {
            await HookAsync(subscriptions, $"https://hook-{hook}.example.org/", NoticeEvent.Submitted);
        }

        for (var plan = 0; plan < 4; plan++)
        {
            await opened.SubmitAsync($"plan: {plan}");
        }

        var held = await Task.WhenAll(Enumerable.Range(0, 4).Select(sender => Task.Run(async () => await DrainAsync(new Opened(settings, clock, 100 + sender)))));
        var rest = await DrainAsync(opened);
        var ids = held.SelectMany(one => one).Concat(rest).Select(notice => notice.Id).ToList();
        Assert.Equal(20, ids.Count);
        Assert.Equal(20, ids.Distinct(StringComparer.Ordinal).Count());
    }

    [SkippableTheory]
    [InlineDataOfFullRun(Engine.Sqlite)]
    [InlineData(Engine.PostgreSql)]
    public async Task Pauses_grow_until_it_is_given_up_and_an_administrator_has_it_sent_again(Engine engine)
    {
        var opened = await Opened.NewAsync(stores.New(engine), clock);
        await HookAsync(new Subscriptions(opened.Database), "https://hook.example.org/", NoticeEvent.Submitted);
        await opened.SubmitAsync();
        var queue = new OutgoingNotices(opened.Database);
        var (tries, waited, id) = (0, TimeSpan.Zero, string.Empty);
        for (var step = TimeSpan.FromMinutes(1); (await queue.FailedAsync(default)).Count == 0; clock.Move(step), waited += step)
        {
            while (await queue.ClaimAsync(default) is { } claim)
            {
                (tries, id) = (tries + 1, claim.Id);
                await queue.FailAsync(claim, "HTTP 500.", forGood: false, default);
            }

            Assert.True(waited < TimeSpan.FromDays(3), "it ends");
        }

        Assert.Equal(OutgoingNotices.Attempts, tries);
        Assert.InRange(waited, TimeSpan.FromHours(44.5), TimeSpan.FromHours(45)); // By hand: 1 + 5 + 30 min, 2 + 6 + 12 + 24 h.
        var failed = Assert.Single(await queue.FailedAsync(default));
        Assert.Equal((id, "HTTP 500.", 8L), (failed.Id, failed.Reason, failed.Attempts));
        await queue.AgainAsync(id, default);
        Assert.Empty(await queue.FailedAsync(default));
        var again = (await queue.ClaimAsync(default))!;
        Assert.Equal(id, again.Id);
        await queue.FailAsync(again, "SMTP 550.", forGood: true, default);
        Assert.Equal("SMTP 550.", Assert.Single(await queue.FailedAsync(default)).Reason);
        Assert.Equal(Refusal.NotFound, (await Assert.ThrowsAsync<RefusedException>(() => queue.AgainAsync("none", default))).Refusal);
        clock.Move(TimeSpan.FromDays(31));
        await queue.ForgetAsync(default);
        Assert.Empty(await queue.FailedAsync(default));
    }

    [SkippableTheory]
    [InlineData(Engine.Sqlite)]
    [InlineData(Engine.PostgreSql)]
    public async Task What_is_told_ends_with_the_subscription_the_key_and_the_contract(Engine engine)
    {
        var opened = await Opened.NewAsync(stores.New(engine), clock);
        var subscriptions = new Subscriptions(opened.Database);
        var key = await opened.Keys.IssueAsync("Office", Role.Reviewer, null, Chief, default);
        var office = new Caller(key.Key.Id, "Office", Role.Reviewer);
        await MailAsync(subscriptions, office, "office@example.org", NoticeEvent.Submitted);
        var ended = await MailAsync(subscriptions, Opened.Second, "second@example.org", NoticeEvent.Submitted);
        await subscriptions.AddAsync(new NewSubscription(Channel.Mail, "rev@example.org", All, " HL-31/4 "), Opened.Reviewer, default);
        Assert.Equal(Refusal.WrongState, (await Assert.ThrowsAsync<RefusedException>(() => subscriptions.AddAsync(new NewSubscription(Channel.Mail, "REV@example.org", All, "hl-31/4"), Opened.Reviewer, default))).Refusal);
        Assert.Equal(Refusal.NotAllowed, (await Assert.ThrowsAsync<RefusedException>(() => subscriptions.AddAsync(new NewSubscription(Channel.Webhook, "https://x.example.org", All, null, "s"), Opened.Reviewer, default))).Refusal);
        Assert.Equal(Refusal.NotFound, (await Assert.ThrowsAsync<RefusedException>(() => subscriptions.EndAsync(ended.Id, Opened.Bo, default))).Refusal);

        var one = await opened.SubmitAsync();
        await opened.ScreenAllAsync(result: Opened.Result() with { Queue = new QueueFacts("submission", null, "hl-31/4", null, null) });
        await opened.SubmitAsync("plan: other");
        await opened.ScreenAllAsync(result: Opened.Result() with { Queue = new QueueFacts("submission", null, "HL-31/5", null, null) });
        await opened.SubmitAsync("plan: b", revisionOf: one.Id);

        await opened.Keys.RevokeAsync(key.Key.Id, Chief, default);
        await subscriptions.EndAsync(ended.Id, Opened.Second, default);
        var sent = await DrainAsync(opened);
        Assert.Equal([(NoticeEvent.Screened, 1), (NoticeEvent.Submitted, 2)], sent.Select(notice => (notice.Event, notice.Facts.Revision)));
        Assert.All(sent, notice => Assert.Equal("rev@example.org", notice.To.Target));
        Assert.Empty(await subscriptions.OfAsync(Opened.Second, default));

        // The address of whom nothing is sent any more is not kept.
        clock.Move(TimeSpan.FromDays(31));
        await new OutgoingNotices(opened.Database).ForgetAsync(default);
        await using var context = opened.Database.Open();
        Assert.Equal(["rev@example.org"], await context.Subscriptions.Select(row => row.Target).ToListAsync());
    }

    private static Task<Subscription> MailAsync(Subscriptions subscriptions, Caller owner, string address, params NoticeEvent[] events) =>
        subscriptions.AddAsync(new NewSubscription(Channel.Mail, address, events, null), owner, default);

    private static Task<Subscription> HookAsync(Subscriptions subscriptions, string address, params NoticeEvent[] events) =>
        subscriptions.AddAsync(new NewSubscription(Channel.Webhook, address, events, null, "whsec_c2VjcmV0"), Chief, default);

    private static async Task DecideAsync(Opened opened, string id, Verdict verdict) =>
        await opened.Register.DecideAsync(id, (await opened.Reader.FindAsync(id, Opened.Reviewer, default))!.Version, verdict, "x", Opened.Reviewer, default);

    // In the order in which they were due; whoever gets one at the same moment is waited for.
    private static async Task<List<NoticeClaim>> DrainAsync(Opened opened)
    {
        var (queue, sent) = (new OutgoingNotices(opened.Database), new List<NoticeClaim>());
        while (await queue.ClaimAsync(default) is { } claim)
        {
            sent.Add(claim);
            Assert.True(await queue.SentAsync(claim, default));
        }

        return sent;
    }

    private static async Task<int> CountAsync(Opened opened)
    {
        await using var context = opened.Database.Open();
        return await NumberAsync(context, "SELECT count(*) AS \"Value\" FROM notices");
    }

    private static Task<int> NumberAsync(RegisterContext context, string sql) => context.Database.SqlQueryRaw<int>(sql).SingleAsync();
}
