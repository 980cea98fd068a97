using System.Text.RegularExpressions;
using Laygate.Register;
using Laygate.Service.Access;
using Laygate.Service.Api;
using Laygate.Service.Checking;

namespace Laygate.Service.Pages;

/// <summary>Comments on findings, from the page of a submission.</summary>
internal static partial class CommentRoutes
{
    public static void MapComments(this IEndpointRouteBuilder known) => known.MapPost("/{id}/comments", WriteAsync);

    private static async Task<IResult> WriteAsync(HttpContext context, DetailPages pages, FindingTalk talk, KeptForms kept, string id, string? at, CancellationToken cancel)
    {
        var form = await FormGuard.ReadAsync(context.Request, cancel);
        var caller = Callers.Need(context);
        var (finding, leavesOpen) = PageTexts.Pressed(form) ?? throw new BadHttpRequestException("The form does not say on which finding you write. Open the page again.");
        var (list, texts, written) = (QueueQuery.Of(form["list"], caller), FormPages.Texts(form), PageTexts.Of(form));
        var (secret, page) = (SessionCookie.Of(context.Request), FormPages.Submission(id));
        try
        {
            await talk.AddAsync(id, finding, written.Comments.GetValueOrDefault(finding), leavesOpen, caller, cancel);
        }
        catch (RefusedException refused) when (refused.Refusal != Refusal.NotFound)
        {
            await kept.KeepAsync(secret, page, texts, cancel);
            return await pages.ShowAsync(context, id, list, written.Drafts(notWritten: (finding, refused.Message)), Refusals.StatusOf(refused), cancel);
        }

        texts.Remove(PageTexts.Said + PageTexts.NameOf(finding));
        await kept.KeepAsync(secret, page, texts, cancel);
        var place = at ?? string.Empty;
        return TypedResults.Redirect($"/submissions/{Uri.EscapeDataString(id)}{list?.Text}{(IsPlace().IsMatch(place) ? "#" + place : string.Empty)}");
    }

    [GeneratedRegex("^p[0-9]{1,4}-f[0-9]{1,6}$", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex IsPlace();
}
