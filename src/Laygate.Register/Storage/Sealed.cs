using System.Security.Cryptography;
using System.Text;

namespace Laygate.Register.Storage;

/// <summary>Seals bytes with a secret that only a browser holds: whoever has the database alone cannot read them (AES-GCM, NIST SP 800-38D; HKDF, RFC 5869).</summary>
internal static class Sealed
{
    private const int KeyBytes = 32;
    private const int NonceBytes = 12;
    private const int TagBytes = 16;

    /// <summary>Seals.</summary>
    /// <param name="secret">The secret; it has 256 random bits.</param>
    /// <param name="plain">What is sealed.</param>
    /// <param name="nonce">Random bytes, new each time.</param>
    public static byte[] Seal(string secret, ReadOnlySpan<byte> plain, byte[] nonce)
    {
        var whole = new byte[NonceBytes + TagBytes + plain.Length];
        nonce.CopyTo(whole, 0);
        using var cipher = new AesGcm(Key(secret), TagBytes);
        cipher.Encrypt(nonce, plain, whole.AsSpan(NonceBytes + TagBytes), whole.AsSpan(NonceBytes, TagBytes));
        return whole;
    }

    /// <summary>Opens; null where it was sealed with another secret or is damaged.</summary>
    public static byte[]? Open(string secret, byte[] whole)
    {
        var plain = new byte[Math.Max(0, whole.Length - NonceBytes - TagBytes)];
        try
        {
            using var cipher = new AesGcm(Key(secret), TagBytes);
            cipher.Decrypt(whole.AsSpan(0, NonceBytes), whole.AsSpan(NonceBytes + TagBytes), whole.AsSpan(NonceBytes, TagBytes), plain);
            return plain;
        }
        catch (CryptographicException)
        {
            return null;
        }
    }

    /// <summary>Random bytes for one seal.</summary>
    public static byte[] Nonce(RegisterDatabase database) => database.Bytes(NonceBytes);

    private static byte[] Key(string secret) => HKDF.DeriveKey(HashAlgorithmName.SHA256, Encoding.UTF8.GetBytes(secret), KeyBytes, info: "laygate session"u8.ToArray());
}
