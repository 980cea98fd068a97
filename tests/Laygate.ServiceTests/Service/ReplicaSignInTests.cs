using System.Net;
using Laygate.Register;
using Laygate.Service.Access;
using Laygate.ServiceTests.Shared;
using Microsoft.AspNetCore.Authentication.OpenIdConnect;
using Microsoft.Extensions.DependencyInjection;

namespace Laygate.ServiceTests.Service;

/// <summary>Two replicas on one PostgreSQL database behind one identity provider.</summary>
[Collection(SharedStores.Name)]
public sealed class ReplicaSignInTests(Stores stores)
{
    [SkippableFact]
    public async Task Who_signs_in_on_one_replica_is_known_on_the_other_and_signed_out_on_both()
    {
        var settings = stores.New(Engine.PostgreSql);
        await using var provider = await SignInProvider.StartAsync();
        await using var one = await StartAsync(settings, provider);
        await using var two = await StartAsync(settings, provider);
        await provider.RegisterAsync(one.Address);
        using var browser = new TestBrowser(one.Address);
        Assert.Equal((HttpStatusCode.OK, "/submissions"), await browser.SignInAsync("sam", "/submissions") is var landed ? (landed.Status, landed.Address.AbsolutePath) : default);
        var session = browser.Session;

        // Cookies know no ports, as behind one address for both.
        var there = await browser.GetAsync(new Uri(two.Address, "/submissions").ToString());
        Assert.Equal(HttpStatusCode.OK, there.Status);
        var sent = await browser.PostAsync(new Uri(two.Address, "/check").ToString(), ("token", there.Token), ("plan", "a: 1"), ("do", "submit"));
        Assert.StartsWith("/submissions/", sent.To, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.OK, (await browser.GetAsync(sent.To!)).Status);

        // A copy of the cookie is worth nothing on either.
        Assert.Contains("You are signed out of Laygate.", (await browser.PostAsync(new Uri(two.Address, "/sign-out").ToString(), ("token", there.Token))).Text, StringComparison.Ordinal);
        browser.Session = session;
        Assert.Equal([HttpStatusCode.Unauthorized, HttpStatusCode.Unauthorized], new[] { (await browser.GetAsync("/submissions")).Status, (await browser.GetAsync(new Uri(two.Address, "/submissions").ToString())).Status });
    }

    private static Task<RunningService> StartAsync(RegisterSettings settings, SignInProvider provider) => RunningService.StartAsync(
        null,
        services => services.Configure<OpenIdConnectOptions>(ProviderSignIn.Name, options => options.BackchannelTimeout = Patience.Longest),
        "Database=" + settings.Connection,
        "Authority=" + provider.Issuer,
        "ClientId=" + SignInProvider.ClientId,
        "ClientSecret=" + SignInProvider.ClientSecret,
        "RequestsPerMinute=100000");
}
