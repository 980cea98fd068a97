using Laygate.Register;
using Laygate.Reporting.Text;
using Laygate.Service.Access;
using Laygate.Service.Api;
using Laygate.Service.Work;

namespace Laygate.Service.Pages;

/// <summary>Pages on submissions.</summary>
internal static class SubmissionRoutes
{
    public static void MapSubmissionPages(this IEndpointRouteBuilder app)
    {
        var known = app.MapGroup("/submissions").RequireAuthorization(AccessSetup.Known);
        known.MapQueue();
        known.MapGet("/{id}", ShowAsync);
        known.MapGet("/{id}/text", TextAsync);
        known.MapGet("/{id}/files/{**name}", FileAsync);
        known.MapGet("/{id}/archive", ArchiveAsync);
        known.MapStoredPages();
        known.MapRecordPages();
        known.MapComments();
        known.MapGet("/{id}/beside/{other}", BesideAsync);
        known.MapPost("/{id}/revision", ReviseAsync);
        known.MapPost("/{id}/keep", (HttpContext context, ReviewDesk desk, string id, CancellationToken cancel) => desk.KeepAsync(context, id, cancel));
        app.MapGroup("/submissions").RequireAuthorization(AccessSetup.Reviewers).MapReview();
    }

    private static async Task<IResult> ShowAsync(HttpContext context, DetailPages pages, string id, CancellationToken cancel) => await pages.ShowAsync(
        context, id, context.Request.Query.ContainsKey("sort") ? QueueQuery.Of(context.Request.Query, Callers.Need(context)) : null, null, StatusCodes.Status200OK, cancel);

    private static async Task<IResult> TextAsync(HttpContext context, RegisterReader reader, string id, CancellationToken cancel) =>
        await reader.TextAsync(id, Callers.Need(context), cancel) is { } text ? TypedResults.File(text, "application/octet-stream", "plan.yaml") : TypedResults.NotFound();

    private static async Task<IResult> FileAsync(HttpContext context, RegisterReader reader, string id, string name, CancellationToken cancel) =>
        await StoredFiles.DownloadAsync(reader, id, name, Callers.Need(context), cancel) ?? TypedResults.NotFound();

    private static async Task<IResult> ArchiveAsync(HttpContext context, RegisterReader reader, string id, CancellationToken cancel) =>
        await StoredFiles.DownloadArchiveAsync(reader, id, Callers.Need(context), cancel) ?? TypedResults.NotFound();

    // The plan has no name here: it is set beside the other plan, whatever its file is called.
    private static async Task<IReadOnlyList<(string Name, IReadOnlyList<string> Lines)>> TextsAsync(RegisterReader reader, Submission one, Caller caller, CancellationToken cancel) =>
    [
        (string.Empty, PlanLines.Of((await reader.TextAsync(one.Id, caller, cancel))!)),
        .. (await reader.FilesAsync(one.Id, caller, cancel)).Select(file => (PlainText.Show(file.Name), PlanLines.Of(file.Bytes))),
    ];

    private static async Task<IResult> BesideAsync(HttpContext context, RegisterReader reader, string id, string other, CancellationToken cancel)
    {
        var caller = Callers.Need(context);
        if (await reader.FindAsync(id, caller, cancel) is not { } one || await reader.FindAsync(other, caller, cancel) is not { } second || !string.Equals(one.Series, second.Series, StringComparison.Ordinal))
        {
            return TypedResults.NotFound();
        }

        var (left, right) = one.Revision < second.Revision ? (one, second) : (second, one);
        var texts = SideBySide.Of(await TextsAsync(reader, left, caller, cancel), await TextsAsync(reader, right, caller, cancel));
        var changes = RevisionChanges.Between(left, await reader.ReportAsync(left.Id, null, caller, cancel), await reader.ReportAsync(right.Id, null, caller, cancel));
        return PageResults.Page<BesidePage>(context, PageRoutes.Values(("Left", left), ("Right", right), ("Changes", changes), ("Files", TextParts.Of(texts))));
    }

    private static async Task<IResult> ReviseAsync(HttpContext context, SubmissionRegister register, Bell bell, DetailPages pages, KeptForms kept, string id, CancellationToken cancel)
    {
        var form = await FormGuard.ReadAsync(context.Request, cancel);
        var (secret, page, texts) = (SessionCookie.Of(context.Request), FormPages.Submission(id), FormPages.Texts(form));
        await kept.KeepAsync(secret, page, texts, cancel);
        if (!form.Files.GetFiles("file").Any(file => file.FileName.Length > 0) && form["plan"].Count == 0)
        {
            return await pages.ShowAsync(context, id, null, PageTexts.Of(form).Drafts(), StatusCodes.Status400BadRequest, cancel, "Choose the file of the revision first.");
        }

        var sent = await PageRoutes.SentAsync(form, cancel);
        var (submission, _) = await register.SubmitAsync(sent.Submission(id, null), Callers.Need(context), cancel);
        bell.Ring();
        texts.Remove("name");
        await kept.KeepAsync(secret, page, texts, cancel);
        return TypedResults.Redirect($"/submissions/{submission.Id}");
    }
}
