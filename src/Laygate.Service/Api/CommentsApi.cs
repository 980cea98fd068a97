using Laygate.Register;
using Laygate.Service.Access;
using Laygate.Service.Checking;

namespace Laygate.Service.Api;

/// <summary>A comment as it is sent.</summary>
/// <param name="Rule">Id of the rule.</param>
/// <param name="Address">Address of the element.</param>
/// <param name="Text">What is written.</param>
/// <param name="Open">Whether the finding then waits for an answer; false: this is the answer.</param>
/// <param name="Plan">Id of the plan, where the file holds more than one.</param>
internal sealed record CommentBody(string Rule, string Address, string Text, bool Open = true, string? Plan = null);

/// <summary>Comments on findings.</summary>
internal static class CommentsApi
{
    public static void MapComments(this IEndpointRouteBuilder known)
    {
        known.MapGet("/{id}/comments", ListAsync).WithName("ListComments").WithSummary("What was written on findings, the oldest first")
            .WithDescription("Comments belong to the series: those of earlier revisions stand here, too. The last comment on a finding says whether it is open.")
            .Produces<IReadOnlyList<FindingComment>>().Missing();
        known.MapPost("/{id}/comments", WriteAsync).WithName("WriteComment").WithSummary("Write on a finding")
            .WithDescription("For whoever submitted the plan, and reviewers, on the latest revision. The finding is one of the latest report that asks for something; it is the same finding in each revision that has its rule and address. Nothing that was written is changed or removed.")
            .Produces<FindingComment>(StatusCodes.Status201Created).Missing().ProducesProblem(StatusCodes.Status403Forbidden).ProducesProblem(StatusCodes.Status409Conflict);
    }

    private static async Task<IResult> ListAsync(HttpContext context, RegisterReader reader, Comments comments, string id, CancellationToken cancel)
    {
        var caller = Callers.Need(context);
        return await reader.FindAsync(id, caller, cancel) is { } one ? TypedResults.Ok(await comments.ListAsync(one.Series, one.Revision, caller, cancel)) : SubmissionsApi.NotThere();
    }

    private static async Task<IResult> WriteAsync(HttpContext context, FindingTalk talk, string id, CommentBody body, CancellationToken cancel) =>
        TypedResults.Created((string?)null, await talk.AddAsync(id, new FindingKey(body.Plan ?? string.Empty, body.Rule, body.Address), body.Text, body.Open, Callers.Need(context), cancel));
}
