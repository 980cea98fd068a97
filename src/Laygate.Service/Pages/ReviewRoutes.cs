using System.Globalization;
using Laygate.Register;
using Laygate.Service.Access;
using Laygate.Service.Api;
using Laygate.Service.Checking;

namespace Laygate.Service.Pages;

/// <summary>What reviewers do on the pages: decide, take, give back, return what cannot be judged.</summary>
internal static class ReviewRoutes
{
    // More than a page of the list holds nobody can choose on it.
    private const int MostChosen = QueueQuery.Size;

    public static void MapReview(this IEndpointRouteBuilder reviewers)
    {
        reviewers.MapPost("/{id}/decision", DecideAsync);
        reviewers.MapPost("/{id}/take", (HttpContext context, ReviewDesk desk, SubmissionRegister register, string id, CancellationToken cancel) => desk.AssignAsync(context, register.TakeAsync, id, cancel));
        reviewers.MapPost("/{id}/release", (HttpContext context, ReviewDesk desk, SubmissionRegister register, string id, CancellationToken cancel) => desk.AssignAsync(context, register.ReleaseAsync, id, cancel));
        reviewers.MapPost("/return", ReturnAsync);
    }

    private static async Task<IResult> DecideAsync(HttpContext context, DetailPages pages, SubmissionRegister register, RegisterReader reader, FindingTalk talk, KeptForms kept, string id, CancellationToken cancel)
    {
        var form = await FormGuard.ReadAsync(context.Request, cancel);
        var caller = Callers.Need(context);
        var (said, list, texts, written) = (form["comment"].ToString(), QueueQuery.Of(form["list"], caller), FormPages.Texts(form), PageTexts.Of(form));
        var (secret, page) = (SessionCookie.Of(context.Request), FormPages.Submission(id));
        if (!Enum.TryParse<Verdict>(form["verdict"], out var verdict) || !Enum.IsDefined(verdict) || Version(form) is not { } version)
        {
            return await pages.ShowAsync(context, id, list, written.Drafts(notDecided: "Choose a decision."), StatusCodes.Status400BadRequest, cancel);
        }

        try
        {
            var next = list is null ? null : await reader.NextAsync(id, list.Filter(caller), list.Order, list.Descending, caller, cancel);
            await register.DecideAsync(id, version, verdict, said, caller, cancel, await talk.OpenAsync(id, caller, cancel));
            texts.Remove("comment");
            await kept.KeepAsync(secret, page, texts, cancel);
            return TypedResults.Redirect(list is null ? $"/submissions/{Uri.EscapeDataString(id)}" : $"/submissions{(next is null ? string.Empty : "/" + next)}{list.Text}&decided={Uri.EscapeDataString(id)}");
        }
        catch (RefusedException refused) when (refused.Refusal != Refusal.NotFound)
        {
            await kept.KeepAsync(secret, page, texts, cancel);
            return await pages.ShowAsync(context, id, list, written.Drafts(notDecided: refused.Message), Refusals.StatusOf(refused), cancel);
        }
    }

    private static async Task<IResult> ReturnAsync(HttpContext context, QueuePages pages, SubmissionRegister register, RegisterReader reader, KeptForms kept, CancellationToken cancel)
    {
        var form = await FormGuard.ReadAsync(context.Request, cancel);
        var caller = Callers.Need(context);
        var said = form["comment"].ToString();
        var (refused, left) = (new List<(string Name, string Why)>(), new List<string>());
        var chosen = form["chosen"].OfType<string>().Select(one => one.Split(':')).Where(parts => parts.Length == 2).Take(MostChosen).ToList();
        foreach (var parts in chosen)
        {
            if (await RefusalAsync(register, reader, parts, said, caller, cancel) is { } why)
            {
                refused.Add(why);
                left.Add(parts[0]);
            }
        }

        if (chosen.Count == 0)
        {
            refused.Add(("nothing", "choose what to return."));
        }

        await kept.KeepAsync(context, "/submissions", refused.Count > 0 ? form : null, cancel);
        return await pages.ShowAsync(
            context,
            QueueQuery.Of(form["list"], caller) ?? QueueQuery.Usual(caller),
            null,
            new BulkReturn(chosen.Count - left.Count, refused, left, refused.Count > 0 ? said : string.Empty),
            refused.Count > 0 ? StatusCodes.Status409Conflict : StatusCodes.Status200OK,
            cancel);
    }

    // Only what no reviewer can judge is returned without its page being opened.
    private static async Task<(string Name, string Why)?> RefusalAsync(SubmissionRegister register, RegisterReader reader, string[] parts, string said, Caller caller, CancellationToken cancel)
    {
        if (await reader.FindAsync(parts[0], caller, cancel) is not { } one)
        {
            return (parts[0], "there is none.");
        }

        var name = one.Plan?.Title ?? one.FileName;
        if (one.State is not (SubmissionState.FailedToRead or SubmissionState.NotScreened))
        {
            return (name, "it can be judged by now. Open it and decide.");
        }

        try
        {
            await register.DecideAsync(one.Id, long.TryParse(parts[1], NumberStyles.None, CultureInfo.InvariantCulture, out var seen) ? seen : -1, Verdict.Returned, said, caller, cancel);
            return null;
        }
        catch (RefusedException refused)
        {
            return (name, refused.Message);
        }
    }

    private static long? Version(IFormCollection form) => long.TryParse(form["version"], NumberStyles.None, CultureInfo.InvariantCulture, out var version) ? version : null;
}

/// <summary>What is done from a page on which somebody may have written: that is kept first, whatever becomes of the rest.</summary>
internal sealed class ReviewDesk(KeptForms kept, DetailPages pages, RegisterReader reader)
{
    /// <summary>Takes a submission or gives it back.</summary>
    public async Task<IResult> AssignAsync(HttpContext context, Func<string, long, Caller, CancellationToken, Task<Submission>> assign, string id, CancellationToken cancel)
    {
        var form = await FormGuard.ReadAsync(context.Request, cancel);
        var caller = Callers.Need(context);
        var page = await KeepAsync(context, form, cancel);
        try
        {
            await assign(id, long.TryParse(form["seen"], NumberStyles.None, CultureInfo.InvariantCulture, out var seen) ? seen : -1, caller, cancel);
            return TypedResults.LocalRedirect(page);
        }
        catch (RefusedException refused) when (refused.Refusal != Refusal.NotFound)
        {
            return await pages.ShowAsync(context, id, QueueQuery.Of(form["list"], caller), null, Refusals.StatusOf(refused), cancel, refused.Message);
        }
    }

    /// <summary>Keeps what is written and does nothing else.</summary>
    /// <param name="context">The request.</param>
    /// <param name="id">Id of the submission on whose page it is written; null: on the list.</param>
    /// <param name="cancel">Ends it.</param>
    public async Task<IResult> KeepAsync(HttpContext context, string? id, CancellationToken cancel)
    {
        var form = await FormGuard.ReadAsync(context.Request, cancel);
        return id is not null && await reader.FindAsync(id, Callers.Need(context), cancel) is null ? TypedResults.NotFound() : TypedResults.LocalRedirect(await KeepAsync(context, form, cancel));
    }

    private async Task<string> KeepAsync(HttpContext context, IFormCollection form, CancellationToken cancel)
    {
        var page = FormPages.Of(context.Request.Path, form)!;
        await kept.KeepAsync(context, page.Path, form, cancel);
        return page.Address;
    }
}
