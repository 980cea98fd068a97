using System.Globalization;
using System.Text;
using Laygate.Reporting.Text;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Cards;

/// <summary>Writes cards in Markdown: a head that says of which plan they are, then each card with its lists and tables.</summary>
internal sealed class CardMarkdown(SiteSheet sheet, CardTexts texts)
{
    private readonly StringBuilder text = new();
    private readonly CardSet set = new(sheet, texts);
    private readonly string escapedBlank = MarkdownText.Of(texts["blank"]);

    /// <summary>The document.</summary>
    public string Write()
    {
        var cards = set.Cards();
        Line($"# {Safe(set.Frame.Title)}{(sheet.IsDraft ? $" ({Safe(texts["draft"])})" : string.Empty)}\n");
        Line($"{Safe(set.Frame.Plan)} {Safe(set.Frame.Book)} {Safe(set.Frame.Issued)}\n");
        Line($"{Safe(texts["figures"])}\n");
        if (sheet.Failing.Count > 0)
        {
            Line($"{Safe(texts["draft.why"])}:\n");
            Line(string.Join('\n', new CardWords(sheet, texts).Failing().Select(title => $"- {Safe(title)}")) + "\n");
        }

        foreach (var sentence in (string[])["caution.stop", "caution.scope", "caution.law", "caution.person"])
        {
            Line($"- {Safe(texts[sentence])}");
        }

        for (var i = 0; i < cards.Count; i++)
        {
            Line($"\n---\n\n## {Safe(cards[i].Role)}{(sheet.IsDraft ? $": {Safe(texts["draft"])}" : string.Empty)}\n");
            Line($"{Safe(texts["card.of", Number(i + 1), Number(cards.Count)])} {Safe(set.Frame.Plan)}");
            Line($"**{Safe(set.Frame.Caution)}**");
            foreach (var block in cards[i].Blocks)
            {
                Block(block);
            }
        }

        return text.ToString();
    }

    private void Block(CardBlock block)
    {
        Line($"\n### {Safe(block.Title)}\n");
        switch (block)
        {
            case CardList list:
                foreach (var item in list.Items)
                {
                    Line(item.Lead.Length == 0 ? $"- {Safe(item.Text)}" : $"- **{Safe(item.Lead)}:** {Safe(item.Text)}");
                }

                break;
            case CardTable table:
                Table(table.Head, table.Rows);
                break;
            case CardRun loads:
                Table(loads.Head, loads.Rows);
                break;
            case CardStrips strips:
                Table([texts["strip"], texts["from"], texts["to"]], [.. strips.Strips.Select((strip, i) => (IReadOnlyList<string>)[Number(i + 1), Tenth(strip.From), Tenth(strip.To)])]);
                Line($"\n{Safe(strips.Remark)}");
                break;
        }
    }

    private void Table(IReadOnlyList<string> head, IReadOnlyList<IReadOnlyList<string>> rows)
    {
        Row(head);
        Row([.. head.Select(_ => "---")]);
        foreach (var row in rows)
        {
            Row([.. row.Select(Safe)]);
        }

        void Row(IReadOnlyList<string> cells) => Line($"| {string.Join(" | ", ReferenceEquals(cells, head) ? head.Select(Safe) : cells)} |");
    }

    private void Line(string line) => text.Append(line).Append('\n');

    // Where a long word may be broken is for print only, and a blank to be filled in is no markup.
    private string Safe(string words) => MarkdownText.Of(words.Replace(CardTexts.SoftHyphen.ToString(), string.Empty, StringComparison.Ordinal)).Replace(escapedBlank, texts["blank"], StringComparison.Ordinal);

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);

    private string Tenth(ShownValue value) => set.Numbers.Local((value.Number ?? 0).ToString("0.0", CultureInfo.InvariantCulture)) + " " + Safe(value.Unit);
}
