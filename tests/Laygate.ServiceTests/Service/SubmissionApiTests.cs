using System.Net;
using System.Net.Http.Headers;
using System.Net.Http.Json;
using System.Text;
using Laygate.ServiceTests.Shared;

namespace Laygate.ServiceTests.Service;

public sealed class SubmissionApiTests(OneService one) : IClassFixture<OneService>
{
    [Fact]
    public async Task From_submission_to_decision()
    {
        var id = await RunningService.SubmitAsync(one.Ada, RunningService.Plan(), "?file_name=quay.yaml");
        var screened = await RunningService.ScreenedAsync(one.Ada, id);
        Assert.Equal("screened", screened.GetProperty("state").GetString());
        Assert.Equal("tamarel-quay-road-east", screened.GetProperty("plan").GetProperty("id").GetString());

        using var seen = await one.Reviewer.GetAsync($"/api/v1/submissions/{id}");
        var tag = seen.Headers.ETag!.ToString();
        await CheckApiTests.RefusedAsync(await DecideAsync(one.Ada, id, tag, "accepted", null), 403);
        await CheckApiTests.RefusedAsync(await DecideAsync(one.Reviewer, id, null, "accepted", null), 428);
        await CheckApiTests.RefusedAsync(await DecideAsync(one.Reviewer, id, "\"0\"", "accepted", null), 412);
        await CheckApiTests.RefusedAsync(await DecideAsync(one.Reviewer, id, tag, "returned", ""), 400);
        await CheckApiTests.RefusedAsync(await DecideAsync(one.Reviewer, id, tag, "perhaps", "x"), 400);
        using var decided = await DecideAsync(one.Reviewer, id, tag, "accepted_with_departures", "grit within 12 min");
        Assert.Equal(HttpStatusCode.OK, decided.StatusCode);

        using var answer = await one.Ada.GetAsync($"/api/v1/submissions/{id}/history");
        var last = (await RunningService.JsonAsync(answer)).EnumerateArray().Last();
        Assert.Equal("accepted_with_departures", last.GetProperty("event").GetString());
        Assert.Equal("Rita of the class", last.GetProperty("by_name").GetString());
        Assert.Equal("grit within 12 min", last.GetProperty("comment").GetString());
    }

    [Fact]
    public async Task A_report_is_sent_again_only_when_it_has_changed()
    {
        var id = await RunningService.SubmitAsync(one.Ada, RunningService.Plan("concept-fifteen-lines.yaml"));
        await RunningService.ScreenedAsync(one.Ada, id);
        using var first = await one.Ada.GetAsync($"/api/v1/submissions/{id}/report");
        Assert.False(first.Headers.ETag!.IsWeak);
        using var request = new HttpRequestMessage(HttpMethod.Get, $"/api/v1/submissions/{id}/report");
        request.Headers.IfNoneMatch.Add(first.Headers.ETag);
        using var second = await one.Ada.SendAsync(request);
        Assert.Equal(HttpStatusCode.NotModified, second.StatusCode);
        Assert.Empty(await second.Content.ReadAsByteArrayAsync());
    }

    [Fact]
    public async Task The_same_request_counts_once()
    {
        async Task<(HttpStatusCode Status, string Id)> SendAsync(string plan)
        {
            using var request = new HttpRequestMessage(HttpMethod.Post, "/api/v1/submissions") { Content = RunningService.Yaml(plan) };
            request.Headers.Add("Idempotency-Key", "once");
            using var answer = await one.Bo.SendAsync(request);
            return (answer.StatusCode, answer.IsSuccessStatusCode ? (await RunningService.JsonAsync(answer)).GetProperty("id").GetString()! : string.Empty);
        }

        var first = await SendAsync("a: 1");
        Assert.Equal(HttpStatusCode.Created, first.Status);
        Assert.Equal((HttpStatusCode.OK, first.Id), await SendAsync("a: 1"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await SendAsync("a: 2")).Status);
    }

    [Fact]
    public async Task A_plan_that_cannot_be_read_is_kept_and_says_why()
    {
        byte[] odd = [0xFF, 0xFE, .. Encoding.Unicode.GetBytes("format: 1")];
        using var answer = await one.Ada.PostAsync("/api/v1/submissions?file_name=..%2F..%2Fetc%2Fpasswd", RunningService.Yaml(odd));
        var id = (await RunningService.JsonAsync(answer)).GetProperty("id").GetString()!;
        var screened = await RunningService.ScreenedAsync(one.Ada, id);
        Assert.Equal("failed_to_read", screened.GetProperty("state").GetString());
        Assert.Equal("../../etc/passwd", screened.GetProperty("file_name").GetString());
        Assert.Equal(odd, await one.Ada.GetByteArrayAsync($"/api/v1/submissions/{id}/text"));
        using var report = await one.Ada.GetAsync($"/api/v1/submissions/{id}/report");
        Assert.True((await RunningService.JsonAsync(report)).GetProperty("files")[0].GetProperty("problems").GetArrayLength() > 0);
    }

