using System.Security.Claims;
using System.Text.Encodings.Web;
using Laygate.Register;
using Microsoft.AspNetCore.Authentication;
using Microsoft.Extensions.Options;

namespace Laygate.Service.Access;

/// <summary>Knows callers by a key in the header <c>Authorization: Bearer</c>.</summary>
internal sealed class KeyAuthentication(
    IOptionsMonitor<AuthenticationSchemeOptions> options, ILoggerFactory logger, UrlEncoder encoder, AccessKeys keys) : AuthenticationHandler<AuthenticationSchemeOptions>(options, logger, encoder)
{
    /// <summary>Name of the scheme.</summary>
    public const string Name = "Key";

    private const string Bearer = "Bearer ";

    /// <summary>The key of a request as it was sent; null when there is none.</summary>
    public static string? SecretOf(HttpRequest request)
    {
        var header = request.Headers.Authorization.ToString();
        return header.StartsWith(Bearer, StringComparison.OrdinalIgnoreCase) ? header[Bearer.Length..].Trim() : null;
    }

    protected override async Task<AuthenticateResult> HandleAuthenticateAsync()
    {
        if (SecretOf(Request) is not { Length: > 0 } secret)
        {
            return AuthenticateResult.NoResult();
        }

        return await keys.FindAsync(secret, Context.RequestAborted) is { } caller
            ? AuthenticateResult.Success(new AuthenticationTicket(Callers.Principal(caller, Name), Name))
            : AuthenticateResult.Fail("The key is not known here, has ended or was revoked.");
    }

    protected override Task HandleChallengeAsync(AuthenticationProperties properties)
    {
        Response.Headers.WWWAuthenticate = "Bearer";
        Response.StatusCode = StatusCodes.Status401Unauthorized;
        return Task.CompletedTask;
    }
}

/// <summary>Callers as claims and back.</summary>
internal static class Callers
{
    /// <summary>A caller as claims.</summary>
    public static ClaimsPrincipal Principal(Caller caller, string scheme) => new(new ClaimsIdentity(
        [
            new System.Security.Claims.Claim(ClaimTypes.NameIdentifier, caller.Id),
            new System.Security.Claims.Claim(ClaimTypes.Name, caller.Name),
            new System.Security.Claims.Claim(ClaimTypes.Role, caller.Role.ToString()),
        ],
        scheme));

    /// <summary>The role that a word names; null when it names none. A number names none.</summary>
    public static Role? RoleOf(string? word) => Enum.GetValues<Role>().Where(role => string.Equals(role.ToString(), word, StringComparison.OrdinalIgnoreCase)).Select(role => (Role?)role).FirstOrDefault();

    /// <summary>Who sends a request; null when nobody is known.</summary>
    public static Caller? Of(ClaimsPrincipal? user) =>
        user?.Identity?.IsAuthenticated == true
        && user.FindFirstValue(ClaimTypes.NameIdentifier) is { Length: > 0 } id
        && Enum.TryParse<Role>(user.FindFirstValue(ClaimTypes.Role), out var role)
            ? new Caller(id, user.FindFirstValue(ClaimTypes.Name) ?? id, role)
            : null;

    /// <summary>Who sends a request that only a known caller may send.</summary>
    /// <exception cref="BadHttpRequestException">Nobody is known.</exception>
    public static Caller Need(HttpContext context) =>
        Of(context.User) ?? throw new BadHttpRequestException("Send a key: Authorization: Bearer …", StatusCodes.Status401Unauthorized);
}
