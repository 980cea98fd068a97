using Microsoft.EntityFrameworkCore;

namespace Laygate.Register.Storage;

/// <summary>Gives each name and each text that people wrote its salted digest when it is written.</summary>
internal static class Seals
{
    private const int SaltBytes = 32;
    private const int Batch = 200;

    // Contents may have megabytes each.
    private const int FewContents = 8;

    /// <summary>Entries whose comment a person wrote; the comments of all others are the program's own words.</summary>
    public static readonly RegisterEvent[] Spoken =
    [
        RegisterEvent.Accepted, RegisterEvent.AcceptedWithDepartures, RegisterEvent.Returned, RegisterEvent.FirstAccepted, RegisterEvent.FirstAcceptedWithDepartures, RegisterEvent.ScreeningAsked,
        RegisterEvent.ReplacementAsked,
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
        await EachAsync(database, context => context.Texts.Where(row => row.Digest == null), cancel, FewContents);
        await EachAsync(database, context => context.Files.Where(row => row.Digest == null), cancel, FewContents);
        await EachAsync(database, context => context.Archives.Where(row => row.Digest == null), cancel, FewContents);
        await EachAsync(database, context => context.RecordFiles.Where(row => row.Digest == null), cancel, FewContents);
        await EachAsync(database, context => context.Reports.Where(row => row.Digest == null), cancel, FewContents);
        await EachAsync(database, context => context.Pictures.Where(row => row.Digest == null), cancel, FewContents);
        await EachAsync(database, context => context.Documents.Where(row => row.Digest == null), cancel, FewContents);
    }

    /// <summary>A content as it is read and proved: unpacked.</summary>
    public static byte[] ContentOf(IContentRow row) => row switch
    {
        TextRow text => text.Text,
        FileRow file => file.Bytes,
        ArchiveRow archive => archive.Bytes,
        RecordFileRow record => record.Bytes,
        ReportRow report => report.Json,
        PictureRow pictures => Packed.All(pictures.Bytes),
        DocumentRow document => Packed.All(document.Bytes),
        _ => throw new ArgumentException("There is no such content.", nameof(row)),
    };

    /// <summary>Gives a content its salt and digest anew.</summary>
    public static void SealContent(IContentRow row, RegisterDatabase database) => (row.Salt, row.Digest) = Of(database, ContentOf(row));

    /// <summary>A new salt and the digest of a content with it.</summary>
    public static (string Salt, string Digest) Of(RegisterDatabase database, byte[] content)
    {
        var salt = Convert.ToHexStringLower(database.Bytes(SaltBytes));
        return (salt, SaltedText.Digest(salt, content));
    }

    private static async Task EachAsync<T>(RegisterDatabase database, Func<RegisterContext, IQueryable<T>> unsealed, CancellationToken cancel, int batch = Batch)
        where T : class
    {
        for (var count = batch; count == batch;)
        {
            count = await database.InTransactionAsync(
                async context =>
                {
                    var rows = await unsealed(context).Take(batch).ToListAsync(cancel);
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
            case IContentRow row:
                SealContent(row, database);
                break;
        }
    }

    private static (string? Salt, string? Digest) Of(RegisterDatabase database, string text)
    {
        var salt = Convert.ToHexStringLower(database.Bytes(SaltBytes));
        return (salt, SaltedText.Digest(salt, text));
    }
}
