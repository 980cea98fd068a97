using System.Security.Cryptography;
using System.Text;
using Laygate.Register;
using Laygate.Service.Access;

namespace Laygate.Service.Pages;

#pragma warning disable CA1032, CA1064 // It leads to a page and carries nothing.
/// <summary>A form of our own page that was opened in an earlier session: nothing of it is done, and what was written in it is kept.</summary>
internal sealed class EarlierFormException : Exception;
#pragma warning restore CA1032, CA1064

/// <summary>
/// Keeps other sites from sending our forms. Each form carries a value that only who holds the key of the session can compute, so
/// that replicas need no common secret; and a browser that says that a form comes from elsewhere is believed.
/// </summary>
internal static class FormGuard
{
    /// <summary>The value for the forms of this session; null without one.</summary>
    public static string? TokenOf(HttpRequest request) => SessionCookie.Of(request) is { } secret
        ? Convert.ToHexStringLower(HMACSHA256.HashData(Encoding.UTF8.GetBytes(secret), "laygate form"u8))
        : null;

    /// <summary>Whether a form carries the value of this session.</summary>
    public static bool IsOfSession(HttpRequest request, IFormCollection form) =>
        TokenOf(request) is { } token && CryptographicOperations.FixedTimeEquals(Encoding.UTF8.GetBytes(token), Encoding.UTF8.GetBytes(form["token"].ToString()));

    /// <summary>Reads a form that comes from our own page.</summary>
    /// <exception cref="BadHttpRequestException">It does not, or it is no form.</exception>
    /// <exception cref="EarlierFormException">It comes from our own page, as the browser says, though from one of an earlier session.</exception>
    public static async Task<IFormCollection> ReadAsync(HttpRequest request, CancellationToken cancel, bool withToken = true)
    {
        if (Border.IsOwn(request) == false || !request.HasFormContentType)
        {
            throw new BadHttpRequestException("This form does not come from a page of this service. Open the page again and send the form from there.");
        }

        var form = await request.ReadFormAsync(cancel);
        if (withToken && SessionCookie.Of(request) is not null && !IsOfSession(request, form))
        {
            throw Border.IsOwn(request) == true ? new EarlierFormException() : new BadHttpRequestException("This form is from another session. Open the page again and send the form from there.");
        }

        // The plan is judged by its reader, a comment by the register, whose refusal is answered in the form; whatever else stands in a form is one line.
        return form.All(field => field.Key is "plan" or "comment" || field.Key.StartsWith(PageTexts.Said, StringComparison.Ordinal) || (CallerText.IsLine(field.Key) && field.Value.All(value => CallerText.IsLine(value ?? string.Empty))))
            ? form
            : throw new BadHttpRequestException("A field of the form holds control characters. Take them out.");
    }
}
