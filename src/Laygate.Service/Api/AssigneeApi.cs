using Laygate.Register;
using Laygate.Service.Access;
using Microsoft.AspNetCore.Mvc;

namespace Laygate.Service.Api;

/// <summary>Who reviews a submission.</summary>
internal static class AssigneeApi
{
    public static void MapAssignees(this IEndpointRouteBuilder reviewers)
    {
        reviewers.MapPut("/submissions/{id}/assignee", TakeAsync).WithName("Take").WithSummary("Take a submission to review it, from nobody or from another reviewer")
            .WithDescription("The header If-Match carries the ETag of the submission that the reviewer has read, so that of two who take it at once one is told. Whoever has taken it, each reviewer may decide.")
            .Produces<Submission>().Missing().ProducesProblem(StatusCodes.Status409Conflict).ProducesProblem(StatusCodes.Status412PreconditionFailed).ProducesProblem(StatusCodes.Status428PreconditionRequired);
        reviewers.MapDelete("/submissions/{id}/assignee", ReleaseAsync).WithName("Release").WithSummary("Give a submission back to the queue")
            .WithDescription("For whoever has taken it, and administrators.")
            .Produces<Submission>().Missing().ProducesProblem(StatusCodes.Status409Conflict).ProducesProblem(StatusCodes.Status412PreconditionFailed).ProducesProblem(StatusCodes.Status428PreconditionRequired);
    }

    private static async Task<IResult> TakeAsync(HttpContext context, SubmissionRegister register, string id, [FromHeader(Name = "If-Match")] string? ifMatch, CancellationToken cancel) =>
        Changed(context, await register.TakeAsync(id, SubmissionsApi.Seen(ifMatch), Callers.Need(context), cancel));

    private static async Task<IResult> ReleaseAsync(HttpContext context, SubmissionRegister register, string id, [FromHeader(Name = "If-Match")] string? ifMatch, CancellationToken cancel) =>
        Changed(context, await register.ReleaseAsync(id, SubmissionsApi.Seen(ifMatch), Callers.Need(context), cancel));

    private static IResult Changed(HttpContext context, Submission submission)
    {
        SubmissionsApi.Tag(context, submission);
        return TypedResults.Ok(submission);
    }
}
