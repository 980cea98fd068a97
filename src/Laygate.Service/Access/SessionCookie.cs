namespace Laygate.Service.Access;

/// <summary>
/// The cookie of a session: a random secret and nothing else. Over TLS its name has the prefix with which browsers hold it to this very host (RFC 6265bis, 4.1.3.2).
/// It goes along when a link from elsewhere is followed (SameSite=Lax), so that a link in a mail opens what it names; whatever changes something is a form of our own.
/// </summary>
internal static class SessionCookie
{
    /// <summary>Its name without TLS.</summary>
    public const string Plain = "laygate";

    private const string HostOnly = "__Host-" + Plain;

    /// <summary>The secret that a request carries; null: none.</summary>
    public static string? Of(HttpRequest request) => request.Cookies[Name(request)] is { Length: > 0 } secret ? secret : null;

    public static void Set(HttpContext context, string secret) => context.Response.Cookies.Append(Name(context.Request), secret, Options(context.Request));

    public static void Delete(HttpContext context) => context.Response.Cookies.Delete(Name(context.Request), Options(context.Request));

    private static string Name(HttpRequest request) => request.IsHttps ? HostOnly : Plain;

    private static CookieOptions Options(HttpRequest request) => new() { HttpOnly = true, SameSite = SameSiteMode.Lax, Secure = request.IsHttps, Path = "/" };
}
