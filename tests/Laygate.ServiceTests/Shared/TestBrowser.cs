using System.Net;
using System.Text.RegularExpressions;

namespace Laygate.ServiceTests.Shared;

/// <summary>What a browser does with pages, links and forms, step by step: cookies are kept, redirects are followed one at a time.</summary>
internal sealed class TestBrowser : IDisposable
{
    private readonly HttpClient client;

    public TestBrowser(Uri address)
    {
        client = new HttpClient(new SocketsHttpHandler { AllowAutoRedirect = false, CookieContainer = Cookies }) { BaseAddress = address, Timeout = Patience.Longest };
        client.DefaultRequestHeaders.Accept.ParseAdd("text/html");
        Address = address;
    }

    public Uri Address { get; }

    public CookieContainer Cookies { get; } = new();

    /// <summary>The cookie of the service; null: none.</summary>
    public string? Session
    {
        get => Cookies.GetCookies(Address)["laygate"]?.Value;
        set => Cookies.Add(Address, new Cookie("laygate", value) { Path = "/", HttpOnly = true });
    }

    public async Task<Page> GetAsync(string address) => await Page.OfAsync(await client.GetAsync(new Uri(Address, address)));

    public async Task<Page> PostAsync(string address, params (string Name, string Value)[] fields)
    {
        using var form = new FormUrlEncodedContent(fields.Select(field => KeyValuePair.Create(field.Name, field.Value)));
        using var request = new HttpRequestMessage(HttpMethod.Post, new Uri(Address, address)) { Content = form };
        request.Headers.Add("Sec-Fetch-Site", "same-origin");
        return await Page.OfAsync(await client.SendAsync(request));
    }

    /// <summary>Follows redirects until there is a page.</summary>
    public async Task<Page> FollowAsync(Page from)
    {
        for (var steps = 0; from.To is { } next && steps < 12; steps++)
        {
            from = await GetAsync(new Uri(from.Address, next).ToString());
        }

        return from;
    }

    /// <summary>From a page of the service through the provider, up to the way back, which is not gone.</summary>
    public async Task<Page> AtProviderAsync(string way, string who)
    {
        var page = await FollowAsync(await GetAsync(way));
        if (page.Text.Contains("Who are you?", StringComparison.Ordinal))
        {
            page = await PostAsync(page.Address.ToString(), ("who", who));
        }

        while (page.To is { } next && !new Uri(page.Address, next).AbsolutePath.Equals("/sign-in/back", StringComparison.Ordinal))
        {
            page = await GetAsync(new Uri(page.Address, next).ToString());
        }

        return page;
    }

    public async Task<Page> SignInAsync(string who, string to = "/") => await FollowAsync(await AtProviderAsync("/sign-in/provider?to=" + Uri.EscapeDataString(to), who));

    public async Task<Page> SignInWithKeyAsync(string key, string to = "/") => await FollowAsync(await PostAsync("/sign-in", ("key", key), ("to", to)));

    public async Task<string> TokenAsync() => (await GetAsync("/")).Token;

    public void Dispose() => client.Dispose();
}

/// <summary>A page as it came.</summary>
internal sealed record Page(Uri Address, HttpStatusCode Status, string? To, string Text, IReadOnlyList<string> SetCookies)
{
    /// <summary>What the forms of the page carry.</summary>
    public string Token => Regex.Match(Text, "name=\"token\" value=\"(?<token>[0-9a-f]{64})\"", RegexOptions.None, Patience.Longest).Groups["token"].Value;

    public static async Task<Page> OfAsync(HttpResponseMessage answer)
    {
        using (answer)
        {
            return new Page(
                answer.RequestMessage!.RequestUri!, answer.StatusCode, answer.Headers.Location?.OriginalString, await answer.Content.ReadAsStringAsync(), answer.Headers.TryGetValues("Set-Cookie", out var set) ? [.. set] : []);
        }
    }

    /// <summary>What stands in a field of several lines.</summary>
    public string Written(string name)
    {
        // A browser drops the first line end of such a field, and only that.
        var text = WebUtility.HtmlDecode(Regex.Match(Text, $"<textarea[^>]* name=\"{Regex.Escape(name)}\"[^>]*>(?<text>[^<]*)</textarea>", RegexOptions.None, Patience.Longest).Groups["text"].Value);
        return text.StartsWith('\n') ? text[1..] : text;
    }
}
