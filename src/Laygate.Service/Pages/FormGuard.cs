using System.Security.Cryptography;
using System.Text;
using Laygate.Register;
using Laygate.Service.Access;

namespace Laygate.Service.Pages;

/// <summary>
/// Keeps other sites from sending our forms. Each form carries a value that only who holds the key of the session can compute, so
/// that replicas need no common secret; and a browser that says that a form comes from elsewhere is believed.
/// </summary>
internal static class FormGuard
{
    /// <summary>The value for the forms of this session; null without one.</summary>
    public static string? TokenOf(HttpRequest request) => request.Cookies[KeyAuthentication.Cookie] is { Length: > 0 } secret
        ? Convert.ToHexStringLower(HMACSHA256.HashData(Encoding.UTF8.GetBytes(secret), "laygate form"u8))
        : null;

    /// <summary>Reads a form that comes from our own page.</summary>
    /// <exception cref="BadHttpRequestException">It does not, or it is no form.</exception>
    public static async Task<IFormCollection> ReadAsync(HttpRequest request, CancellationToken cancel, bool withToken = true)
    {
        if (Border.IsOwn(request) == false || !request.HasFormContentType)
        {
            throw new BadHttpRequestException("This form does not come from a page of this service. Open the page again and send the form from there.");
        }

        var form = await request.ReadFormAsync(cancel);
        if (withToken && TokenOf(request) is { } token && !CryptographicOperations.FixedTimeEquals(Encoding.UTF8.GetBytes(token), Encoding.UTF8.GetBytes(form["token"].ToString())))
        {
            throw new BadHttpRequestException("This form is from another session. Open the page again and send the form from there.");
        }

        // The plan is judged by its reader, a comment by the register, whose refusal is answered in the form; whatever else stands in a form is one line.
        return form.All(field => field.Key is "plan" or "comment" || (CallerText.IsLine(field.Key) && field.Value.All(value => CallerText.IsLine(value ?? string.Empty))))
            ? form
            : throw new BadHttpRequestException("A field of the form holds control characters. Take them out.");
    }
}
