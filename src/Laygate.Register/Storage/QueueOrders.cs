namespace Laygate.Register.Storage;

/// <summary>Sorts a queue alike on both databases: what is not known comes last either way, and what is equal stands in the order of receipt.</summary>
internal static class QueueOrders
{
#pragma warning disable CA1304, CA1311, MA0011 // Translated to SQL, which has no culture.
    public static IQueryable<SubmissionRow> Sorted(IQueryable<SubmissionRow> rows, QueueOrder order, bool descending)
    {
        // The databases do not agree on where nothing stands in an order, nor on letter case.
        var sorted = order switch
        {
            QueueOrder.Shift => By(rows.OrderBy(row => row.ShiftDate == null), row => row.ShiftDate, descending),
            QueueOrder.Age => By(rows.OrderBy(row => 0), row => row.ReceivedAt, descending),
            QueueOrder.Worst => By(rows.OrderBy(row => row.WorstRank == null), row => row.WorstRank, descending),
            QueueOrder.Contract => By(rows.OrderBy(row => row.Contract == null), row => row.Contract!.ToLower(), descending),
            QueueOrder.Stage => By(rows.OrderBy(row => row.Stage == null), row => row.Stage, descending),
            QueueOrder.Plan => By(rows.OrderBy(row => row.PlanTitle == null), row => row.PlanTitle!.ToLower(), descending),
            QueueOrder.Revision => By(rows.OrderBy(row => 0), row => row.Revision, descending),
            QueueOrder.Assignee => By(rows.OrderBy(row => row.Assignee != null), row => row.AssigneeName, descending),
            _ => By(rows.OrderBy(row => 0), row => row.State, descending),
        };
        return sorted.ThenBy(row => row.Number);
    }
#pragma warning restore CA1304, CA1311, MA0011

    private static IOrderedQueryable<SubmissionRow> By<T>(IOrderedQueryable<SubmissionRow> rows, System.Linq.Expressions.Expression<Func<SubmissionRow, T>> key, bool descending) =>
        descending ? rows.ThenByDescending(key) : rows.ThenBy(key);
}
