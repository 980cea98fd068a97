using System.Net;
using System.Security.Cryptography;
using System.Text.Json;

namespace Laygate.ServiceTests.Shared;

/// <summary>
/// An identity provider on a loopback port that changes its signing keys. It publishes the two documents over HTTP (OpenID Connect Discovery 1.0, section 4;
/// JWK Set, RFC 7517); tokens are signed by the platform's RSA alone.
/// </summary>
internal sealed class LoopbackIssuer : IDisposable
{
    private readonly HttpListener listener = new();
    private readonly Lock guard = new();
    private readonly Dictionary<string, RSA> made = new(StringComparer.Ordinal);
    private string[] published = [];
    private int asked;

    public LoopbackIssuer(params string[] kids)
    {
        Issuer = $"http://127.0.0.1:{ServiceProcess.FreePort()}";
        listener.Prefixes.Add(Issuer + "/");
        listener.Start();
        Publish(kids);
        _ = ListenAsync();
    }

    public string Issuer { get; }

    /// <summary>How often the keys were asked for.</summary>
    public int Asked => Volatile.Read(ref asked);

    /// <summary>Publishes these keys and no others.</summary>
    public void Publish(params string[] kids)
    {
        lock (guard)
        {
            published = kids;
        }
    }

    public Dictionary<string, object> Claims(string role = "reviewer")
    {
        var claims = IdentityProvider.Claims(role);
        claims["iss"] = Issuer;
        return claims;
    }

    /// <summary>A token by a key, published or not.</summary>
    public string Token(string kid, Dictionary<string, object>? claims = null) =>
        IdentityProvider.Signed("RS256", claims ?? Claims(), bytes => Key(kid).SignData(bytes, HashAlgorithmName.SHA256, RSASignaturePadding.Pkcs1), kid);

    public void Dispose()
    {
        listener.Close();
        foreach (var key in made.Values)
        {
            key.Dispose();
        }
    }

    private RSA Key(string kid)
    {
        lock (guard)
        {
            return made.TryGetValue(kid, out var known) ? known : made[kid] = RSA.Create(2048);
        }
    }

    private byte[] Document(string path)
    {
        if (path is "/.well-known/openid-configuration")
        {
            return JsonSerializer.SerializeToUtf8Bytes(new { issuer = Issuer, jwks_uri = Issuer + "/keys" });
        }

        Interlocked.Increment(ref asked);
        string[] kids;
        lock (guard)
        {
            kids = published;
        }

        return JsonSerializer.SerializeToUtf8Bytes(new { keys = kids.Select(kid => IdentityProvider.Key(Key(kid), kid)).ToArray() });
    }

    private async Task ListenAsync()
    {
        while (listener.IsListening)
        {
            try
            {
                var context = await listener.GetContextAsync();
                context.Response.ContentType = "application/json";
                await context.Response.OutputStream.WriteAsync(Document(context.Request.Url!.AbsolutePath));
                context.Response.Close();
            }
            catch (Exception error) when (error is HttpListenerException or ObjectDisposedException or InvalidOperationException)
            {
                return;
            }
        }
    }
}
