using Laygate.Register;
using Laygate.Service.Access;
using Laygate.Service.Telling;

namespace Laygate.Service.Api;

/// <summary>Notices by mail that are asked for.</summary>
/// <param name="Address">Address of the mail.</param>
/// <param name="Events">What they tell of.</param>
/// <param name="Contract">Number or name of the contract as plans state it; left out: all.</param>
internal sealed record MailNoticesBody(string Address, IReadOnlyList<NoticeEvent> Events, string? Contract = null);

/// <summary>A webhook that is asked for.</summary>
/// <param name="Address">Where requests go.</param>
/// <param name="Events">What they tell of.</param>
/// <param name="Contract">Number or name of the contract as plans state it; left out: all.</param>
/// <param name="Secret">What requests are signed with; left out: the service makes one.</param>
internal sealed record WebhookBody(string Address, IReadOnlyList<NoticeEvent> Events, string? Contract = null, string? Secret = null);

/// <summary>Who is told of what.</summary>
internal static class NoticesApi
{
    public static void MapNotices(this IEndpointRouteBuilder api)
    {
        var known = api.MapGroup("/notices").RequireAuthorization(AccessSetup.Known).WithTags("notices").ProducesProblem(StatusCodes.Status401Unauthorized).ProducesProblem(StatusCodes.Status403Forbidden);
        known.MapGet("", (HttpContext context, Subscriptions store, CancellationToken cancel) => store.OfAsync(Callers.Need(context), cancel)).WithName("ListNotices").WithSummary("Your notices by mail").Produces<IReadOnlyList<Subscription>>();
        known.MapPost("", AddAsync).WithName("AskForNotices").WithSummary("Ask for notices by mail")
            .WithDescription("Submitters are told of their own submissions, reviewers of all. A notice holds the title, counts and a link, nothing else of a plan. A contract is known once a plan was read: of its first revision `submitted` is told to those alone who ask for all contracts.")
            .Produces<Subscription>(StatusCodes.Status201Created).ProducesProblem(StatusCodes.Status400BadRequest).ProducesProblem(StatusCodes.Status409Conflict);
        known.MapDelete("/{id}", EndAsync).WithName("EndNotices").WithSummary("End a subscription, a webhook too").WithDescription("For its owner, and administrators. What waits is not sent any more.")
            .Produces(StatusCodes.Status204NoContent).ProducesProblem(StatusCodes.Status400BadRequest).Missing();
        var administrators = api.MapGroup("").RequireAuthorization(AccessSetup.Administrators).WithTags("notices").ProducesProblem(StatusCodes.Status401Unauthorized).ProducesProblem(StatusCodes.Status403Forbidden);
        administrators.MapGet("/webhooks", (Subscriptions store, CancellationToken cancel) => store.AllAsync(Channel.Webhook, cancel)).WithName("ListWebhooks").WithSummary("Webhooks, without their secrets").Produces<IReadOnlyList<Subscription>>();
        administrators.MapPost("/webhooks", SetAsync).WithName("SetWebhook").WithSummary("Set a webhook")
            .WithDescription("Requests are signed by the open specification Standard Webhooks (`webhook-id`, `webhook-timestamp`, `webhook-signature`; HMAC-SHA256). The answer is the only place where a secret made by the service stands.")
            .Produces<SetWebhook>(StatusCodes.Status201Created).ProducesProblem(StatusCodes.Status400BadRequest).ProducesProblem(StatusCodes.Status409Conflict);
        administrators.MapGet("/notices/failed", (OutgoingNotices queue, CancellationToken cancel) => queue.FailedAsync(cancel)).WithName("ListFailedNotices").WithSummary($"Notices that were given up, the latest first, at most {OutgoingNotices.MostListed}").Produces<IReadOnlyList<FailedNotice>>();
        administrators.MapPost("/notices/failed/{id}/again", AgainAsync).WithName("SendNoticeAgain").WithSummary("Send a notice again that was given up, under the same id")
            .Produces(StatusCodes.Status204NoContent).ProducesProblem(StatusCodes.Status400BadRequest).ProducesProblem(StatusCodes.Status409Conflict).Missing();
    }

    private static async Task<IResult> AddAsync(HttpContext context, NoticeDesk desk, MailNoticesBody body, CancellationToken cancel) =>
        TypedResults.Created((string?)null, await desk.AddMailAsync(body.Address, body.Events, body.Contract, Callers.Need(context), cancel));

    private static async Task<IResult> SetAsync(HttpContext context, NoticeDesk desk, WebhookBody body, CancellationToken cancel)
    {
        context.Response.Headers.CacheControl = "no-store";
        return TypedResults.Created((string?)null, await desk.AddWebhookAsync(body.Address, body.Secret, body.Events, body.Contract, Callers.Need(context), cancel));
    }

    private static async Task<IResult> EndAsync(HttpContext context, Subscriptions store, string id, CancellationToken cancel)
    {
        await store.EndAsync(id, Callers.Need(context), cancel);
        return TypedResults.NoContent();
    }

    private static async Task<IResult> AgainAsync(OutgoingNotices queue, string id, CancellationToken cancel)
    {
        await queue.AgainAsync(id, cancel);
        return TypedResults.NoContent();
    }
}
