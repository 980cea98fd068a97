using Laygate.Engineering.Quantities.Values;
using Laygate.Model.Measures;
using Laygate.Rules.Binding;

namespace Laygate.Rules.Evaluation;

/// <summary>The ranges that the rules about stated values name, by what is measured, so that a plan's numbers are passed over at no cost while they are usual.</summary>
internal sealed class UsualRanges
{
    private readonly ILookup<string, (CheckedRule Rule, CheckedRange Range)> bySort;

    public UsualRanges(IEnumerable<CheckedRule> rules) => bySort = rules
        .SelectMany(rule => rule.Bounds.SelectMany(bound => Ranges(bound.Limit).Select(one => (one.Sort, rule, one.Range))))
        .ToLookup(one => one.Sort, one => (one.rule, one.Range), StringComparer.Ordinal);

    /// <summary>The rules that a value misses, each once, and the range.</summary>
    public IEnumerable<(CheckedRule Rule, CheckedRange Range)> Missed(StatedValue value) => bySort[value.Sort]
        .Where(one => one.Rule.Quantity.Dimension == value.Dimension && !Has(one.Range, value.Si, value.Dimension))
        .DistinctBy(one => one.Rule.Definition.Id, StringComparer.Ordinal);

    /// <summary>Whether a number in SI lies within a range.</summary>
    public static bool Has(CheckedRange range, double si, Dimension dimension) =>
        (range.Low is not { } low || LimitComparison.MeetsLow(si, low.Si, exclusive: false, dimension))
        && (range.High is not { } high || LimitComparison.MeetsHigh(si, high.Si, exclusive: false, dimension));

    // A range for all sorts of a dimension stands in no table.
    private static IEnumerable<(string Sort, CheckedRange Range)> Ranges(CheckedLimit limit) => limit switch
    {
        CheckedConstant constant => ValueSorts.All.Select(sort => (sort, constant.Range)),
        CheckedTable table => table.Rows.SelectMany(row => ValueSorts.All
            .Where(sort => row.Matches[0] is { Any: true } || row.Matches[0].Words?.Contains(sort, StringComparer.Ordinal) == true)
            .Select(sort => (sort, row.Range))),
        _ => [],
    };
}
