using System.Net;
using System.Security.Cryptography;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Laygate.Register;
using Laygate.Service.Access;
using Laygate.ServiceTests.Shared;
using Microsoft.AspNetCore.Authentication.OpenIdConnect;
using Microsoft.Extensions.DependencyInjection;

namespace Laygate.ServiceTests.Service;

/// <summary>Signing in at an identity provider, against one that runs: OpenID Connect Core 1.0, 3.1; RFC 7636; RFC 9700, 2.1; OpenID Connect RP-Initiated Logout 1.0.</summary>
public sealed class SignInTests(ProviderService one) : IClassFixture<ProviderService>
{
    [Fact]
    public async Task A_link_to_a_submission_ends_there_after_signing_in_at_the_provider_and_with_a_key()
    {
        using var sam = one.Running.Client(await one.Running.KeyAsync("Sam's office", Role.Submitter));
        var to = $"/submissions/{await RunningService.SubmitAsync(sam, "a: 1")}?sort=shift&desc=true";
        using var browser = new TestBrowser(one.Running.Address);
        var refused = await browser.GetAsync(to);
        Assert.Equal(HttpStatusCode.Unauthorized, refused.Status);
        var way = WebUtility.HtmlDecode(Regex.Match(refused.Text, "href=\"(?<way>/sign-in/provider[^\"]*)\"", RegexOptions.None, Patience.Longest).Groups["way"].Value);
        var started = await browser.GetAsync(way);
        Assert.All(new[] { "response_type=code", "code_challenge_method=S256", "code_challenge=", "state=", "nonce=", "scope=openid%20profile" }, part => Assert.Contains(part, started.To!, StringComparison.Ordinal));
        Assert.DoesNotContain("form_post", started.To!, StringComparison.Ordinal);
        Assert.Equal(2, started.SetCookies.Count);
        Assert.All(started.SetCookies, cookie => Assert.Matches("(?i)samesite=lax.*httponly|httponly.*samesite=lax", cookie));
        var page = await browser.FollowAsync(await browser.AtProviderAsync(way, "rita"));
        Assert.Equal((to, HttpStatusCode.OK), (page.Address.PathAndQuery, page.Status));
        Assert.Contains("Rita of the office (reviewer)", page.Text, StringComparison.Ordinal);

        using var other = new TestBrowser(one.Running.Address);
        var typed = await other.SignInWithKeyAsync(await one.Running.KeyAsync("Kay", Role.Reviewer), WebUtility.HtmlDecode(Regex.Match(refused.Text, "name=\"to\" value=\"(?<to>[^\"]*)\"", RegexOptions.None, Patience.Longest).Groups["to"].Value));
        Assert.Equal((to, HttpStatusCode.OK), (typed.Address.PathAndQuery, typed.Status));
    }

    /// <summary>A browser reads a backslash as a slash and passes over tabs and line ends (WHATWG URL, 4.4).</summary>
    [Theory]
    [InlineData("//evil.example")]
    [InlineData("///evil.example")]
    [InlineData("/\\evil.example")]
    [InlineData("\\\\evil.example")]
    [InlineData("https://evil.example/")]
    [InlineData("https:evil.example")]
    [InlineData("javascript:alert(1)")]
    [InlineData("evil.example")]
    [InlineData("/a\\..\\/evil.example")]
    [InlineData(" //evil.example")]
    [InlineData("")]
    public async Task Signing_in_leads_to_no_other_site(string to)
    {
        using var browser = new TestBrowser(one.Running.Address);
        var form = await browser.GetAsync("/sign-in?to=" + Uri.EscapeDataString(to));
        Assert.Contains("name=\"to\" value=\"/\"", form.Text, StringComparison.Ordinal);
        Assert.Contains("href=\"/sign-in/provider?to=%2F\"", form.Text, StringComparison.Ordinal);
        var typed = await browser.PostAsync("/sign-in", ("key", one.Running.Administrator), ("to", to));
        Assert.Equal("/", typed.To);
        var through = await browser.AtProviderAsync("/sign-in/provider?to=" + Uri.EscapeDataString(to), "sam");
        Assert.Equal("/", (await browser.GetAsync(through.To!)).To);
    }

