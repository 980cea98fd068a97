using Laygate.Register;
using Laygate.Service.Access;
using Laygate.Service.Administration;

namespace Laygate.Service.Pages;

/// <summary>The page for administrators, put together from what the register holds, and the end of sessions.</summary>
internal sealed class AdministrationDesk(AccessKeys keys, Sessions sessions, PreviewDesk previews, OutgoingNotices notices, KeptForms kept, ILogger<Telemetry> log)
{
    private const string Path = "/administration";

    /// <summary>The page.</summary>
    /// <param name="context">The request.</param>
    /// <param name="draft">A key as it was asked for.</param>
    /// <param name="status">Status of the answer.</param>
    /// <param name="cancel">Ends it.</param>
    public async Task<IResult> ShowAsync(HttpContext context, KeyDraft draft, int status, CancellationToken cancel) => PageResults.Page<AdministrationPage>(
        context,
        PageRoutes.Values(("Keys", await keys.ListAsync(cancel)), ("Sessions", await sessions.ListAsync(cancel)), ("Outdated", await previews.CountAsync(cancel)), ("GivenUp", (await notices.FailedAsync(cancel)).Count), ("Draft", draft)),
        status);

    /// <summary>The key that was asked for before and not issued.</summary>
    public async Task<KeyDraft> KeptAsync(HttpContext context, CancellationToken cancel)
    {
        var fields = await kept.ReadAsync(context, Path, cancel);
        return new KeyDraft { Name = fields.GetValueOrDefault("name")?[0], Role = fields.GetValueOrDefault("role")?[0], Ends = fields.GetValueOrDefault("ends")?[0] };
    }

    /// <summary>Keeps what was written on the page; null: nothing any more.</summary>
    public Task KeepAsync(HttpContext context, IFormCollection? form, CancellationToken cancel) => kept.KeepAsync(context, Path, form, cancel);

    /// <summary>Ends a session, or all of its owner.</summary>
    public async Task<IResult> EndAsync(HttpContext context, string id, bool ofPerson, CancellationToken cancel)
    {
        await KeepAsync(context, await FormGuard.ReadAsync(context.Request, cancel), cancel);
        var ended = await sessions.EndAsync(id, ofPerson, cancel);
        Log.SessionsEnded(log, Callers.Need(context).Id, ended, id, ofPerson);
        return TypedResults.LocalRedirect(Path);
    }
}
