using System.Net;
using System.Text.RegularExpressions;
using Laygate.Register;
using Laygate.ServiceTests.Shared;

namespace Laygate.ServiceTests.Service;

public sealed class PageTests(OneService one) : IClassFixture<OneService>
{
    private readonly Dictionary<string, string> cookies = new(StringComparer.Ordinal);

    private const string Script = "<script>alert(1)</script>\"'><img src=x onerror=alert(1)>";

    [Fact]
    public async Task Script_in_every_text_field_is_shown_and_never_run()
    {
        var plan = Regex.Replace(RunningService.Plan(), "(?m)^(?<key>\\s*(?:- )?(?:title|name|reason|note|supplier|text|comment|remark|evidence|owner): ).*$", match => match.Groups["key"].Value + "'" + Script.Replace("'", "''", StringComparison.Ordinal) + "'", RegexOptions.None, Patience.Longest);
        var key = await one.Running.KeyAsync(Script, Role.Administrator);
        using var api = one.Running.Client(key);
        var id = await RunningService.SubmitAsync(api, plan, "?file_name=" + Uri.EscapeDataString(Script));
        await RunningService.ScreenedAsync(api, id);
        var revision = await RunningService.SubmitAsync(api, plan + "# " + Script, $"?revision_of={id}");
        await RunningService.ScreenedAsync(api, revision);
        foreach (var page in new[] { "/", "/submissions", $"/submissions?search={Uri.EscapeDataString(Script)}", $"/submissions/{id}", $"/submissions/{revision}/beside/{id}" })
        {
            using var answer = await GetAsync(page, key);
            var html = await answer.Content.ReadAsStringAsync();
            Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
            Assert.DoesNotContain("<script", html, StringComparison.OrdinalIgnoreCase);
            Assert.DoesNotContain("<img", html, StringComparison.OrdinalIgnoreCase);
            Assert.DoesNotContain(" style=", html, StringComparison.OrdinalIgnoreCase);
            Assert.Contains("&lt;script&gt;", html, StringComparison.Ordinal);
            var policy = answer.Headers.GetValues("Content-Security-Policy").Single();
            Assert.DoesNotContain("unsafe", policy, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task Signing_in_sets_a_cookie_that_scripts_and_other_sites_cannot_use()
    {
        var key = await one.Running.KeyAsync("Ada", Role.Submitter);
        using var wrong = await PostAsync("/sign-in", null, [("key", "laygate_x_y")]);
        Assert.Equal(HttpStatusCode.Unauthorized, wrong.StatusCode);
        Assert.False(wrong.Headers.Contains("Set-Cookie"));
        using var right = await PostAsync("/sign-in", null, [("key", key)]);
        var cookie = right.Headers.GetValues("Set-Cookie").Single();
        Assert.DoesNotContain(key, cookie, StringComparison.Ordinal);
        Assert.Contains("httponly", cookie, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("samesite=lax", cookie, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public async Task Forms_from_elsewhere_are_refused()
    {
        var key = await one.Running.KeyAsync("Ada", Role.Submitter);
        using var without = await PostAsync("/check", key, [("plan", "a: 1"), ("do", "submit")]);
        Assert.Equal(HttpStatusCode.BadRequest, without.StatusCode);
        using var forged = await PostAsync("/check", key, [("plan", "a: 1"), ("do", "submit"), ("token", new string('0', 64))]);
        Assert.Equal(HttpStatusCode.BadRequest, forged.StatusCode);
        var token = await TokenAsync(key);
        using var foreign = await PostAsync("/check", key, [("plan", "a: 1"), ("do", "submit"), ("token", token)], ("Origin", "https://elsewhere.example"));
        Assert.Equal(HttpStatusCode.BadRequest, foreign.StatusCode);
        using var own = await PostAsync("/check", key, [("plan", "a: 1"), ("do", "submit"), ("token", token)]);
        Assert.Equal(HttpStatusCode.Redirect, own.StatusCode);
        using var login = await PostAsync("/sign-in", null, [("key", key)], ("Sec-Fetch-Site", "cross-site"));
        Assert.Equal(HttpStatusCode.BadRequest, login.StatusCode);
    }

    [Fact]
    public async Task A_plan_that_cannot_be_read_is_shown_with_its_line_marked()
    {
        var key = await one.Running.KeyAsync("Ada", Role.Submitter);
        using var answer = await PostAsync("/check", key, [("plan", "format: 1\r\nplan:\r\n  id: [\r\n"), ("do", "check"), ("token", await TokenAsync(key))]);
        var html = await answer.Content.ReadAsStringAsync();
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Matches("<li id=\"L[0-9]\" class=\"fail\">", html);
    }

    /// <summary>Whatever is wrong with a decision is said in its form, and the comment stands there as it was written.</summary>
    [Theory]
    [InlineData("Accepted", "", 0, 400, "Say in the comment why")]
    [InlineData("Returned", " \r\n", 0, 400, "Say why")]
    [InlineData("Returned", "Mend\r\n\u0001this", 0, 400, "control characters")]
    [InlineData("Returned", "  two\r\nlines <b>", -1, 412, "has changed")]
    [InlineData("Perhaps", "two\r\nlines", 0, 400, "Choose a decision")]
    [InlineData("", "kept", 0, 400, "Choose a decision")]
    public async Task A_decision_that_is_not_recorded_is_answered_in_its_form_with_nothing_lost(string verdict, string comment, int older, int status, string why)
    {
        var id = await RunningService.SubmitAsync(one.Ada, RunningService.Plan("moor-road-thin-overlay.yaml"));
        var version = (await RunningService.ScreenedAsync(one.Ada, id)).GetProperty("version").GetInt64() + older;
        var key = await one.Running.KeyAsync("Rita", Role.Reviewer);
        using var answer = await PostAsync($"/submissions/{id}/decision", key, [("verdict", verdict), ("comment", comment), ("version", version.ToString(System.Globalization.CultureInfo.InvariantCulture)), ("token", await TokenAsync(key))]);
        var html = await answer.Content.ReadAsStringAsync();
        Assert.Equal(status, (int)answer.StatusCode);
        var form = html[html.IndexOf("<form method=\"post\" action=\"/submissions/", StringComparison.Ordinal)..];
        Assert.Matches($"role=\"alert\"[^>]*><strong>Not recorded.</strong>[^<]*{why}", form);

        // A browser drops the first line end of a text field, and only that.
        var kept = WebUtility.HtmlDecode(Regex.Match(form, "<textarea id=\"comment\"[^>]*>(?<text>[^<]*)</textarea>", RegexOptions.None, Patience.Longest).Groups["text"].Value);
        Assert.Equal("\n" + comment, kept);
        Assert.Equal("screened", (await RunningService.JsonAsync(await one.Ada.GetAsync($"/api/v1/submissions/{id}"))).GetProperty("state").GetString());
    }

    [Fact]
    public async Task The_page_of_a_revision_shows_the_last_decision_and_what_has_changed_since()
    {
        var plan = RunningService.Plan("moor-road-thin-overlay.yaml");
        var id = await RunningService.SubmitAsync(one.Ada, plan);
        var version = (await RunningService.ScreenedAsync(one.Ada, id)).GetProperty("version").GetInt64();
        var key = await one.Running.KeyAsync("Rita", Role.Reviewer);
        using var decided = await PostAsync($"/submissions/{id}/decision", key, [("verdict", "Returned"), ("comment", "Say how the line is guarded."), ("version", version.ToString(System.Globalization.CultureInfo.InvariantCulture)), ("token", await TokenAsync(key))]);
        Assert.Equal(HttpStatusCode.Redirect, decided.StatusCode);
        var revision = await RunningService.SubmitAsync(one.Ada, plan.Replace("trucks_reverse: yes", "trucks_reverse: no", StringComparison.Ordinal), $"?revision_of={id}");
        await RunningService.ScreenedAsync(one.Ada, revision);
        using var answer = await GetAsync($"/submissions/{revision}", key);
        var html = await answer.Content.ReadAsStringAsync();
        var findings = html.IndexOf("<ol class=\"findings\">", StringComparison.Ordinal);
        Assert.InRange(html.IndexOf("Say how the line is guarded.", StringComparison.Ordinal), 0, findings);
        Assert.Contains("<strong>Returned</strong> (revision 1) by Rita", html, StringComparison.Ordinal);
        Assert.InRange(html.IndexOf("Since revision 1", StringComparison.Ordinal), 0, findings);

        // By hand from the text: the plan now denies that trucks reverse, which its own loads show (SAF-120).
        Assert.Matches("1 worse, [0-9]+ better", html);
        Assert.InRange(html.IndexOf("The plan denies a hazard that its own data show", StringComparison.Ordinal), 0, findings);
        Assert.InRange(html.IndexOf("DOES NOT PASS", StringComparison.Ordinal), 0, findings);
    }

    [Fact]
    public async Task From_a_result_exactly_what_was_checked_is_submitted_byte_for_byte()
    {
        var key = await one.Running.KeyAsync("Ada of the result", Role.Submitter);
        var text = System.Text.Encoding.UTF8.GetPreamble().Concat(System.Text.Encoding.UTF8.GetBytes(RunningService.Plan("concept-fifteen-lines.yaml").Replace("\n", "\r\n", StringComparison.Ordinal) + "# <end> ä\t\r\n")).ToArray();
        using var form = new MultipartFormDataContent { { new ByteArrayContent(text), "file", "my plan.yaml" }, { new StringContent("check"), "do" }, { new StringContent(await TokenAsync(key)), "token" }, { new StringContent("true"), "outlook" } };
        using var request = new HttpRequestMessage(HttpMethod.Post, "/check") { Content = form };
        request.Headers.Add("Cookie", await CookieAsync(key));
        request.Headers.Add("Accept", "text/html");
        using var result = await one.Nobody.SendAsync(request);
        var html = await result.Content.ReadAsStringAsync();
        var carried = Carried(html);
        Assert.Contains(("outlook", "true"), carried);
        using var submitted = await PostAsync("/check", key, [.. carried, ("do", "submit")]);
        Assert.Equal(HttpStatusCode.Redirect, submitted.StatusCode);
        using var ada = one.Running.Client(key);
        var address = "/api/v1" + submitted.Headers.Location;
        Assert.Equal(text, await ada.GetByteArrayAsync(address + "/text"));
        Assert.Equal("my plan.yaml", (await RunningService.JsonAsync(await ada.GetAsync(address))).GetProperty("file_name").GetString());
        using var broken = await PostAsync("/check", key, [.. carried.Select(field => field.Name is "kept" ? ("kept", "%%") : field), ("do", "submit")]);
        Assert.Equal(HttpStatusCode.BadRequest, broken.StatusCode);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task From_the_result_of_a_set_all_its_files_are_submitted_as_they_came(bool archive)
    {
        var key = await one.Running.KeyAsync("Ada of the set", Role.Submitter);
        (string Name, string Text)[] files = [("jobs/night.yaml", RunningService.Plan("concept-fifteen-lines.yaml") + "uses: [../firm/parts.yaml]\nrolling: { rollers: [r7] }\n"), ("firm/parts.yaml", "parts: 1\r\nrollers: [{ id: r7, kind: tandem, mode: vibration, speed: 20 km/h }]\r\n")];
        using var form = new MultipartFormDataContent { { new StringContent("check"), "do" }, { new StringContent(await TokenAsync(key)), "token" } };
        using var packed = new MemoryStream();
        if (archive)
        {
            using (var zip = new System.IO.Compression.ZipArchive(packed, System.IO.Compression.ZipArchiveMode.Create, leaveOpen: true))
            {
                foreach (var (name, text) in files)
                {
                    await using var entry = new StreamWriter(zip.CreateEntry(name).Open());
                    await entry.WriteAsync(text);
                }
            }

            form.Add(new ByteArrayContent(packed.ToArray()), "file", "night.zip");
        }
        else
        {
            foreach (var (name, text) in files)
            {
                form.Add(new StringContent(text), "file", name);
            }
        }

        using var request = new HttpRequestMessage(HttpMethod.Post, "/check") { Content = form };
        request.Headers.Add("Cookie", await CookieAsync(key));
        request.Headers.Add("Accept", "text/html");
        using var result = await one.Nobody.SendAsync(request);
        var html = await result.Content.ReadAsStringAsync();
        Assert.True(result.StatusCode == HttpStatusCode.OK, html);
        using var submitted = await PostAsync("/check", key, [.. Carried(html), ("do", "submit")]);
        Assert.Equal(HttpStatusCode.Redirect, submitted.StatusCode);
        using var ada = one.Running.Client(key);
        var address = "/api/v1" + submitted.Headers.Location;
        foreach (var (name, text) in files)
        {
            Assert.Equal(text, await ada.GetStringAsync($"{address}/files/{name}"));
        }

        using var kept = await ada.GetAsync(address + "/archive");
        Assert.Equal(archive ? HttpStatusCode.OK : HttpStatusCode.NotFound, kept.StatusCode);
        if (archive)
        {
            Assert.Equal(packed.ToArray(), await kept.Content.ReadAsByteArrayAsync());
        }
    }

    private static List<(string Name, string Value)> Carried(string html) =>
    [
        .. Regex.Matches(html[html.IndexOf("class=\"row actions\"", StringComparison.Ordinal)..], "<input type=\"hidden\" name=\"(?<name>[a-z-]+)\" value=\"(?<value>[^\"]*)\"", RegexOptions.None, Patience.Longest)
            .Select(match => (match.Groups["name"].Value, WebUtility.HtmlDecode(match.Groups["value"].Value))),
    ];

    [Fact]
    public async Task A_large_form_is_refused()
    {
        var key = await one.Running.KeyAsync("Ada", Role.Submitter);
        using var answer = await PostAsync("/check", key, [("plan", new string('a', 2_000_000)), ("do", "check"), ("token", await TokenAsync(key))]);
        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, answer.StatusCode);
    }

    // One session for each key: its forms carry what belongs to it.
    private async Task<string> CookieAsync(string key) => cookies.TryGetValue(key, out var known) ? known : cookies[key] = await one.Running.CookieAsync(key);

    private async Task<string> TokenAsync(string key)
    {
        using var page = await GetAsync("/", key);
        return Regex.Match(await page.Content.ReadAsStringAsync(), "name=\"token\" value=\"(?<token>[0-9a-f]{64})\"", RegexOptions.None, Patience.Longest).Groups["token"].Value;
    }

    private async Task<HttpResponseMessage> GetAsync(string page, string key)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, page);
        request.Headers.Add("Cookie", await CookieAsync(key));
        request.Headers.Add("Accept", "text/html");
        return await one.Nobody.SendAsync(request);
    }

    private async Task<HttpResponseMessage> PostAsync(string page, string? key, (string Name, string Value)[] fields, (string Name, string Value)? header = null)
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, page);
        var form = new MultipartFormDataContent();
        foreach (var (name, value) in fields)
        {
            form.Add(new StringContent(value), name);
        }

        request.Content = form;
        request.Headers.Add("Accept", "text/html");
        if (key is not null)
        {
            request.Headers.Add("Cookie", await CookieAsync(key));
        }

        if (header is { } extra)
        {
            request.Headers.Add(extra.Name, extra.Value);
        }

        return await one.Nobody.SendAsync(request);
    }
}
