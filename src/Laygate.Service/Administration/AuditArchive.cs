using System.Globalization;
using System.IO.Compression;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using Laygate.Register;
using Laygate.Service.Checking;

namespace Laygate.Service.Administration;

/// <summary>A file of an export, by the digest of what was kept first.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="Digest">Its salted digest.</param>
internal sealed record AuditFile(string Name, string Digest);

/// <summary>What a line of the history has beside its entry.</summary>
/// <param name="Files">What was kept with it.</param>
/// <param name="Report">The digest of the report that it is about; null where about none.</param>
/// <param name="Replaced">Contents in which names were replaced.</param>
internal sealed record AuditBeside(IReadOnlyList<AuditFile> Files, string? Report, IReadOnlyList<AuditReplacement> Replaced);

/// <summary>
/// Everything that the register holds, as one archive that can be verified without this program: three books of lines, each with the hash of the line before it, and
/// the files whose salted digests they name. A later export begins with the lines of an earlier one.
/// </summary>
internal sealed class AuditArchive(AuditReader audit, TimeProvider clock)
{
    // Its escapes see to it that no text that people wrote can look like a part of a line.
    private static readonly JsonSerializerOptions Plain = new() { PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower };

    private static readonly AuditBeside Nothing = new([], null, []);

    private static readonly string Script = Asset.Text("verify-audit.sh");

    /// <summary>Writes the archive.</summary>
    /// <param name="output">Where to; need not be sought in.</param>
    /// <param name="cancel">Calls it off.</param>
    public async Task WriteAsync(Stream output, CancellationToken cancel)
    {
        var end = await audit.EndAsync(cancel);
        await using var zip = await ZipArchive.CreateAsync(output, ZipArchiveMode.Create, leaveOpen: true, entryNameEncoding: null, cancel);
        var beside = await ContentsAsync(zip, end, cancel);
        var heads = new StringBuilder();
        await BookAsync(zip, "history", audit.HistoryAsync(end, cancel), one => Line(one, beside.GetValueOrDefault(one.Number, Nothing)), heads, cancel);
        await BookAsync(zip, "comments", audit.CommentsAsync(end, cancel), one => new { one.Submission, one.Said.Revision, one.Said.At, one.Said.By, ByNameDigest = one.Name.Digest, one.Said.Finding, TextDigest = one.Text.Digest, one.Said.LeavesOpen }, heads, cancel);
        await BookAsync(zip, "keys", audit.KeysAsync(end, cancel), one => new { one.Key, NameDigest = one.Name.Digest, Role = one.Role.ToString().ToLowerInvariant(), one.Event, one.Said.At, one.Said.By, ByNameDigest = one.ByName.Digest }, heads, cancel);
        await PartsAsync(zip, end, cancel);
        await AddAsync(zip, "heads.txt", heads.ToString(), cancel);
        await AddAsync(zip, "verify.sh", Script, cancel);
        await AddAsync(zip, "README.txt", Readme(clock.GetUtcNow()), cancel);
    }

    // An archive takes one entry at a time, so the files come before the book that names them.
    private async Task<Dictionary<long, AuditBeside>> ContentsAsync(ZipArchive zip, AuditEnd end, CancellationToken cancel)
    {
        var contents = new AuditContents(zip);
        var beside = new Dictionary<long, AuditBeside>();
        var recorded = new Dictionary<string, int>(StringComparer.Ordinal);
        await foreach (var one in audit.HistoryAsync(end, cancel))
        {
            // Each record has its entry, in the order of their numbers.
            var record = one.Said.Event == RegisterEvent.Recorded ? recorded[one.Submission] = recorded.GetValueOrDefault(one.Submission) + 1 : 0;
            var files = new List<AuditFile>();
            foreach (var content in await audit.ContentsAsync(one, record, cancel))
            {
                await contents.AddAsync(content, cancel);
                files.Add(new AuditFile(content.Name, content.First));
            }

            var own = new AuditBeside(files, await audit.ReportAsync(one, cancel), await audit.ReplacementsAsync(one, cancel));
            if (own is not { Files.Count: 0, Report: null, Replaced.Count: 0 })
            {
                beside.Add(one.Number, own);
            }
        }

        await contents.EndAsync(cancel);
        return beside;
    }

    private static object Line(AuditEvent one, AuditBeside beside) => new
    {
        one.Submission,
        Number = one.Place,
        one.Series,
        one.Revision,
        one.Said.At,
        Event = JsonNamingPolicy.SnakeCaseLower.ConvertName(one.Said.Event.ToString()),
        one.Said.By,
        ByNameDigest = one.Name.Digest,

        // What the program itself says stands as it is.
        Comment = one.Comment is null ? one.Said.Comment : null,
        CommentDigest = one.Comment?.Digest,
        one.Said.Screening,
        beside.Report,
        one.Said.OnOwn,
        one.Said.OpenComments,
        beside.Files,
        beside.Replaced,
    };

