using System.Text;
using Laygate.Engineering.Quantities;
using Laygate.Reporting.Language;
using Laygate.Reporting.Text;
using Laygate.Rules.Binding;
using Laygate.Rules.Definitions;
using Laygate.Rules.Merging;
using static Laygate.Reporting.RulePages.Markdown;

namespace Laygate.Reporting.RulePages;

/// <summary>The list of all figures that are only recalled, with what to look them up in.</summary>
public static class RecalledPage
{
    /// <summary>The list.</summary>
    /// <param name="books">General practice, and general practice with each specification alone; a limit that does not change stands once.</param>
    public static string Of(IReadOnlyList<RuleBook> books)
    {
        var text = new StringBuilder("# Figures that are only recalled\n\nGenerated from `rules/`; do not edit. These figures can only warn. Whoever has the publication can make one count: `laygate confirm RULE --edition … --page … --by … --into FILE`.\n\n");
        text.Append(Head("rule", "set by", "for", "limit", "look it up in"));
        var seen = new HashSet<string>(StringComparer.Ordinal);
        foreach (var row in books.SelectMany(Rows).Where(seen.Add).Order(StringComparer.Ordinal))
        {
            text.Append(row);
        }

        return text.ToString();
    }

    private static IEnumerable<string> Rows(RuleBook book) =>
        from merged in book.All
        from bound in merged.Rule.Bounds
        from row in Rows(bound)
        where row.Source.Evidence == Evidence.Recalled
        select Row(
            $"[{merged.Rule.Definition.Id}]({merged.Rule.Definition.Id}.md)", Plain(bound.SetBy ?? Names.Of(bound.Layer)), Plain(row.For), Plain(row.Limit), Plain(Publication(book, row.Source)));

    private static IEnumerable<(string For, string Limit, SourceReference Source)> Rows(CheckedBound bound) => bound.Definition.Limit is TableLimit table
        ? table.Rows.Select((row, index) => (LimitTexts.RowKey(row), LimitTexts.Of(bound.Definition, index + 1) ?? string.Empty, row.Source ?? bound.Definition.Source))
        : [(string.Empty, LimitTexts.Of(bound.Definition, null) ?? string.Empty, bound.Definition.Source)];

    private static string Publication(RuleBook book, SourceReference source)
    {
        var publication = book.Sources.GetValueOrDefault(source.Source);
        return PlainText.Show(string.Join(", ", new[] { publication?.Issuer, publication?.Title ?? source.Source, publication?.Edition ?? publication?.Year, source.Clause }.Where(part => !string.IsNullOrEmpty(part))));
    }
}
