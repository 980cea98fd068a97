using Laygate.Register;
using Laygate.Service.Access;
using Laygate.Service.Api;
using Laygate.Service.Telling;
using Microsoft.Extensions.Primitives;

namespace Laygate.Service.Pages;

/// <summary>Pages on notices: one's own by mail, and for administrators webhooks and what could not be sent.</summary>
internal static class NoticeRoutes
{
    private const string Own = "/notices";
    private const string All = "/administration/notices";

    public static void MapNoticePages(this IEndpointRouteBuilder app)
    {
        var known = app.MapGroup(Own).RequireAuthorization(AccessSetup.Known);
        known.MapGet("", async (HttpContext context, Subscriptions store, NoticeDesk desk, KeptForms kept, CancellationToken cancel) =>
            await OwnAsync(context, store, desk, await KeptAsync(context, kept, Own, cancel), StatusCodes.Status200OK, cancel));
        known.MapPost("", AddAsync);
        known.MapPost("/{id}/end", (HttpContext context, Subscriptions store, KeptForms kept, string id, CancellationToken cancel) => EndAsync(context, store, kept, id, Own, cancel));
        var administrators = app.MapGroup(All).RequireAuthorization(AccessSetup.Administrators);
        administrators.MapGet("", async (HttpContext context, Subscriptions store, OutgoingNotices queue, KeptForms kept, CancellationToken cancel) =>
            await AllAsync(context, store, queue, await KeptAsync(context, kept, All, cancel), StatusCodes.Status200OK, cancel));
        administrators.MapPost("", SetAsync);
        administrators.MapPost("/{id}/end", (HttpContext context, Subscriptions store, KeptForms kept, string id, CancellationToken cancel) => EndAsync(context, store, kept, id, All, cancel));
        administrators.MapPost("/failed/{id}/again", AgainAsync);
    }

    private static async Task<IResult> OwnAsync(HttpContext context, Subscriptions store, NoticeDesk desk, NoticeDraft draft, int status, CancellationToken cancel) => PageResults.Page<NoticesPage>(
        context,
        PageRoutes.Values(("Mine", await store.OfAsync(Callers.Need(context), cancel)), ("HasMail", desk.HasMail), ("Domains", desk.Domains), ("Draft", draft)),
        status);

    private static async Task<IResult> AllAsync(HttpContext context, Subscriptions store, OutgoingNotices queue, NoticeDraft draft, int status, CancellationToken cancel) => PageResults.Page<WebhooksPage>(
        context,
        PageRoutes.Values(("Webhooks", await store.AllAsync(Channel.Webhook, cancel)), ("Mails", await store.AllAsync(Channel.Mail, cancel)), ("Failed", await queue.FailedAsync(cancel)), ("Draft", draft)),
        status);

    private static async Task<IResult> AddAsync(HttpContext context, Subscriptions store, NoticeDesk desk, KeptForms kept, CancellationToken cancel)
    {
        var draft = NoticeDraft.Of(await FormGuard.ReadAsync(context.Request, cancel));
        try
        {
            await desk.AddMailAsync(draft.Address, draft.Events, draft.Contract, Callers.Need(context), cancel);
            await kept.KeepAsync(context, Own, null, cancel);
            return TypedResults.Redirect(Own);
        }
        catch (RefusedException refused)
        {
            return await OwnAsync(context, store, desk, draft with { Wrong = refused.Message }, Refusals.StatusOf(refused), cancel);
        }
    }

    private static async Task<IResult> SetAsync(HttpContext context, Subscriptions store, OutgoingNotices queue, NoticeDesk desk, KeptForms kept, CancellationToken cancel)
    {
        var form = await FormGuard.ReadAsync(context.Request, cancel);
        var draft = NoticeDraft.Of(form);
        try
        {
            var set = await desk.AddWebhookAsync(draft.Address, form["secret"], draft.Events, draft.Contract, Callers.Need(context), cancel);
            await kept.KeepAsync(context, All, null, cancel);
            return await AllAsync(context, store, queue, new NoticeDraft { Set = set }, StatusCodes.Status200OK, cancel);
        }
        catch (RefusedException refused)
        {
            return await AllAsync(context, store, queue, draft with { Wrong = refused.Message }, Refusals.StatusOf(refused), cancel);
        }
    }

    private static async Task<IResult> EndAsync(HttpContext context, Subscriptions store, KeptForms kept, string id, string then, CancellationToken cancel)
    {
        await kept.KeepAsync(context, then, await FormGuard.ReadAsync(context.Request, cancel), cancel);
        await store.EndAsync(id, Callers.Need(context), cancel);
        return TypedResults.Redirect(then);
    }

    private static async Task<IResult> AgainAsync(HttpContext context, Subscriptions store, OutgoingNotices queue, KeptForms kept, string id, CancellationToken cancel)
    {
        var form = await FormGuard.ReadAsync(context.Request, cancel);
        await kept.KeepAsync(context, All, form, cancel);
        try
        {
            await queue.AgainAsync(id, cancel);
            return TypedResults.Redirect(All);
        }
        catch (RefusedException refused) when (refused.Refusal == Refusal.WrongState)
        {
            return await AllAsync(context, store, queue, NoticeDraft.Of(form) with { Wrong = refused.Message }, Refusals.StatusOf(refused), cancel);
        }
    }

    private static async Task<NoticeDraft> KeptAsync(HttpContext context, KeptForms kept, string page, CancellationToken cancel)
    {
        var fields = await kept.ReadAsync(context, page, cancel);
        return NoticeDraft.Of(new FormCollection(fields.ToDictionary(field => field.Key, field => new StringValues(field.Value), StringComparer.Ordinal)));
    }
}

/// <summary>Notices as they were asked for on a page.</summary>
public sealed record NoticeDraft
{
    /// <summary>The address as it was written.</summary>
    public string? Address { get; init; }

    /// <summary>The contract as it was written.</summary>
    public string? Contract { get; init; }

    /// <summary>The events that were chosen.</summary>
    public IReadOnlyList<NoticeEvent> Events { get; init; } = [];

    /// <summary>Why it was not taken; null where it was, or nothing was asked for.</summary>
    public string? Wrong { get; init; }

    /// <summary>The webhook that was set.</summary>
    public SetWebhook? Set { get; init; }

    internal static NoticeDraft Of(IFormCollection form) => new()
    {
        Address = form["address"],
        Contract = form["contract"],
        Events = [.. form["event"].Where(word => Enum.TryParse<NoticeEvent>(word, out var what) && Enum.IsDefined(what)).Select(word => Enum.Parse<NoticeEvent>(word!))],
    };
}
