using System.Text.Json;
using Laygate.Register;
using Laygate.Service.Access;
using Laygate.Service.Checking;
using Laygate.Service.Work;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Options;
using Microsoft.Net.Http.Headers;

namespace Laygate.Service.Api;

/// <summary>A reviewer's decision as it is sent.</summary>
/// <param name="Decision">accepted, returned or accepted_with_departures.</param>
/// <param name="Comment">Why; needed unless a plan without failures is accepted that was not decided before.</param>
internal sealed record DecisionBody(Verdict Decision, string? Comment = null);

/// <summary>Why something is to be screened again.</summary>
/// <param name="Reason">Why.</param>
internal sealed record ReasonBody(string Reason);

/// <summary>Which submissions are screened again.</summary>
/// <param name="Submissions">Their ids.</param>
internal sealed record RescreenedBody(IReadOnlyList<string> Submissions);

/// <summary>Which submissions a list or an export holds.</summary>
internal sealed record SubmissionQuery(
    [FromQuery(Name = "state")] SubmissionState? State,
    [FromQuery(Name = "search")] string? Search,
    [FromQuery(Name = "from")] DateTimeOffset? From,
    [FromQuery(Name = "until")] DateTimeOffset? Until,
    [FromQuery(Name = "latest")] bool? Latest,
    [FromQuery(Name = "open")] bool? Open,
    [FromQuery(Name = "assignee")] string? Assignee)
{
    /// <summary>The same for the register.</summary>
    public SubmissionFilter Filter => new() { State = State, Search = Search, From = From, Until = Until, LatestOnly = Latest == true, OpenOnly = Open == true, Assignee = Assignee };
}

/// <summary>Submissions: hand in, read, decide.</summary>
internal static class SubmissionsApi
{
    public static void MapSubmissions(this IEndpointRouteBuilder api)
    {
        var known = api.MapGroup("/submissions").RequireAuthorization(AccessSetup.Known).WithTags("submissions")
            .ProducesProblem(StatusCodes.Status400BadRequest).ProducesProblem(StatusCodes.Status401Unauthorized);
        known.MapPost("", SubmitAsync).WithName("Submit").WithSummary("Submit a plan")
            .WithDescription("The body is the plan, at most 1 MiB; or a plan with the files of parts that it uses, as a ZIP archive or a form with files, at most 4 MiB (`plan` names the file that is the plan, where several are). All is kept exactly as sent. The answer comes after the plan is on disk; it is screened in the background. With the header Idempotency-Key the request may be repeated: the answer is then 200 with the same submission. A key is remembered for 30 days.")
            .TakesPlan()
            .Produces<Submission>(StatusCodes.Status201Created).Produces<Submission>()
            .ProducesProblem(StatusCodes.Status403Forbidden).ProducesProblem(StatusCodes.Status404NotFound).ProducesProblem(StatusCodes.Status413PayloadTooLarge)
            .ProducesProblem(StatusCodes.Status415UnsupportedMediaType).ProducesProblem(StatusCodes.Status422UnprocessableEntity);
        known.MapGet("", ListAsync).WithName("ListSubmissions").WithSummary("List submissions, the latest first")
            .WithDescription("A submitter sees its own. The header Link names the next page.").Produces<SubmissionPage>();
        known.MapGet("/export", ExportAsync).WithName("ExportSubmissions").WithSummary("Export submissions with their history and the names and hashes of their files and records, one JSON object per line")
            .Produces<string>(StatusCodes.Status200OK, "application/x-ndjson");
        known.MapGet("/{id}", FindAsync).WithName("GetSubmission").WithSummary("One submission")
            .WithDescription("With a strong ETag; If-None-Match is honoured.").Produces<Submission>().Produces(StatusCodes.Status304NotModified).Missing();
        known.MapGet("/{id}/text", TextAsync).WithName("GetText").WithSummary("The text exactly as sent").Produces<string>(StatusCodes.Status200OK, "application/octet-stream").Missing();
        known.MapStoredFiles();
        known.MapRecords();
        known.MapStoredForms();
        known.MapComments();
        known.MapGet("/{id}/changes", ChangesAsync).WithName("GetChanges").WithSummary("What one screening says otherwise than an earlier one")
            .WithDescription("Findings that are new, gone or changed from the screening before, or from that with the number `from`, to the latest, or to that with the number `to`.")
            .Produces<ReportChanges>().Missing().ProducesProblem(StatusCodes.Status409Conflict);
        known.MapGet("/{id}/history", HistoryAsync).WithName("GetHistory").WithSummary("The history, the oldest entry first").Produces<IReadOnlyList<HistoryEntry>>().Missing();
        known.MapGet("/{id}/revisions", RevisionsAsync).WithName("GetRevisions").WithSummary("All revisions, the first one first").Produces<IReadOnlyList<Submission>>().Missing();
        var reviewers = api.MapGroup("").RequireAuthorization(AccessSetup.Reviewers).WithTags("review")
            .ProducesProblem(StatusCodes.Status400BadRequest).ProducesProblem(StatusCodes.Status401Unauthorized).ProducesProblem(StatusCodes.Status403Forbidden);
        reviewers.MapPost("/submissions/{id}/decision", DecideAsync).WithName("Decide").WithSummary("Decide on a submission")
            .WithDescription("The header If-Match carries the ETag of the submission that the reviewer has read. A comment is needed to return a plan, to accept it with departures or with failures, and to change a decision. Nobody decides on what the same key has submitted, unless the settings allow that, and nobody on a revision that a later one supersedes. Where the settings ask for a second reviewer to accept failures, the first acceptance stands in the history and the state stays.")
            .Produces<Submission>().Missing().ProducesProblem(StatusCodes.Status409Conflict).ProducesProblem(StatusCodes.Status412PreconditionFailed).ProducesProblem(StatusCodes.Status428PreconditionRequired);
        reviewers.MapAssignees();
        reviewers.MapPost("/submissions/{id}/screenings", RescreenAsync).WithName("ScreenAgain").WithSummary("Screen a submission again").Produces<Submission>().Missing().ProducesProblem(StatusCodes.Status409Conflict);
        reviewers.MapPost("/screenings", RescreenOpenAsync).WithName("ScreenOpenAgain").WithSummary("Screen all open submissions again whose report stands on another rule book")
            .Produces<RescreenedBody>();
    }