    [Fact]
    public async Task A_submitter_sees_its_own_only()
    {
        var id = await RunningService.SubmitAsync(one.Ada, "a: 1");
        foreach (var part in new[] { "", "/text", "/files", "/files/plan.yaml", "/archive", "/report", "/sheet", "/history", "/revisions", "/changes" })
        {
            using var answer = await one.Bo.GetAsync($"/api/v1/submissions/{id}{part}");
            await CheckApiTests.RefusedAsync(answer, 404);
        }

        foreach (var (client, address) in new[] { (one.Bo, "/api/v1/keys"), (one.Reviewer, "/api/v1/keys") })
        {
            using var answer = await client.GetAsync(address);
            await CheckApiTests.RefusedAsync(answer, 403);
        }

        using var revision = await one.Bo.PostAsync($"/api/v1/submissions?revision_of={id}", RunningService.Yaml("a: 2"));
        await CheckApiTests.RefusedAsync(revision, 404);
    }

    [Fact]
    public async Task Screening_again_shows_what_changes()
    {
        var id = await RunningService.SubmitAsync(one.Ada, RunningService.Plan("concept-fifteen-lines.yaml"));
        await RunningService.ScreenedAsync(one.Ada, id);
        using var again = await one.Reviewer.PostAsJsonAsync($"/api/v1/submissions/{id}/screenings", new { reason = "new edition" });
        Assert.Equal(HttpStatusCode.OK, again.StatusCode);
        await RunningService.ScreenedAsync(one.Ada, id);
        using var answer = await one.Ada.GetAsync($"/api/v1/submissions/{id}/changes");
        var changes = await RunningService.JsonAsync(answer);
        Assert.Equal((1, 2), (changes.GetProperty("from").GetInt32(), changes.GetProperty("to").GetInt32()));
        Assert.Equal(0, changes.GetProperty("findings").GetArrayLength());
        using var all = await one.Reviewer.PostAsJsonAsync("/api/v1/screenings", new { reason = "same book" });
        Assert.Equal(0, (await RunningService.JsonAsync(all)).GetProperty("submissions").GetArrayLength());
    }

    [Fact]
    public async Task Lists_name_their_next_page_and_exports_have_one_line_each()
    {
        using var client = one.Running.Client(await one.Running.KeyAsync("Lister", Laygate.Register.Role.Submitter));
        for (var index = 0; index < 5; index++)
        {
            await RunningService.SubmitAsync(client, $"a: {index}");
        }

        var seen = new HashSet<string>(StringComparer.Ordinal);
        string? next = "/api/v1/submissions?limit=2&search=plan";
        while (next is not null)
        {
            using var answer = await client.GetAsync(next);
            foreach (var item in (await RunningService.JsonAsync(answer)).GetProperty("items").EnumerateArray())
            {
                Assert.True(seen.Add(item.GetProperty("id").GetString()!));
            }

            next = answer.Headers.TryGetValues("Link", out var link) ? link.Single()[1..].Split('>')[0] : null;
        }

        Assert.Equal(5, seen.Count);
        Assert.Equal(5, (await client.GetStringAsync("/api/v1/submissions/export")).Split('\n', StringSplitOptions.RemoveEmptyEntries).Length);
        foreach (var wrong in new[] { "limit=0", "limit=201", "cursor=x", "state=none", "from=yesterday", "limit=9999999999999" })
        {
            using var answer = await client.GetAsync("/api/v1/submissions?" + wrong);
            await CheckApiTests.RefusedAsync(answer, 400);
        }
    }

    [Fact]
    public async Task An_administrator_issues_and_revokes_keys()
    {
        using var issued = await one.Administrator.PostAsJsonAsync("/api/v1/keys", new { name = "Cleo", role = "submitter" });
        Assert.Equal(HttpStatusCode.Created, issued.StatusCode);
        var key = await RunningService.JsonAsync(issued);
        using var client = one.Running.Client(key.GetProperty("secret").GetString());
        using var before = await client.GetAsync("/api/v1/submissions");
        Assert.Equal(HttpStatusCode.OK, before.StatusCode);
        using var revoked = await one.Administrator.DeleteAsync("/api/v1/keys/" + key.GetProperty("key").GetProperty("id").GetString());
        Assert.Equal(HttpStatusCode.OK, revoked.StatusCode);
        using var after = await client.GetAsync("/api/v1/submissions");
        await CheckApiTests.RefusedAsync(after, 401);
        Assert.DoesNotContain(key.GetProperty("secret").GetString()!, await one.Administrator.GetStringAsync("/api/v1/keys"), StringComparison.Ordinal);
        using var wrong = await one.Administrator.PostAsJsonAsync("/api/v1/keys", new { name = "Cleo", role = "king" });
        await CheckApiTests.RefusedAsync(wrong, 400);
    }

    private static async Task<HttpResponseMessage> DecideAsync(HttpClient client, string id, string? tag, string decision, string? comment)
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, $"/api/v1/submissions/{id}/decision") { Content = JsonContent.Create(new { decision, comment }) };
        if (tag is not null)
        {
            request.Headers.IfMatch.Add(EntityTagHeaderValue.Parse(tag));
        }

        return await client.SendAsync(request);
    }
}
