using Laygate.Engineering.Quantities;
using Laygate.Rules.Definitions;
using Laygate.Rules.Evaluation;

namespace Laygate.Rules.Binding;

/// <summary>Checks a table: keys, matches, ends, sources, and that no two rows claim the same values with different limits.</summary>
internal sealed class TableChecker(RuleDefinition rule, CheckContext context, Func<TableRow, BookPlace, CheckedRange?> range)
{
    /// <summary>Checks a table; gives null when it cannot be used.</summary>
    public CheckedTable? Check(TableLimit table, Bound bound, BookPlace place)
    {
        if (table.Keys.Count == 0 || table.Rows.Count == 0)
        {
            context.Problems.Add(place, new BookMistake.EmptyTable());
            return null;
        }

        var keys = table.Keys.Select((key, index) => context.Quantity(key, rule.AppliesTo, place.In("by", index))).ToList();
        if (keys.Any(key => key is null))
        {
            return null;
        }

        var before = context.Problems.Count;
        var rows = table.Rows.Select((row, index) => Row(row, [.. keys.Select(key => key!)], bound, place.In("rows", index))).ToList();
        if (context.Problems.Count > before)
        {
            return null;
        }

        var sound = rows.Select(row => row!).ToList();
        ReportOverlaps(sound, place);
        return new CheckedTable([.. keys.Select(key => key!)], sound);
    }

    private CheckedRow? Row(TableRow row, IReadOnlyList<QuantityDefinition> keys, Bound bound, BookPlace place)
    {
        if (row.Matches.Count != keys.Count)
        {
            context.Problems.Add(
                place.In("match"), new BookMistake.WrongNumberOfMatches(row.Matches.Count, keys.Count));
            return null;
        }

        if (row.Source is not null)
        {
            context.Source(row.Source, place.In("source"));
        }

        var matches = row.Matches.Select((match, index) => MatchChecker.Row(match, keys[index], place.In("match", index), context)).ToList();
        var ends = range(row, place);
        return ends is null || matches.Any(match => match is null)
            ? null
            : new CheckedRow([.. matches.Select(match => match!)], ends, row.Source ?? bound.Source);
    }

    private void ReportOverlaps(List<CheckedRow> rows, BookPlace place)
    {
        for (var later = 1; later < rows.Count; later++)
        {
            for (var earlier = 0; earlier < later; earlier++)
            {
                if (Overlap(rows[earlier], rows[later]) && !SameLimit(rows[earlier].Range, rows[later].Range))
                {
                    context.Problems.Add(
                        place.In("rows", later), new BookMistake.RowsOverlap(earlier + 1, later + 1));
                }
            }
        }
    }

    // Rows of different periods of validity never speak on the same day.
    private static bool Overlap(CheckedRow one, CheckedRow other) =>
        SharePeriod(one.Source, other.Source) && one.Matches.Zip(other.Matches).All(pair => Meet(pair.First, pair.Second));

    private static bool SharePeriod(SourceReference one, SourceReference other) =>
        (one.ValidFrom ?? DateOnly.MinValue) <= (other.ValidTo ?? DateOnly.MaxValue)
        && (other.ValidFrom ?? DateOnly.MinValue) <= (one.ValidTo ?? DateOnly.MaxValue);

    private static bool Meet(CheckedMatch one, CheckedMatch other)
    {
        if (one.Any || other.Any)
        {
            return true;
        }

        if (one.Words is not null && other.Words is not null)
        {
            return one.Words.Intersect(other.Words, StringComparer.Ordinal).Any();
        }

        var dimension = one.Quantity.Dimension;
        return LimitComparison.MeetsHigh(Low(one), High(other), exclusive: true, dimension)
            && LimitComparison.MeetsHigh(Low(other), High(one), exclusive: true, dimension);
    }

    private static double Low(CheckedMatch match) => match.AtLeast?.Si ?? double.NegativeInfinity;

    private static double High(CheckedMatch match) => match.Below?.Si ?? double.PositiveInfinity;

    private static bool SameLimit(CheckedRange one, CheckedRange other) => Same(one.Low, other.Low) && Same(one.High, other.High);

    private static bool Same(LimitEnd? one, LimitEnd? other) =>
        (one is null && other is null) || (one is not null && other is not null && one.Si.Equals(other.Si));
}
