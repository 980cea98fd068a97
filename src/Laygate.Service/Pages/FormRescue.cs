using Laygate.Register;
using Laygate.Service.Access;

namespace Laygate.Service.Pages;

/// <summary>What became of a form that was not taken, because the session in which its page was opened has ended.</summary>
/// <param name="To">Where its page is.</param>
/// <param name="IsKept">Whether what was written waits there for the next signing in.</param>
/// <param name="Texts">Name and text of each field that was written in, where it could not be kept.</param>
public sealed record RescuedForm(string To, bool IsKept, IReadOnlyList<(string Name, string Text)> Texts);

/// <summary>Keeps what was written in a form whose session has ended, for its page; nothing of it is done.</summary>
internal sealed class FormRescue(KeptForms kept)
{
    /// <summary>Keeps what a request brings; null where it brings no form of our own page.</summary>
    public async Task<RescuedForm?> RescueAsync(HttpContext context)
    {
        var request = context.Request;
        if (!HttpMethods.IsPost(request.Method) || !request.HasFormContentType || Border.IsOwn(request) == false)
        {
            return null;
        }

        var form = await request.ReadFormAsync(context.RequestAborted);
        var (fields, page) = (FormPages.Texts(form), FormPages.Of(request.Path, form));
        var isOurs = Border.IsOwn(request) == true || FormGuard.IsOfSession(request, form);
        var isKept = isOurs && page is not null && await kept.KeepAsync(SessionCookie.Of(request), page.Path, fields, context.RequestAborted);
        return new RescuedForm(page?.Address ?? LocalAddress.Start, isKept && fields.Count > 0, isKept ? [] : [.. fields.Where(field => FormPages.IsText(field.Key)).Select(field => (field.Key, string.Join('\n', field.Value)))]);
    }
}
