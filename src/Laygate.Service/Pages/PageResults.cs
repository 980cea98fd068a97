using System.Diagnostics;
using Laygate.Service.Access;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Laygate.Service.Pages;

/// <summary>Pages as answers. All text is encoded by the components.</summary>
internal static class PageResults
{
    /// <summary>A page with what every page needs.</summary>
    public static RazorComponentResult Page<T>(HttpContext context, Dictionary<string, object?> parameters, int status = StatusCodes.Status200OK)
        where T : IComponent
    {
        context.Response.Headers.CacheControl = "private, no-store";
        parameters["Caller"] = Callers.Of(context.User);
        parameters["Token"] = FormGuard.TokenOf(context.Request);
        return new RazorComponentResult(typeof(T), parameters) { StatusCode = status, PreventStreamingRendering = true };
    }

    /// <summary>A page that says why not.</summary>
    public static RazorComponentResult Refusal(HttpContext context, int status, string title, string detail) => Page<MessagePage>(
        context,
        new Dictionary<string, object?>(StringComparer.Ordinal)
        {
            ["Title"] = title,
            ["Detail"] = detail,
            ["TraceId"] = status >= StatusCodes.Status500InternalServerError ? Activity.Current?.Id ?? context.TraceIdentifier : null,
        },
        status);

    /// <summary>What to say when there is nothing but a status.</summary>
    public static async Task<IResult> ForStatusAsync(HttpContext context)
    {
        if (context.Response.StatusCode == StatusCodes.Status401Unauthorized && !Api.Refusals.IsForPrograms(context))
        {
            return await SignInPages.NeededAsync(context);
        }

        var (title, detail) = context.Response.StatusCode switch
        {
            StatusCodes.Status401Unauthorized => ("Who are you?", "Send a key: Authorization: Bearer …, or sign in."),
            StatusCodes.Status403Forbidden => ("Not allowed", "Your role does not permit this."),
            StatusCodes.Status404NotFound => ("Not found", "There is nothing here."),
            StatusCodes.Status405MethodNotAllowed => ("Not this way", "This address does not take that method."),
            StatusCodes.Status415UnsupportedMediaType => ("No plan", $"Send the plan as one of: {string.Join(", ", Api.Bodies.PlanTypes)}."),
            _ => ("Refused", "The request is not formed as it should be."),
        };
        return Api.Refusals.Answer(context, context.Response.StatusCode, title, detail);
    }
}
