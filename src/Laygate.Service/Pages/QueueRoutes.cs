using Laygate.Register;
using Laygate.Service.Access;

namespace Laygate.Service.Pages;

/// <summary>The list of submissions.</summary>
internal static class QueueRoutes
{
    public static void MapQueue(this IEndpointRouteBuilder known) => known.MapGet("", (HttpContext context, QueuePages pages, string? decided, CancellationToken cancel) =>
        pages.ShowAsync(context, QueueQuery.Of(context.Request.Query, Callers.Need(context)), decided, null, StatusCodes.Status200OK, cancel));
}

/// <summary>The page of the list, put together from what the register holds.</summary>
internal sealed class QueuePages(RegisterReader reader, RegisterSettings settings, TimeProvider clock)
{
    /// <summary>The page.</summary>
    /// <param name="context">The request.</param>
    /// <param name="list">Which submissions it shows.</param>
    /// <param name="decided">Id of a submission that was just decided on; null: none.</param>
    /// <param name="returned">What became of submissions that were to be returned together; null: none were.</param>
    /// <param name="status">Status of the answer.</param>
    /// <param name="cancel">Ends it.</param>
    public async Task<IResult> ShowAsync(HttpContext context, QueueQuery list, string? decided, BulkReturn? returned, int status, CancellationToken cancel)
    {
        var caller = Callers.Need(context);
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
}
