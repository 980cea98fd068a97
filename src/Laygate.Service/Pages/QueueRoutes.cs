using Laygate.Register;
using Laygate.Service.Access;

namespace Laygate.Service.Pages;

/// <summary>The list of submissions.</summary>
internal static class QueueRoutes
{
    public static void MapQueue(this IEndpointRouteBuilder known)
    {
        known.MapGet("", (HttpContext context, QueuePages pages, string? decided, CancellationToken cancel) =>
            pages.ShowAsync(context, QueueQuery.Of(context.Request.Query, Callers.Need(context)), decided, null, StatusCodes.Status200OK, cancel));
        known.MapPost("/keep", (HttpContext context, ReviewDesk desk, CancellationToken cancel) => desk.KeepAsync(context, null, cancel));
    }
}

/// <summary>The page of the list, put together from what the register holds.</summary>
internal sealed class QueuePages(RegisterReader reader, RegisterSettings settings, KeptForms kept, TimeProvider clock)
{
    /// <summary>The page.</summary>
    /// <param name="context">The request.</param>
    /// <param name="list">Which submissions it shows.</param>
    /// <param name="decided">Id of a submission that was just decided on; null: none.</param>
    /// <param name="returned">What became of submissions that were to be returned together; null: none were, and what was kept of an earlier time is shown.</param>
    /// <param name="status">Status of the answer.</param>
    /// <param name="cancel">Ends it.</param>
    public async Task<IResult> ShowAsync(HttpContext context, QueueQuery list, string? decided, BulkReturn? returned, int status, CancellationToken cancel)
    {
        var caller = Callers.Need(context);
        returned ??= Kept(await kept.ReadAsync(context, "/submissions", cancel));
        var queue = await reader.QueueAsync(list.Filter(caller), list.Order, list.Descending, (list.Page - 1) * QueueQuery.Size, QueueQuery.Size, caller, cancel);
        return PageResults.Page<SubmissionsPage>(
            context,
            PageRoutes.Values(
                ("Queue", queue),
                ("Listed", list),
                ("Now", clock.GetUtcNow()),
                ("Settings", settings),
                ("Returned", returned),
                ("Recorded", decided is null ? null : await reader.FindAsync(decided, caller, cancel))),
            status);
    }

    private static BulkReturn? Kept(IReadOnlyDictionary<string, string[]> fields) => fields.Count == 0 ? null
        : new BulkReturn(0, [], [.. fields.GetValueOrDefault("chosen", []).Select(one => one.Split(':')[0])], string.Join(',', fields.GetValueOrDefault("comment", [])), IsKept: true);
}
