using System.Net;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using Laygate.Service.Access;
using Microsoft.AspNetCore.Authentication.OpenIdConnect;
using Microsoft.Extensions.DependencyInjection;

namespace Laygate.ServiceTests.Shared;

/// <summary>One provider and one service that asks it, for a class of tests.</summary>
public sealed class ProviderService : IAsyncLifetime
{
    private readonly string folder = Directory.CreateTempSubdirectory("laygate-sign-in-").FullName;

    internal SignInProvider Provider { get; private set; } = null!;

    internal RunningService Running { get; private set; } = null!;

    internal Tampering Line { get; } = new();

    public async Task InitializeAsync()
    {
        Provider = await SignInProvider.StartAsync();
        Running = await StartAsync();
        await Provider.RegisterAsync(Running.Address);
    }

    /// <summary>One more service on the same register.</summary>
    internal Task<RunningService> StartAsync(params string[] settings) => RunningService.StartAsync(
        folder,
        services => services.Configure<OpenIdConnectOptions>(ProviderSignIn.Name, options => (options.BackchannelHttpHandler, options.BackchannelTimeout) = (Line, Patience.Longest)),
        [
            "Authority=" + Provider.Issuer, "Audience=" + SignInProvider.Audience, "ClientId=" + SignInProvider.ClientId, "ClientSecret=" + SignInProvider.ClientSecret, "RequestsPerMinute=100000", .. settings,
        ]);

    public async Task DisposeAsync()
    {
        await Running.DisposeAsync();
        await Provider.DisposeAsync();
        Line.Dispose();
        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
        Directory.Delete(folder, recursive: true);
    }
}

/// <summary>The line from the service to its provider, on which a test can change what comes back.</summary>
internal sealed class Tampering() : DelegatingHandler(new SocketsHttpHandler())
{
    /// <summary>Changes the claims of the token about the signing in and signs it anew; null: leaves it.</summary>
    public Func<JsonObject, RSA>? Token { get; set; }

    /// <summary>Whether nothing gets through.</summary>
    public bool IsCut { get; set; }

    protected override async Task<HttpResponseMessage> SendAsync(HttpRequestMessage request, CancellationToken cancellationToken)
    {
        if (IsCut)
        {
            throw new HttpRequestException("cut");
        }

        var answer = await base.SendAsync(request, cancellationToken);
        if (Token is null || !request.RequestUri!.AbsolutePath.EndsWith("/token", StringComparison.Ordinal) || answer.StatusCode != HttpStatusCode.OK)
        {
            return answer;
        }

        var body = JsonNode.Parse(await answer.Content.ReadAsStringAsync(cancellationToken))!.AsObject();
        var claims = JsonNode.Parse(System.Buffers.Text.Base64Url.DecodeFromChars(body["id_token"]!.GetValue<string>().Split('.')[1]))!.AsObject();
        var key = Token(claims);
        body["id_token"] = IdentityProvider.Signed("RS256", JsonSerializer.Deserialize<Dictionary<string, object>>(claims)!, bytes => key.SignData(bytes, HashAlgorithmName.SHA256, RSASignaturePadding.Pkcs1), SignInProvider.Kid);
        answer.Content = new StringContent(body.ToJsonString(), Encoding.UTF8, "application/json");
        return answer;
    }
}
