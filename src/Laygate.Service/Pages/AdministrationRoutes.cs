using System.Globalization;
using Laygate.Register;
using Laygate.Service.Access;
using Laygate.Service.Administration;
using Laygate.Service.Api;
using Laygate.Service.Checking;
using Laygate.Service.Work;

namespace Laygate.Service.Pages;

/// <summary>Pages for those who look after the register: keys, screenings under changed rules, counts, the export for audit.</summary>
internal static class AdministrationRoutes
{
    private const string Screenings = "/screenings";

    public static void MapAdministrationPages(this IEndpointRouteBuilder app)
    {
        var administrators = app.MapGroup("/administration").RequireAuthorization(AccessSetup.Administrators);
        administrators.MapGet("", async (HttpContext context, AdministrationDesk desk, CancellationToken cancel) => await desk.ShowAsync(context, await desk.KeptAsync(context, cancel), StatusCodes.Status200OK, cancel));
        administrators.MapPost("/keys", IssueAsync);
        administrators.MapPost("/keys/{id}/revoke", RevokeAsync);
        administrators.MapPost("/sessions/{id}/end", (HttpContext context, AdministrationDesk desk, string id, CancellationToken cancel) => desk.EndAsync(context, id, false, cancel));
        administrators.MapPost("/sessions/{id}/end-all", (HttpContext context, AdministrationDesk desk, string id, CancellationToken cancel) => desk.EndAsync(context, id, true, cancel));
        administrators.MapGet("/audit", AdministrationApi.Audit);
        var reviewers = app.MapGroup("").RequireAuthorization(AccessSetup.Reviewers);
        reviewers.MapGet("/statistics", StatisticsAsync);
        reviewers.MapGet("/screenings", PreviewAsync);
        reviewers.MapPost("/screenings", ScreenAsync);
    }

    private static async Task<IResult> IssueAsync(HttpContext context, AdministrationDesk desk, AccessKeys keys, CancellationToken cancel)
    {
        var form = await FormGuard.ReadAsync(context.Request, cancel);
        var (name, end) = (form["name"].ToString(), form["ends"].ToString());
        var draft = new KeyDraft { Name = name, Role = form["role"], Ends = end };
        if (!Enum.TryParse<Role>(form["role"], out var role) || !Enum.IsDefined(role))
        {
            return await desk.ShowAsync(context, draft with { Wrong = "Choose a role." }, StatusCodes.Status400BadRequest, cancel);
        }

        if (end.Length > 0 && !DateOnly.TryParseExact(end, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out _))
        {
            return await desk.ShowAsync(context, draft with { Wrong = "Give the last day as year-month-day, or leave it out." }, StatusCodes.Status400BadRequest, cancel);
        }

        try
        {
            // The last day counts to its end, UTC.
            DateTimeOffset? until = end.Length == 0 ? null : new DateTimeOffset(DateOnly.ParseExact(end, "yyyy-MM-dd", CultureInfo.InvariantCulture), TimeOnly.MaxValue, TimeSpan.Zero);
            var issued = await keys.IssueAsync(name, role, until, Callers.Need(context), cancel);
            await desk.KeepAsync(context, null, cancel);
            return await desk.ShowAsync(context, new KeyDraft { Issued = issued }, StatusCodes.Status200OK, cancel);
        }
        catch (RefusedException refused)
        {
            return await desk.ShowAsync(context, draft with { Wrong = refused.Message }, Refusals.StatusOf(refused), cancel);
        }
    }

    private static async Task<IResult> RevokeAsync(HttpContext context, AdministrationDesk desk, AccessKeys keys, string id, CancellationToken cancel)
    {
        await desk.KeepAsync(context, await FormGuard.ReadAsync(context.Request, cancel), cancel);
        _ = await keys.RevokeAsync(id, Callers.Need(context), cancel);
        return TypedResults.Redirect("/administration");
    }

    private static async Task<IResult> StatisticsAsync(HttpContext context, StatisticsDesk desk, DateOnly? from, DateOnly? until, CancellationToken cancel)
    {
        var (counts, days) = await desk.CountAsync(from, until, Callers.Need(context), cancel);
        return PageResults.Page<StatisticsPage>(context, PageRoutes.Values(("Counted", counts), ("Days", days)));
    }

    private static async Task<IResult> PreviewAsync(HttpContext context, PreviewDesk desk, KeptForms kept, int? skip, CancellationToken cancel)
    {
        var written = await kept.ReadAsync(context, Screenings, cancel);
        return PageResults.Page<ScreeningsPage>(context, PageRoutes.Values(("Previewed", await desk.ListAsync(skip ?? 0, Callers.Need(context), cancel)), ("Said", written.GetValueOrDefault("comment")?[0])));
    }

    private static async Task<IResult> ScreenAsync(HttpContext context, SubmissionRegister register, CheckDesk desk, PreviewDesk previews, KeptForms kept, Bell bell, CancellationToken cancel)
    {
        var form = await FormGuard.ReadAsync(context.Request, cancel);
        var caller = Callers.Need(context);
        try
        {
            var ids = await register.RescreenOpenAsync(desk.Book.Hash, form["comment"].ToString(), caller, cancel);
            bell.Ring();
            await kept.KeepAsync(context, Screenings, null, cancel);
            return PageResults.Page<ScreeningsPage>(context, PageRoutes.Values(("Previewed", new ScreeningPreviews(0, 0, [])), ("Asked", ids.Count)));
        }
        catch (RefusedException refused)
        {
            return PageResults.Page<ScreeningsPage>(
                context, PageRoutes.Values(("Previewed", new ScreeningPreviews(await previews.CountAsync(cancel), 0, [])), ("Wrong", refused.Message), ("Said", form["comment"].ToString())), Refusals.StatusOf(refused));
        }
    }
}

/// <summary>A key as it was asked for on the page.</summary>
public sealed record KeyDraft
{
    /// <summary>Name of its owner.</summary>
    public string? Name { get; init; }

    /// <summary>What it may do.</summary>
    public string? Role { get; init; }

    /// <summary>Its last day, as it was written.</summary>
    public string? Ends { get; init; }

    /// <summary>Why it was not issued; null where it was, or none was asked for.</summary>
    public string? Wrong { get; init; }

    /// <summary>The key that was issued.</summary>
    public IssuedKey? Issued { get; init; }
}