    private static async Task<IResult> SubmitAsync(
        HttpContext context,
        SubmissionRegister register,
        Bell bell,
        [FromQuery(Name = "file_name")] string? fileName,
        [FromQuery(Name = "revision_of")] string? revisionOf,
        [FromQuery(Name = "plan")] string? plan,
        [FromHeader(Name = "Idempotency-Key")] string? idempotencyKey,
        CancellationToken cancel)
    {
        var sent = await Sent.ReadAsync(context.Request, fileName, plan, cancel);
        var (submission, isNew) = await register.SubmitAsync(sent.Submission(revisionOf, idempotencyKey), Callers.Need(context), cancel);
        bell.Ring();
        Tag(context, submission);
        return isNew ? TypedResults.Created($"/api/v1/submissions/{submission.Id}", submission) : TypedResults.Ok(submission);
    }

    private static async Task<IResult> ListAsync(
        HttpContext context, RegisterReader reader, [AsParameters] SubmissionQuery query, [FromQuery] string? cursor, [FromQuery] int? limit, CancellationToken cancel)
    {
        var page = await reader.ListAsync(query.Filter, cursor, limit ?? 50, Callers.Need(context), cancel);
        if (page.Next is { } next)
        {
            var rest = QueryString.Create([.. context.Request.Query.Where(pair => pair.Key is not "cursor").SelectMany(pair => pair.Value.Select(value => KeyValuePair.Create(pair.Key, value))), KeyValuePair.Create("cursor", (string?)next)]);
            context.Response.Headers.Link = $"<{context.Request.Path}{rest}>; rel=\"next\"";
        }

        return TypedResults.Ok(page);
    }

    private static IResult ExportAsync(
        HttpContext context, RegisterReader reader, ShiftRecords records, IOptions<Microsoft.AspNetCore.Http.Json.JsonOptions> json, [AsParameters] SubmissionQuery query, CancellationToken cancel)
    {
        var caller = Callers.Need(context);
        context.Response.Headers.ContentDisposition = "attachment; filename=\"submissions.ndjson\"";
        return TypedResults.Stream(
            async output =>
            {
                await foreach (var submission in reader.ExportAsync(query.Filter, caller, cancel))
                {
                    var line = new { Submission = submission, History = await reader.HistoryAsync(submission.Id, caller, cancel), Files = await StoredFiles.ListAsync(reader, submission, caller, cancel), Records = (await records.ListAsync(submission.Id, caller, cancel)).Select(ShiftRecordEntry.Of).ToList() };
                    await JsonSerializer.SerializeAsync(output, line, json.Value.SerializerOptions, cancel);
                    await output.WriteAsync("\n"u8.ToArray(), cancel);
                }
            },
            "application/x-ndjson");
    }

