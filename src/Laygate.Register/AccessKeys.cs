using System.Buffers.Text;
using System.Security.Cryptography;
using System.Text;
using Laygate.Register.Storage;
using Microsoft.EntityFrameworkCore;

namespace Laygate.Register;

/// <summary>Keys of those who may use the register. Of a secret only its hash is stored; it has 256 random bits, so that a plain hash suffices.</summary>
public sealed class AccessKeys(RegisterDatabase database)
{
    /// <summary>How each secret starts, so that scanners for leaked secrets know it.</summary>
    public const string Mark = "laygate_";

    private const int PrefixBytes = 6;
    private const int SecretBytes = 32;
    private const int LongestName = 100;

    /// <summary>Issues a key.</summary>
    /// <param name="name">Name of its owner.</param>
    /// <param name="role">What it may do.</param>
    /// <param name="expiresAt">When it ends; null: never.</param>
    /// <param name="cancel">Ends it; nothing is stored then.</param>
    /// <exception cref="RefusedException">The name is empty or too long, or the end has passed.</exception>
    public async Task<IssuedKey> IssueAsync(string name, Role role, DateTimeOffset? expiresAt, CancellationToken cancel)
    {
        if (string.IsNullOrWhiteSpace(name) || name.Length > LongestName || expiresAt <= database.Now)
        {
            throw new RefusedException(Refusal.BadRequest, $"A key needs a name of 1 to {LongestName} characters, and an end in the future or none.");
        }

        var prefix = Convert.ToHexStringLower(database.Bytes(PrefixBytes));
        var secret = $"{Mark}{prefix}_{Base64Url.EncodeToString(database.Bytes(SecretBytes))}";
        var row = new KeyRow
        {
            Id = database.NewId(),
            Prefix = prefix,
            SecretHash = Hash(secret),
            Name = name.Trim(),
            Role = role,
            CreatedAt = database.Now,
            ExpiresAt = expiresAt?.ToUniversalTime(),
        };
        await using var context = database.Open();
        context.Keys.Add(row);
        await context.SaveChangesAsync(cancel);
        return new IssuedKey(ToKey(row), secret);
    }

    /// <summary>Issues the first administrator's key, unless there has ever been one.</summary>
    /// <returns>The key; null when there has been one.</returns>
    public async Task<IssuedKey?> FirstAdministratorAsync(CancellationToken cancel)
    {
        await using var context = database.Open();
        return await context.Keys.AnyAsync(key => key.Role == Role.Administrator, cancel)
            ? null
            : await IssueAsync("first administrator", Role.Administrator, null, cancel);
    }

    /// <summary>Who a secret belongs to; null when it is none of ours, has ended or was revoked.</summary>
    public async Task<Caller?> FindAsync(string secret, CancellationToken cancel)
    {
        if (!secret.StartsWith(Mark, StringComparison.Ordinal) || secret.Length > 100)
        {
            return null;
        }

        var prefix = secret[Mark.Length..].Split('_')[0];
        await using var context = database.Open();
        var row = await context.Keys.AsNoTracking().FirstOrDefaultAsync(key => key.Prefix == prefix, cancel);
        return row is not null && CryptographicOperations.FixedTimeEquals(row.SecretHash, Hash(secret)) && row.RevokedAt is null
            && (row.ExpiresAt is not { } end || end > database.Now)
            ? new Caller(row.Id, row.Name, row.Role)
            : null;
    }

    /// <summary>All keys, the oldest first.</summary>
    public async Task<IReadOnlyList<AccessKey>> ListAsync(CancellationToken cancel)
    {
        await using var context = database.Open();
        return [.. (await context.Keys.AsNoTracking().OrderBy(key => key.CreatedAt).ToListAsync(cancel)).Select(ToKey)];
    }

    /// <summary>Revokes a key at once and for good.</summary>
    /// <exception cref="RefusedException">There is no such key.</exception>
    public async Task<AccessKey> RevokeAsync(string id, CancellationToken cancel)
    {
        await using var context = database.Open();
        var row = await context.Keys.FirstOrDefaultAsync(key => key.Id == id, cancel) ?? throw new RefusedException(Refusal.NotFound, "There is no key of that id.");
        row.RevokedAt ??= database.Now;
        await context.SaveChangesAsync(cancel);
        return ToKey(row);
    }

    private static byte[] Hash(string secret) => SHA256.HashData(Encoding.UTF8.GetBytes(secret));

    private static AccessKey ToKey(KeyRow row) => new(row.Id, row.Prefix, row.Name, row.Role, row.CreatedAt, row.ExpiresAt, row.RevokedAt);
}
