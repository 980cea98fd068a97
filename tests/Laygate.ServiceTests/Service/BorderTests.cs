using System.Net;
using System.Net.Http.Headers;
using System.Net.Http.Json;
using System.Text;
using System.Text.RegularExpressions;
using Laygate.Register;
using Laygate.ServiceTests.Shared;

namespace Laygate.ServiceTests.Service;

/// <summary>What a request may not do although its caller may: a page of the same site that uses the reader's cookie, a browser that only asks.</summary>
public sealed class BorderTests(OneService one) : IClassFixture<OneService>
{
    private string? cookie;

    [Theory]
    [InlineData("same-site", null, "text/plain")]
    [InlineData("cross-site", null, "text/plain")]
    [InlineData("none", null, "application/yaml")]
    [InlineData(null, "http://other.127.0.0.1.example", "application/yaml")]
    [InlineData(null, "null", "application/yaml")]
    [InlineData(null, null, "application/yaml")]
    public async Task A_page_elsewhere_cannot_submit_with_the_cookie_of_the_reader(string? site, string? origin, string type)
    {
        using var answer = await ByCookieAsync(HttpMethod.Post, "/api/v1/submissions", new StringContent("a: 1", Encoding.UTF8, type), site, origin);
        await CheckApiTests.RefusedAsync(answer, 403);
    }

    [Theory]
    [InlineData("text/plain")]
    [InlineData("application/x-www-form-urlencoded")]
    [InlineData("multipart/form-data")]
    [InlineData(null)]
    public async Task A_form_is_no_request_to_the_interface(string? type)
    {
        var content = new ByteArrayContent("a: 1"u8.ToArray());
        content.Headers.ContentType = type is null ? null : new MediaTypeHeaderValue(type);
        using var answer = await ByCookieAsync(HttpMethod.Post, "/api/v1/submissions", content, "same-origin", null);
        await CheckApiTests.RefusedAsync(answer, 415);
    }

    [Fact]
    public async Task No_unsafe_request_of_the_interface_is_taken_from_another_page()
    {
        foreach (var (method, address) in new[] { (HttpMethod.Post, "/api/v1/checks"), (HttpMethod.Post, "/api/v1/sheets"), (HttpMethod.Post, "/api/v1/comparisons"), (HttpMethod.Post, "/api/v1/submissions/x/decision"), (HttpMethod.Post, "/api/v1/submissions/x/screenings"), (HttpMethod.Post, "/api/v1/screenings"), (HttpMethod.Post, "/api/v1/keys"), (HttpMethod.Delete, "/api/v1/keys/x") })
        {
            using var answer = await ByCookieAsync(method, address, JsonContent.Create(new { reason = "x" }), "same-site", null);
            await CheckApiTests.RefusedAsync(answer, 403);
        }
    }

    [Fact]
    public async Task A_page_of_our_own_and_a_key_in_the_header_are_taken_as_before()
    {
        using var own = await ByCookieAsync(HttpMethod.Post, "/api/v1/submissions", RunningService.Yaml("a: 1"), "same-origin", null);
        Assert.Equal(HttpStatusCode.Created, own.StatusCode);
        using var older = await ByCookieAsync(HttpMethod.Post, "/api/v1/submissions", RunningService.Yaml("a: 1"), null, one.Running.Address.GetLeftPart(UriPartial.Authority));
        Assert.Equal(HttpStatusCode.Created, older.StatusCode);
        using var read = await ByCookieAsync(HttpMethod.Get, "/api/v1/submissions", null, "same-site", null);
        Assert.Equal(HttpStatusCode.OK, read.StatusCode);
        using var program = await one.Ada.PostAsync("/api/v1/submissions", new StringContent("a: 1", Encoding.UTF8, "text/plain"));
        Assert.Equal(HttpStatusCode.Created, program.StatusCode);
    }

