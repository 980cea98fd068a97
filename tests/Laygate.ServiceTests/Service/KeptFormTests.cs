using System.Net;
using System.Text.RegularExpressions;
using Laygate.Register;
using Laygate.Service.Pages;
using Laygate.ServiceTests.Shared;
using Microsoft.Extensions.DependencyInjection;

namespace Laygate.ServiceTests.Service;

/// <summary>Nothing that somebody wrote is lost: when another form of the same page is sent, when the session has ended, when somebody signed in anew meanwhile.</summary>
public sealed class KeptFormTests(ProviderService one) : IClassFixture<ProviderService>
{
    private const string Said = "First line\r\nand <b> a second one";

    [Fact]
    public async Task What_stands_in_one_form_of_the_page_of_a_submission_stays_when_another_is_sent()
    {
        var (id, version) = await SubmittedAsync("moor-road-thin-overlay.yaml");
        using var rita = new TestBrowser(one.Running.Address);
        var page = await rita.SignInAsync("rita", $"/submissions/{id}");
        var (first, second) = Fields(page);

        // A comment is sent; the decision and the other comment are only written.
        var sent = await rita.PostAsync($"/submissions/{id}/comments?at=p1-f1", ("token", page.Token), ("comment", Said), (first, "Which step?"), (second, "half"), (first.Replace(PageTexts.Said, PageTexts.Open, StringComparison.Ordinal), "true"));
        Assert.EndsWith("#p1-f1", sent.To, StringComparison.Ordinal);
        page = await rita.FollowAsync(sent);
        Assert.Equal((Said, string.Empty, "half"), (page.Written("comment"), page.Written(first), page.Written(second)));
        Assert.Contains("Nothing of it is recorded yet.", page.Text, StringComparison.Ordinal);
        Assert.Contains("Which step?", page.Text, StringComparison.Ordinal);

        // What is refused keeps the rest as well; so do taking, giving back, a record and a revision that are none.
        foreach (var way in new[] { "comments", "take", "release", "records", "revision", "keep" })
        {
            await rita.PostAsync($"/submissions/{id}/{way}", ("token", page.Token), ("seen", "0"), ("comment", Said + way), (second, "half " + way), (second.Replace(PageTexts.Said, PageTexts.Open, StringComparison.Ordinal), "true"), (second, " "));
            page = await rita.GetAsync($"/submissions/{id}");
            Assert.Equal(Said + way, page.Written("comment"));
        }

        // The decision is sent; the comment is only written.
        version = (await VersionAsync(id))!.Value;
        var decided = await rita.PostAsync($"/submissions/{id}/decision", ("token", page.Token), ("version", version.ToString(System.Globalization.CultureInfo.InvariantCulture)), ("verdict", "Returned"), ("comment", Said), (second, "still half"));
        Assert.Equal($"/submissions/{id}", decided.To);
        page = await rita.FollowAsync(decided);
        Assert.Equal((string.Empty, "still half"), (page.Written("comment"), page.Written(second)));
        Assert.Contains("and &lt;b&gt; a second one</blockquote>", page.Text, StringComparison.Ordinal);

        // Somebody else sees nothing of it, nor does its owner after signing out.
        using var olga = new TestBrowser(one.Running.Address);
        Assert.DoesNotContain("still half", (await olga.SignInAsync("olga", $"/submissions/{id}")).Text, StringComparison.Ordinal);
        await rita.PostAsync("/sign-out", ("token", page.Token));
        Assert.DoesNotContain("still half", (await rita.SignInAsync("rita", $"/submissions/{id}")).Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task A_form_sent_after_the_end_of_the_session_comes_back_after_signing_in_and_nothing_is_recorded_before(bool byKey)
    {
        var (id, version) = await SubmittedAsync("concept-fifteen-lines.yaml");
        var key = await one.Running.KeyAsync("Late reviewer", Role.Reviewer);
        using var browser = new TestBrowser(one.Running.Address);
        var page = byKey ? await browser.SignInWithKeyAsync(key, $"/submissions/{id}?sort=age") : await browser.SignInAsync("rita", $"/submissions/{id}?sort=age");
        await EndAsync(browser);
        var late = await browser.PostAsync($"/submissions/{id}/decision", ("token", page.Token), ("list", "?sort=age"), ("version", version.ToString(System.Globalization.CultureInfo.InvariantCulture)), ("verdict", "Returned"), ("comment", Said));
        Assert.Equal(HttpStatusCode.Unauthorized, late.Status);
        Assert.Contains("Your session has ended, so nothing was recorded.", late.Text, StringComparison.Ordinal);
        Assert.Contains($"name=\"to\" value=\"/submissions/{id}?sort=age\"", late.Text, StringComparison.Ordinal);
        Assert.Equal(version, await VersionAsync(id));

        // Who signs in as somebody else in this browser does not see it; who sent it finds it in the form.
        using (var olga = new TestBrowser(one.Running.Address) { Session = browser.Session })
        {
            Assert.DoesNotContain("a second one", (await olga.SignInAsync("olga", $"/submissions/{id}")).Text, StringComparison.Ordinal);
        }

        page = byKey ? await browser.SignInWithKeyAsync(key, $"/submissions/{id}?sort=age") : await browser.SignInAsync("rita", $"/submissions/{id}?sort=age");
        Assert.Equal(($"/submissions/{id}?sort=age", Said), (page.Address.PathAndQuery, page.Written("comment")));
        Assert.Equal(version, await VersionAsync(id));
        await browser.PostAsync($"/submissions/{id}/decision", ("token", page.Token), ("version", version.ToString(System.Globalization.CultureInfo.InvariantCulture)), ("verdict", "Returned"), ("comment", page.Written("comment")));
        Assert.Equal(string.Empty, (await browser.GetAsync($"/submissions/{id}")).Written("comment"));
        Assert.NotEqual(version, await VersionAsync(id));
    }

    [Fact]
    public async Task What_was_written_comes_back_on_each_page_with_forms()
    {
        var (id, version) = await SubmittedAsync("moor-road-thin-overlay.yaml");
        using var browser = new TestBrowser(one.Running.Address);
        await browser.SignInAsync("adam");
        var token = await browser.TokenAsync();
        await EndAsync(browser);
        var (first, _) = Fields(await PageAsync(id));
        foreach (var (address, fields) in new (string, (string, string)[])[]
        {
            ($"/submissions/{id}/decision", [("verdict", "Returned"), ("comment", Said), (first, "on a finding"), ("version", "0")]),
            ("/submissions/return", [("list", "?state=any"), ("comment", "Mend all <i>"), ("chosen", id + ":1")]),
            ("/administration/keys", [("name", "New office"), ("role", "Reviewer"), ("ends", "2030-01-02")]),
            ("/screenings", [("comment", "New edition")]),
            ("/notices", [("address", "office@example.org"), ("contract", "Lot 9 <b>"), ("event", "Returned")]),
            ("/administration/notices/failed/msg_1/again", [("address", "https://hooks.example.org/a"), ("secret", "whsec_not_to_be_kept"), ("event", "Submitted")]),
            ("/check", [("do", "submit"), ("plan", "a: 1\r\nb: <2>\r\n"), ("outlook", "true")]),
        })
        {
            var late = await browser.PostAsync(address, [("token", token), .. fields]);
            Assert.Equal(HttpStatusCode.Unauthorized, late.Status);
            Assert.Contains("Your session has ended, so nothing was recorded.", late.Text, StringComparison.Ordinal);
        }

        var page = await browser.SignInAsync("adam", $"/submissions/{id}");
        Assert.Equal((Said, "on a finding"), (page.Written("comment"), page.Written(first)));
        Assert.Equal("Mend all <i>", (await ReturnableAsync(browser)).Written("comment"));
        page = await browser.GetAsync("/administration");
        Assert.Contains("value=\"New office\"", page.Text, StringComparison.Ordinal);
        Assert.Contains("value=\"2030-01-02\"", page.Text, StringComparison.Ordinal);
        Assert.Matches("<option value=\"Reviewer\" selected", page.Text);
        page = await browser.GetAsync("/administration/notices");
        Assert.Contains("value=\"https://hooks.example.org/a\"", page.Text, StringComparison.Ordinal);
        Assert.Matches("value=\"Submitted\" checked", page.Text);
        Assert.DoesNotContain("whsec_not_to_be_kept", page.Text, StringComparison.Ordinal);

        // Another button of the page leaves it there; what was asked for is gone from the form.
        await browser.PostAsync("/administration/notices/none/end", ("token", page.Token), ("address", "https://hooks.example.org/b"));
        Assert.Contains("value=\"https://hooks.example.org/b\"", (await browser.GetAsync("/administration/notices")).Text, StringComparison.Ordinal);
        await browser.PostAsync("/administration/notices", ("token", page.Token), ("address", "https://hooks.example.org/b"), ("event", "Submitted"));
        Assert.DoesNotContain("value=\"https://hooks.example.org/b\"", (await browser.GetAsync("/administration/notices")).Text, StringComparison.Ordinal);
        page = await browser.GetAsync("/");
        Assert.Equal("a: 1\r\nb: <2>\r\n", page.Written("plan"));
        Assert.Matches("name=\"outlook\" value=\"true\" checked", page.Text);
        Assert.Equal(version, await VersionAsync(id));
    }

    [Fact]
    public async Task A_plan_that_was_checked_can_be_submitted_after_the_session_has_ended()
    {
        using var browser = new TestBrowser(one.Running.Address);
        await browser.SignInAsync("sam");
        var token = await browser.TokenAsync();
        await EndAsync(browser);
        var plan = RunningService.Plan("concept-fifteen-lines.yaml");
        var late = await browser.PostAsync("/check", ("token", token), ("do", "submit"), ("name", "night.yaml"), ("kept-name", "night.yaml"), ("kept", Convert.ToBase64String(System.Text.Encoding.UTF8.GetBytes(plan))));
        Assert.Equal(HttpStatusCode.Unauthorized, late.Status);
        var page = await browser.SignInAsync("sam");
        var at = page.Text.IndexOf("class=\"row actions\"", StringComparison.Ordinal);
        var carried = Regex.Matches(page.Text[at..page.Text.IndexOf("</form>", at, StringComparison.Ordinal)], "<input type=\"hidden\" name=\"(?<name>[a-z-]+)\" value=\"(?<value>[^\"]*)\"", RegexOptions.None, Patience.Longest)
            .Select(match => (match.Groups["name"].Value, WebUtility.HtmlDecode(match.Groups["value"].Value)));
        var submitted = await browser.PostAsync("/check", [.. carried, ("do", "submit")]);
        Assert.Equal(HttpStatusCode.Redirect, submitted.Status);
        Assert.Equal(plan, (await browser.GetAsync(submitted.To + "/text")).Text);
        Assert.DoesNotContain("is still here", (await browser.GetAsync("/")).Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_page_from_before_signing_in_anew_does_nothing_and_loses_nothing()
    {
        var (id, version) = await SubmittedAsync("concept-fifteen-lines.yaml");
        using var browser = new TestBrowser(one.Running.Address);
        var page = await browser.SignInAsync("rita", $"/submissions/{id}");
        await browser.SignInAsync("rita");
        var late = await browser.PostAsync($"/submissions/{id}/decision", ("token", page.Token), ("verdict", "Returned"), ("version", version.ToString(System.Globalization.CultureInfo.InvariantCulture)), ("comment", Said));
        Assert.Equal($"/submissions/{id}", late.To);
        Assert.Equal(Said, (await browser.FollowAsync(late)).Written("comment"));
        Assert.Equal(version, await VersionAsync(id));
    }

    [Fact]
    public async Task Without_any_session_what_was_written_is_shown_and_kept_nowhere()
    {
        using var browser = new TestBrowser(one.Running.Address);
        var page = await browser.PostAsync("/submissions/x/decision", ("comment", "lost? <script>"));
        Assert.Equal(HttpStatusCode.Unauthorized, page.Status);
        Assert.Contains("lost? &lt;script&gt;</pre>", page.Text, StringComparison.Ordinal);
        Assert.Contains("Copy what you wrote from here", page.Text, StringComparison.Ordinal);
    }

    // A list in which something can be chosen to be returned.
    private async Task<Page> ReturnableAsync(TestBrowser browser)
    {
        using var sam = one.Running.Client(await one.Running.KeyAsync("Sam's office", Role.Submitter));
        await RunningService.ScreenedAsync(sam, await RunningService.SubmitAsync(sam, "unreadable: ["));
        return await browser.GetAsync("/submissions?state=any");
    }

    private async Task<(string Id, long Version)> SubmittedAsync(string plan)
    {
        using var sam = one.Running.Client(await one.Running.KeyAsync("Sam's office", Role.Submitter));
        var id = await RunningService.SubmitAsync(sam, RunningService.Plan(plan));
        return (id, (await RunningService.ScreenedAsync(sam, id)).GetProperty("version").GetInt64());
    }

    private async Task<long?> VersionAsync(string id)
    {
        using var client = one.Running.Client(one.Running.Administrator);
        return (await RunningService.JsonAsync(await client.GetAsync($"/api/v1/submissions/{id}"))).GetProperty("version").GetInt64();
    }

    private async Task<Page> PageAsync(string id)
    {
        using var client = one.Running.Client(one.Running.Administrator);
        client.DefaultRequestHeaders.Accept.ParseAdd("text/html");
        return await Page.OfAsync(await client.GetAsync($"/submissions/{id}"));
    }

    private async Task EndAsync(TestBrowser browser)
    {
        var sessions = one.Running.Services.GetRequiredService<Sessions>();
        await sessions.EndAsync((await sessions.FindAsync(browser.Session!, default))!.Id, false, default);
    }

    // The fields of the first two findings on which one can write.
    private static (string First, string Second) Fields(Page page)
    {
        var names = Regex.Matches(page.Text, $"name=\"(?<name>{Regex.Escape(PageTexts.Said)}[^\"]+)\"", RegexOptions.None, Patience.Longest).Select(match => match.Groups["name"].Value).Take(2).ToList();
        return (names[0], names[1]);
    }
}
