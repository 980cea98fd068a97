using Laygate.Service.Access;
using Laygate.Service.Administration;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.AspNetCore.Mvc;

namespace Laygate.Service.Api;

/// <summary>What those do who look after the register: counts, previews, the export for audit.</summary>
internal static class AdministrationApi
{
    public static void MapAdministration(this IEndpointRouteBuilder api)
    {
        var reviewers = api.MapGroup("").RequireAuthorization(AccessSetup.Reviewers).WithTags("review")
            .ProducesProblem(StatusCodes.Status400BadRequest).ProducesProblem(StatusCodes.Status401Unauthorized).ProducesProblem(StatusCodes.Status403Forbidden);
        reviewers.MapGet("/statistics", StatisticsAsync).WithName("GetStatistics").WithSummary("Counts over the submissions received from one day to another")
            .WithDescription($"`from` and `until` are days, UTC, both counted; left out, the year up to today. Rules are counted in the latest reports of latest revisions, in at most {StatisticsDesk.MostReports} of them.").Produces<Statistics>();
        reviewers.MapGet("/screenings/preview", PreviewAsync).WithName("PreviewScreenings").WithSummary("What screening open submissions again would change")
            .WithDescription($"Checks at most {PreviewDesk.Most} of the open submissions whose report stands on another rule book, after the first `skip` of them. Nothing is stored.").Produces<ScreeningPreviews>();
        api.MapGet("/audit", Audit).RequireAuthorization(AccessSetup.Administrators).WithTags("audit").WithName("ExportForAudit").WithSummary("All that the register holds, as an archive that can be verified")
            .WithDescription("A ZIP archive: books of lines that each carry the hash of the line before, the files that they name by their hash, and a script that verifies both with a shell and sha256sum.")
            .Produces<string>(StatusCodes.Status200OK, Bodies.ArchiveTypes[0]).ProducesProblem(StatusCodes.Status401Unauthorized).ProducesProblem(StatusCodes.Status403Forbidden);
    }

    /// <summary>The export for audit as a download.</summary>
    public static IResult Audit(HttpContext context, AuditArchive archive, TimeProvider clock, CancellationToken cancel)
    {
        context.Response.Headers.CacheControl = "private, no-store";

        // An archive writes the ends of its entries at once, whoever waits for it.
        context.Features.GetRequiredFeature<IHttpBodyControlFeature>().AllowSynchronousIO = true;
        return TypedResults.Stream(output => archive.WriteAsync(output, cancel), Bodies.ArchiveTypes[0], FormattableString.Invariant($"register-{clock.GetUtcNow().UtcDateTime:yyyy-MM-dd}.zip"));
    }

    private static async Task<IResult> StatisticsAsync(HttpContext context, StatisticsDesk desk, [FromQuery] DateOnly? from, [FromQuery] DateOnly? until, CancellationToken cancel) =>
        TypedResults.Ok((await desk.CountAsync(from, until, Callers.Need(context), cancel)).Counts);

    private static async Task<IResult> PreviewAsync(HttpContext context, PreviewDesk desk, [FromQuery] int? skip, CancellationToken cancel) =>
        TypedResults.Ok(await desk.ListAsync(skip ?? 0, Callers.Need(context), cancel));
}