    [Fact]
    public async Task A_cookie_set_behind_a_proxy_with_TLS_is_secure()
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, "/sign-in") { Content = new FormUrlEncodedContent([KeyValuePair.Create("key", one.Running.Administrator)]) };
        request.Headers.Add("X-Forwarded-Proto", "https");
        using var answer = await one.Nobody.SendAsync(request);
        Assert.Matches("(?i)^__Host-laygate=[^;]+; path=/; secure; samesite=lax; httponly$", answer.Headers.GetValues("Set-Cookie").Single());

        // It is good there, and its name is another without TLS.
        foreach (var (tls, status) in new[] { (true, HttpStatusCode.OK), (false, HttpStatusCode.Unauthorized) })
        {
            using var next = new HttpRequestMessage(HttpMethod.Get, "/api/v1/submissions");
            next.Headers.Add("Cookie", answer.Headers.GetValues("Set-Cookie").Single().Split(';')[0]);
            next.Headers.Add("X-Forwarded-Proto", tls ? "https" : "http");
            using var known = await one.Nobody.SendAsync(next);
            Assert.Equal(status, known.StatusCode);
        }
    }

    [Fact]
    public async Task A_submission_is_sent_again_only_when_it_has_changed()
    {
        var id = await RunningService.SubmitAsync(one.Ada, "a: 1");
        await RunningService.ScreenedAsync(one.Ada, id);
        var address = $"/api/v1/submissions/{id}";
        using var first = await one.Ada.GetAsync(address);
        foreach (var tag in new[] { first.Headers.ETag!.ToString(), "\"x\", " + first.Headers.ETag, "W/" + first.Headers.ETag, "*" })
        {
            using var same = await IfNoneMatchAsync(address, tag);
            Assert.Equal(HttpStatusCode.NotModified, same.StatusCode);
            Assert.Equal(first.Headers.ETag, same.Headers.ETag);
            Assert.Empty(await same.Content.ReadAsByteArrayAsync());
        }

        using var other = await IfNoneMatchAsync(address, "\"0\"");
        Assert.Equal(HttpStatusCode.OK, other.StatusCode);
    }

    [Fact]
    public async Task Whatever_can_be_read_can_be_asked_for_its_head()
    {
        var id = await RunningService.SubmitAsync(one.Ada, RunningService.Plan("concept-fifteen-lines.yaml"));
        await RunningService.ScreenedAsync(one.Ada, id);
        foreach (var address in new[] { "/", "/laygate.css", "/rules", "/submissions", $"/submissions/{id}", "/healthz/live", "/healthz/ready", "/openapi/v1.json", "/api/v1/rules", "/api/v1/schemas/plan.schema.json", "/api/v1/submissions", $"/api/v1/submissions/{id}", $"/api/v1/submissions/{id}/report", $"/api/v1/submissions/{id}/text", $"/api/v1/submissions/{id}/files", $"/api/v1/submissions/{id}/files/plan.yaml", $"/api/v1/submissions/{id}/archive", "/api/v1/submissions/none", "/nothing" })
        {
            using var head = await one.Ada.SendAsync(new HttpRequestMessage(HttpMethod.Head, address));
            using var got = await one.Ada.GetAsync(address);
            Assert.Equal(got.StatusCode, head.StatusCode);
            Assert.Empty(await head.Content.ReadAsByteArrayAsync());
            Assert.Equal(got.Content.Headers.ContentType?.MediaType, head.Content.Headers.ContentType?.MediaType);
        }

        using var unsafely = await one.Ada.SendAsync(new HttpRequestMessage(HttpMethod.Head, "/api/v1/checks"));
        Assert.Equal(HttpStatusCode.MethodNotAllowed, unsafely.StatusCode);
    }

    [Fact]
    public async Task A_browser_that_is_sent_away_gets_a_page()
    {
        await using var service = await RunningService.StartAsync(null, "RequestsPerMinute=1");
        using var client = service.Client();
        client.DefaultRequestHeaders.Add("Accept", "text/html");
        using var second = await RefusedAsync(client, "/");
        Assert.Equal("text/html", second.Content.Headers.ContentType!.MediaType);
        Assert.NotNull(second.Headers.RetryAfter);
        Assert.Contains("Too many requests", await second.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        using var api = await RefusedAsync(client, "/api/v1/schemas");
        await CheckApiTests.RefusedAsync(api, 429);
    }

    // On a busy machine the minute of a count may end between two requests.
    private static async Task<HttpResponseMessage> RefusedAsync(HttpClient client, string path)
    {
        var answer = await client.GetAsync(path);
        await Patience.UntilAsync(
            async () =>
            {
                answer = answer.StatusCode == HttpStatusCode.TooManyRequests ? answer : await client.GetAsync(path);
                return answer.StatusCode == HttpStatusCode.TooManyRequests;
            },
            $"a refusal of {path}");
        return answer;
    }

    [Fact]
    public async Task The_description_names_the_answers_that_any_request_may_get()
    {
        var document = await RunningService.JsonAsync(await one.Nobody.GetAsync("/openapi/v1.json"));
        foreach (var path in document.GetProperty("paths").EnumerateObject())
        {
            foreach (var operation in path.Value.EnumerateObject())
            {
                Assert.NotEqual("head", operation.Name, StringComparer.Ordinal);
                foreach (var status in operation.Name is "get" ? new[] { "429", "503" } : ["400", "403", "429", "503"])
                {
                    Assert.True(operation.Value.GetProperty("responses").TryGetProperty(status, out _), $"{operation.Name} {path.Name} does not name {status}");
                }
            }
        }
    }

    [Fact]
    public async Task No_page_glues_two_words_together()
    {
        using var rita = one.Running.Client(await one.Running.KeyAsync("Glue", Role.Reviewer));
        var plan = RunningService.Plan("moor-road-thin-overlay.yaml");
        var id = await RunningService.SubmitAsync(rita, plan);
        await RunningService.ScreenedAsync(rita, id);
        var revision = await RunningService.SubmitAsync(rita, plan.Replace("title: ", "title: New ", StringComparison.Ordinal), $"?revision_of={id}");
        await RunningService.ScreenedAsync(rita, revision);
        foreach (var address in new[] { "/", "/sign-in", "/rules", "/rules/LAY-001", "/submissions", $"/submissions/{id}", $"/submissions/{revision}", $"/submissions/{revision}/beside/{id}", "/nothing" })
        {
            rita.DefaultRequestHeaders.Accept.ParseAdd("text/html");
            var html = await (await rita.GetAsync(address)).Content.ReadAsStringAsync();

            // Elements that a browser sets one after the other without a gap.
            var glued = Regex.Matches(html, @"[\w.,;:)](?:</?(?:a|span|strong|code|em|label|b|i)(?:\s[^>]*)?>)+[\w(]", RegexOptions.None, Patience.Longest).Select(match => html[Math.Max(0, match.Index - 20)..Math.Min(html.Length, match.Index + match.Length + 20)]).ToList();
            Assert.True(glued.Count == 0, address + ": " + string.Join(" | ", glued.Take(5)));
        }
    }

    [Fact]
    public async Task The_page_of_a_superseded_revision_says_so_and_offers_no_decision_nor_does_that_of_an_own_submission()
    {
        using var rita = one.Running.Client(await one.Running.KeyAsync("Page reader", Role.Reviewer));
        rita.DefaultRequestHeaders.Accept.ParseAdd("text/html");
        var id = await RunningService.SubmitAsync(one.Ada, RunningService.Plan("concept-fifteen-lines.yaml"));
        await RunningService.ScreenedAsync(one.Ada, id);
        Assert.Contains("id=\"decide\"", await rita.GetStringAsync($"/submissions/{id}"), StringComparison.Ordinal);
        var revision = await RunningService.SubmitAsync(one.Ada, RunningService.Plan("concept-fifteen-lines.yaml") + "# b\n", $"?revision_of={id}");
        await RunningService.ScreenedAsync(one.Ada, revision);
        var old = await rita.GetStringAsync($"/submissions/{id}");
        Assert.DoesNotContain("id=\"decide\"", old, StringComparison.Ordinal);
        Assert.InRange(old.IndexOf("Superseded.", StringComparison.Ordinal), 0, old.IndexOf("<dl", StringComparison.Ordinal));
        Assert.Contains($"<a href=\"/submissions/{revision}\">Open revision 2</a>", old, StringComparison.Ordinal);

        var own = await RunningService.SubmitAsync(rita, RunningService.Plan("concept-fifteen-lines.yaml"));
        await RunningService.ScreenedAsync(rita, own);
        var page = await rita.GetStringAsync($"/submissions/{own}");
        Assert.DoesNotContain("id=\"decide\"", page, StringComparison.Ordinal);
        Assert.Contains("You have submitted this plan yourself.", page, StringComparison.Ordinal);
    }

    private async Task<HttpResponseMessage> IfNoneMatchAsync(string address, string tag)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, address);
        request.Headers.TryAddWithoutValidation("If-None-Match", tag);
        return await one.Ada.SendAsync(request);
    }

    private async Task<HttpResponseMessage> ByCookieAsync(HttpMethod method, string address, HttpContent? content, string? site, string? origin)
    {
        using var request = new HttpRequestMessage(method, address) { Content = content };
        request.Headers.Add("Cookie", cookie ??= await one.Running.CookieAsync(one.Running.Administrator));
        if (site is not null)
        {
            request.Headers.Add("Sec-Fetch-Site", site);
        }

        if (origin is not null)
        {
            request.Headers.Add("Origin", origin);
        }

        return await one.Nobody.SendAsync(request);
    }
}
