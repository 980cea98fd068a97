using System.Globalization;
using System.Text;
using Laygate.Reporting.Text;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Sheet;

/// <summary>Writes cards in Markdown: a head that says whose card it is and of which plan, then lists and tables.</summary>
internal sealed class CardWriter(SiteSheet sheet, int cards)
{
    /// <summary>A box to be ticked or filled in by hand.</summary>
    public const string Box = "☐";

    /// <summary>A line to be filled in by hand.</summary>
    public const string Blank = "______";

    private readonly StringBuilder text = new();
    private int card;

    /// <summary>Everything written so far.</summary>
    public string Text => text.ToString();

    /// <summary>A plain line at the top of the document.</summary>
    public void Line(string line) => text.Append(line).Append('\n');

    /// <summary>An empty line.</summary>
    public void Gap() => text.Append('\n');

    /// <summary>Begins the next card.</summary>
    public void Card(string role)
    {
        card++;
        text.Append("\n---\n\n");
        text.Append(CultureInfo.InvariantCulture, $"## {role}{(sheet.IsDraft ? ": DRAFT, not for work" : string.Empty)}\n\n");
        var revision = sheet.Revision is { Length: > 0 } known ? $", revision {MarkdownText.Of(known)}" : string.Empty;
        text.Append(CultureInfo.InvariantCulture, $"Card {card} of {cards}. Plan {MarkdownText.Of(sheet.PlanId)}{revision}, {Hash(sheet.PlanHash)}. {Valid()}\n");
        text.Append("**Site conditions and the competent person come first.**\n");
    }

    /// <summary>A heading inside a card.</summary>
    public void Part(string title) => text.Append(CultureInfo.InvariantCulture, $"\n### {title}\n\n");

    /// <summary>An entry of a list.</summary>
    public void Item(string line) => text.Append("- ").Append(line).Append('\n');

    /// <summary>A table; nothing when it has no rows. Cells must be safe already.</summary>
    public void Table(IReadOnlyList<string> head, IEnumerable<IReadOnlyList<string>> rows)
    {
        var all = rows.ToList();
        if (all.Count == 0)
        {
            return;
        }

        Row(head);
        Row([.. head.Select(_ => "---")]);
        all.ForEach(Row);
    }

    /// <summary>The first digits of a hash.</summary>
    public static string Hash(string hash) => hash.Length > 12 ? $"hash {hash[..12]}" : $"hash {PlainText.Show(hash)}";

    private void Row(IReadOnlyList<string> cells) =>
        text.Append("| ").AppendJoin(" | ", cells.Select(cell => cell.Length == 0 ? "—" : cell)).Append(" |\n");

    private string Valid() => sheet.ShiftStart is { } start
        ? $"Valid for the shift of {start.ToString("ddd yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture)}"
            + (sheet.ShiftEnd is { } end ? $" to {SheetNumbers.Time(end, start)}." : ".")
        : "The plan states no shift: valid for none until it does.";
}
