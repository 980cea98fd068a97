using Laygate.Register;
using Laygate.Reporting.Language;
using Laygate.Reporting.Runs;
using Laygate.Rules.Results;
using Laygate.Service.Access;
using Laygate.Service.Api;
using Laygate.Service.Checking;

namespace Laygate.Service.Pages;

/// <summary>The report and the site sheet of a submission for a browser, which cannot choose a form by itself.</summary>
internal static class StoredRoutes
{
    public static void MapStoredPages(this IEndpointRouteBuilder known)
    {
        known.MapGet("/{id}/report", PageAsync);
        known.MapGet("/{id}/report/{form}", DownloadAsync);
        known.MapGet("/{id}/sheet", SheetAsync);
    }

    private static async Task<IResult> PageAsync(HttpContext context, RegisterReader reader, StoredReports stored, string id, CancellationToken cancel) =>
        await reader.DocumentAsync(id, null, Documents.Report, Callers.Need(context), cancel) is { } kept ? Answers.Kept(context, kept)
            : await reader.ScreenedAsync(id, null, Callers.Need(context), cancel) is { } screened
            ? Answers.Report(context, Answers.Html, await stored.PageAsync(screened, cancel))
            : TypedResults.NotFound();

    private static async Task<IResult> DownloadAsync(HttpContext context, RegisterReader reader, string id, string form, CancellationToken cancel)
    {
        (string Type, string File)? known = form switch
        {
            "json" => (Answers.Json, "report.json"),
            "sarif" => (Answers.Sarif, "report.sarif"),
            "markdown" => (Answers.Markdown, "report.md"),
            _ => null,
        };
        if (known is not { } chosen || await reader.ReportAsync(id, null, Callers.Need(context), cancel) is not { } report)
        {
            return TypedResults.NotFound();
        }

        context.Response.Headers.CacheControl = "private, no-store";
        context.Response.Headers.ContentDisposition = $"attachment; filename=\"{chosen.File}\"";
        return chosen.Type is Answers.Json
            ? TypedResults.Bytes(report.Json, chosen.Type)
            : Answers.Report(context, chosen.Type, ReportedRun.Of(StoredReports.Read(report)));
    }

    private static async Task<IResult> SheetAsync(HttpContext context, RegisterReader reader, StoredReports stored, string id, string? language, CancellationToken cancel)
    {
        var spoken = Answers.Language(language);
        if (await reader.DocumentAsync(id, null, Documents.Sheet(draft: false, spoken, page: true), Callers.Need(context), cancel) is { } kept)
        {
            return Answers.Kept(context, kept);
        }

        if (await reader.ScreenedAsync(id, null, Callers.Need(context), cancel) is not { } screened)
        {
            return TypedResults.NotFound();
        }

        if (StoredReports.Read(screened.Report).Files.Any(file => file.Problems.Count > 0))
        {
            return PageResults.Refusal(context, StatusCodes.Status422UnprocessableEntity, "No site sheet", "The plan cannot be read. Its page says what to mend.");
        }

        var (sheets, whyNot) = await stored.SheetsAsync(screened, draft: false, cancel);
        if (sheets is null)
        {
            var (title, detail) = StoredForms.NoSheet(whyNot!);
            return PageResults.Refusal(context, StatusCodes.Status409Conflict, title, detail);
        }

        List<string> failing = [.. sheets.Refused.SelectMany(report => report.Findings).Where(finding => finding.Status == Status.Fail).Select(Wording.Message)];
        return failing.Count > 0
            ? PageResults.Page<SheetPage>(context, PageRoutes.Values(("Failing", failing)), StatusCodes.Status409Conflict)
            : Answers.Sheets(context, Answers.Html, sheets.Sheets, spoken);
    }
}
