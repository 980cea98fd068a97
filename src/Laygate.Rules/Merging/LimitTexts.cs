using System.Globalization;
using Laygate.Rules.Definitions;

namespace Laygate.Rules.Merging;

/// <summary>Limits and rows of tables as text, always the same for the same definition: in the merged book, in confirmations and on pages.</summary>
public static class LimitTexts
{
    /// <summary>The limit of a bound, or of one row of its table.</summary>
    /// <param name="bound">The bound.</param>
    /// <param name="row">Row from 1; null for the bound as a whole.</param>
    /// <returns>The text; null for a table as a whole, which has no single limit.</returns>
    public static string? Of(Bound bound, int? row) => bound.Limit switch
    {
        TableLimit table => row is { } number ? Ends(table.Rows[number - 1].Low, table.Rows[number - 1].High, bound.LowExclusive, bound.HighExclusive) : null,
        ConstantLimit constant => Ends(constant.Low, constant.High, bound.LowExclusive, bound.HighExclusive),
        QuantityLimit quantity => $"{quantity.Quantity} times {quantity.Factor.ToString("R", CultureInfo.InvariantCulture)}",
        WordsLimit words => string.Join(" or ", words.Words),
        PresenceLimit { Entries.Count: > 0 } presence => Entries(presence),
        _ => "stated",
    };

    /// <summary>The entries that a list must have, with the keys that are asked of each beside those that every entry needs.</summary>
    public static string Entries(PresenceLimit limit) => string.Join("; ", limit.Entries.Select(line =>
        string.Join(" or ", line.AnyOf) + (line.Asks.Count > 0 ? $" (with {string.Join(", ", line.Asks)})" : string.Empty)));

    /// <summary>The ends of a limit: <c>at least 30 mm and at most 60 mm</c>.</summary>
    public static string Ends(LimitValue? low, LimitValue? high, bool lowExclusive, bool highExclusive) =>
        string.Join(" and ", new[]
        {
            low is null ? null : $"{(lowExclusive ? "above" : "at least")} {low.Text}",
            high is null ? null : $"{(highExclusive ? "below" : "at most")} {high.Text}",
        }.Where(end => end is not null));

    /// <summary>What a condition or one key of a row asks: words divided by <c>|</c>, a half-open band, or <c>any</c>.</summary>
    public static string Match(IReadOnlyList<string>? words, LimitValue? atLeast, LimitValue? below) =>
        words is null ? Ends(atLeast, below, lowExclusive: false, highExclusive: true) : string.Join("|", words);

    /// <summary>The key of a row: what it asks of each key of its table, divided by commas.</summary>
    public static string RowKey(TableRow row) =>
        string.Join(", ", row.Matches.Select(match => match.Any ? "any" : Match(match.Words, match.AtLeast, match.Below)));

    /// <summary>The row of a table that has a key, from 1; null when there is none, or the limit is no table.</summary>
    public static int? RowOf(Limit limit, string key)
    {
        var rows = (limit as TableLimit)?.Rows ?? [];
        for (var index = 0; index < rows.Count; index++)
        {
            if (string.Equals(RowKey(rows[index]), key, StringComparison.Ordinal))
            {
                return index + 1;
            }
        }

        return null;
    }
}
