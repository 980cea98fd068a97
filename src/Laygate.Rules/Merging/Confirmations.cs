using Laygate.Engineering.Quantities;
using Laygate.Rules.Binding;
using Laygate.Rules.Definitions;

namespace Laygate.Rules.Merging;

/// <summary>Marks limits as confirmed by the checking side.</summary>
internal static class Confirmations
{
    /// <summary>Confirms a bound, or one row of its table.</summary>
    public static CheckedBound Confirm(CheckedBound bound, LimitConfirmation confirm)
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

    private static SourceReference With(SourceReference source, LimitConfirmation confirm) =>
        source with { Evidence = Evidence.Confirmed, Confirmation = confirm.Confirmation };
}
