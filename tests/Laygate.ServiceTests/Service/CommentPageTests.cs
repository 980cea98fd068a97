using System.Net;
using System.Net.Http.Json;
using Laygate.Register;
using Laygate.Service.Pages;
using Laygate.ServiceTests.Shared;

namespace Laygate.ServiceTests.Service;

/// <summary>Comments on findings, from the page and over the interface.</summary>
public sealed class CommentPageTests(OneService one) : IClassFixture<OneService>
{
    [Fact]
    public async Task A_comment_stands_beside_its_finding_in_the_next_revision_while_that_has_it_and_a_decision_lists_what_is_open()
    {
        var plan = RunningService.Plan("moor-road-thin-overlay.yaml");
        var id = await RunningService.SubmitAsync(one.Ada, plan);
        await RunningService.ScreenedAsync(one.Ada, id);
        using var asked = await WriteAsync(one.Reviewer, id, "SAF-083", "site", "Which step does harm <b>?");
        Assert.Equal(HttpStatusCode.Redirect, asked.StatusCode);
        Assert.EndsWith("#p1-f1", asked.Headers.Location!.ToString(), StringComparison.Ordinal);
        using var second = await WriteAsync(one.Ada, id, "FRI-005", "site", "We close until 22:00.", "false");
        Assert.Equal(HttpStatusCode.Redirect, second.StatusCode);

        // The step that does harm is taken out, by hand from the text of the finding; the closure still ends too early.
        var revision = await RunningService.SubmitAsync(one.Ada, plan.Replace("[pull-binder-off, ice, cool-with-water]", "[cool-with-water]", StringComparison.Ordinal), $"?revision_of={id}");
        await RunningService.ScreenedAsync(one.Ada, revision);
        var page = await PageAsync(one.Reviewer, revision);
        var settled = page.IndexOf("Comments on findings that are gone or pass now (1)", StringComparison.Ordinal);
        Assert.InRange(page.IndexOf("Which step does harm &lt;b&gt;?", StringComparison.Ordinal), settled, page.Length);
        Assert.InRange(page.IndexOf("We close until 22:00.", StringComparison.Ordinal), 0, settled);

        using var reopened = await WriteAsync(one.Reviewer, revision, "FRI-005", "site", "It says 17:30.");
        Assert.Equal(HttpStatusCode.Redirect, reopened.StatusCode);
        Assert.Contains("A comment is open, which is recorded, too", await PageAsync(one.Reviewer, revision), StringComparison.Ordinal);
        using var decision = new HttpRequestMessage(HttpMethod.Post, $"/api/v1/submissions/{revision}/decision") { Content = JsonContent.Create(new { decision = "returned", comment = "See there." }) };
        decision.Headers.TryAddWithoutValidation("If-Match", $"\"{(await RunningService.ScreenedAsync(one.Ada, revision)).GetProperty("version").GetInt64()}\"");
        using var decided = await one.Reviewer.SendAsync(decision);
        Assert.Equal(HttpStatusCode.OK, decided.StatusCode);
        var history = await RunningService.JsonAsync(await one.Ada.GetAsync($"/api/v1/submissions/{revision}/history"));
        Assert.Equal("FRI-005 site", history[history.GetArrayLength() - 1].GetProperty("open_comments").GetString());
        Assert.Contains("Open then: FRI-005 site", await PageAsync(one.Ada, revision), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("SAF-083", "site", " ", 400, "Write the comment first")]
    [InlineData("SAF-083", "site", "a\u0001b", 400, "control characters")]
    [InlineData("SAF-083", "nowhere", "kept <i>", 400, "has no such finding")]
    [InlineData("LAY-000", "site", "kept", 400, "has no such finding")]
    public async Task A_comment_that_is_not_written_is_answered_where_it_was_written_with_nothing_lost(string rule, string address, string text, int status, string why)
    {
        var id = await RunningService.SubmitAsync(one.Ada, RunningService.Plan("moor-road-thin-overlay.yaml"));
        await RunningService.ScreenedAsync(one.Ada, id);
        using var answer = await WriteAsync(one.Ada, id, rule, address, text);
        var html = await answer.Content.ReadAsStringAsync();
        Assert.Equal(status, (int)answer.StatusCode);
        Assert.Matches($"Not written.</strong>[^<]*{why}", html);
        Assert.Contains(text.TrimStart(), WebUtility.HtmlDecode(html), StringComparison.Ordinal);
        Assert.Equal(0, (await RunningService.JsonAsync(await one.Ada.GetAsync($"/api/v1/submissions/{id}/comments"))).GetArrayLength());
    }

    [Fact]
    public async Task Programs_write_and_read_comments_too()
    {
        var id = await RunningService.SubmitAsync(one.Ada, RunningService.Plan("moor-road-thin-overlay.yaml"));
        await RunningService.ScreenedAsync(one.Ada, id);
        using var written = await one.Reviewer.PostAsJsonAsync($"/api/v1/submissions/{id}/comments", new { rule = "SAF-083", address = "site", text = "Which?" });
        Assert.Equal(HttpStatusCode.Created, written.StatusCode);
        using var wrong = await one.Reviewer.PostAsJsonAsync($"/api/v1/submissions/{id}/comments", new { rule = "SAF-083", address = "nowhere", text = "Which?" });
        await CheckApiTests.RefusedAsync(wrong, 400);
        using var other = await one.Bo.PostAsJsonAsync($"/api/v1/submissions/{id}/comments", new { rule = "SAF-083", address = "site", text = "Which?" });
        await CheckApiTests.RefusedAsync(other, 404);
        var list = await RunningService.JsonAsync(await one.Ada.GetAsync($"/api/v1/submissions/{id}/comments"));
        Assert.Equal(("SAF-083", true, 1), (list[0].GetProperty("finding").GetProperty("rule").GetString(), list[0].GetProperty("leaves_open").GetBoolean(), list.GetArrayLength()));
        using var hidden = await one.Bo.GetAsync($"/api/v1/submissions/{id}/comments");
        await CheckApiTests.RefusedAsync(hidden, 404);
    }

    private static async Task<string> PageAsync(HttpClient client, string id)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, $"/submissions/{id}");
        request.Headers.Accept.ParseAdd("text/html");
        using var answer = await client.SendAsync(request);
        return await answer.Content.ReadAsStringAsync();
    }

    private static async Task<HttpResponseMessage> WriteAsync(HttpClient client, string id, string rule, string address, string text, string open = "true")
    {
        var name = PageTexts.NameOf(new FindingKey(string.Empty, rule, address));
        using var request = new HttpRequestMessage(HttpMethod.Post, $"/submissions/{id}/comments?at=p1-f1")
        {
            Content = new FormUrlEncodedContent(new Dictionary<string, string>(StringComparer.Ordinal) { [PageTexts.Said + name] = text, [PageTexts.Open + name] = open }),
        };
        request.Headers.Accept.ParseAdd("text/html");
        return await client.SendAsync(request);
    }
}
