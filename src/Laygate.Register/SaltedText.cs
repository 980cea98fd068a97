using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace Laygate.Register;

/// <summary>
/// Digests of names and of what people wrote. Each has a salt of its own of 256 random bits: once the salt is gone, nobody can find out by trying names which one it was,
/// while whatever was chained over the digest still holds.
/// </summary>
public static class SaltedText
{
    /// <summary>What stands where a name was replaced.</summary>
    public const string Name = "(name replaced)";

    /// <summary>What stands where a text was replaced.</summary>
    public const string Text = "(text replaced)";

    /// <summary>The digest: SHA-256 over the salt and the text as <see cref="Literal"/> writes it, lower-case hex.</summary>
    /// <param name="salt">The salt, in hex.</param>
    /// <param name="text">The text.</param>
    public static string Digest(string salt, string text) => Convert.ToHexStringLower(SHA256.HashData(Encoding.ASCII.GetBytes(salt + Literal(text))));

    /// <summary>The digest of a content: SHA-256 over the salt and the bytes, lower-case hex.</summary>
    /// <param name="salt">The salt, in hex.</param>
    /// <param name="content">The bytes.</param>
    public static string Digest(string salt, byte[] content)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        hash.AppendData(Encoding.ASCII.GetBytes(salt));
        hash.AppendData(content);
        return Convert.ToHexStringLower(hash.GetHashAndReset());
    }

    /// <summary>A text as a JSON string of printable ASCII on one line. Written here, since no later library may write it otherwise.</summary>
    public static string Literal(string text)
    {
        var literal = new StringBuilder(text.Length + 2).Append('"');
        foreach (var letter in text)
        {
            _ = letter is < ' ' or > '~' or '"' or '\\' ? literal.Append(CultureInfo.InvariantCulture, $"\\u{(int)letter:x4}") : literal.Append(letter);
        }

        return literal.Append('"').ToString();
    }
}
