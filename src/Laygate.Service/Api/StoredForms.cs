using Laygate.Register;
using Laygate.Reporting.Runs;
using Laygate.Service.Access;
using Laygate.Service.Checking;
using Microsoft.AspNetCore.Mvc;

namespace Laygate.Service.Api;

/// <summary>The report and the site sheet of a submission, in the form that the caller takes.</summary>
internal static class StoredForms
{
    public static void MapStoredForms(this IEndpointRouteBuilder known)
    {
        known.MapGet("/{id}/report", ReportAsync).WithName("GetReport").WithSummary("A report")
            .WithDescription("The latest, or that of the screening with this number. The header Accept chooses JSON, exactly as it was stored and with a strong ETag (If-None-Match is honoured), or SARIF 2.1.0, a page that stands alone, or Markdown, worded anew from what was stored. The page is that of the screening, byte for byte. A report of an earlier version of the program has none: its page is worded anew, and has plots where the text, checked again, still gives the stored report byte for byte; otherwise it says why there are none.")
            .Produces<object>(StatusCodes.Status200OK, Answers.OfReports[0], Answers.OfReports[1..]).Produces(StatusCodes.Status304NotModified)
            .Missing().ProducesProblem(StatusCodes.Status406NotAcceptable).ProducesProblem(StatusCodes.Status409Conflict);
        known.MapGet("/{id}/sheet", SheetAsync).WithName("GetSheet").WithSummary("The site sheet of a submission")
            .WithDescription("That of the latest screening, byte for byte, in the language that language names (en or de), as Markdown or, with Accept: text/html, as a page for print. Refused for a plan that fails, unless that is asked for as a draft. What an earlier version of the program has screened has none: it is made by checking the text again, and refused where the outcome is no longer, byte for byte, the stored report.")
            .Produces<string>(StatusCodes.Status200OK, Answers.OfSheets[0], Answers.OfSheets[1..])
            .Missing().ProducesProblem(StatusCodes.Status406NotAcceptable).ProducesProblem(StatusCodes.Status409Conflict)
            .ProducesProblem(StatusCodes.Status422UnprocessableEntity);
    }

    /// <summary>A submission with a report, as far as the caller may see it.</summary>
    /// <returns>Null when there is none, it has no report, or the caller may not see it.</returns>
    public static async Task<ScreenedText?> ScreenedAsync(this RegisterReader reader, string id, int? screening, Caller caller, CancellationToken cancel) =>
        await reader.FindAsync(id, caller, cancel) is { } one && await reader.TextAsync(id, caller, cancel) is { } text && await reader.ReportAsync(id, screening, caller, cancel) is { } report
            ? new ScreenedText(one.FileName, text, report) { Parts = Screening.Kept(one.FileName, text, one.Files == 0 ? [] : await reader.FilesAsync(id, caller, cancel)) }
            : null;

    /// <summary>Why there is no site sheet of a stored submission, as title and sentence.</summary>
    public static (string Title, string Detail) NoSheet(string whyNot) => (
        "No site sheet: the outcome is not the stored one",
        $"A site sheet is made by checking the text again, and {whyNot}. Have a reviewer screen the submission again, read the new report, and ask again.");

    private static async Task<IResult> ReportAsync(
        HttpContext context, RegisterReader reader, StoredReports stored, string id, [FromQuery] int? screening, CancellationToken cancel)
    {
        context.Response.Headers.Vary = "Accept";
        var type = Bodies.Offer(context.Request, Answers.OfReports);
        var caller = Callers.Need(context);
        if (type is Answers.Html)
        {
            return await reader.DocumentAsync(id, screening, Documents.Report, caller, cancel) is { } kept ? Answers.Kept(context, kept) : await reader.ScreenedAsync(id, screening, caller, cancel) is { } screened ? Answers.Report(context, type, await stored.PageAsync(screened, cancel)) : SubmissionsApi.NotThere();
        }

        if (await reader.ReportAsync(id, screening, caller, cancel) is not { } report)
        {
            return SubmissionsApi.NotThere();
        }

        context.Response.Headers.CacheControl = "private, no-cache";
        return type is Answers.Json
            ? TypedResults.Bytes(report.Json, type, entityTag: new Microsoft.Net.Http.Headers.EntityTagHeaderValue($"\"{report.Summary.Hash}\""))
            : Answers.Report(context, type, ReportedRun.Of(StoredReports.Read(report)));
    }

    private static async Task<IResult> SheetAsync(
        HttpContext context, RegisterReader reader, StoredReports stored, string id, [FromQuery] bool? draft, [FromQuery] string? language, CancellationToken cancel)
    {
        context.Response.Headers.Vary = "Accept";
        var type = Bodies.Offer(context.Request, Answers.OfSheets);
        var spoken = Answers.Language(language);
        if (await reader.DocumentAsync(id, null, Documents.Sheet(draft == true, spoken, type is Answers.Html), Callers.Need(context), cancel) is { } kept)
        {
            return Answers.Kept(context, kept, type);
        }

        if (await reader.ScreenedAsync(id, null, Callers.Need(context), cancel) is not { } screened)
        {
            return SubmissionsApi.NotThere();
        }

        context.Response.Headers.CacheControl = "private, no-store";
        var problems = ReportedRun.Of(StoredReports.Read(screened.Report)).AllProblems.ToList();
        if (problems.Count > 0)
        {
            return Refusals.Unreadable(problems);
        }

        var (sheets, whyNot) = await stored.SheetsAsync(screened, draft == true, cancel);
        return sheets is null ? Changed(whyNot!)
            : sheets.Refused.Count > 0 ? Refusals.Failing(sheets.Refused)
            : Answers.Sheets(context, type, sheets.Sheets, spoken);
    }

    private static IResult Changed(string whyNot)
    {
        var (title, detail) = NoSheet(whyNot);
        return Refusals.Problem(StatusCodes.Status409Conflict, title, detail);
    }
}
