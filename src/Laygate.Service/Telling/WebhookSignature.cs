using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace Laygate.Service.Telling;

/// <summary>Signatures of webhooks by the open specification Standard Webhooks, with its symmetric scheme <c>v1</c>: HMAC-SHA256 over id, time and body.</summary>
internal static class WebhookSignature
{
    /// <summary>Header with the id of the notice.</summary>
    public const string IdHeader = "webhook-id";

    /// <summary>Header with the time of the attempt, in seconds of Unix time.</summary>
    public const string TimeHeader = "webhook-timestamp";

    /// <summary>Header with the signature.</summary>
    public const string SignatureHeader = "webhook-signature";

    private const string Mark = "whsec_";

    // The specification asks for 24 to 64 bytes.
    private const int Shortest = 24;
    private const int Longest = 64;
    private const int Usual = 32;

    /// <summary>A secret that nobody can guess.</summary>
    public static string NewSecret() => Mark + Convert.ToBase64String(RandomNumberGenerator.GetBytes(Usual));

    /// <summary>Whether a text is a secret: <c>whsec_</c> and 24 to 64 bytes in Base64.</summary>
    public static bool IsSecret(string text) => Key(text) is { Length: >= Shortest and <= Longest };

    /// <summary>The signature of a body.</summary>
    /// <param name="secret">The secret.</param>
    /// <param name="id">Id of the notice.</param>
    /// <param name="at">Time of the attempt.</param>
    /// <param name="body">The body exactly as sent.</param>
    public static string Of(string secret, string id, DateTimeOffset at, byte[] body)
    {
        byte[] signed = [.. Encoding.UTF8.GetBytes(string.Create(CultureInfo.InvariantCulture, $"{id}.{at.ToUnixTimeSeconds()}.")), .. body];
        return "v1," + Convert.ToBase64String(HMACSHA256.HashData(Key(secret)!, signed));
    }

    private static byte[]? Key(string text)
    {
        var bytes = new byte[Longest + 3];
        return text.StartsWith(Mark, StringComparison.Ordinal) && Convert.TryFromBase64String(text[Mark.Length..], bytes, out var count) ? bytes[..count] : null;
    }
}
