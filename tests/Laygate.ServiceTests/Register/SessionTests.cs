using Laygate.Register;
using Laygate.Register.Storage;
using Laygate.ServiceTests.Shared;
using Microsoft.EntityFrameworkCore;

namespace Laygate.ServiceTests.Register;

/// <summary>Sessions of browsers and what is kept for them, on both databases.</summary>
[Collection(SharedStores.Name)]
public sealed class SessionTests(Stores stores)
{
    private static readonly Caller Person = new("token:p", "Pia", Role.Reviewer);

    private readonly TestClock clock = new();

    [SkippableTheory]
    [InlineData(Engine.Sqlite)]
    [InlineData(Engine.PostgreSql)]
    public async Task A_session_ends_when_it_is_not_used_when_its_time_is_up_and_when_it_is_ended(Engine engine)
    {
        var opened = await Opened.NewAsync(stores.New(engine), clock);
        var sessions = new Sessions(opened.Database);
        var idle = await sessions.OpenAsync(Person, false, null, null, default);
        clock.Move(TimeSpan.FromMinutes(59));
        Assert.Equal(Person, (await sessions.FindAsync(idle, default))!.Caller);
        clock.Move(TimeSpan.FromMinutes(59));
        Assert.NotNull(await sessions.FindAsync(idle, default));
        clock.Move(TimeSpan.FromMinutes(60));
        Assert.Null(await sessions.FindAsync(idle, default));

        var used = await sessions.OpenAsync(Person, false, null, null, default);
        for (var minutes = 0; minutes < 11 * 60; minutes += 50)
        {
            clock.Move(TimeSpan.FromMinutes(50));
            Assert.NotNull(await sessions.FindAsync(used, default));
        }

        clock.Move(TimeSpan.FromMinutes(50));
        Assert.Null(await sessions.FindAsync(used, default));

        var left = await sessions.OpenAsync(Person, false, "who it was", null, default);
        Assert.Equal(new EndedSession(false, "who it was"), await sessions.EndAsync(left, default));
        Assert.Null(await sessions.FindAsync(left, default));
        Assert.Null(await sessions.EndAsync(left, default));
        Assert.Empty(await sessions.ListAsync(default));
        foreach (var odd in new[] { "", "x", new string('a', 43), new string('ä', 43), left + "a" })
        {
            Assert.Null(await sessions.FindAsync(odd, default));
        }
    }

    [SkippableTheory]
    [InlineData(Engine.Sqlite)]
    [InlineData(Engine.PostgreSql)]
    public async Task A_session_of_a_key_ends_with_the_key(Engine engine)
    {
        var opened = await Opened.NewAsync(stores.New(engine), clock);
        var sessions = new Sessions(opened.Database);
        var ends = await opened.Keys.IssueAsync("Ends", Role.Submitter, clock.GetUtcNow().AddMinutes(30), Caller.Machine, default);
        var revoked = await opened.Keys.IssueAsync("Revoked", Role.Reviewer, null, Caller.Machine, default);
        var (one, two) = (await OpenAsync(ends), await OpenAsync(revoked));
        Assert.Equal(["Ends", "Revoked"], (await sessions.ListAsync(default)).Select(session => session.Caller.Name).ToArray());
        Assert.True((await sessions.FindAsync(one, default))!.ByKey);
        await opened.Keys.RevokeAsync(revoked.Key.Id, Caller.Machine, default);
        Assert.Null(await sessions.FindAsync(two, default));
        clock.Move(TimeSpan.FromMinutes(30));
        Assert.Null(await sessions.FindAsync(one, default));

        async Task<string> OpenAsync(IssuedKey key) => await sessions.OpenAsync((await opened.Keys.FindAsync(key.Secret, default))!, true, null, null, default);
    }

