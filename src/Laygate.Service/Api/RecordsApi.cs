using Laygate.Checking.Records;
using Laygate.Reading.Sets;
using Laygate.Register;
using Laygate.Reporting.Records;
using Laygate.Rules.Results;
using Laygate.Service.Access;
using Laygate.Service.Checking;

namespace Laygate.Service.Api;

/// <summary>A record of a shift, without the content of its files.</summary>
/// <param name="Record">Its number among the records of the submission, from 1.</param>
/// <param name="At">When it was handed in, UTC.</param>
/// <param name="By">Who handed it in.</param>
/// <param name="Files">Its files in their order.</param>
internal sealed record ShiftRecordEntry(int Record, DateTimeOffset At, string By, IReadOnlyList<SubmittedFile> Files)
{
    /// <summary>What is known of a record.</summary>
    public static ShiftRecordEntry Of(StoredRecord one) => new(one.Upload, one.At, one.ByName, [.. one.Files.Select(file => SubmittedFile.Of(file.Name, file.Bytes, isPlan: false))]);
}

/// <summary>Records of shifts: hand in, read, and what they say.</summary>
internal static class RecordsApi
{
    public static void MapRecords(this IEndpointRouteBuilder known)
    {
        known.MapPost("/{id}/records", AddAsync).WithName("AddRecord").WithSummary("Hand in the record of the shift")
            .WithDescription("The folder of a record, record.yaml with the files that it names, as a ZIP archive or a form with files, at most 4 MiB. All is kept exactly as sent and never changed; what is corrected is handed in again. Whoever submitted the plan, and reviewers.")
            .Accepts<string>(Bodies.ArchiveTypes[0], [Bodies.ArchiveTypes[1], Bodies.Form])
            .Produces<ShiftRecordEntry>(StatusCodes.Status201Created).Missing().ProducesProblem(StatusCodes.Status403Forbidden).ProducesProblem(StatusCodes.Status409Conflict).ProducesProblem(StatusCodes.Status413PayloadTooLarge)
            .ProducesProblem(StatusCodes.Status415UnsupportedMediaType).ProducesProblem(StatusCodes.Status422UnprocessableEntity);
        known.MapGet("/{id}/records", ListAsync).WithName("ListRecords").WithSummary("The records of the shift, the first one first").Produces<IReadOnlyList<ShiftRecordEntry>>().Missing();
        known.MapGet("/{id}/records/{record:int}/files/{**name}", FileAsync).WithName("GetRecordFile").WithSummary("One file of a record exactly as sent").Produces<string>(StatusCodes.Status200OK, StoredFiles.Bytes).Missing();
        known.MapGet("/{id}/records/{record:int}/ledger", LedgerAsync).WithName("GetLedger").WithSummary("The ledger of a record, as schemas/ledger.schema.json describes it")
            .Produces<string>(StatusCodes.Status200OK, Answers.Json).Missing().ProducesProblem(StatusCodes.Status422UnprocessableEntity);
        known.MapGet("/{id}/records/{record:int}/held", HeldAsync).WithName("GetHeld").WithSummary("Which limits were held, by the rules of the service, as schemas/held.schema.json describes it")
            .Produces<string>(StatusCodes.Status200OK, Answers.Json).Missing().ProducesProblem(StatusCodes.Status422UnprocessableEntity);
    }

    /// <summary>Keeps a record that was sent.</summary>
    /// <exception cref="UnusableSetException">The files are no record that can be read.</exception>
    public static async Task<int> KeepAsync(ShiftRecords records, RegisterReader reader, string id, IReadOnlyList<SetFile> files, Caller caller, CancellationToken cancel)
    {
        if (await reader.FindAsync(id, caller, cancel) is null)
        {
            throw new RefusedException(Refusal.NotFound, "There is no submission of that id.");
        }

        var (folder, problems) = RecordSet.Of("record", files);
        return folder is null ? throw new UnusableSetException(problems) : await records.AddAsync(id, [.. files.Select(file => new HandedFile(file.Name, file.Bytes))], caller, cancel);
    }

