using Laygate.Register;
using Laygate.Service.Access;
using Laygate.Service.Settings;
using Microsoft.AspNetCore.Authentication;
using Microsoft.Extensions.Options;

namespace Laygate.Service.Pages;

/// <summary>Signing in, with a key or at a provider, and out.</summary>
internal static class SignInRoutes
{
    public static void MapSignIn(this IEndpointRouteBuilder app)
    {
        app.MapGet("/sign-in", (HttpContext context, string? to, bool? left) => SignInPages.Form(context, LocalAddress.Of(to), StatusCodes.Status200OK, left: left == true));
        app.MapPost("/sign-in", ByKeyAsync);
        app.MapGet("/sign-in/provider", AtProviderAsync);

        // With a provider its handler answers here before any route does.
        app.MapGet(ProviderSignIn.Back, () => TypedResults.NotFound());
        app.MapGet(ProviderSignIn.Left, () => TypedResults.NotFound());
        app.MapPost("/sign-out", OutAsync);
    }

    private static async Task<IResult> ByKeyAsync(HttpContext context, AccessKeys keys, CancellationToken cancel)
    {
        // The cookie of an earlier session does not count here.
        var form = await FormGuard.ReadAsync(context.Request, cancel, withToken: false);
        var to = LocalAddress.Of(form["to"]);
        if (await keys.FindAsync(form["key"].ToString().Trim(), cancel) is not { } caller)
        {
            return SignInPages.Form(context, to, StatusCodes.Status401Unauthorized, wrong: true);
        }

        await context.SignInAsync(SessionAuthentication.Name, Callers.Principal(caller, KeyAuthentication.Name));
        return TypedResults.LocalRedirect(to);
    }

    private static async Task<IResult> AtProviderAsync(HttpContext context, IOptions<ServiceSettings> settings, ILogger<Telemetry> log, string? to, bool? anew)
    {
        if (settings.Value.ClientId.Length == 0)
        {
            return TypedResults.NotFound();
        }

        try
        {
            await context.ChallengeAsync(ProviderSignIn.Name, ProviderSignIn.Way(to, anew == true));
            return TypedResults.Empty;
        }
        catch (Exception error) when (!context.Response.HasStarted && !RegisterDatabase.IsOfDatabase(error) && !context.RequestAborted.IsCancellationRequested)
        {
            // Where it sends people to stands in a document of the provider.
            Log.SignInFailed(log, SignInFault.Unreachable.Reason, error.GetType().Name);
            return SignInPages.Fault(context, SignInFault.Unreachable, LocalAddress.Of(to));
        }
    }

    private static async Task<IResult> OutAsync(HttpContext context, IOptions<ServiceSettings> settings, ILogger<Telemetry> log, CancellationToken cancel)
    {
        _ = await FormGuard.ReadAsync(context.Request, cancel);
        await context.SignOutAsync(SessionAuthentication.Name);
        if (context.Items[SessionAuthentication.Ended] is not EndedSession { ByKey: false } ended || settings.Value.ClientId.Length == 0)
        {
            return TypedResults.LocalRedirect(LocalAddress.Start);
        }

        try
        {
            var way = new AuthenticationProperties();
            way.SetString(SessionAuthentication.Hint, ended.Hint);
            await context.SignOutAsync(ProviderSignIn.Name, way);
        }
        catch (Exception error) when (!context.Response.HasStarted && !cancel.IsCancellationRequested)
        {
            // Here it has ended all the same.
            Log.SignInFailed(log, SignInFault.Unreachable.Reason, error.GetType().Name);
        }

        return SignInPages.Left(context, context.Items[ProviderSignIn.EndAddress] as string);
    }
}