    [Theory]
    [InlineData("/\t/evil.example", "/")]
    [InlineData("/\n/evil.example", "/")]
    [InlineData("/%2F/evil.example", "/%2F/evil.example")]
    [InlineData("/%5Cevil.example", "/%5Cevil.example")]
    [InlineData("/submissions/x?list=%2F%2Fevil", "/submissions/x?list=%2F%2Fevil")]
    public void What_a_browser_takes_for_this_service_stays_and_what_it_takes_for_another_does_not(string to, string address) => Assert.Equal(address, LocalAddress.Of(to));

    [Fact]
    public async Task A_person_is_the_same_caller_from_the_page_and_by_a_bearer_token()
    {
        using var line = new HttpClient();
        using var asked = await line.PostAsync(new Uri(one.Provider.Issuer + "/token"), new FormUrlEncodedContent(new Dictionary<string, string>(StringComparer.Ordinal)
        {
            ["grant_type"] = "password",
            ["username"] = "rita",
            ["password"] = "any",
            ["client_id"] = SignInProvider.ClientId,
            ["client_secret"] = SignInProvider.ClientSecret,
            ["scope"] = "profile",
        }));
        using var program = one.Running.Client((await RunningService.JsonAsync(asked)).GetProperty("access_token").GetString());
        var id = await RunningService.SubmitAsync(program, RunningService.Plan("concept-fifteen-lines.yaml"));
        var version = (await RunningService.ScreenedAsync(program, id)).GetProperty("version").GetInt64();
        using var browser = new TestBrowser(one.Running.Address);
        var page = await browser.SignInAsync("rita", $"/submissions/{id}");
        Assert.Contains("You have submitted this plan yourself.", page.Text, StringComparison.Ordinal);
        var decided = await browser.PostAsync($"/submissions/{id}/decision", ("token", page.Token), ("verdict", "Accepted"), ("comment", "x"), ("version", version.ToString(System.Globalization.CultureInfo.InvariantCulture)));
        Assert.Equal(HttpStatusCode.Forbidden, decided.Status);
        var revised = await browser.PostAsync($"/submissions/{id}/revision", ("token", page.Token), ("plan", "a: 1"));
        var history = await RunningService.JsonAsync(await program.GetAsync($"/api/v1{revised.To}/history"));
        Assert.Equal(("token:p-rita", "Rita of the office"), (history[0].GetProperty("by").GetString(), history[0].GetProperty("by_name").GetString()));
    }

    [Fact]
    public async Task Who_has_several_roles_has_the_one_that_may_most()
    {
        using var browser = new TestBrowser(one.Running.Address);
        Assert.Contains("Olga (reviewer)", (await browser.SignInAsync("olga")).Text, StringComparison.Ordinal);
        using var other = new TestBrowser(one.Running.Address);
        Assert.Equal(HttpStatusCode.OK, (await other.SignInAsync("adam", "/administration")).Status);
    }

    [Theory]
    [InlineData("gast")]
    [InlineData("leer")]
    public async Task Who_has_no_role_is_told_what_to_do_and_can_come_as_somebody_else(string who)
    {
        using var browser = new TestBrowser(one.Running.Address);
        var page = await browser.SignInAsync(who, "/submissions");
        Assert.Equal(HttpStatusCode.Forbidden, page.Status);
        Assert.Contains("gives you no role in Laygate", page.Text, StringComparison.Ordinal);
        Assert.Null(browser.Session);
        var anew = WebUtility.HtmlDecode(Regex.Match(page.Text, "href=\"(?<way>/sign-in/provider\\?anew[^\"]*)\"", RegexOptions.None, Patience.Longest).Groups["way"].Value);
        Assert.Equal("/submissions", (await browser.FollowAsync(await browser.AtProviderAsync(anew, "sam"))).Address.PathAndQuery);
    }

