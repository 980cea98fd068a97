using Laygate.Service.Access;
using Laygate.Service.Settings;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.Extensions.Options;

namespace Laygate.Service.Pages;

/// <summary>The pages of signing in and out.</summary>
internal static class SignInPages
{
    /// <summary>Where to sign in.</summary>
    /// <param name="context">The request.</param>
    /// <param name="to">Where to go afterwards, an address of this service.</param>
    /// <param name="status">Status of the answer.</param>
    /// <param name="wrong">Whether a key was just tried that is none.</param>
    /// <param name="left">Whether somebody just left.</param>
    /// <param name="rescued">What became of a form that came without a session; null: none came.</param>
    public static RazorComponentResult Form(HttpContext context, string to, int status, bool wrong = false, bool left = false, RescuedForm? rescued = null) => PageResults.Page<SignInPage>(
        context,
        PageRoutes.Values(("To", to), ("Wrong", wrong), ("Left", left), ("Rescued", rescued), ("AtProvider", AtProvider(context)), ("Needed", !wrong && status == StatusCodes.Status401Unauthorized)),
        status);

    /// <summary>Somebody has to sign in first; what a form brought is kept for then.</summary>
    public static async Task<IResult> NeededAsync(HttpContext context)
    {
        var rescued = await context.RequestServices.GetRequiredService<FormRescue>().RescueAsync(context);
        return Form(context, rescued?.To ?? LocalAddress.Of(context.Request), StatusCodes.Status401Unauthorized, rescued: rescued);
    }

    /// <summary>A form from a page of an earlier session: what it brought is kept, and stands on the page as it is now.</summary>
    public static async Task<IResult> EarlierAsync(HttpContext context)
    {
        if (await context.RequestServices.GetRequiredService<FormRescue>().RescueAsync(context) is not { } rescued)
        {
            return PageResults.Refusal(context, StatusCodes.Status400BadRequest, "From another session", "Open the page again and send the form from there.");
        }

        return rescued.Texts.Count == 0 ? TypedResults.LocalRedirect(rescued.To) : Form(context, rescued.To, StatusCodes.Status400BadRequest, rescued: rescued);
    }

    /// <summary>Why somebody is not signed in, and what to do.</summary>
    public static RazorComponentResult Fault(HttpContext context, SignInFault fault, string to)
    {
        if (fault.Status == StatusCodes.Status503ServiceUnavailable)
        {
            context.Response.Headers.RetryAfter = "60";
        }

        return PageResults.Page<SignInFaultPage>(context, PageRoutes.Values(("Title", fault.Title), ("Detail", fault.Detail), ("To", to)), fault.Status);
    }

    /// <summary>Somebody has left; the page goes on to the provider, where that has an end of its own.</summary>
    public static RazorComponentResult Left(HttpContext context, string? end)
    {
        context.User = new System.Security.Claims.ClaimsPrincipal();
        return PageResults.Page<SignedOutPage>(context, PageRoutes.Values(("End", end)));
    }

    private static bool AtProvider(HttpContext context) => context.RequestServices.GetRequiredService<IOptions<ServiceSettings>>().Value.ClientId.Length > 0;
}
