using Laygate.Register;
using Laygate.Service.Access;

namespace Laygate.Service.Pages;

/// <summary>A page with forms.</summary>
/// <param name="Path">Its path.</param>
/// <param name="Address">The path with its query.</param>
internal sealed record FormPage(string Path, string Address);

/// <summary>On which page a form stands, and what in it somebody has written.</summary>
internal static class FormPages
{
    // What a form says of itself; with the name of a button goes what was pressed. A secret is not kept either.
    private static readonly string[] Own = ["token", "list", "version", "seen", "at", "back", "verdict", "do", "key", "to", "secret"];

    // What is chosen or carried along; it is kept where somebody has written something beside it.
    private static readonly string[] Chosen = ["role", "language", "rules", "outlook", "kept-name", "event", "texts"];

    /// <summary>The page of a form that was sent to a path; null where it is none of those whose text is kept.</summary>
    public static FormPage? Of(PathString path, IFormCollection form) => path.Value?.Split('/', StringSplitOptions.RemoveEmptyEntries) switch
    {
        ["check"] => new FormPage("/", "/"),
        ["screenings"] => new FormPage("/screenings", "/screenings"),
        ["notices", ..] => new FormPage("/notices", "/notices"),
        ["administration", "notices", ..] => new FormPage("/administration/notices", "/administration/notices"),
        ["administration", "keys" or "sessions", ..] => new FormPage("/administration", "/administration"),
        ["administration", "retention", var id] => new FormPage(RetentionRoutes.Page(id), RetentionRoutes.Page(id)),
        ["submissions", "return" or "keep"] => Listed("/submissions", form),
        ["submissions", _, _] when form["back"] == "list" => Listed("/submissions", form),
        ["submissions", var id, _] => Listed(Submission(id), form),
        _ => null,
    };

    /// <summary>The path of the page of a submission.</summary>
    public static string Submission(string id) => "/submissions/" + Uri.EscapeDataString(id);

    /// <summary>The fields with what somebody has written; none where nobody has written anything.</summary>
    public static Dictionary<string, string[]> Texts(IFormCollection form)
    {
        var fields = form.Where(field => !Own.Contains(field.Key, StringComparer.Ordinal) && !field.Key.StartsWith(PageTexts.Open, StringComparison.Ordinal))
            .Select(field => (field.Key, Values: field.Value.OfType<string>().Where(value => value.Length > 0).ToArray())).Where(field => field.Values.Length > 0)
            .ToDictionary(field => field.Key, field => field.Values, StringComparer.Ordinal);
        return fields.Keys.Any(IsText) ? fields : [];
    }

    /// <summary>Keeps what is written on a page for the session of a request; without a form nothing is kept of it any more.</summary>
    public static Task KeepAsync(this KeptForms kept, HttpContext context, string page, IFormCollection? form, CancellationToken cancel) =>
        kept.KeepAsync(SessionCookie.Of(context.Request), page, form is null ? [] : Texts(form), cancel);

    /// <summary>What is kept of a page for the session of a request.</summary>
    public static Task<IReadOnlyDictionary<string, string[]>> ReadAsync(this KeptForms kept, HttpContext context, string page, CancellationToken cancel) =>
        kept.ReadAsync(SessionCookie.Of(context.Request), page, cancel);

    /// <summary>Whether somebody writes in the field of this name.</summary>
    public static bool IsText(string name) => !Chosen.Contains(name, StringComparer.Ordinal);

    private static FormPage Listed(string path, IFormCollection form) =>
        new(path, form["list"].ToString() is { Length: > 0 } list && list[0] == '?' && LocalAddress.Of(path + list) is var whole && whole.Length > 1 ? whole : path);
}
