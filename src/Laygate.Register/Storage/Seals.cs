using Microsoft.EntityFrameworkCore;

namespace Laygate.Register.Storage;

/// <summary>Gives each name and each text that people wrote its salted digest when it is written.</summary>
internal static class Seals
{
    private const int SaltBytes = 32;
    private const int Batch = 200;

    /// <summary>Entries whose comment a person wrote; the comments of all others are the program's own words.</summary>
    public static readonly RegisterEvent[] Spoken =
    [
        RegisterEvent.Accepted, RegisterEvent.AcceptedWithDepartures, RegisterEvent.Returned, RegisterEvent.FirstAccepted, RegisterEvent.FirstAcceptedWithDepartures, RegisterEvent.ScreeningAsked,
    ];

    /// <summary>Seals what a transaction adds.</summary>
    public static void Fill(RegisterContext context, RegisterDatabase database)
    {
        foreach (var entry in context.ChangeTracker.Entries().Where(entry => entry.State == EntityState.Added))
        {
            Seal(entry.Entity, database);
        }
    }

    /// <summary>Seals what an earlier version has written. It may be ended at any time and goes on where it was.</summary>
    public static async Task AllAsync(RegisterDatabase database, CancellationToken cancel)
    {
        await EachAsync(database, context => context.History.Where(row => row.NameDigest == null), cancel);
        await EachAsync(database, context => context.Comments.Where(row => row.NameDigest == null), cancel);
        await EachAsync(database, context => context.KeyHistory.Where(row => row.NameDigest == null), cancel);
        await EachAsync(database, context => context.Keys.Where(row => row.NameDigest == null), cancel);
    }

    private static async Task EachAsync<T>(RegisterDatabase database, Func<RegisterContext, IQueryable<T>> unsealed, CancellationToken cancel)
        where T : class
    {
        for (var count = Batch; count == Batch;)
        {
            count = await database.InTransactionAsync(
                async context =>
                {
                    var rows = await unsealed(context).Take(Batch).ToListAsync(cancel);
                    rows.ForEach(row => Seal(row, database));
                    return rows.Count;
                },
                cancel);
        }
    }

    private static void Seal(object added, RegisterDatabase database)
    {
        switch (added)
        {
            case HistoryRow row:
                (row.NameSalt, row.NameDigest) = Of(database, row.ByName);
                (row.CommentSalt, row.CommentDigest) = row.Comment is { } said && Spoken.Contains(row.Event) ? Of(database, said) : (null, null);
                break;
            case CommentRow row:
                (row.NameSalt, row.NameDigest) = Of(database, row.ByName);
                (row.TextSalt, row.TextDigest) = Of(database, row.Text);
                break;
            case KeyHistoryRow row:
                (row.NameSalt, row.NameDigest) = Of(database, row.ByName);
                break;
            case KeyRow row:
                (row.NameSalt, row.NameDigest) = Of(database, row.Name);
                break;
        }
    }

    private static (string? Salt, string? Digest) Of(RegisterDatabase database, string text)
    {
        var salt = Convert.ToHexStringLower(database.Bytes(SaltBytes));
        return (salt, SaltedText.Digest(salt, text));
    }
}
