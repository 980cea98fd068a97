using Laygate.Register;
using Laygate.Service.Access;

namespace Laygate.Service.Api;

/// <summary>That the names of a submission are to be replaced.</summary>
/// <param name="Reason">Why; it stands in the history.</param>
/// <param name="Texts">Whether comments on decisions and findings are replaced, too.</param>
internal sealed record NamesBody(string Reason, bool Texts = false);

/// <summary>What became of it.</summary>
/// <param name="Replaced">Whether anything was replaced; false where no name was left.</param>
internal sealed record NamesAnswer(bool Replaced);

/// <summary>Names of people in one submission, for administrators.</summary>
internal static class RetentionApi
{
    public static void MapRetention(this IEndpointRouteBuilder api)
    {
        var administrators = api.MapGroup("/retention").RequireAuthorization(AccessSetup.Administrators).WithTags("retention")
            .ProducesProblem(StatusCodes.Status400BadRequest).ProducesProblem(StatusCodes.Status401Unauthorized).ProducesProblem(StatusCodes.Status403Forbidden);
        administrators.MapGet("/{id}", FindAsync).WithName("FindNames").WithSummary("What replacing the names of a submission would change")
            .WithDescription("In all revisions of its series: how many entries and comments name somebody, which names stand in its plans and records, and in which documents. Nothing is changed.").Produces<SeriesNames>().Missing();
        administrators.MapPost("/{id}", ReplaceAsync).WithName("ReplaceNames").WithSummary("Replace the names of a submission now")
            .WithDescription("In all revisions of its series, for good: ask what would change first. The latest revision must be decided. The history says when, how many and why, never what stood there.").Produces<NamesAnswer>().Missing().ProducesProblem(StatusCodes.Status409Conflict);
    }

    private static async Task<IResult> FindAsync(HttpContext context, Retention retention, string id, CancellationToken cancel)
    {
        context.Response.Headers.CacheControl = "private, no-store";
        return await retention.FindAsync(id, cancel) is { } found ? TypedResults.Ok(found) : SubmissionsApi.NotThere();
    }

    private static async Task<IResult> ReplaceAsync(HttpContext context, Retention retention, string id, NamesBody body, CancellationToken cancel) =>
        TypedResults.Ok(new NamesAnswer(await retention.ReplaceNowAsync(id, body.Reason, body.Texts, Callers.Need(context), cancel)));
}
