using System.Net;
using System.Net.Http.Json;
using System.Text;
using Laygate.ServiceTests.Shared;

namespace Laygate.ServiceTests.Service;

public sealed class CheckApiTests(OneService one) : IClassFixture<OneService>
{
    [Fact]
    public async Task A_plan_that_fails_is_answered_with_a_report()
    {
        using var answer = await one.Ada.PostAsync("/api/v1/checks?rules=us-wa&date=2027-05-01", RunningService.Yaml(RunningService.Plan("moor-road-thin-overlay.yaml")));
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        var report = (await RunningService.JsonAsync(answer)).GetProperty("files")[0].GetProperty("reports")[0];
        Assert.True(report.GetProperty("counts").GetProperty("failed").GetInt32() > 0);
        Assert.Contains(report.GetProperty("layers").EnumerateArray(), layer => layer.GetProperty("name").GetString() == "us-wa");
    }

    [Fact]
    public async Task Checks_side_by_side_give_the_same_bytes()
    {
        var answers = await Task.WhenAll(Enumerable.Range(0, 4).Select(async _ =>
        {
            using var answer = await one.Ada.PostAsync("/api/v1/checks?date=2027-05-01", RunningService.Yaml(RunningService.Plan("concept-fifteen-lines.yaml")));
            return await answer.Content.ReadAsStringAsync();
        }));
        Assert.Single(answers.Distinct(StringComparer.Ordinal));
        Assert.Contains("report_version", answers[0], StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_quick_check_says_that_it_is_one()
    {
        var plan = RunningService.Plan();
        using var quick = await one.Ada.PostAsync("/api/v1/checks?quick=true&date=2027-05-01", RunningService.Yaml(plan));
        using var full = await one.Ada.PostAsync("/api/v1/checks?date=2027-05-01", RunningService.Yaml(plan));
        Assert.True((await RunningService.JsonAsync(quick)).GetProperty("files")[0].GetProperty("reports")[0].GetProperty("quick").GetBoolean());
        Assert.False((await RunningService.JsonAsync(full)).GetProperty("files")[0].GetProperty("reports")[0].GetProperty("quick").GetBoolean());
    }

    [Theory]
    [InlineData("plan: [", 1)]
    [InlineData("format: 1\nplan:\n  id: a\n  id: b\n", 4)]
    [InlineData("{\"format\": 1, \"plan\": {\"id\": 5}}", 1)]
    public async Task A_plan_that_cannot_be_read_is_refused_with_places(string text, int line)
    {
        using var answer = await one.Ada.PostAsync("/api/v1/checks", RunningService.Yaml(text));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Equal("application/problem+json", answer.Content.Headers.ContentType!.MediaType);
        var errors = (await RunningService.JsonAsync(answer)).GetProperty("errors");
        Assert.Contains(errors.EnumerateArray(), error => error.GetProperty("line").GetInt32() == line);
    }

    [Theory]
    [InlineData("/api/v1/checks?rules=../../etc/passwd", 400)]
    [InlineData("/api/v1/checks?rules=/etc/passwd", 400)]
    [InlineData("/api/v1/checks?stage=never", 400)]
    [InlineData("/api/v1/checks?quick=perhaps", 400)]
    [InlineData("/api/v1/checks?date=yesterday", 400)]
    public async Task A_wish_that_cannot_be_met_is_refused(string address, int status)
    {
        using var answer = await one.Ada.PostAsync(address, RunningService.Yaml(RunningService.Plan()));
        await RefusedAsync(answer, status);
    }

    [Theory]
    [InlineData("application/pdf", 406)]
    [InlineData("application/json", 200)]
    [InlineData("*/*", 200)]
    public async Task The_answer_comes_in_a_form_that_the_caller_takes(string accept, int status)
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, "/api/v1/checks") { Content = RunningService.Yaml(RunningService.Plan("concept-fifteen-lines.yaml")) };
        request.Headers.TryAddWithoutValidation("Accept", accept);
        using var answer = await one.Ada.SendAsync(request);
        Assert.Equal(status, (int)answer.StatusCode);
    }

    [Fact]
    public async Task Bodies_that_are_no_plan_are_refused()
    {
        using var large = await one.Ada.PostAsync("/api/v1/checks", RunningService.Yaml(new byte[(1 << 20) + 1]));
        await RefusedAsync(large, 413);
        using var empty = await one.Ada.PostAsync("/api/v1/checks", RunningService.Yaml([]));
        await RefusedAsync(empty, 400);
        using var image = await one.Ada.PostAsync("/api/v1/checks", new ByteArrayContent([1]) { Headers = { ContentType = new("image/png") } });
        await RefusedAsync(image, 415);
        var packed = RunningService.Yaml("a: 1");
        packed.Headers.ContentEncoding.Add("gzip");
        using var gzip = await one.Ada.PostAsync("/api/v1/checks", packed);
        await RefusedAsync(gzip, 415);
    }

    [Fact]
    public async Task A_body_of_10_MB_is_refused()
    {
        using var client = one.Running.Client();
        client.DefaultRequestHeaders.Authorization = one.Ada.DefaultRequestHeaders.Authorization;
        using var request = new HttpRequestMessage(HttpMethod.Post, "/api/v1/checks") { Content = RunningService.Yaml(new byte[10_000_000]) };
        request.Headers.ExpectContinue = true;
        using var answer = await client.SendAsync(request);
        await RefusedAsync(answer, 413);
    }

