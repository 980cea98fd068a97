using Laygate.Register;
using Laygate.ServiceTests.Shared;
using Microsoft.EntityFrameworkCore;

namespace Laygate.ServiceTests.Register;

/// <summary>A plan with the files that came with it: all kept exactly as sent, and for good.</summary>
[Collection(SharedStores.Name)]
public sealed class SetTests(Stores stores)
{
    private static readonly byte[] Odd = [0xEF, 0xBB, 0xBF, .. "a: 1\r\n\0"u8, 0xFF];
    private readonly TestClock clock = new();

    [SkippableTheory]
    [InlineData(Engine.Sqlite)]
    [InlineData(Engine.PostgreSql)]
    public async Task Files_and_archive_are_kept_exactly_as_sent(Engine engine)
    {
        var settings = stores.New(engine);
        var taken = await TakenAsync(await Opened.NewAsync(settings, clock), Set());
        Assert.Equal((2, "night.zip"), (taken.Files, taken.Archive));

        var again = new Opened(settings, clock, 2);
        var files = await again.Reader.FilesAsync(taken.Id, Opened.Ada, default);
        Assert.Equal(["firm/b.yaml", "firm/ä.yaml"], files.Select(file => file.Name), StringComparer.Ordinal);
        Assert.Equal(Odd, files[1].Bytes);
        Assert.Equal("PK"u8.ToArray(), (await again.Reader.ArchiveAsync(taken.Id, Opened.Reviewer, default))!.Bytes);
        Assert.Empty(await again.Reader.FilesAsync(taken.Id, Opened.Bo, default));
        Assert.Null(await again.Reader.ArchiveAsync(taken.Id, Opened.Bo, default));
        Assert.Equal(taken.Id, Assert.Single((await again.Reader.ListAsync(new SubmissionFilter { Search = "NIGHT.zip" }, null, 50, Opened.Ada, default)).Items).Id);

        var claim = (await again.Queue.ClaimAsync("w", default))!;
        Assert.Equal(files.Select(file => file.Name), claim.Files.Select(file => file.Name), StringComparer.Ordinal);
        Assert.Equal(Odd, claim.Files[1].Bytes);
        Assert.Equal("jobs/a.yaml", claim.FileName);
    }

    [SkippableTheory]
    [InlineData(Engine.Sqlite)]
    [InlineData(Engine.PostgreSql)]
    public async Task The_hash_covers_all_files_and_so_does_the_idempotency_key(Engine engine)
    {
        var opened = await Opened.NewAsync(stores.New(engine), clock);
        var first = await TakenAsync(opened, Set() with { IdempotencyKey = "k" });

        // Worked out by coreutils on the same three files: sha256sum of each in the order of their names, and sha256sum of that list.
        Assert.Equal("a305dc2323878aabe81c057a6cdcc02c92815f7bc81e04ed2ce41f611322f649", first.TextHash);
        Assert.Equal(first.Id, (await TakenAsync(opened, Set() with { IdempotencyKey = "k" })).Id);
        foreach (var other in (NewSubmission[])[Set() with { Files = [] }, Set() with { Files = [new("firm/b.yaml", "c"u8.ToArray()), Set().Files[1]] }, Set() with { Archive = null }, Set() with { Archive = new("night.zip", "PK2"u8.ToArray()) }])
        {
            var refused = await Assert.ThrowsAsync<RefusedException>(() => TakenAsync(opened, other with { IdempotencyKey = "k" }));
            Assert.Equal(Refusal.KeyUsedOtherwise, refused.Refusal);
        }
    }

    [SkippableTheory]
    [InlineData(Engine.Sqlite)]
    [InlineData(Engine.PostgreSql)]
    public async Task Nothing_of_a_set_is_ever_changed_or_deleted(Engine engine)
    {
        var opened = await Opened.NewAsync(stores.New(engine), clock);
        await TakenAsync(opened, Set());
        await using var context = opened.Database.Open();
        foreach (var sql in new[] { "UPDATE files SET bytes = bytes", "DELETE FROM files", "UPDATE archives SET bytes = bytes", "DELETE FROM archives" })
        {
            var refused = await Assert.ThrowsAnyAsync<Exception>(() => context.Database.ExecuteSqlRawAsync(sql));
            Assert.Contains("append-only", refused.ToString(), StringComparison.Ordinal);
        }
    }

    [SkippableTheory]
    [InlineData(Engine.Sqlite)]
    [InlineData(Engine.PostgreSql)]
    public async Task A_process_that_dies_while_it_takes_a_set_leaves_nothing_of_it(Engine engine)
    {
        var settings = stores.New(engine);
        await Opened.NewAsync(settings, clock);
        await Assert.ThrowsAsync<DiedException>(() => TakenAsync(new Opened(settings, clock, 3, Moment.SubmissionBeforeCommit), Set()));
        var again = new Opened(settings, clock, 4);
        await using var context = again.Database.Open();
        Assert.Equal((0, 0, 0), (await context.Submissions.CountAsync(), await context.Files.CountAsync(), await context.Archives.CountAsync()));
        await Assert.ThrowsAsync<DiedException>(() => TakenAsync(new Opened(settings, clock, 5, Moment.SubmissionCommitted), Set()));
        Assert.Equal((1, 2, 1), (await context.Submissions.CountAsync(), await context.Files.CountAsync(), await context.Archives.CountAsync()));
    }

    [Fact]
    public async Task A_name_with_a_control_character_is_refused()
    {
        var opened = await Opened.NewAsync(stores.New(Engine.Sqlite), clock);
        var refused = await Assert.ThrowsAsync<RefusedException>(() => TakenAsync(opened, Set() with { Files = [new("a\nb", [])] }));
        Assert.Equal(Refusal.BadRequest, refused.Refusal);
    }

    private static NewSubmission Set() => new("jobs/a.yaml", "plan: a\n"u8.ToArray(), null, null)
    {
        Files = [new("firm/b.yaml", "b"u8.ToArray()), new("firm/ä.yaml", Odd)],
        Archive = new("night.zip", "PK"u8.ToArray()),
    };

    private static async Task<Submission> TakenAsync(Opened opened, NewSubmission submission) => (await opened.Register.SubmitAsync(submission, Opened.Ada, default)).Submission;
}
