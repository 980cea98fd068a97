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

    // RFC 9110, 12.5.1: the narrowest range that fits decides, then the quality; what no range allows is not answered.
    [Theory]
    [InlineData("application/pdf", null)]
    [InlineData("application/json;q=0", null)]
    [InlineData("application/json", "application/json")]
    [InlineData("*/*", "application/json")]
    [InlineData("application/sarif+json", "application/sarif+json")]
    [InlineData("text/markdown", "text/markdown")]
    [InlineData("text/*", "text/html")]
    [InlineData("text/html;q=0.2, text/*", "text/markdown")]
    [InlineData("text/html,application/xhtml+xml,application/xml;q=0.9,*/*;q=0.8", "text/html")]
    [InlineData("application/json;q=0, */*;q=0.1", "application/sarif+json")]
    [InlineData("application/json;q=0.5, application/sarif+json", "application/sarif+json")]
    public async Task The_answer_comes_in_the_form_that_the_caller_likes_best(string accept, string? type)
    {
        using var answer = await PostAsync("/api/v1/checks", "concept-fifteen-lines.yaml", accept);
        Assert.Equal(type is null ? HttpStatusCode.NotAcceptable : HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal(type ?? "application/problem+json", answer.Content.Headers.ContentType!.MediaType);
        Assert.Equal(type is not null, answer.Headers.Vary.Contains("Accept", StringComparer.Ordinal));
    }

    [Fact]
    public async Task SARIF_names_the_rules_and_lines_of_what_fails()
    {
        const string Name = "moor-road-thin-overlay.yaml";
        using var answer = await PostAsync("/api/v1/checks?rules=us-wa&date=2027-05-01", Name, "application/sarif+json");
        using var plain = await PostAsync("/api/v1/checks?rules=us-wa&date=2027-05-01", Name, "application/json");
        var run = (await RunningService.JsonAsync(answer)).GetProperty("runs")[0];
        var failed = (await RunningService.JsonAsync(plain)).GetProperty("files")[0].GetProperty("reports")[0].GetProperty("findings").EnumerateArray()
            .Where(finding => finding.GetProperty("status").GetString() == "fail").Select(finding => (finding.GetProperty("rule").GetString(), finding.GetProperty("position").GetProperty("line").GetInt32())).Order().ToList();
        var errors = run.GetProperty("results").EnumerateArray().Where(result => result.GetProperty("level").GetString() == "error")
            .Select(result => (result.GetProperty("ruleId").GetString(), result.GetProperty("locations")[0].GetProperty("physicalLocation").GetProperty("region").GetProperty("startLine").GetInt32())).Order().ToList();
        Assert.NotEmpty(failed);
        Assert.Equal(failed, errors);
    }

    [Fact]
    public async Task The_page_stands_alone_has_plots_and_is_let_through_by_its_hash_only()
    {
        using var answer = await PostAsync("/api/v1/checks?date=2027-05-01", "quay-road-hot-on-hot.yaml", "text/html");
        var html = await answer.Content.ReadAsStringAsync();
        Assert.Equal("utf-8", answer.Content.Headers.ContentType!.CharSet);
        Assert.Contains("<svg", html, StringComparison.Ordinal);
        Assert.DoesNotContain("<script", html, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain(" style=", html, StringComparison.Ordinal);
        Policy(answer, html);
    }

    [Fact]
    public async Task Remedies_and_outlook_come_when_asked_for_and_never_with_quick()
    {
        foreach (var (query, remedies, outlook) in new[] { ("", false, false), ("&remedies=true", true, false), ("&outlook=true", false, true), ("&remedies=true&outlook=true&quick=true", false, false) })
        {
            using var answer = await PostAsync("/api/v1/checks?rules=us-wa&date=2027-05-01" + query, "moor-road-thin-overlay.yaml", "application/json");
            var report = (await RunningService.JsonAsync(answer)).GetProperty("files")[0].GetProperty("reports")[0];
            Assert.Equal(remedies, report.GetProperty("findings").EnumerateArray().Any(finding => finding.GetProperty("remedies").ValueKind == System.Text.Json.JsonValueKind.Array));
            Assert.Equal(outlook, report.GetProperty("outlook").ValueKind == System.Text.Json.JsonValueKind.Object);
        }
    }

    [Theory]
    [InlineData("", "en", "Shift manager")]
    [InlineData("&language=en", "en", "Shift manager")]
    [InlineData("&language=de", "de", "Schichtleit")]
    public async Task The_site_sheet_comes_as_cards_in_the_language_of_the_crew(string query, string language, string word)
    {
        using var answer = await PostAsync("/api/v1/sheets?date=2027-05-01" + query, "quay-road-hot-on-hot.yaml", "text/html");
        var html = await answer.Content.ReadAsStringAsync();
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Contains($"<html lang=\"{language}\">", html, StringComparison.Ordinal);
        Assert.Contains(word, html.Replace("\u00AD", string.Empty, StringComparison.Ordinal), StringComparison.OrdinalIgnoreCase);
        Policy(answer, html);
        using var text = await PostAsync("/api/v1/sheets?date=2027-05-01" + query, "quay-road-hot-on-hot.yaml", "text/markdown");
        Assert.Contains(word, await text.Content.ReadAsStringAsync(), StringComparison.OrdinalIgnoreCase);
    }

    [Theory]
    [InlineData("?language=xx", "text/html", 400)]
    [InlineData("?language=xx", "text/markdown", 400)]
    [InlineData("", "application/pdf", 406)]
    public async Task A_site_sheet_in_another_form_or_language_is_refused(string query, string accept, int status)
    {
        using var answer = await PostAsync("/api/v1/sheets" + query, "quay-road-hot-on-hot.yaml", accept);
        await RefusedAsync(answer, status);
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

    // The hash in the header is worked out here from the style sheet in the page, as a browser does (CSP level 3, 6.7.3.3).
    private static void Policy(HttpResponseMessage answer, string html)
    {
        var style = html[(html.IndexOf("<style>", StringComparison.Ordinal) + 7)..html.IndexOf("</style>", StringComparison.Ordinal)];
        var hash = Convert.ToBase64String(System.Security.Cryptography.SHA256.HashData(Encoding.UTF8.GetBytes(style)));
        var policy = answer.Headers.GetValues("Content-Security-Policy").Single();
        Assert.Contains($"style-src 'sha256-{hash}'", policy, StringComparison.Ordinal);
        Assert.Contains("default-src 'none'", policy, StringComparison.Ordinal);
        Assert.Contains("frame-ancestors 'none'", policy, StringComparison.Ordinal);
        Assert.DoesNotContain("unsafe", policy, StringComparison.Ordinal);
    }

    private async Task<HttpResponseMessage> PostAsync(string address, string plan, string accept)
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, address) { Content = RunningService.Yaml(RunningService.Plan(plan)) };
        request.Headers.TryAddWithoutValidation("Accept", accept);
        return await one.Ada.SendAsync(request);
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
