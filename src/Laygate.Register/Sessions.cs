using System.Buffers;
using System.Buffers.Text;
using System.Security.Cryptography;
using System.Text;
using Laygate.Register.Storage;
using Microsoft.EntityFrameworkCore;

namespace Laygate.Register;

/// <summary>A session that lives.</summary>
/// <param name="Id">Id; it opens nothing.</param>
/// <param name="Caller">Whose it is, with the role of the moment.</param>
/// <param name="ByKey">Whether it was opened with a key; otherwise by an identity provider.</param>
/// <param name="OpenedAt">When it was opened, UTC.</param>
/// <param name="SeenAt">When it was used last, to the minute, UTC.</param>
/// <param name="EndsAt">Its latest end, however much it is used, UTC.</param>
public sealed record Session(string Id, Caller Caller, bool ByKey, DateTimeOffset OpenedAt, DateTimeOffset SeenAt, DateTimeOffset EndsAt);

/// <summary>A session that was ended by its owner.</summary>
/// <param name="ByKey">Whether it was opened with a key.</param>
/// <param name="Hint">What the provider wants to see at its own end; null: nothing.</param>
public sealed record EndedSession(bool ByKey, string? Hint);

/// <summary>
/// Sessions of browsers. The browser carries a random secret and nothing else; its hash, whose it is and when it ends stand here, so that every replica knows it and a
/// copy of the secret is worth nothing once the session has ended.
/// </summary>
public sealed class Sessions(RegisterDatabase database)
{
    /// <summary>How long an ended session is remembered: what its owner still sends from an open page is kept until the next signing in.</summary>
    public static readonly TimeSpan Remembered = TimeSpan.FromDays(7);

    private const int SecretBytes = 32;

    // Not written at each request: that would cost a commit each.
    private static readonly TimeSpan Seen = TimeSpan.FromMinutes(1);

    private static readonly int SecretLength = Base64Url.GetEncodedLength(SecretBytes);

    private static readonly SearchValues<char> Letters = SearchValues.Create("ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_");

    /// <summary>Opens a session.</summary>
    /// <param name="caller">Whose it is. Where it is opened with a key, the id of that key.</param>
    /// <param name="byKey">Whether it is opened with a key, and so ends with it.</param>
    /// <param name="hint">What the provider wants to see at its own end; null: nothing.</param>
    /// <param name="earlier">Secret of the session that the browser had before; what was written in it and not recorded goes over, if it is the same caller's. Null: none.</param>
    /// <param name="cancel">Ends it; nothing is stored then.</param>
    /// <returns>The secret for the browser.</returns>
    public Task<string> OpenAsync(Caller caller, bool byKey, string? hint, string? earlier, CancellationToken cancel)
    {
        var secret = Base64Url.EncodeToString(database.Bytes(SecretBytes));
        return database.InTransactionAsync(
            async context =>
            {
                await ForgetAsync(context, cancel);
                var row = new SessionRow
                {
                    Id = database.NewId(),
                    SecretHash = Hash(secret),
                    Caller = caller.Id,
                    Name = caller.Name,
                    Role = caller.Role,
                    KeyId = byKey ? caller.Id : null,
                    OpenedAt = database.Now,
                    SeenAt = database.Now,
                    EndsAt = database.Now + database.Settings.SessionLength,
                    Hint = hint is null ? null : Sealed.Seal(secret, Encoding.UTF8.GetBytes(hint), Sealed.Nonce(database)),
                };
                context.Sessions.Add(row);
                await KeptForms.MoveAsync(database, context, earlier, (row, secret), cancel);
                return secret;
            },
            cancel);
    }

    /// <summary>The session of a secret; null when there is none, or it has ended.</summary>
    public async Task<Session?> FindAsync(string secret, CancellationToken cancel)
    {
        if (!IsSecret(secret))
        {
            return null;
        }

        var hash = Hash(secret);
        await using var context = database.Open();
        if (await Live(context, context.Sessions.Where(row => row.SecretHash == hash)).FirstOrDefaultAsync(cancel) is not { } found || ToSession(found) is not { } session)
        {
            return null;
        }

        var now = database.Now;
        if (now - session.SeenAt >= Seen)
        {
            await context.Sessions.Where(row => row.Id == session.Id).ExecuteUpdateAsync(set => set.SetProperty(row => row.SeenAt, now), cancel);
        }

        return session;
    }