    [Fact]
    public async Task The_cookie_is_a_random_word_and_a_copy_of_it_is_dead_after_signing_out_here_and_at_the_provider()
    {
        using var browser = new TestBrowser(one.Running.Address);
        var back = await browser.AtProviderAsync("/sign-in/provider?to=%2Fsubmissions", "sam");
        var landed = await browser.GetAsync(back.To!);
        Assert.Matches("(?i)^laygate=[A-Za-z0-9_-]{43}; path=/; samesite=lax; httponly$", landed.SetCookies.Single(cookie => cookie.StartsWith("laygate=", StringComparison.Ordinal)));
        var copy = browser.Session!;
        Assert.Equal(HttpStatusCode.OK, (await browser.GetAsync("/submissions")).Status);
        var left = await browser.PostAsync("/sign-out", ("token", await browser.TokenAsync()));
        Assert.Equal(HttpStatusCode.OK, left.Status);
        Assert.Null(browser.Session);
        var end = WebUtility.HtmlDecode(Regex.Match(left.Text, "http-equiv=\"refresh\" content=\"0; url=(?<end>[^\"]*)\"", RegexOptions.None, Patience.Longest).Groups["end"].Value);
        Assert.StartsWith(one.Provider.Issuer + "/leave?", end, StringComparison.Ordinal);
        Assert.Contains("id_token_hint=", end, StringComparison.Ordinal);
        Assert.Contains("You are signed out, here and at your organisation.", (await browser.FollowAsync(await browser.GetAsync(end))).Text, StringComparison.Ordinal);

        // The provider asks again who it is, too.
        Assert.Contains("Who are you?", (await browser.FollowAsync(await browser.GetAsync("/sign-in/provider"))).Text, StringComparison.Ordinal);
        using var thief = new TestBrowser(one.Running.Address) { Session = copy };
        Assert.Equal(HttpStatusCode.Unauthorized, (await thief.GetAsync("/submissions")).Status);
        Assert.Equal(HttpStatusCode.Unauthorized, (await thief.GetAsync("/api/v1/submissions")).Status);
    }

    [Fact]
    public async Task A_key_signs_in_and_travels_no_more()
    {
        var key = await one.Running.KeyAsync("Typed", Role.Submitter);
        using var browser = new TestBrowser(one.Running.Address);
        await browser.SignInWithKeyAsync(key);
        Assert.DoesNotContain(key, browser.Cookies.GetCookieHeader(one.Running.Address), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.OK, (await browser.GetAsync("/submissions")).Status);
        using var old = new TestBrowser(one.Running.Address) { Session = key };
        Assert.Equal(HttpStatusCode.Unauthorized, (await old.GetAsync("/submissions")).Status);
        var copy = browser.Session!;
        Assert.Equal("/", (await browser.PostAsync("/sign-out", ("token", await browser.TokenAsync()))).To);
        using var thief = new TestBrowser(one.Running.Address) { Session = copy };
        Assert.Equal(HttpStatusCode.Unauthorized, (await thief.GetAsync("/submissions")).Status);

        // A session lives no longer than its key.
        await browser.SignInWithKeyAsync(key);
        await one.Running.KeyAsync("Typed", Role.Submitter);
        Assert.Equal(HttpStatusCode.Unauthorized, (await browser.GetAsync("/submissions")).Status);
    }

    [Fact]
    public async Task An_administrator_sees_the_sessions_and_ends_one_or_all_of_a_person()
    {
        using var first = new TestBrowser(one.Running.Address);
        using var second = new TestBrowser(one.Running.Address);
        using var other = new TestBrowser(one.Running.Address);
        await first.SignInAsync("sam");
        await second.SignInAsync("sam");
        await other.SignInAsync("olga");
        using var adam = new TestBrowser(one.Running.Address);
        var page = await adam.SignInAsync("adam", "/administration");
        var sessions = one.Running.Services.GetRequiredService<Sessions>();
        var own = await sessions.FindAsync(first.Session!, default);
        Assert.Contains($"/administration/sessions/{own!.Id}/end\"", page.Text, StringComparison.Ordinal);
        Assert.DoesNotContain(first.Session!, page.Text, StringComparison.Ordinal);
        Assert.Equal("/administration", (await adam.PostAsync($"/administration/sessions/{own.Id}/end", ("token", page.Token), ("name", "half written"))).To);
        Assert.Equal([HttpStatusCode.Unauthorized, HttpStatusCode.OK], new[] { (await first.GetAsync("/submissions")).Status, (await second.GetAsync("/submissions")).Status });
        Assert.Contains("value=\"half written\"", (await adam.GetAsync("/administration")).Text, StringComparison.Ordinal);
        await first.SignInAsync("sam");
        await adam.PostAsync($"/administration/sessions/{(await sessions.FindAsync(second.Session!, default))!.Id}/end-all", ("token", page.Token));
        Assert.Equal([HttpStatusCode.Unauthorized, HttpStatusCode.Unauthorized, HttpStatusCode.OK], new[] { (await first.GetAsync("/submissions")).Status, (await second.GetAsync("/submissions")).Status, (await other.GetAsync("/submissions")).Status });
    }

