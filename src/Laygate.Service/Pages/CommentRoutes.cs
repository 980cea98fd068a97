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

    private static async Task<IResult> WriteAsync(HttpContext context, DetailPages pages, FindingTalk talk, string id, CancellationToken cancel)
    {
        var form = await FormGuard.ReadAsync(context.Request, cancel);
        var caller = Callers.Need(context);
        var list = QueueQuery.Of(form["list"], caller);
        var (finding, said) = (new FindingKey(form["in"].ToString(), form["rule"].ToString(), form["address"].ToString()), form["comment"].ToString());
        try
        {
            await talk.AddAsync(id, finding, said, form["open"] == "true", caller, cancel);
        }
        catch (RefusedException refused) when (refused.Refusal != Refusal.NotFound)
        {
            return await pages.ShowAsync(context, id, list, new Drafts(null, new CommentDraft(finding, refused.Message, said)), Refusals.StatusOf(refused), cancel);
        }

        var place = form["at"].ToString();
        return TypedResults.Redirect($"/submissions/{Uri.EscapeDataString(id)}{list?.Text}{(IsPlace().IsMatch(place) ? "#" + place : string.Empty)}");
    }

    [GeneratedRegex("^p[0-9]{1,4}-f[0-9]{1,6}$", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex IsPlace();
}
