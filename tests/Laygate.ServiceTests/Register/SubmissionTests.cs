using Laygate.Register;
using Laygate.ServiceTests.Shared;
using Microsoft.EntityFrameworkCore;

namespace Laygate.ServiceTests.Register;

/// <summary>What is acknowledged is on disk, exactly as it was sent, once.</summary>
[Collection(SharedStores.Name)]
public sealed class SubmissionTests(Stores stores)
{
    private readonly TestClock clock = new();

    [SkippableTheory]
    [InlineData(Engine.Sqlite)]
    [InlineData(Engine.PostgreSql)]
    public async Task Text_is_kept_exactly_as_sent(Engine engine)
    {
        var settings = stores.New(engine);
        byte[] odd = [0xEF, 0xBB, 0xBF, .. "a: 1\r\n\0'); DROP TABLE texts;--"u8, 0xFF, 0xFE, 0x80];
        var taken = (await (await Opened.NewAsync(settings, clock)).Register.SubmitAsync(new NewSubmission("../../x.yaml", odd, null, null), Opened.Ada, default)).Submission;

        var again = new Opened(settings, clock, 2);
        Assert.Equal(odd, await again.Reader.TextAsync(taken.Id, Opened.Ada, default));
        var found = await again.Reader.FindAsync(taken.Id, Opened.Ada, default);
        Assert.Equal("../../x.yaml", found!.FileName);
        Assert.Equal(clock.GetUtcNow(), found.ReceivedAt);
        Assert.Equal(TimeSpan.Zero, found.ReceivedAt.Offset);
        Assert.Equal(Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(odd)), found.TextHash);
    }

    [SkippableTheory]
    [InlineData(Engine.Sqlite)]
    [InlineData(Engine.PostgreSql)]
    public async Task The_same_request_counts_once(Engine engine)
    {
        var opened = await Opened.NewAsync(stores.New(engine), clock);
        var first = await opened.SubmitAsync(key: "k1");
        var second = await opened.SubmitAsync(key: "k1");
        Assert.Equal(first.Id, second.Id);
        var other = await Assert.ThrowsAsync<RefusedException>(() => opened.SubmitAsync("plan: b", key: "k1"));
        Assert.Equal(Refusal.KeyUsedOtherwise, other.Refusal);
        Assert.NotEqual(first.Id, (await opened.SubmitAsync(key: "k1", by: Opened.Bo)).Id, StringComparer.Ordinal);

        clock.Move(TimeSpan.FromDays(31));
        Assert.NotEqual(first.Id, (await opened.SubmitAsync("plan: b", key: "k1")).Id, StringComparer.Ordinal);
        await using var context = opened.Database.Open();
        Assert.Equal("k1", Assert.Single(await context.Idempotency.ToListAsync()).Key);
    }

    [SkippableTheory]
    [InlineData(Engine.Sqlite)]
    [InlineData(Engine.PostgreSql)]
    public async Task The_same_request_at_the_same_moment_counts_once(Engine engine)
    {
        var opened = await Opened.NewAsync(stores.New(engine), clock);
        var answers = await Task.WhenAll(Enumerable.Range(0, 8).Select(_ => Task.Run(() => opened.SubmitAsync(key: "together"))));
        Assert.Single(answers.Select(answer => answer.Id).Distinct(StringComparer.Ordinal));
        Assert.Single((await opened.Reader.ListAsync(new SubmissionFilter(), null, 50, Opened.Reviewer, default)).Items);
    }

    [SkippableTheory]
    [InlineData(Engine.Sqlite)]
    [InlineData(Engine.PostgreSql)]
    public async Task Revisions_form_one_line_even_when_they_come_together(Engine engine)
    {
        var opened = await Opened.NewAsync(stores.New(engine), clock);
        var first = await opened.SubmitAsync();
        await Task.WhenAll(Enumerable.Range(0, 6).Select(index => Task.Run(() => opened.SubmitAsync($"plan: {index}", revisionOf: first.Id))));
        var line = await opened.Reader.RevisionsAsync(first.Series, Opened.Ada, default);
        Assert.Equal(Enumerable.Range(1, 7), line.Select(one => one.Revision));
        Assert.All(line.Skip(1).Zip(line), pair => Assert.Equal(pair.Second.Id, pair.First.RevisionOf));
        var listed = await opened.Reader.ListAsync(new SubmissionFilter { LatestOnly = true }, null, 50, Opened.Ada, default);
        Assert.Equal(line[^1].Id, Assert.Single(listed.Items).Id);

        var foreign = await Assert.ThrowsAsync<RefusedException>(() => opened.SubmitAsync(by: Opened.Bo, revisionOf: first.Id));
        Assert.Equal(Refusal.NotFound, foreign.Refusal);
    }

    [SkippableTheory]
    [InlineData(Engine.Sqlite)]
    [InlineData(Engine.PostgreSql)]
    public async Task A_submitter_sees_its_own_only(Engine engine)
    {
        var opened = await Opened.NewAsync(stores.New(engine), clock);
        var own = await opened.ScreenedAsync();
        Assert.NotNull(await opened.Reader.ReportAsync(own.Id, null, Opened.Ada, default));
        Assert.NotNull(await opened.Reader.FindAsync(own.Id, Opened.Reviewer, default));
        Assert.Null(await opened.Reader.FindAsync(own.Id, Opened.Bo, default));
        Assert.Null(await opened.Reader.TextAsync(own.Id, Opened.Bo, default));
        Assert.Null(await opened.Reader.ReportAsync(own.Id, null, Opened.Bo, default));
        Assert.Empty(await opened.Reader.HistoryAsync(own.Id, Opened.Bo, default));
        Assert.Empty(await opened.Reader.RevisionsAsync(own.Series, Opened.Bo, default));
        Assert.Empty((await opened.Reader.ListAsync(new SubmissionFilter(), null, 50, Opened.Bo, default)).Items);
    }

    [SkippableTheory]
    [InlineData(Engine.Sqlite)]
    [InlineData(Engine.PostgreSql)]
    public async Task Lists_are_filtered_and_paged_without_gap_or_overlap(Engine engine)
    {
        var opened = await Opened.NewAsync(stores.New(engine), clock);
        var ids = new List<string>();
        for (var index = 0; index < 23; index++)
        {
            ids.Insert(0, (await opened.SubmitAsync($"plan: {index}", name: index % 2 == 0 ? $"Öst_{index}%.yaml" : "x.yaml")).Id);
            clock.Move(TimeSpan.FromMinutes(1));
        }

        var seen = new List<string>();
        string? cursor = null;
        do
        {
            var page = await opened.Reader.ListAsync(new SubmissionFilter(), cursor, 5, Opened.Ada, default);
            seen.AddRange(page.Items.Select(item => item.Id));
            cursor = page.Next;
            await opened.SubmitAsync("plan: later", by: Opened.Bo);
        }
        while (cursor is not null);

        Assert.Equal(ids, seen);
        Assert.Equal(12, await CountAsync(opened, new SubmissionFilter { Search = "öST_" }));
        Assert.Equal(12, await CountAsync(opened, new SubmissionFilter { Search = "%" }));
        Assert.Equal(23, await CountAsync(opened, new SubmissionFilter { Search = "ada" }));
        var start = new DateTimeOffset(2027, 5, 14, 20, 40, 0, TimeSpan.FromHours(2));
        Assert.Equal(5, await CountAsync(opened, new SubmissionFilter { From = start, Until = start.AddMinutes(5) }));
        await opened.ScreenAllAsync();
        Assert.Equal(0, await CountAsync(opened, new SubmissionFilter { State = SubmissionState.Received }));
        Assert.Equal(23, await CountAsync(opened, new SubmissionFilter { State = SubmissionState.Screened, Search = "title ä" }));
        foreach (var wrong in new[] { "", "x", "AAAAAAAAAAAAAAAA", "=;--" })
        {
            Assert.Equal(Refusal.BadRequest, (await Assert.ThrowsAsync<RefusedException>(() => opened.Reader.ListAsync(new SubmissionFilter(), wrong, 5, Opened.Ada, default))).Refusal);
        }
    }

    [SkippableTheory]
    [InlineData(Engine.Sqlite)]
    [InlineData(Engine.PostgreSql)]
    public async Task History_text_and_reports_cannot_be_changed_or_removed(Engine engine)
    {
        var opened = await Opened.NewAsync(stores.New(engine), clock);
        await opened.ScreenedAsync();
        await using var context = opened.Database.Open();
        foreach (var sql in new[]
        {
            "UPDATE history SET comment = 'x'", "DELETE FROM history", "UPDATE texts SET text = text", "DELETE FROM texts",
            "UPDATE reports SET hash = 'x'", "DELETE FROM reports",
        })
        {
            var refused = await Assert.ThrowsAnyAsync<System.Data.Common.DbException>(() => context.Database.ExecuteSqlRawAsync(sql));
            Assert.Contains("append-only", refused.Message, StringComparison.Ordinal);
        }
    }

    private static async Task<int> CountAsync(Opened opened, SubmissionFilter filter)
    {
        var count = 0;
        await foreach (var _ in opened.Reader.ExportAsync(filter, Opened.Ada, default))
        {
            count++;
        }

        return count;
    }
}