    [Fact]
    public async Task Another_replica_takes_the_way_back_and_knows_the_session()
    {
        await using var replica = await one.StartAsync();
        using var browser = new TestBrowser(one.Running.Address);
        var back = await browser.AtProviderAsync("/sign-in/provider?to=%2Fsubmissions", "sam");
        var query = new Uri(one.Running.Address, back.To!).PathAndQuery;
        using var client = replica.Client();
        using var request = new HttpRequestMessage(HttpMethod.Get, query);
        request.Headers.Host = one.Running.Address.Authority;
        request.Headers.Add("Cookie", browser.Cookies.GetCookieHeader(one.Running.Address));
        using var landed = await client.SendAsync(request);
        Assert.Equal("/submissions", landed.Headers.Location?.OriginalString);
        browser.Session = landed.Headers.GetValues("Set-Cookie").First(cookie => cookie.StartsWith("laygate=", StringComparison.Ordinal)).Split(';')[0]["laygate=".Length..];
        Assert.Equal(HttpStatusCode.OK, (await browser.GetAsync("/submissions")).Status);
    }

    [Fact]
    public async Task A_public_client_signs_in_without_a_secret_and_the_names_of_the_provider_count_for_roles()
    {
        await using var service = await RunningService.StartAsync(
            null, services => services.Configure<OpenIdConnectOptions>(ProviderSignIn.Name, options => options.BackchannelTimeout = Patience.Longest), "Authority=" + one.Provider.Issuer, "ClientId=public", "ReviewerNames:0=staff", "SubmitterNames:0=visitor", "RequestsPerMinute=100000");
        await one.Provider.RegisterAsync(service.Address, "public", null);
        using var rita = new TestBrowser(service.Address);
        Assert.Contains("Rita of the office (reviewer)", (await rita.SignInAsync("rita")).Text, StringComparison.Ordinal);
        using var guest = new TestBrowser(service.Address);
        Assert.Contains("Gast (submitter)", (await guest.SignInAsync("gast")).Text, StringComparison.Ordinal);
        using var adam = new TestBrowser(service.Address);
        Assert.Equal(HttpStatusCode.Forbidden, (await adam.SignInAsync("adam")).Status);

        // Without an audience no bearer token is taken.
        using var program = service.Client("e30.e30.e30");
        using var answer = await program.GetAsync("/api/v1/submissions");
        Assert.Equal(HttpStatusCode.Unauthorized, answer.StatusCode);
    }

    [Fact]
    public async Task While_the_provider_is_away_the_page_says_so_and_keys_go_on_working()
    {
        await using var service = await RunningService.StartAsync(null, $"Authority=http://127.0.0.1:{ServiceProcess.FreePort()}", "ClientId=x", "RequestsPerMinute=100000");
        using var browser = new TestBrowser(service.Address);
        Assert.Equal(HttpStatusCode.OK, (await browser.GetAsync("/sign-in")).Status);
        Plain(await browser.GetAsync("/sign-in/provider?to=%2Fsubmissions"), 503, "The provider does not answer");
        Assert.Equal(HttpStatusCode.OK, (await browser.SignInWithKeyAsync(service.Administrator, "/submissions")).Status);
    }

