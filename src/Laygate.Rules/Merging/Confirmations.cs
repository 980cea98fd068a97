using Laygate.Engineering.Quantities;
using Laygate.Rules.Binding;
using Laygate.Rules.Definitions;

namespace Laygate.Rules.Merging;

/// <summary>Marks limits as confirmed by the checking side.</summary>
public static class Confirmations
{
    /// <summary>Whether a limit known so stands on a page that could be looked up: a judgement of ours, a derivation or a habit of the trade does not.</summary>
    /// <param name="evidence">How the limit is known.</param>
    public static bool CanBeLookedUp(Evidence evidence) => evidence is Evidence.Recalled or Evidence.SecondHand or Evidence.Read;

    /// <summary>The sources that a confirmation would mark.</summary>
    internal static IEnumerable<SourceReference> SourcesOf(CheckedBound bound, int? row) => bound.Limit is not CheckedTable table
        ? [bound.Definition.Source]
        : table.Rows.Where((_, index) => row is null || row == index + 1).Select(one => one.Source);

    /// <summary>Confirms a bound, or one row of its table.</summary>
    internal static CheckedBound Confirm(CheckedBound bound, LimitConfirmation confirm)
    {
        if (bound.Limit is not CheckedTable table)
        {
            return bound with { Definition = bound.Definition with { Source = With(bound.Definition.Source, confirm) } };
        }

        var rows = table.Rows.Select((row, index) =>
            confirm.Row is null || confirm.Row == index + 1 ? row with { Source = With(row.Source, confirm) } : row).ToList();
        var definition = bound.Definition;
        return bound with
        {
            Definition = definition with
            {
                Source = confirm.Row is null ? With(definition.Source, confirm) : definition.Source,
                Limit = definition.Limit is TableLimit limit
                    ? limit with { Rows = [.. limit.Rows.Select((row, index) => row with { Source = rows[index].Source })] }
                    : definition.Limit,
            },
            Limit = table with { Rows = rows },
        };
    }

    // In a table of mixed evidence a row that stands on no page stays what it is.
    private static SourceReference With(SourceReference source, LimitConfirmation confirm) =>
        !CanBeLookedUp(source.Evidence) ? source : source with { Evidence = Evidence.Confirmed, Confirmation = confirm.Confirmation };
}
