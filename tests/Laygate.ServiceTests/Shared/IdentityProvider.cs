using System.Buffers.Text;
using System.Net;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;

namespace Laygate.ServiceTests.Shared;

/// <summary>
/// An identity provider without a network: it answers the two documents that a service reads (OpenID Connect Discovery 1.0, section 4; JWK Set, RFC 7517)
/// and signs tokens (RFC 7519, RFC 7515) by the platform's RSA alone, so that nothing of the library under test makes them.
/// </summary>
internal sealed class IdentityProvider : HttpMessageHandler
{
    public const string Issuer = "https://identity.example";
    public const string Audience = "laygate";

    private readonly RSA key = RSA.Create(2048);

    public string PublicKey => key.ExportSubjectPublicKeyInfoPem();

    public static Dictionary<string, object> Claims(string? role = "reviewer") => role is null
        ? new Dictionary<string, object>(StringComparer.Ordinal) { ["iss"] = Issuer, ["aud"] = Audience, ["sub"] = "u-1", ["name"] = "Rita", ["exp"] = In(300) }
        : new Dictionary<string, object>(StringComparer.Ordinal) { ["iss"] = Issuer, ["aud"] = Audience, ["sub"] = "u-1", ["name"] = "Rita", ["exp"] = In(300), ["role"] = role };

    public static long In(int seconds) => DateTimeOffset.UtcNow.AddSeconds(seconds).ToUnixTimeSeconds();

    /// <summary>A token signed with RS256.</summary>
    public string Token(Dictionary<string, object> claims, RSA? by = null) => Signed("RS256", claims, bytes => (by ?? key).SignData(bytes, HashAlgorithmName.SHA256, RSASignaturePadding.Pkcs1));

    /// <summary>A token with any header and signature.</summary>
    public static string Signed(string algorithm, Dictionary<string, object> claims, Func<byte[], byte[]> sign, string kid = "one")
    {
        var head = Part(new Dictionary<string, object>(StringComparer.Ordinal) { ["alg"] = algorithm, ["typ"] = "JWT", ["kid"] = kid }) + "." + Part(claims);
        return head + "." + Base64Url.EncodeToString(sign(Encoding.ASCII.GetBytes(head)));
    }

    protected override Task<HttpResponseMessage> SendAsync(HttpRequestMessage request, CancellationToken cancellationToken) => Task.FromResult(request.RequestUri!.AbsolutePath switch
    {
        "/.well-known/openid-configuration" => Json(new { issuer = Issuer, jwks_uri = Issuer + "/keys" }),
        "/keys" => Json(new { keys = new[] { Key(key, "one") } }),
        _ => new HttpResponseMessage(HttpStatusCode.NotFound),
    });

    protected override void Dispose(bool disposing)
    {
        key.Dispose();
        base.Dispose(disposing);
    }

    /// <summary>A public key as a JWK.</summary>
    public static object Key(RSA key, string kid)
    {
        var known = key.ExportParameters(includePrivateParameters: false);
        return new { kty = "RSA", use = "sig", alg = "RS256", kid, n = Base64Url.EncodeToString(known.Modulus), e = Base64Url.EncodeToString(known.Exponent) };
    }

    private static string Part(Dictionary<string, object> part) => Base64Url.EncodeToString(JsonSerializer.SerializeToUtf8Bytes(part));

    private static HttpResponseMessage Json(object body) => new() { Content = new StringContent(JsonSerializer.Serialize(body), Encoding.UTF8, "application/json") };
}
