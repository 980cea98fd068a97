using System.Security.Claims;
using System.Text.Encodings.Web;
using Laygate.Register;
using Microsoft.AspNetCore.Authentication;
using Microsoft.Extensions.Options;

namespace Laygate.Service.Access;

/// <summary>Knows callers by the session that their browser carries, opens one when somebody signs in, and ends it.</summary>
internal sealed class SessionAuthentication(
    IOptionsMonitor<AuthenticationSchemeOptions> options, ILoggerFactory logger, UrlEncoder encoder, Sessions sessions) : SignInAuthenticationHandler<AuthenticationSchemeOptions>(options, logger, encoder)
{
    /// <summary>Name of the scheme.</summary>
    public const string Name = "Session";

    /// <summary>Under which name a signing in carries what the provider wants to see at its own end.</summary>
    public const string Hint = ".laygate.hint";

    /// <summary>Under which name a request carries what its signing out has ended.</summary>
    public static readonly object Ended = new();

    protected override async Task<AuthenticateResult> HandleAuthenticateAsync()
    {
        if (SessionCookie.Of(Request) is not { } secret)
        {
            return AuthenticateResult.NoResult();
        }

        return await sessions.FindAsync(secret, Context.RequestAborted) is { } session
            ? AuthenticateResult.Success(new AuthenticationTicket(Callers.Principal(session.Caller, Name), Name))
            : AuthenticateResult.Fail("The session has ended.");
    }

    protected override async Task HandleSignInAsync(ClaimsPrincipal user, AuthenticationProperties? properties)
    {
        var caller = Callers.Of(user) ?? throw new InvalidOperationException("Nobody signs in.");
        var byKey = string.Equals(user.Identity?.AuthenticationType, KeyAuthentication.Name, StringComparison.Ordinal);
        var secret = await sessions.OpenAsync(caller, byKey, properties?.GetString(Hint), SessionCookie.Of(Request), Context.RequestAborted);
        SessionCookie.Set(Context, secret);
        Log.SignedIn(Logger, caller.Id, byKey ? "a key" : "the provider");
    }

    protected override async Task HandleSignOutAsync(AuthenticationProperties? properties)
    {
        if (SessionCookie.Of(Request) is { } secret)
        {
            Context.Items[Ended] = await sessions.EndAsync(secret, Context.RequestAborted);
            SessionCookie.Delete(Context);
        }
    }

    protected override Task HandleChallengeAsync(AuthenticationProperties properties)
    {
        Response.Headers.WWWAuthenticate = "Bearer";
        Response.StatusCode = StatusCodes.Status401Unauthorized;
        return Task.CompletedTask;
    }
}
