using System.Text.Json;
using Laygate.Register.Storage;
using Microsoft.EntityFrameworkCore;

namespace Laygate.Register;

/// <summary>
/// What was written on a page and not recorded: it belongs to the session, so it survives another form of the same page and, until the next signing in of the same
/// caller in the same browser, the end of the session. It is sealed with the secret of the session, so that the database alone does not tell it.
/// </summary>
public sealed class KeptForms(RegisterDatabase database)
{
    /// <summary>Most pages of one session whose text is kept; the oldest makes room.</summary>
    public const int Most = 20;

    /// <summary>Keeps the fields of a page, in place of those that were kept of it before; without fields nothing is kept any more.</summary>
    /// <param name="secret">Secret of a session, which may have ended.</param>
    /// <param name="page">Path of the page.</param>
    /// <param name="fields">Name and values of each field.</param>
    /// <param name="cancel">Ends it; nothing is stored then.</param>
    /// <returns>Whether they are kept: a session that nobody knows keeps nothing.</returns>
    public async Task<bool> KeepAsync(string? secret, string page, IReadOnlyDictionary<string, string[]> fields, CancellationToken cancel)
    {
        CallerText.Id(page);
        if (!Sessions.IsSecret(secret) || await KnownAsync(secret!, page, cancel) is not { } holds)
        {
            return false;
        }

        return (fields.Count == 0 && !holds) || await database.InTransactionAsync(
            async context =>
            {
                if (await RowAsync(context, secret!, cancel) is not { } session)
                {
                    return false;
                }

                await context.KeptForms.Where(row => row.Session == session.Id && row.Page == page).ExecuteDeleteAsync(cancel);
                if (fields.Count > 0)
                {
                    var old = await context.KeptForms.Where(row => row.Session == session.Id).OrderByDescending(row => row.At).Skip(Most - 1).Select(row => row.Page).ToListAsync(cancel);
                    await context.KeptForms.Where(row => row.Session == session.Id && old.Contains(row.Page)).ExecuteDeleteAsync(cancel);
                    context.KeptForms.Add(Row(database, session.Id, secret!, page, JsonSerializer.SerializeToUtf8Bytes(fields)));
                }

                return true;
            },
            cancel);
    }

    /// <summary>The fields that are kept of a page; none where nothing is.</summary>
    /// <param name="secret">Secret of the session.</param>
    /// <param name="page">Path of the page.</param>
    /// <param name="cancel">Ends it.</param>
    public async Task<IReadOnlyDictionary<string, string[]>> ReadAsync(string? secret, string page, CancellationToken cancel)
    {
        var none = new Dictionary<string, string[]>(StringComparer.Ordinal);
        if (!Sessions.IsSecret(secret))
        {
            return none;
        }

        await using var context = database.Open();
        return await RowAsync(context, secret!, cancel) is { } session
            && await context.KeptForms.AsNoTracking().FirstOrDefaultAsync(row => row.Session == session.Id && row.Page == page, cancel) is { } kept
            && Sealed.Open(secret!, kept.Fields) is { } plain
            ? JsonSerializer.Deserialize<Dictionary<string, string[]>>(plain) ?? none
            : none;
    }

    /// <summary>Hands what is kept of an earlier session over to a new one, if it is the same caller's.</summary>
    internal static async Task MoveAsync(RegisterDatabase database, RegisterContext context, string? earlier, (SessionRow Row, string Secret) to, CancellationToken cancel)
    {
        if (!Sessions.IsSecret(earlier) || await RowAsync(context, earlier!, cancel) is not { } from || !string.Equals(from.Caller, to.Row.Caller, StringComparison.Ordinal))
        {
            return;
        }

        var kept = await context.KeptForms.Where(row => row.Session == from.Id).ToListAsync(cancel);
        context.KeptForms.RemoveRange(kept);
        foreach (var draft in kept)
        {
            if (Sealed.Open(earlier!, draft.Fields) is { } plain)
            {
                context.KeptForms.Add(Row(database, to.Row.Id, to.Secret, draft.Page, plain));
            }
        }
    }

    // Whether anything is kept of a page; null where nobody knows the session. Most forms leave nothing to keep, and cost no transaction.
    private async Task<bool?> KnownAsync(string secret, string page, CancellationToken cancel)
    {
        await using var context = database.Open();
        return await RowAsync(context, secret, cancel) is { } session ? await context.KeptForms.AnyAsync(row => row.Session == session.Id && row.Page == page, cancel) : null;
    }

    private static Task<SessionRow?> RowAsync(RegisterContext context, string secret, CancellationToken cancel)
    {
        var hash = Sessions.Hash(secret);
        return context.Sessions.AsNoTracking().FirstOrDefaultAsync(row => row.SecretHash == hash, cancel);
    }

    private static KeptFormRow Row(RegisterDatabase database, string session, string secret, string page, byte[] plain) =>
        new() { Session = session, Page = page, At = database.Now, Fields = Sealed.Seal(secret, plain, Sealed.Nonce(database)) };
}
