using Laygate.Register;
using Laygate.Reporting.Html;
using Laygate.Reporting.Records;
using Laygate.Service.Access;
using Laygate.Service.Api;
using Laygate.Service.Checking;

namespace Laygate.Service.Pages;

/// <summary>Records of shifts for a browser: hand one in, see its ledger and what was held.</summary>
internal static class RecordRoutes
{
    public static void MapRecordPages(this IEndpointRouteBuilder known)
    {
        known.MapPost("/{id}/records", AddAsync);
        known.MapGet("/{id}/records/{record:int}/files/{**name}", FileAsync);
        known.MapGet("/{id}/records/{record:int}/ledger", LedgerAsync);
        known.MapGet("/{id}/records/{record:int}/held", HeldAsync);
    }

    private static async Task<IResult> AddAsync(HttpContext context, ShiftRecords records, RegisterReader reader, KeptForms kept, string id, CancellationToken cancel)
    {
        var form = await FormGuard.ReadAsync(context.Request, cancel);
        await kept.KeepAsync(context, FormPages.Submission(id), form, cancel);
        var files = Sent.Unpacked(await Sent.FilesAsync([.. form.Files.GetFiles("record").Where(file => file.FileName.Length > 0)], cancel));
        await RecordsApi.KeepAsync(records, reader, id, files, Callers.Need(context), cancel);
        return TypedResults.Redirect($"/submissions/{id}#documents");
    }

    private static async Task<IResult> FileAsync(HttpContext context, ShiftRecords records, string id, int record, string name, CancellationToken cancel) =>
        await RecordsApi.DownloadAsync(records, id, record, name, Callers.Need(context), cancel) ?? TypedResults.NotFound();

    private static async Task<IResult> LedgerAsync(HttpContext context, ShiftRecords records, RegisterReader reader, CheckDesk desk, CheckPool pool, string id, int record, CancellationToken cancel)
    {
        if (await RecordsApi.ShiftAsync(records, reader, desk, id, record, Callers.Need(context), cancel) is not { } shift)
        {
            return TypedResults.NotFound();
        }

        var place = RecordBasis.Of(await reader.FindAsync(id, Callers.Need(context), cancel), desk.Book.Hash, rules: false);
        var report = await pool.RunAsync(_ => RecordsApi.Ledger(shift), cancel);
        return Page(context, output => LedgerPageWriter.Write(report, output, place));
    }

    private static async Task<IResult> HeldAsync(HttpContext context, ShiftRecords records, RegisterReader reader, CheckDesk desk, CheckPool pool, string id, int record, CancellationToken cancel)
    {
        if (await RecordsApi.ShiftAsync(records, reader, desk, id, record, Callers.Need(context), cancel) is not { } shift)
        {
            return TypedResults.NotFound();
        }

        var place = RecordBasis.Of(await reader.FindAsync(id, Callers.Need(context), cancel), desk.Book.Hash, rules: true);
        var report = await pool.RunAsync(_ => desk.Held(shift), cancel);
        return Page(context, output => HeldPageWriter.Write(report, output, place));
    }

    // The pages of records have the style sheet of the report.
    private static IResult Page(HttpContext context, Action<Stream> write) => Answers.Page(context, HtmlWriter.ContentPolicy, write);
}