    private static async Task BookAsync<T>(ZipArchive zip, string name, IAsyncEnumerable<T> entries, Func<T, object> line, StringBuilder heads, CancellationToken cancel)
    {
        await using var output = await zip.CreateEntry(name + ".jsonl").OpenAsync(cancel);
        var book = new AuditBook(output);
        await foreach (var one in entries)
        {
            await book.AddAsync(line(one), cancel);
        }

        heads.Append(CultureInfo.InvariantCulture, $"{name} {book.Count} {book.Head}\n");
    }

    // Names and what people wrote, beside the books: a part that was replaced has no line here, and its digest stays in its book.
    private async Task PartsAsync(ZipArchive zip, AuditEnd end, CancellationToken cancel)
    {
        await using var output = await zip.CreateEntry("parts.txt").OpenAsync(cancel);
        await foreach (var one in audit.HistoryAsync(end, cancel))
        {
            await PartAsync(output, one.Name, cancel);
            await PartAsync(output, one.Comment, cancel);
        }

        await foreach (var one in audit.CommentsAsync(end, cancel))
        {
            await PartAsync(output, one.Name, cancel);
            await PartAsync(output, one.Text, cancel);
        }

        await foreach (var one in audit.KeysAsync(end, cancel))
        {
            await PartAsync(output, one.Name, cancel);
            await PartAsync(output, one.ByName, cancel);
        }
    }

    private static async Task PartAsync(Stream output, SealedText? part, CancellationToken cancel)
    {
        if (part?.Salt is { } salt)
        {
            await output.WriteAsync(Encoding.ASCII.GetBytes($"{part.Digest} {salt} {SaltedText.Literal(part.Value)}\n"), cancel);
        }
    }

    private static async Task AddAsync(ZipArchive zip, string name, string text, CancellationToken cancel)
    {
        await using var entry = await zip.CreateEntry(name).OpenAsync(cancel);
        await entry.WriteAsync(Encoding.UTF8.GetBytes(text), cancel);
    }

    private static string Readme(DateTimeOffset now) => $"""
        Export for audit of a Laygate register, made {now.UtcDateTime.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture)} UTC by version {CheckDesk.Version}.

        history.jsonl   what happened to each submission, in the order in which it was written
        comments.jsonl  what was written on findings
        keys.jsonl      which keys were issued and revoked, and by whom
        parts.txt       names, and what people wrote: digest, salt, text. The digest is the SHA-256 of salt and text as they stand there; the books hold digests alone
        content/        plans, files, reports, documents and records of shifts as they stand, each named by its digest; history.jsonl says what each one is
        contents.txt    digest, salt, file. The digest is the SHA-256 of the salt and the bytes of the file
        heads.txt       for each book its number of lines and the SHA-256 of the last one: keep it elsewhere
        verify.sh       sh verify.sh             lines and files are as they were written
                        sh verify.sh OLD.txt     and begin with all that an earlier export held; OLD.txt is its heads.txt

        A name or a text that the register has replaced has no line in parts.txt any more; history.jsonl says when, how many and why (event names_replaced).
        Its digest stays, so the books still follow each other; without its salt the digest tells nobody what it was. A plan, record, report or document in which names
        were replaced stands in content/ as it is now; the same event names the digest of what it was and of what it is.

        Each line begins with the SHA-256 of the line before it (64 zeros at the first). Who can write to the database can still make a whole register anew: only
        heads that were kept elsewhere show that.

        """.ReplaceLineEndings("\n");

    /// <summary>The lines of a book, each with the hash of the one before.</summary>
    private sealed class AuditBook(Stream output)
    {
        public int Count { get; private set; }

        public string Head { get; private set; } = new('0', 64);

        public async Task AddAsync(object entry, CancellationToken cancel)
        {
            var rest = JsonSerializer.SerializeToUtf8Bytes(entry, Plain);
            byte[] line = [.. Encoding.ASCII.GetBytes($"{{\"before\":\"{Head}\","), .. rest.AsSpan(1)];
            await output.WriteAsync(line, cancel);
            await output.WriteAsync("\n"u8.ToArray(), cancel);
            (Count, Head) = (Count + 1, Convert.ToHexStringLower(SHA256.HashData(line)));
        }
    }

    /// <summary>The files of the archive, each with its salt.</summary>
    private sealed class AuditContents(ZipArchive zip)
    {
        private readonly StringBuilder list = new();

        public async Task AddAsync(AuditContent content, CancellationToken cancel)
        {
            var file = $"content/{content.Digest}{Ending(content.Name)}";
            list.Append(CultureInfo.InvariantCulture, $"{content.Digest} {content.Salt} {file}\n");
            await using var entry = await zip.CreateEntry(file).OpenAsync(cancel);
            await entry.WriteAsync(content.Bytes, cancel);
        }

        public Task EndAsync(CancellationToken cancel) => AuditArchive.AddAsync(zip, "contents.txt", list.ToString(), cancel);

        // Only endings that we know: a name may hold anything.
        private static string Ending(string name) => Path.GetExtension(name).ToLowerInvariant() is ".csv" or ".zip" or ".json" or ".html" or ".md" ? Path.GetExtension(name).ToLowerInvariant() : ".yaml";
    }
}
