using System.Diagnostics;
using System.Net;
using Laygate.ServiceTests.Shared;
using Microsoft.AspNetCore.Authentication.JwtBearer;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Options;

namespace Laygate.ServiceTests.Service;

/// <summary>An identity provider changes its signing keys while the service runs (OpenID Connect Core 1.0, 10.1.1, rotation of asymmetric signing keys).</summary>
public sealed class KeyRotationTests : IAsyncLifetime, IDisposable
{
    private readonly LoopbackIssuer issuer = new("first");
    private RunningService service = null!;

    // Unencrypted only on loopback; the service asks again after a second in place of half a minute, so that the test does not wait.
    public async Task InitializeAsync() => service = await RunningService.StartAsync(
        null,
        services => services.Configure<JwtBearerOptions>(JwtBearerDefaults.AuthenticationScheme, options =>
        {
            options.RequireHttpsMetadata = false;
            options.RefreshInterval = TimeSpan.FromSeconds(1);
        }),
        "Authority=" + issuer.Issuer,
        "Audience=" + IdentityProvider.Audience);

    public async Task DisposeAsync() => await service.DisposeAsync();

    public void Dispose() => issuer.Dispose();

    [Fact]
    public async Task A_new_key_is_accepted_after_rotation_and_a_removed_one_refused_in_the_end()
    {
        var (old, @new) = (issuer.Token("first"), issuer.Token("second"));
        Assert.Equal(HttpStatusCode.OK, await StatusAsync(old));
        Assert.Equal(HttpStatusCode.Unauthorized, await StatusAsync(@new));

        // Both are published for a while, as providers do.
        issuer.Publish("first", "second");
        await UntilAsync(HttpStatusCode.OK, @new);
        Assert.Equal(HttpStatusCode.OK, await StatusAsync(old));

        issuer.Publish("second");
        await UntilAsync(HttpStatusCode.Unauthorized, old, Refresh);
        Assert.Equal(HttpStatusCode.OK, await StatusAsync(@new));
        Assert.Equal(HttpStatusCode.Unauthorized, await StatusAsync(old));
    }

    [Fact]
    public async Task A_key_that_is_replaced_at_once_is_refused_as_soon_as_a_token_names_the_new_one()
    {
        var (old, @new) = (issuer.Token("first"), issuer.Token("second"));
        Assert.Equal(HttpStatusCode.OK, await StatusAsync(old));
        issuer.Publish("second");
        await UntilAsync(HttpStatusCode.OK, @new);
        await UntilAsync(HttpStatusCode.Unauthorized, old);
        Assert.Equal(HttpStatusCode.OK, await StatusAsync(@new));
    }

    [Fact]
    public async Task Wrong_tokens_stay_refused_across_a_rotation()
    {
        Assert.Equal(HttpStatusCode.OK, await StatusAsync(issuer.Token("first")));
        issuer.Publish("first", "second");
        await UntilAsync(HttpStatusCode.OK, issuer.Token("second"));
        foreach (var kid in new[] { "first", "second" })
        {
            string[] wrong = [Changed(kid, "aud", "another-service"), Changed(kid, "iss", "http://127.0.0.1:9"), Changed(kid, "exp", IdentityProvider.In(-600)), IdentityProvider.Signed("none", issuer.Claims("administrator"), _ => [], kid)];
            foreach (var token in wrong)
            {
                Assert.Equal(HttpStatusCode.Unauthorized, await StatusAsync(token));
            }
        }

        // A token that claims the name of a published key and is signed by another.
        var stranger = issuer.Token("third").Split('.')[2];
        var good = issuer.Token("second").Split('.');
        Assert.Equal(HttpStatusCode.Unauthorized, await StatusAsync($"{good[0]}.{good[1]}.{stranger}"));
    }

    [Fact]
    public async Task Tokens_of_unknown_keys_do_not_make_the_service_ask_at_every_request()
    {
        Assert.Equal(HttpStatusCode.OK, await StatusAsync(issuer.Token("first")));
        var (before, watch) = (issuer.Asked, Stopwatch.StartNew());
        for (var number = 0; number < 40; number++)
        {
            Assert.Equal(HttpStatusCode.Unauthorized, await StatusAsync(issuer.Token($"unknown-{number % 3}")));
        }

        Assert.InRange(issuer.Asked - before, 0, 2 + (int)watch.Elapsed.TotalSeconds);
    }

    private string Changed(string kid, string claim, object value)
    {
        var claims = issuer.Claims();
        claims[claim] = value;
        return issuer.Token(kid, claims);
    }

    // What the service does by itself every ten minutes; within a second of the last time it is passed over.
    private void Refresh() => service.Services.GetRequiredService<IOptionsMonitor<JwtBearerOptions>>().Get(JwtBearerDefaults.AuthenticationScheme).ConfigurationManager!.RequestRefresh();

    private async Task UntilAsync(HttpStatusCode status, string token, Action? meanwhile = null)
    {
        await Patience.UntilAsync(
            async () =>
            {
                meanwhile?.Invoke();
                return await StatusAsync(token) == status;
            },
            $"the answer {status}");
    }

    private async Task<HttpStatusCode> StatusAsync(string token)
    {
        using var client = service.Client(token);
        using var answer = await client.GetAsync("/api/v1/submissions");
        return answer.StatusCode;
    }
}