    [Theory]
    [InlineData("utf-16")]
    [InlineData("utf-32")]
    [InlineData("iso-8859-1")]
    public async Task Wrong_encodings_are_refused(string encoding)
    {
        var bytes = Encoding.GetEncoding(encoding).GetBytes("\uFEFFformat: 1\nplan:\n  id: a\n  title: Straße\n".TrimStart(encoding is "iso-8859-1" ? '\uFEFF' : '\0'));
        using var answer = await one.Ada.PostAsync("/api/v1/checks", RunningService.Yaml(bytes));
        await RefusedAsync(answer, 422);
    }

    [Theory]
    [InlineData("")]
    [InlineData("laygate_000000000000_AAAA")]
    [InlineData("laygate_' OR '1'='1")]
    [InlineData("eyJhbGciOiJub25lIn0.eyJzdWIiOiJhIiwicm9sZSI6ImFkbWluaXN0cmF0b3IifQ.")]
    public async Task Forged_keys_open_nothing(string key)
    {
        using var client = one.Running.Client();
        if (key.Length > 0)
        {
            client.DefaultRequestHeaders.TryAddWithoutValidation("Authorization", "Bearer " + key);
        }

        foreach (var address in new[] { "/api/v1/submissions", "/api/v1/keys", "/api/v1/rules", "/submissions" })
        {
            using var answer = await client.GetAsync(address);
            await RefusedAsync(answer, 401);
        }

        using var check = await client.PostAsync("/api/v1/checks", RunningService.Yaml("a: 1"));
        await RefusedAsync(check, 401);
        using var live = await client.GetAsync("/healthz/live");
        using var ready = await client.GetAsync("/healthz/ready");
        Assert.True(live.IsSuccessStatusCode && ready.IsSuccessStatusCode);
    }

    [Fact]
    public async Task The_site_sheet_of_a_failing_plan_is_refused_unless_it_is_a_draft()
    {
        var plan = RunningService.Plan("moor-road-thin-overlay.yaml");
        using var refused = await one.Ada.PostAsync("/api/v1/sheets?rules=us-wa", RunningService.Yaml(plan));
        await RefusedAsync(refused, 409);
        using var draft = await one.Ada.PostAsync("/api/v1/sheets?rules=us-wa&draft=true", RunningService.Yaml(plan));
        Assert.Equal(HttpStatusCode.OK, draft.StatusCode);
        Assert.Contains("DRAFT", await draft.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Two_states_of_a_plan_are_compared()
    {
        var old = RunningService.Plan();
        using var same = await one.Ada.PostAsJsonAsync("/api/v1/comparisons?date=2027-05-01", new { old, @new = old });
        Assert.Equal(HttpStatusCode.OK, same.StatusCode);
        using var broken = await one.Ada.PostAsJsonAsync("/api/v1/comparisons", new { old, @new = "plan: [" });
        await RefusedAsync(broken, 422);
        using var half = await one.Ada.PostAsJsonAsync("/api/v1/comparisons", new { old });
        await RefusedAsync(half, 400);
    }

    [Theory]
    [InlineData("/api/v1/rules")]
    [InlineData("/api/v1/rules?family=safety&rules=de")]
    [InlineData("/api/v1/rules/LAY-001")]
    [InlineData("/api/v1/specifications")]
    [InlineData("/api/v1/quantities")]
    [InlineData("/api/v1/schemas")]
    [InlineData("/api/v1/schemas/plan.schema.json")]
    public async Task What_the_program_knows_can_be_read(string address)
    {
        using var answer = await one.Ada.GetAsync(address);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        var json = await RunningService.JsonAsync(answer);
        Assert.True(json.ToString().Length > 100);
    }

    [Theory]
    [InlineData("/api/v1/rules/NOT-001")]
    [InlineData("/api/v1/schemas/..%2f..%2fappsettings.json")]
    [InlineData("/api/v1/submissions/..%2f..%2fetc%2fpasswd")]
    [InlineData("/api/v1/nothing")]
    public async Task What_is_not_there_is_not_found(string address)
    {
        using var answer = await one.Ada.GetAsync(address);
        await RefusedAsync(answer, 404);
    }

    internal static async Task RefusedAsync(HttpResponseMessage answer, int status)
    {
        var text = await answer.Content.ReadAsStringAsync();
        Assert.True(status == (int)answer.StatusCode, $"{(int)answer.StatusCode}: {text}");
        Assert.Equal("application/problem+json", answer.Content.Headers.ContentType?.MediaType);
        Assert.DoesNotContain("   at ", text, StringComparison.Ordinal);
        Assert.DoesNotContain("Exception", text, StringComparison.Ordinal);
        Assert.Contains("\"detail\":", text, StringComparison.Ordinal);
        Assert.False(answer.Headers.Contains("Server"));
        Assert.Contains("default-src 'none'", answer.Headers.GetValues("Content-Security-Policy").Single(), StringComparison.Ordinal);
    }
}