    /// <summary>A plan with one of its records; no shift where there is none that the caller may see.</summary>
    /// <exception cref="UnusableSetException">Plan and record do not go together.</exception>
    public static async Task<RecordedShift?> ShiftAsync(ShiftRecords records, RegisterReader reader, CheckDesk desk, string id, int record, Caller caller, CancellationToken cancel)
    {
        if (await reader.FindAsync(id, caller, cancel) is not { } one || (await records.ListAsync(id, caller, cancel)).FirstOrDefault(kept => kept.Upload == record) is not { } found || await reader.TextAsync(id, caller, cancel) is not { } text)
        {
            return null;
        }

        var parts = Screening.Kept(one.FileName, text, one.Files == 0 ? [] : await reader.FilesAsync(id, caller, cancel));
        var (folder, wrong) = RecordSet.Of("record", [.. found.Files.Select(file => new SetFile(file.Name, file.Bytes))]);
        var (shift, problems) = folder is null ? (null, wrong) : desk.Recorded(one.FileName, text, parts, folder);
        return shift ?? throw new UnusableSetException(problems);
    }

    /// <summary>The ledger of a record.</summary>
    /// <exception cref="UnusableSetException">It has no row with a time.</exception>
    public static LedgerReport Ledger(RecordedShift shift)
    {
        var (report, problem) = shift.Ledger(null, CheckDesk.Version);
        return report ?? throw new UnusableSetException([problem!]);
    }

    /// <summary>One file of a record as a download; null where there is none that the caller may see.</summary>
    public static async Task<IResult?> DownloadAsync(ShiftRecords records, string id, int record, string name, Caller caller, CancellationToken cancel) =>
        (await records.ListAsync(id, caller, cancel)).FirstOrDefault(one => one.Upload == record)?.Files.FirstOrDefault(file => string.Equals(file.Name, name, StringComparison.Ordinal)) is { } file
            ? TypedResults.File(file.Bytes, StoredFiles.Bytes, name.Split('/')[^1])
            : null;

    private static async Task<IResult> AddAsync(HttpContext context, ShiftRecords records, RegisterReader reader, string id, CancellationToken cancel)
    {
        var caller = Callers.Need(context);
        if (await reader.FindAsync(id, caller, cancel) is null)
        {
            return SubmissionsApi.NotThere();
        }

        var number = await KeepAsync(records, reader, id, await Sent.SetAsync(context.Request, cancel), caller, cancel);
        var kept = (await records.ListAsync(id, caller, cancel)).First(one => one.Upload == number);
        return TypedResults.Created(FormattableString.Invariant($"/api/v1/submissions/{id}/records"), ShiftRecordEntry.Of(kept));
    }

    private static async Task<IResult> ListAsync(HttpContext context, ShiftRecords records, RegisterReader reader, string id, CancellationToken cancel)
    {
        var caller = Callers.Need(context);
        return await reader.FindAsync(id, caller, cancel) is null ? SubmissionsApi.NotThere() : TypedResults.Ok<IReadOnlyList<ShiftRecordEntry>>([.. (await records.ListAsync(id, caller, cancel)).Select(ShiftRecordEntry.Of)]);
    }

    private static async Task<IResult> FileAsync(HttpContext context, ShiftRecords records, string id, int record, string name, CancellationToken cancel) =>
        await DownloadAsync(records, id, record, name, Callers.Need(context), cancel) ?? SubmissionsApi.NotThere();

    private static async Task<IResult> LedgerAsync(HttpContext context, ShiftRecords records, RegisterReader reader, CheckDesk desk, CheckPool pool, string id, int record, CancellationToken cancel)
    {
        if (await ShiftAsync(records, reader, desk, id, record, Callers.Need(context), cancel) is not { } shift)
        {
            return SubmissionsApi.NotThere();
        }

        var report = await pool.RunAsync(_ => Ledger(shift), cancel);
        return new Written(Answers.Json, output => LedgerJson.Write(report, output));
    }

    private static async Task<IResult> HeldAsync(HttpContext context, ShiftRecords records, RegisterReader reader, CheckDesk desk, CheckPool pool, string id, int record, CancellationToken cancel)
    {
        if (await ShiftAsync(records, reader, desk, id, record, Callers.Need(context), cancel) is not { } shift)
        {
            return SubmissionsApi.NotThere();
        }

        var report = await pool.RunAsync(_ => desk.Held(shift), cancel);
        return new Written(Answers.Json, output => HeldJson.Write(report, output));
    }
}