    [SkippableTheory]
    [InlineData(Engine.Sqlite)]
    [InlineData(Engine.PostgreSql)]
    public async Task What_was_written_goes_over_to_the_next_session_of_the_same_person_only(Engine engine)
    {
        var opened = await Opened.NewAsync(stores.New(engine), clock);
        var (sessions, kept) = (new Sessions(opened.Database), new KeptForms(opened.Database));
        var first = await sessions.OpenAsync(Person, false, null, null, default);
        Assert.True(await kept.KeepAsync(first, "/page", Fields("a"), default));
        Assert.True(await kept.KeepAsync(first, "/page", Fields("b"), default));
        clock.Move(TimeSpan.FromHours(2));
        Assert.Null(await sessions.FindAsync(first, default));
        Assert.True(await kept.KeepAsync(first, "/other", Fields("late"), default));
        var other = await sessions.OpenAsync(Person with { Id = "token:q" }, false, null, first, default);
        Assert.Empty(await kept.ReadAsync(other, "/page", default));
        var second = await sessions.OpenAsync(Person, false, null, first, default);
        Assert.Equal(["b"], (await kept.ReadAsync(second, "/page", default))["comment"]);
        Assert.Equal(["late"], (await kept.ReadAsync(second, "/other", default))["comment"]);
        Assert.Empty(await kept.ReadAsync(first, "/page", default));
        Assert.True(await kept.KeepAsync(second, "/page", new Dictionary<string, string[]>(StringComparer.Ordinal), default));
        Assert.Empty(await kept.ReadAsync(second, "/page", default));
        Assert.False(await kept.KeepAsync(new string('a', 43), "/page", Fields("c"), default));
        Assert.False(await kept.KeepAsync(null, "/page", Fields("c"), default));

        // Of many pages the oldest makes room.
        for (var page = 0; page < KeptForms.Most; page++)
        {
            clock.Move(TimeSpan.FromSeconds(1));
            Assert.True(await kept.KeepAsync(second, $"/page-{page}", Fields("x"), default));
        }

        Assert.Empty(await kept.ReadAsync(second, "/other", default));
        Assert.NotEmpty(await kept.ReadAsync(second, "/page-0", default));
    }

    [SkippableTheory]
    [InlineData(Engine.Sqlite)]
    [InlineData(Engine.PostgreSql)]
    public async Task The_database_tells_neither_secrets_nor_what_was_written_and_forgets_what_has_ended(Engine engine)
    {
        var opened = await Opened.NewAsync(stores.New(engine), clock);
        var (sessions, kept) = (new Sessions(opened.Database), new KeptForms(opened.Database));
        var secret = await sessions.OpenAsync(Person, false, "a token about Pia", null, default);
        await kept.KeepAsync(secret, "/page", Fields("a written word"), default);
        await using (var context = opened.Database.Open())
        {
            var (session, form) = (await context.Sessions.SingleAsync(), await context.KeptForms.SingleAsync());
            var stored = string.Concat(new[] { session.SecretHash, session.Hint!, form.Fields }.Select(System.Text.Encoding.Latin1.GetString)) + session.Id;
            Assert.All(new[] { secret, "a token", "written" }, word => Assert.DoesNotContain(word, stored, StringComparison.Ordinal));
            Assert.Null(Sealed.Open(new string('a', 43), form.Fields));
        }

        clock.Move(Sessions.Remembered + TimeSpan.FromHours(13));
        await sessions.OpenAsync(Person, false, null, secret, default);
        await using (var context = opened.Database.Open())
        {
            Assert.Equal(1, await context.Sessions.CountAsync());
            Assert.Equal(0, await context.KeptForms.CountAsync());
        }
    }

    [SkippableTheory]
    [InlineData(Engine.Sqlite)]
    [InlineData(Engine.PostgreSql)]
    public async Task An_administrator_ends_one_session_or_all_of_a_person(Engine engine)
    {
        var opened = await Opened.NewAsync(stores.New(engine), clock);
        var sessions = new Sessions(opened.Database);
        var (a, b, c) = (await sessions.OpenAsync(Person, false, null, null, default), await sessions.OpenAsync(Person, false, null, null, default), await sessions.OpenAsync(Person with { Id = "token:q" }, false, null, null, default));
        Assert.Equal(1, await sessions.EndAsync((await sessions.FindAsync(a, default))!.Id, false, default));
        Assert.Null(await sessions.FindAsync(a, default));
        var d = await sessions.OpenAsync(Person, false, null, null, default);
        Assert.Equal(2, await sessions.EndAsync((await sessions.FindAsync(b, default))!.Id, true, default));
        Assert.Null(await sessions.FindAsync(d, default));
        Assert.NotNull(await sessions.FindAsync(c, default));
        Assert.Equal(Refusal.NotFound, (await Assert.ThrowsAsync<RefusedException>(() => sessions.EndAsync("none", false, default))).Refusal);
    }

    [SkippableTheory]
    [InlineData(Engine.Sqlite)]
    [InlineData(Engine.PostgreSql)]
    public async Task The_keys_of_the_way_through_a_provider_are_the_same_for_each_replica(Engine engine)
    {
        var settings = stores.New(engine);
        var first = new ProtectionKeys((await Opened.NewAsync(settings, clock)).Database);
        first.Add("one", "<key id=\"1\" />");
        first.Add("two", "<key id=\"2\" />");
        Assert.Equal(["<key id=\"1\" />", "<key id=\"2\" />"], new ProtectionKeys((await Opened.NewAsync(settings, clock, 2)).Database).List());
    }

    private static Dictionary<string, string[]> Fields(string comment) => new(StringComparer.Ordinal) { ["comment"] = [comment] };
}