    private static async Task<IResult> FindAsync(HttpContext context, RegisterReader reader, string id, CancellationToken cancel)
    {
        if (await reader.FindAsync(id, Callers.Need(context), cancel) is not { } submission)
        {
            return NotThere();
        }

        Tag(context, submission);
        return IsKnown(context) ? TypedResults.StatusCode(StatusCodes.Status304NotModified) : TypedResults.Ok(submission);
    }

    // Compared weakly, as RFC 9110 (13.1.2) asks for here.
    private static bool IsKnown(HttpContext context)
    {
        var tag = EntityTagHeaderValue.Parse(context.Response.Headers.ETag.ToString());
        return context.Request.GetTypedHeaders().IfNoneMatch.Any(known => known.Equals(EntityTagHeaderValue.Any) || known.Compare(tag, useStrongComparison: false));
    }

    private static async Task<IResult> TextAsync(HttpContext context, RegisterReader reader, string id, CancellationToken cancel) =>
        await reader.TextAsync(id, Callers.Need(context), cancel) is { } text
            ? TypedResults.File(text, "application/octet-stream", "plan.yaml")
            : NotThere();

    private static async Task<IResult> ChangesAsync(HttpContext context, RegisterReader reader, string id, [FromQuery] int? from, [FromQuery] int? to, CancellationToken cancel)
    {
        var caller = Callers.Need(context);
        return await reader.ReportAsync(id, to, caller, cancel) is { } later && await reader.ReportAsync(id, from ?? later.Summary.Screening - 1, caller, cancel) is { } earlier
            ? TypedResults.Ok(ReportChanges.Between(earlier, later))
            : NotThere();
    }

    private static async Task<IResult> HistoryAsync(HttpContext context, RegisterReader reader, string id, CancellationToken cancel) =>
        await reader.HistoryAsync(id, Callers.Need(context), cancel) is { Count: > 0 } history ? TypedResults.Ok(history) : NotThere();

    private static async Task<IResult> RevisionsAsync(HttpContext context, RegisterReader reader, string id, CancellationToken cancel)
    {
        var caller = Callers.Need(context);
        return await reader.FindAsync(id, caller, cancel) is { } one ? TypedResults.Ok(await reader.RevisionsAsync(one.Series, caller, cancel)) : NotThere();
    }

    private static async Task<IResult> DecideAsync(
        HttpContext context, SubmissionRegister register, FindingTalk talk, string id, DecisionBody body, [FromHeader(Name = "If-Match")] string? ifMatch, CancellationToken cancel)
    {
        var (caller, version) = (Callers.Need(context), Seen(ifMatch));
        if (!Enum.IsDefined(body.Decision))
        {
            throw new BadHttpRequestException("There is no such decision.");
        }

        var decided = await register.DecideAsync(id, version, body.Decision, body.Comment, caller, cancel, await talk.OpenAsync(id, caller, cancel));
        Tag(context, decided);
        return TypedResults.Ok(decided);
    }

    private static async Task<IResult> RescreenAsync(HttpContext context, SubmissionRegister register, Bell bell, string id, ReasonBody body, CancellationToken cancel)
    {
        var submission = await register.RescreenAsync(id, body.Reason, Callers.Need(context), cancel);
        bell.Ring();
        return TypedResults.Ok(submission);
    }

    private static async Task<IResult> RescreenOpenAsync(HttpContext context, SubmissionRegister register, CheckDesk desk, Bell bell, ReasonBody body, CancellationToken cancel)
    {
        var ids = await register.RescreenOpenAsync(desk.Book.Hash, body.Reason, Callers.Need(context), cancel);
        bell.Ring();
        return TypedResults.Ok(new RescreenedBody(ids));
    }

    /// <summary>The version of a submission that a caller has read.</summary>
    /// <exception cref="BadHttpRequestException">It does not say so.</exception>
    public static long Seen(string? ifMatch) => ifMatch is null
        ? throw new BadHttpRequestException("Send If-Match with the ETag of the submission that you have read.", StatusCodes.Status428PreconditionRequired)
        : long.TryParse(ifMatch.Trim('"'), System.Globalization.NumberStyles.None, System.Globalization.CultureInfo.InvariantCulture, out var seen) ? seen : -1;

    public static void Tag(HttpContext context, Submission submission)
    {
        context.Response.Headers.ETag = FormattableString.Invariant($"\"{submission.Version}\"");
        context.Response.Headers.CacheControl = "private, no-cache";
    }

    public static RouteHandlerBuilder Missing(this RouteHandlerBuilder route) => route.ProducesProblem(StatusCodes.Status404NotFound);

    public static IResult NotThere() => Refusals.Problem(StatusCodes.Status404NotFound, "Not found", "There is none, or you may not see it.");
}
