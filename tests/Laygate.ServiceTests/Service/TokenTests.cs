using System.Net;
using System.Security.Cryptography;
using System.Text;
using Laygate.Register;
using Laygate.ServiceTests.Shared;
using Microsoft.AspNetCore.Authentication.JwtBearer;
using Microsoft.Extensions.DependencyInjection;

namespace Laygate.ServiceTests.Service;

/// <summary>Bearer tokens of an identity provider. What is to be refused follows RFC 8725 (JSON Web Token Best Current Practices), 3.1, 3.8 and 3.9.</summary>
public sealed class TokenTests : IAsyncLifetime, IDisposable
{
    private readonly IdentityProvider provider = new();
    private RunningService service = null!;

    public async Task InitializeAsync() => service = await RunningService.StartAsync(
        null,
        services => services.Configure<JwtBearerOptions>(JwtBearerDefaults.AuthenticationScheme, options => options.BackchannelHttpHandler = provider),
        "Authority=" + IdentityProvider.Issuer,
        "Audience=" + IdentityProvider.Audience);

    public async Task DisposeAsync() => await service.DisposeAsync();

    public void Dispose() => provider.Dispose();

    [Fact]
    public async Task A_token_opens_what_its_role_permits_and_its_name_stands_in_the_history()
    {
        Assert.Equal(HttpStatusCode.OK, await StatusAsync("/api/v1/submissions", provider.Token(IdentityProvider.Claims("submitter"))));
        Assert.Equal(HttpStatusCode.Forbidden, await StatusAsync("/api/v1/keys", provider.Token(IdentityProvider.Claims("submitter"))));
        Assert.Equal(HttpStatusCode.Forbidden, await StatusAsync("/api/v1/keys", provider.Token(IdentityProvider.Claims("reviewer"))));
        Assert.Equal(HttpStatusCode.OK, await StatusAsync("/api/v1/keys", provider.Token(IdentityProvider.Claims("administrator"))));
        using var client = service.Client(provider.Token(IdentityProvider.Claims("submitter")));
        var id = await RunningService.SubmitAsync(client, RunningService.Plan("concept-fifteen-lines.yaml"));
        using var history = await client.GetAsync($"/api/v1/submissions/{id}/history");
        var first = (await RunningService.JsonAsync(history))[0];
        Assert.Equal(("token:u-1", "Rita"), (first.GetProperty("by").GetString(), first.GetProperty("by_name").GetString()));

        // What one subject submitted, another does not see.
        var other = IdentityProvider.Claims("submitter");
        other["sub"] = "u-2";
        Assert.Equal(HttpStatusCode.NotFound, await StatusAsync($"/api/v1/submissions/{id}", provider.Token(other)));
    }

    [Fact]
    public async Task Keys_go_on_working_beside_tokens()
    {
        Assert.Equal(HttpStatusCode.OK, await StatusAsync("/api/v1/keys", service.Administrator));
        Assert.Equal(HttpStatusCode.OK, await StatusAsync("/api/v1/submissions", await service.KeyAsync("Ada", Role.Submitter)));
    }

    [Theory]
    [InlineData("aud", "another-service")]
    [InlineData("iss", "https://elsewhere.example")]
    [InlineData("role", "owner")]
    [InlineData("role", "2")]
    [InlineData("exp", "past")]
    [InlineData("nbf", "future")]
    [InlineData("exp", null)]
    [InlineData("aud", null)]
    [InlineData("iss", null)]
    [InlineData("sub", null)]
    [InlineData("role", null)]
    public async Task A_token_with_a_wrong_or_missing_claim_opens_nothing(string claim, string? value)
    {
        var claims = IdentityProvider.Claims();
        if (value is null)
        {
            claims.Remove(claim);
        }
        else
        {
            // Ten minutes are beyond the five that clocks may differ by.
            claims[claim] = value switch { "past" => IdentityProvider.In(-600), "future" => IdentityProvider.In(600), _ => value };
        }

        Assert.Equal(HttpStatusCode.Unauthorized, await StatusAsync("/api/v1/submissions", provider.Token(claims)));
    }

    [Fact]
    public async Task A_token_that_the_provider_did_not_sign_opens_nothing()
    {
        using var other = RSA.Create(2048);
        var claims = IdentityProvider.Claims("administrator");
        var good = provider.Token(claims);
        var parts = good.Split('.');
        string[] forged =
        [
            provider.Token(claims, other),
            IdentityProvider.Signed("none", claims, _ => []),
            IdentityProvider.Signed("None", claims, _ => []),

            // The public key as the secret of a keyed hash.
            IdentityProvider.Signed("HS256", claims, bytes => HMACSHA256.HashData(Encoding.UTF8.GetBytes(provider.PublicKey), bytes)),
            $"{parts[0]}.{parts[1]}.",
            $"{parts[0]}.{parts[1]}",
            $"{parts[0]}.{provider.Token(IdentityProvider.Claims("submitter")).Split('.')[1]}.{parts[2]}",
        ];
        Assert.Equal(HttpStatusCode.OK, await StatusAsync("/api/v1/keys", good));
        foreach (var token in forged)
        {
            Assert.Equal(HttpStatusCode.Unauthorized, await StatusAsync("/api/v1/keys", token));
        }
    }

    private async Task<HttpStatusCode> StatusAsync(string address, string token)
    {
        using var client = service.Client(token);
        using var answer = await client.GetAsync(address);
        return answer.StatusCode;
    }
}
