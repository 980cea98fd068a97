using Microsoft.EntityFrameworkCore;

namespace Laygate.Register.Storage;

/// <summary>The contents of a submission with their rows.</summary>
internal static class ContentRows
{
    /// <summary>All that is kept of a submission, byte for byte: what was handed in, records, then what was made of it.</summary>
    public static async Task<IReadOnlyList<(IContentRow Row, KeptContent Content)>> AllAsync(RegisterContext context, SubmissionRow one, CancellationToken cancel) =>
    [
        .. Of(one, await context.Texts.Where(row => row.Number == one.Number).ToListAsync(cancel)),
        .. Of(one, await context.Files.Where(row => row.Number == one.Number).OrderBy(row => row.Place).ToListAsync(cancel)),
        .. Of(one, await context.Archives.Where(row => row.Number == one.Number).ToListAsync(cancel)),
        .. Of(one, await context.RecordFiles.Where(row => row.Number == one.Number).OrderBy(row => row.Upload).ThenBy(row => row.Place).ToListAsync(cancel)),
        .. Of(one, await context.Reports.Where(row => row.Number == one.Number).OrderBy(row => row.Screening).ToListAsync(cancel)),
        .. Of(one, await context.Pictures.Where(row => row.Number == one.Number).OrderBy(row => row.Screening).ToListAsync(cancel)),
        .. Of(one, await context.Documents.Where(row => row.Number == one.Number).OrderBy(row => row.Screening).ThenBy(row => row.Name).ToListAsync(cancel)),
    ];

    /// <summary>Rows with what they hold.</summary>
    public static IEnumerable<(IContentRow Row, KeptContent Content)> Of(SubmissionRow one, IEnumerable<IContentRow> rows) => rows.Select(row => (row, Content(one, row)));

    /// <summary>Puts other bytes in the place of those that a row holds.</summary>
    /// <param name="row">The row.</param>
    /// <param name="bytes">The bytes, unpacked.</param>
    public static void Put(IContentRow row, byte[] bytes)
    {
        switch (row)
        {
            case TextRow text: text.Text = bytes; break;
            case FileRow file: file.Bytes = bytes; break;
            case ArchiveRow archive: archive.Bytes = bytes; break;
            case RecordFileRow record: record.Bytes = bytes; break;
            case ReportRow report: (report.Json, report.Hash) = (bytes, Mapping.Hash(bytes)); break;
            case PictureRow pictures: pictures.Bytes = Packed.Of(output => output.Write(bytes)); break;
            case DocumentRow document: document.Bytes = Packed.Of(output => output.Write(bytes)); break;
        }
    }

    private static KeptContent Content(SubmissionRow one, IContentRow row)
    {
        var bytes = Seals.ContentOf(row);
        return row switch
        {
            TextRow => new KeptContent(ContentKind.Text, 0, 0, one.FileName, bytes),
            FileRow file => new KeptContent(ContentKind.File, 0, file.Place, file.Name, bytes),
            ArchiveRow => new KeptContent(ContentKind.Archive, 0, 0, one.ArchiveName ?? "archive.zip", bytes),
            RecordFileRow record => new KeptContent(ContentKind.Record, record.Upload, record.Place, record.Name, bytes),
            ReportRow report => new KeptContent(ContentKind.Report, report.Screening, 0, "report.json", bytes),
            PictureRow pictures => new KeptContent(ContentKind.Pictures, pictures.Screening, 0, "plots.json", bytes),
            DocumentRow document => new KeptContent(ContentKind.Document, document.Screening, 0, document.Name, bytes),
            _ => throw new ArgumentException("There is no such content.", nameof(row)),
        };
    }
}
