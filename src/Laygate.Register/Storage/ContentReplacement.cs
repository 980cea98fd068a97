using Microsoft.EntityFrameworkCore;

namespace Laygate.Register.Storage;

/// <summary>What is to be replaced in the contents of one submission; nothing is changed before it is written.</summary>
internal sealed class ContentReplacement
{
    private readonly IReadOnlyList<(IContentRow Row, KeptContent Content)> all;
    private readonly ReplacedContents replaced;
    private readonly List<(IContentRow Row, KeptContent Content, byte[] Bytes, string Salt, string Digest)> changes;

    private ContentReplacement(SubmissionRow one, IReadOnlyList<(IContentRow Row, KeptContent Content)> all, ReplacedContents replaced, RegisterDatabase database)
    {
        (One, this.all, this.replaced) = (one, all, replaced);
        changes = [.. replaced.Contents.Select(change =>
        {
            var (salt, digest) = Seals.Of(database, change.Bytes);
            return (all.First(kept => kept.Content == change.Content).Row, change.Content, change.Bytes, salt, digest);
        })];
    }

    /// <summary>The submission.</summary>
    public SubmissionRow One { get; }

    /// <summary>Names that were found.</summary>
    public IReadOnlyList<string> Names => replaced.Names;

    /// <summary>What changes.</summary>
    public IEnumerable<KeptContent> Changed => changes.Select(change => change.Content);

    /// <summary>Number of contents that change.</summary>
    public int Count => changes.Count;

    /// <summary>Reads the contents of a submission and finds what is to be replaced.</summary>
    public static async Task<ContentReplacement> OfAsync(RegisterContext context, SubmissionRow one, INameReplacer replacer, RegisterDatabase database, CancellationToken cancel)
    {
        var rows = await ContentRows.AllAsync(context, one, cancel);
        return new ContentReplacement(one, rows, replacer.Replace([.. rows.Select(kept => kept.Content)]), database);
    }

    /// <summary>Says in the history what is replaced by what; the database lets no content change without.</summary>
    /// <param name="context">The transaction.</param>
    /// <param name="said">The entry of the history.</param>
    /// <param name="line">Number of the first of its lines.</param>
    /// <returns>Number of the next line.</returns>
    public int Say(RegisterContext context, HistoryRow said, int line)
    {
        foreach (var (row, content, _, _, digest) in changes)
        {
            context.Replacements.Add(new ReplacementRow
            {
                Said = said,
                Line = ++line,
                Number = One.Number,
                Kind = content.Kind,
                Of = content.Of,
                Place = content.Place,
                Name = content.Name,
                Before = row.Digest!,
                After = digest,
            });
        }

        return line;
    }

    /// <summary>Replaces the contents, once it is said.</summary>
    public void Put()
    {
        foreach (var (row, _, bytes, salt, digest) in changes)
        {
            ContentRows.Put(row, bytes);
            (row.Salt, row.Digest) = (salt, digest);
        }

        (One.PlanTitle, One.Contract, One.Worst) = (Words(One.PlanTitle), Words(One.Contract), Words(One.Worst));
        One.TextHash = Hash();
    }

    /// <summary>Replaces what repeats the plain hash of a content, or its title, once contents are written.</summary>
    public async Task ForgetAsync(RegisterContext context, CancellationToken cancel)
    {
        await context.Idempotency.Where(row => row.SubmissionId == One.Id).ExecuteDeleteAsync(cancel);
        foreach (var notice in await context.Notices.AsNoTracking().Where(row => context.History.Any(entry => entry.Entry == row.Entry && entry.Number == One.Number)).ToListAsync(cancel))
        {
            var facts = replaced.Words(notice.Facts);
            await context.Notices.Where(row => row.Id == notice.Id).ExecuteUpdateAsync(set => set.SetProperty(row => row.Facts, facts), cancel);
        }

        foreach (var report in changes.Select(change => change.Row).OfType<ReportRow>())
        {
            var about = await context.History.Where(row => row.Number == One.Number && row.Screening == report.Screening && row.ReportHash != null).ToListAsync(cancel);
            about.ForEach(row => row.ReportHash = report.Hash);
        }
    }

    private string? Words(string? text) => text is null ? null : replaced.Words(text);

    private string Hash()
    {
        var files = all.Where(kept => kept.Content.Kind == ContentKind.File).Select(kept => new HandedFile(kept.Content.Name, Seals.ContentOf(kept.Row))).ToList();
        var archive = all.Where(kept => kept.Content.Kind == ContentKind.Archive).Select(kept => new HandedFile(kept.Content.Name, Seals.ContentOf(kept.Row))).FirstOrDefault();
        return Mapping.Hash(new NewSubmission(One.FileName, Seals.ContentOf(all.First(kept => kept.Content.Kind == ContentKind.Text).Row), null, null) { Files = files, Archive = archive });
    }
}