    [Fact]
    public async Task Each_way_in_which_the_provider_can_refuse_has_a_page_that_says_what_to_do()
    {
        using var browser = new TestBrowser(one.Running.Address);
        Plain(await browser.SignInAsync("verboten"), 403, "did not let you in");
        Plain(await browser.GetAsync("/sign-in/back?error=server_error&state=x"), 400, "Start again");
        Plain(await browser.GetAsync("/sign-in/back?code=x&state=forged"), 400, "Start again");
        Plain(await browser.GetAsync("/sign-in/back"), 400, "Start again");
        Plain(await browser.PostAsync("/sign-in/back", ("code", "x"), ("state", "forged")), 400, "Start again");

        // In another browser, and a second time.
        using var sam = new TestBrowser(one.Running.Address);
        var back = await sam.AtProviderAsync("/sign-in/provider", "sam");
        Plain(await browser.GetAsync(back.To!), 400, "Start again");
        var cookies = sam.Cookies.GetCookieHeader(one.Running.Address);
        Assert.Equal("/", (await sam.GetAsync(back.To!)).To);
        Plain(await sam.GetAsync(back.To!), 400, "Start again");

        // With the cookies of the first time as well, the provider itself refuses the code.
        using var client = one.Running.Client();
        client.DefaultRequestHeaders.Accept.ParseAdd("text/html");
        client.DefaultRequestHeaders.Add("Cookie", cookies);
        Plain(await Page.OfAsync(await client.GetAsync(back.To!)), 400, "no longer takes the code");
    }

    [Theory]
    [InlineData("nonce", "another", 502, "cannot be trusted")]
    [InlineData("nonce", null, 502, "cannot be trusted")]
    [InlineData("iss", "https://elsewhere.example", 502, "cannot be trusted")]
    [InlineData("aud", "another-service", 502, "cannot be trusted")]
    [InlineData("sub", null, 502, "")]
    [InlineData("exp", "past", 502, "The clocks differ")]
    [InlineData("nbf", "future", 502, "The clocks differ")]
    [InlineData("signature", null, 502, "cannot be trusted")]
    public async Task What_the_provider_did_not_say_about_this_signing_in_opens_nothing(string claim, string? value, int status, string what)
    {
        using var stranger = RSA.Create(2048);
        using var browser = new TestBrowser(one.Running.Address);
        var back = await browser.AtProviderAsync("/sign-in/provider", "adam");
        one.Line.Token = claims =>
        {
            Change(claims, claim, value);
            return claim is "signature" ? stranger : one.Provider.Key;
        };
        try
        {
            Plain(await browser.GetAsync(back.To!), status, what);
            Assert.Null(browser.Session);
        }
        finally
        {
            one.Line.Token = null;
        }
    }

    [Fact]
    public async Task A_provider_that_goes_away_under_way_opens_nothing_either()
    {
        using var browser = new TestBrowser(one.Running.Address);
        var back = await browser.AtProviderAsync("/sign-in/provider", "adam");
        one.Line.IsCut = true;
        try
        {
            Plain(await browser.GetAsync(back.To!), 503, "The provider does not answer");
        }
        finally
        {
            one.Line.IsCut = false;
        }

        Assert.Null(browser.Session);
    }

    private static void Change(JsonObject claims, string claim, string? value)
    {
        if (claim is "signature")
        {
            return;
        }

        claims.Remove(claim);
        if (value is not null)
        {
            // Ten minutes are beyond the five that clocks may differ by.
            claims[claim] = value switch { "past" => JsonValue.Create(IdentityProvider.In(-600)), "future" => JsonValue.Create(IdentityProvider.In(600)), _ => JsonValue.Create(value) };
        }
    }

    private static void Plain(Page page, int status, string what)
    {
        Assert.Equal(status, (int)page.Status);
        Assert.Contains(what, page.Text, StringComparison.Ordinal);
        Assert.Contains("href=\"/sign-in?to=", page.Text, StringComparison.Ordinal);
        Assert.DoesNotMatch("Exception|IDX[0-9]| at Microsoft\\.", page.Text);
    }
}
