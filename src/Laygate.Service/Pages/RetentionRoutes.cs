using Laygate.Register;
using Laygate.Service.Access;
using Laygate.Service.Api;
using Laygate.Service.Settings;
using Microsoft.Extensions.Options;

namespace Laygate.Service.Pages;

/// <summary>Which names are due to be replaced, and those of one submission now, for administrators.</summary>
internal static class RetentionRoutes
{
    public static void MapRetentionPages(this IEndpointRouteBuilder app)
    {
        var administrators = app.MapGroup("/administration/retention").RequireAuthorization(AccessSetup.Administrators);
        administrators.MapGet("", ShowAsync);
        administrators.MapGet("/{id}", FindAsync);
        administrators.MapPost("/{id}", ReplaceAsync);
    }

    /// <summary>The page on which the names of one submission are replaced.</summary>
    public static string Page(string id) => "/administration/retention/" + Uri.EscapeDataString(id);

    private static async Task<IResult> ShowAsync(HttpContext context, Retention retention, IOptions<ServiceSettings> options, CancellationToken cancel)
    {
        var rule = options.Value.Retention.Rule;
        return PageResults.Page<RetentionPage>(context, PageRoutes.Values(("Rule", rule), ("Due", await retention.DueAsync(rule, cancel))));
    }

    private static async Task<IResult> FindAsync(HttpContext context, Retention retention, RegisterReader reader, KeptForms kept, string id, CancellationToken cancel)
    {
        var written = await kept.ReadAsync(context, Page(id), cancel);
        return await AnswerAsync(context, retention, reader, id, new NamesDraft(written.GetValueOrDefault("comment")?[0], written.ContainsKey("texts"), null, false), StatusCodes.Status200OK, cancel);
    }

    private static async Task<IResult> ReplaceAsync(HttpContext context, Retention retention, RegisterReader reader, KeptForms kept, string id, CancellationToken cancel)
    {
        var form = await FormGuard.ReadAsync(context.Request, cancel);
        var draft = new NamesDraft(form["comment"], form["texts"].Count > 0, null, false);
        try
        {
            await retention.ReplaceNowAsync(id, draft.Reason, draft.Texts, Callers.Need(context), cancel);
            await kept.KeepAsync(context, Page(id), null, cancel);
            return await AnswerAsync(context, retention, reader, id, draft with { Reason = null, Done = true }, StatusCodes.Status200OK, cancel);
        }
        catch (RefusedException refused)
        {
            return await AnswerAsync(context, retention, reader, id, draft with { Wrong = refused.Message }, Refusals.StatusOf(refused), cancel);
        }
    }

    private static async Task<IResult> AnswerAsync(HttpContext context, Retention retention, RegisterReader reader, string id, NamesDraft draft, int status, CancellationToken cancel) =>
        await reader.FindAsync(id, Callers.Need(context), cancel) is { } one && await retention.FindAsync(id, cancel) is { } found
            ? PageResults.Page<NamesPage>(context, PageRoutes.Values(("One", one), ("Found", found), ("Draft", draft)), status)
            : TypedResults.NotFound();
}

/// <summary>A replacement as it was asked for on the page.</summary>
/// <param name="Reason">Why, as it was written.</param>
/// <param name="Texts">Whether comments, too.</param>
/// <param name="Wrong">Why it was not done; null where it was, or none was asked for.</param>
/// <param name="Done">Whether it was done.</param>
public sealed record NamesDraft(string? Reason, bool Texts, string? Wrong, bool Done);
