using Laygate.Engineering.Quantities;
using Laygate.Rules.Binding;
using Laygate.Rules.Merging;

namespace Laygate.Reporting.Keys;

/// <summary>What is usual of numbers of one sort, by the rules about stated numbers.</summary>
internal static class UsualRange
{
    /// <summary>The ranges, each with its rule; none where no rule names the sort.</summary>
    public static IEnumerable<(string Rule, string Range)> Of(RuleBook book, string sort) =>
        from rule in book.On(ElementKind.Value)
        from bound in rule.Bounds
        where bound.Limit is CheckedTable
        from row in ((CheckedTable)bound.Limit).Rows.Index()
        where row.Item.Matches[0].Words?.Contains(sort, StringComparer.Ordinal) == true
        select (rule.Definition.Id, LimitTexts.Of(bound.Definition, row.Index + 1) ?? string.Empty);
}
