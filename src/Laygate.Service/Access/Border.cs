using Laygate.Register;

namespace Laygate.Service.Access;

/// <summary>
/// What stands before every request. A cookie is sent by the browser whoever asked it to, so an unsafe request to the interface that
/// rests on one must come from a page of our own; and no request carries control characters where a name or a line belongs.
/// </summary>
internal static class Border
{
    private static readonly string[] Forms = ["text/plain", "application/x-www-form-urlencoded", "multipart/form-data"];

    /// <summary>Whether a browser says that a request comes from a page of this service; null when it says nothing.</summary>
    public static bool? IsOwn(HttpRequest request)
    {
        var site = request.Headers["Sec-Fetch-Site"].ToString();
        var origin = request.Headers.Origin.ToString();
        return site.Length > 0 ? (site is "none" ? null : site is "same-origin")
            : origin.Length > 0 ? Uri.TryCreate(origin, UriKind.Absolute, out var uri) && string.Equals(uri.Authority, request.Host.Value, StringComparison.OrdinalIgnoreCase)
            : null;
    }

    /// <summary>Refuses unsafe requests to the interface that rest on a cookie and do not come from a page of this service.</summary>
    /// <exception cref="BadHttpRequestException">It is one.</exception>
    public static Task Cookies(HttpContext context, RequestDelegate next)
    {
        var request = context.Request;
        if (!request.Path.StartsWithSegments("/api", StringComparison.OrdinalIgnoreCase) || IsSafe(request.Method)
            || request.Headers.Authorization.Count > 0 || SessionCookie.Of(request) is null)
        {
            return next(context);
        }

        if (IsOwn(request) != true)
        {
            throw new BadHttpRequestException("A cookie is taken here only from a page of this service. Send the key in the header instead: Authorization: Bearer …", StatusCodes.Status403Forbidden);
        }

        // What a form can send needs no leave of the browser: only what a script of our own must have set is taken.
        return !HttpMethods.IsDelete(request.Method) && (request.ContentType is not { Length: > 0 } type || Forms.Contains(type.Split(';')[0].Trim(), StringComparer.OrdinalIgnoreCase))
            ? throw new BadHttpRequestException("With a cookie, send the body as application/yaml or application/json. With a key in the header text/plain is taken, too.", StatusCodes.Status415UnsupportedMediaType)
            : next(context);
    }

    /// <summary>Refuses control characters in the path, the query and the cookie.</summary>
    /// <exception cref="BadHttpRequestException">There are some.</exception>
    public static Task Texts(HttpContext context, RequestDelegate next)
    {
        var request = context.Request;
        return CallerText.IsLine(request.Path.Value ?? string.Empty)
            && request.Query.All(pair => CallerText.IsLine(pair.Key) && pair.Value.All(value => CallerText.IsLine(value ?? string.Empty)))
            && CallerText.IsLine(SessionCookie.Of(request) ?? string.Empty)
            ? next(context)
            : throw new BadHttpRequestException("The address, its query or the cookie holds control characters. Take them out.");
    }

    /// <summary>
    /// Takes the word of the proxy that its caller speaks TLS: a cookie is then marked Secure, and a provider leads back there. Who says so without a proxy harms only its own
    /// session.
    /// </summary>
    public static Task Scheme(HttpContext context, RequestDelegate next)
    {
        var request = context.Request;
        if (!request.IsHttps && string.Equals(request.Headers["X-Forwarded-Proto"].ToString().Split(',')[0].Trim(), Uri.UriSchemeHttps, StringComparison.OrdinalIgnoreCase))
        {
            request.Scheme = Uri.UriSchemeHttps;
        }

        return next(context);
    }

    private static bool IsSafe(string method) => HttpMethods.IsGet(method) || HttpMethods.IsHead(method) || HttpMethods.IsOptions(method) || HttpMethods.IsTrace(method);
}