    /// <summary>Ends the session of a secret, with all that was written in it and not recorded.</summary>
    /// <returns>What was ended; null when there was nothing.</returns>
    public async Task<EndedSession?> EndAsync(string secret, CancellationToken cancel)
    {
        if (!IsSecret(secret))
        {
            return null;
        }

        var hash = Hash(secret);
        return await database.InTransactionAsync(
            async context =>
            {
                if (await context.Sessions.FirstOrDefaultAsync(row => row.SecretHash == hash && row.EndedAt == null, cancel) is not { } row)
                {
                    return null;
                }

                var hint = row.Hint is { } whole && Sealed.Open(secret, whole) is { } plain ? Encoding.UTF8.GetString(plain) : null;
                (row.EndedAt, row.Hint) = (database.Now, null);
                await context.KeptForms.Where(draft => draft.Session == row.Id).ExecuteDeleteAsync(cancel);
                return new EndedSession(row.KeyId is not null, hint);
            },
            cancel);
    }

    /// <summary>Ends sessions at once: one, or all of whoever it belongs to.</summary>
    /// <param name="id">Id of a session.</param>
    /// <param name="ofCaller">Whether all of the same caller end.</param>
    /// <param name="cancel">Ends it; nothing is stored then.</param>
    /// <returns>Number of sessions that were ended.</returns>
    /// <exception cref="RefusedException">There is no such session.</exception>
    public Task<int> EndAsync(string id, bool ofCaller, CancellationToken cancel)
    {
        CallerText.Id(id);
        return database.InTransactionAsync(
            async context =>
            {
                var named = await context.Sessions.AsNoTracking().FirstOrDefaultAsync(row => row.Id == id, cancel) ?? throw new RefusedException(Refusal.NotFound, "There is no session of that id.");
                var now = database.Now;
                return await context.Sessions.Where(row => row.EndedAt == null && (row.Id == id || (ofCaller && row.Caller == named.Caller)))
                    .ExecuteUpdateAsync(set => set.SetProperty(row => row.EndedAt, now).SetProperty(row => row.Hint, (byte[]?)null), cancel);
            },
            cancel);
    }

    /// <summary>All sessions that live, by name.</summary>
    public async Task<IReadOnlyList<Session>> ListAsync(CancellationToken cancel)
    {
        await using var context = database.Open();
        return [.. (await Live(context, context.Sessions).ToListAsync(cancel)).Select(ToSession).OfType<Session>().OrderBy(one => one.Caller.Name, StringComparer.OrdinalIgnoreCase).ThenBy(one => one.OpenedAt)];
    }

    internal static byte[] Hash(string secret) => SHA256.HashData(Encoding.UTF8.GetBytes(secret));

    // Whatever holds another character is asked of no database.
    internal static bool IsSecret(string? secret) => secret is not null && secret.Length == SecretLength && !secret.AsSpan().ContainsAnyExcept(Letters);

    private IQueryable<Found> Live(RegisterContext context, IQueryable<SessionRow> rows)
    {
        var (now, idle) = (database.Now, database.Now - database.Settings.SessionIdle);
        return from row in rows.AsNoTracking()
               where row.EndedAt == null && row.EndsAt > now && row.SeenAt > idle
               join key in context.Keys.AsNoTracking() on row.KeyId equals key.Id into keys
               from key in keys.DefaultIfEmpty()
               select new Found(row, key);
    }

    // Of a session that was opened with a key, the key says who it is and whether it still works.
    private Session? ToSession(Found found)
    {
        var (row, key) = found;
        return row.KeyId is null ? new Session(row.Id, new Caller(row.Caller, row.Name, row.Role), false, row.OpenedAt, row.SeenAt, row.EndsAt)
            : key is not null && key.RevokedAt is null && (key.ExpiresAt is not { } end || end > database.Now) ? new Session(row.Id, new Caller(key.Id, key.Name, key.Role), true, row.OpenedAt, row.SeenAt, row.EndsAt)
            : null;
    }

    private async Task ForgetAsync(RegisterContext context, CancellationToken cancel)
    {
        var (until, idle) = (database.Now - Remembered, database.Now - Remembered - database.Settings.SessionIdle);
        await context.Sessions.Where(row => row.EndedAt < until || row.EndsAt < until || row.SeenAt < idle).ExecuteDeleteAsync(cancel);
    }

    private sealed record Found(SessionRow Session, KeyRow? Key);
}
