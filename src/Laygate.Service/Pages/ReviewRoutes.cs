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
        reviewers.MapPost("/{id}/take", (HttpContext context, SubmissionRegister register, string id, CancellationToken cancel) => AssignAsync(context, register.TakeAsync, id, cancel));
        reviewers.MapPost("/{id}/release", (HttpContext context, SubmissionRegister register, string id, CancellationToken cancel) => AssignAsync(context, register.ReleaseAsync, id, cancel));
        reviewers.MapPost("/return", ReturnAsync);
    }

    private static async Task<IResult> DecideAsync(HttpContext context, DetailPages pages, SubmissionRegister register, RegisterReader reader, FindingTalk talk, string id, CancellationToken cancel)
    {
        var form = await FormGuard.ReadAsync(context.Request, cancel);
        var caller = Callers.Need(context);
        var (said, list) = (form["comment"].ToString(), QueueQuery.Of(form["list"], caller));
        if (!Enum.TryParse<Verdict>(form["verdict"], out var verdict) || !Enum.IsDefined(verdict) || Version(form) is not { } version)
        {
            return await pages.ShowAsync(context, id, list, new Drafts(new DecisionDraft("Choose a decision.", said), null), StatusCodes.Status400BadRequest, cancel);
        }

        try
        {
            var next = list is null ? null : await reader.NextAsync(id, list.Filter(caller), list.Order, list.Descending, caller, cancel);
            await register.DecideAsync(id, version, verdict, said, caller, cancel, await talk.OpenAsync(id, caller, cancel));
            return TypedResults.Redirect(list is null ? $"/submissions/{Uri.EscapeDataString(id)}" : $"/submissions{(next is null ? string.Empty : "/" + next)}{list.Text}&decided={Uri.EscapeDataString(id)}");
        }
        catch (RefusedException refused) when (refused.Refusal != Refusal.NotFound)
        {
            return await pages.ShowAsync(context, id, list, new Drafts(new DecisionDraft(refused.Message, said), null), Refusals.StatusOf(refused), cancel);
        }
    }

    private static async Task<IResult> AssignAsync(HttpContext context, Func<string, long, Caller, CancellationToken, Task<Submission>> assign, string id, CancellationToken cancel)
    {
        var form = await FormGuard.ReadAsync(context.Request, cancel);
        var caller = Callers.Need(context);
        await assign(id, Version(form) ?? -1, caller, cancel);
        var list = QueueQuery.Of(form["list"], caller)?.Text;
        return TypedResults.Redirect(form["back"] == "list" ? $"/submissions{list}" : $"/submissions/{Uri.EscapeDataString(id)}{list}");
    }

    private static async Task<IResult> ReturnAsync(HttpContext context, QueuePages pages, SubmissionRegister register, RegisterReader reader, CancellationToken cancel)
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
