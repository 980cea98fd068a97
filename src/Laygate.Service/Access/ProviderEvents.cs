using Laygate.Service.Pages;
using Laygate.Service.Settings;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authentication.OpenIdConnect;

namespace Laygate.Service.Access;

/// <summary>What the service adds to the way through a provider: who somebody is here, and a page for each way in which it can fail.</summary>
internal static class ProviderEvents
{
    public static OpenIdConnectEvents Make(ServiceSettings settings) => new()
    {
        OnRedirectToIdentityProvider = context =>
        {
            if (ProviderSignIn.IsAnew(context.Properties))
            {
                context.ProtocolMessage.Prompt = "login";
            }

            return Task.CompletedTask;
        },
        OnTokenValidated = context =>
        {
            // By OpenID Connect RP-Initiated Logout 1.0, 2, the provider wants it back at the end.
            context.Properties?.SetString(SessionAuthentication.Hint, context.TokenEndpointResponse?.IdToken);
            return Task.CompletedTask;
        },
        OnTicketReceived = context => AdmitAsync(context, settings),
        OnAccessDenied = context => RefuseAsync(context, context.Properties?.RedirectUri, SignInFault.Denied, null),
        OnRemoteFailure = context => RefuseAsync(context, context.Properties?.RedirectUri, SignInFault.Of(context.Failure), context.Failure),
        OnRedirectToIdentityProviderForSignOut = context =>
        {
            // Of a form a browser follows no redirect to another site that the policy of the page does not name; the page after it leads there.
            context.ProtocolMessage.IdTokenHint = context.Properties.GetString(SessionAuthentication.Hint);
            context.HttpContext.Items[ProviderSignIn.EndAddress] = context.ProtocolMessage.IssuerAddress.Length > 0 ? context.ProtocolMessage.CreateLogoutRequestUrl() : null;
            context.HandleResponse();
            return Task.CompletedTask;
        },
        OnSignedOutCallbackRedirect = context =>
        {
            context.Response.Redirect("/sign-in?left=true");
            context.HandleResponse();
            return Task.CompletedTask;
        },
    };

    private static async Task AdmitAsync(TicketReceivedContext context, ServiceSettings settings)
    {
        context.ReturnUri = LocalAddress.Of(context.ReturnUri);
        if (ProviderCallers.Of(context.Principal!, settings) is { } caller)
        {
            context.Principal = Callers.Principal(caller, ProviderSignIn.Name);
            return;
        }

        await RefuseAsync(context, context.ReturnUri, ProviderCallers.Subject(context.Principal!) is null ? SignInFault.NoSubject : SignInFault.NoRole, null);
    }

    private static async Task RefuseAsync(HandleRequestContext<RemoteAuthenticationOptions> context, string? to, SignInFault fault, Exception? error)
    {
        Log.SignInFailed(context.HttpContext.RequestServices.GetRequiredService<ILogger<Telemetry>>(), fault.Reason, error?.GetType().Name ?? "none");
        await SignInPages.Fault(context.HttpContext, fault, LocalAddress.Of(to)).ExecuteAsync(context.HttpContext);
        context.HandleResponse();
    }
}
