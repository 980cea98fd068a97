using System.Buffers;
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

    // A secret is made of these alone; whatever holds another character is asked of no database.
    private static readonly SearchValues<char> Letters = SearchValues.Create("ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_");

    /// <summary>Issues a key.</summary>
    /// <param name="name">Name of its owner; no other key that still works has it, letter case aside.</param>
    /// <param name="role">What it may do.</param>
    /// <param name="expiresAt">When it ends; null: never.</param>
    /// <param name="by">Who issues it.</param>
    /// <param name="cancel">Ends it; nothing is stored then.</param>
    /// <exception cref="RefusedException">The name is empty, too long, odd or taken, or the end has passed.</exception>
    public Task<IssuedKey> IssueAsync(string name, Role role, DateTimeOffset? expiresAt, Caller by, CancellationToken cancel)
    {
        CallerText.Name(name);
        var known = name.Trim();
        return expiresAt <= database.Now
            ? throw new RefusedException(Refusal.BadRequest, "The end of a key lies in the future, or there is none.")
            : database.InTransactionAsync(
                async context =>
                {
                    await context.HoldKeysAsync(cancel);
                    await FreeAsync(context, known, cancel);
                    return Add(context, known, role, expiresAt, by);
                },
                cancel);
    }

    /// <summary>Issues the first administrator's key, unless there has ever been one.</summary>
    /// <returns>The key; null when there has been one.</returns>
    public async Task<IssuedKey?> FirstAdministratorAsync(CancellationToken cancel)
    {
        await using var context = database.Open();
        return await context.Keys.AnyAsync(key => key.Role == Role.Administrator, cancel)
            ? null
            : await IssueAsync("first administrator", Role.Administrator, null, Caller.Program, cancel);
    }

    /// <summary>Who a secret belongs to; null when it is none of ours, has ended or was revoked.</summary>
    public async Task<Caller?> FindAsync(string secret, CancellationToken cancel)
    {
        if (!secret.StartsWith(Mark, StringComparison.Ordinal) || secret.Length > 100 || secret.AsSpan().ContainsAnyExcept(Letters))
        {
            return null;
        }

        var prefix = secret[Mark.Length..].Split('_')[0];
        await using var context = database.Open();
        var row = await context.Keys.AsNoTracking().FirstOrDefaultAsync(key => key.Prefix == prefix, cancel);
        return row is not null && CryptographicOperations.FixedTimeEquals(row.SecretHash, Hash(secret)) && IsLive(row)
            ? new Caller(row.Id, row.Name, row.Role)
            : null;
    }

    /// <summary>All keys, the oldest first.</summary>
    public async Task<IReadOnlyList<AccessKey>> ListAsync(CancellationToken cancel)
    {
        await using var context = database.Open();
        var acts = (await context.KeyHistory.AsNoTracking().ToListAsync(cancel)).ToLookup(act => act.KeyId, StringComparer.Ordinal);
        return [.. (await context.Keys.AsNoTracking().OrderBy(key => key.CreatedAt).ToListAsync(cancel)).Select(key => ToKey(key, acts[key.Id]))];
    }

    /// <summary>Revokes a key at once and for good. One that was revoked before stays as it is.</summary>
    /// <param name="id">Id of the key.</param>
    /// <param name="by">Who revokes it.</param>
    /// <param name="cancel">Ends it; nothing is stored then.</param>
    /// <exception cref="RefusedException">There is no such key.</exception>
    public Task<AccessKey> RevokeAsync(string id, Caller by, CancellationToken cancel)
    {
        CallerText.Id(id);
        return database.InTransactionAsync(
            async context =>
            {
                await context.HoldKeysAsync(cancel);
                var row = await context.Keys.FirstOrDefaultAsync(key => key.Id == id, cancel) ?? throw new RefusedException(Refusal.NotFound, "There is no key of that id.");
                var acts = await context.KeyHistory.Where(act => act.KeyId == id).ToListAsync(cancel);
                if (row.RevokedAt is null)
                {
                    row.RevokedAt = database.Now;
                    acts.Add(Note(context, row, KeyEvent.Revoked, by));
                }

                return ToKey(row, acts);
            },
            cancel);
    }

    private async Task FreeAsync(RegisterContext context, string name, CancellationToken cancel)
    {
        // Compared here: the two databases do not agree on letter case.
        var others = await context.Keys.AsNoTracking().Where(key => key.RevokedAt == null).ToListAsync(cancel);
        if (others.Exists(key => IsLive(key) && string.Equals(key.Name, name, StringComparison.OrdinalIgnoreCase)))
        {
            throw new RefusedException(Refusal.WrongState, "A key that still works has this name. Take another name, or revoke that key first.");
        }
    }

    private IssuedKey Add(RegisterContext context, string name, Role role, DateTimeOffset? expiresAt, Caller by)
    {
        var prefix = Convert.ToHexStringLower(database.Bytes(PrefixBytes));
        var secret = $"{Mark}{prefix}_{Base64Url.EncodeToString(database.Bytes(SecretBytes))}";
        var row = new KeyRow
        {
            Id = database.NewId(),
            Prefix = prefix,
            SecretHash = Hash(secret),
            Name = name,
            Role = role,
            CreatedAt = database.Now,
            ExpiresAt = expiresAt?.ToUniversalTime(),
        };
        context.Keys.Add(row);
        return new IssuedKey(ToKey(row, [Note(context, row, KeyEvent.Issued, by)]), secret);
    }

    private KeyHistoryRow Note(RegisterContext context, KeyRow key, KeyEvent what, Caller by)
    {
        var act = new KeyHistoryRow { KeyId = key.Id, At = database.Now, Event = what, By = by.Id, ByName = by.Name };
        context.KeyHistory.Add(act);
        return act;
    }

    private bool IsLive(KeyRow row) => row.RevokedAt is null && (row.ExpiresAt is not { } end || end > database.Now);

    private static byte[] Hash(string secret) => SHA256.HashData(Encoding.UTF8.GetBytes(secret));

    private static AccessKey ToKey(KeyRow row, IEnumerable<KeyHistoryRow> acts) => new(
        row.Id, row.Prefix, row.Name, row.Role, row.CreatedAt, row.ExpiresAt, row.RevokedAt, Act(acts, KeyEvent.Issued), Act(acts, KeyEvent.Revoked));

    private static KeyAct? Act(IEnumerable<KeyHistoryRow> acts, KeyEvent what) =>
        acts.FirstOrDefault(act => act.Event == what) is { } found ? new KeyAct(found.At, found.By, found.ByName) : null;
}
