using Laygate.Reporting.Text;

namespace Laygate.Reporting.RulePages;

/// <summary>Text inside Markdown.</summary>
internal static class Markdown
{
    /// <summary>Text in a paragraph or a cell: one line, without anything that Markdown would take for a mark.</summary>
    public static string Plain(string text) => PlainText.Show(text)
        .Replace("\\", "\\\\", StringComparison.Ordinal)
        .Replace("|", "\\|", StringComparison.Ordinal)
        .Replace("<", "&lt;", StringComparison.Ordinal)
        .Replace("*", "\\*", StringComparison.Ordinal)
        .Replace("[", "\\[", StringComparison.Ordinal)
        .Replace("_", "\\_", StringComparison.Ordinal)
        .Replace(PlainText.Glue, ' ');

    /// <summary>A row of a table.</summary>
    public static string Row(params string[] cells) => $"| {string.Join(" | ", cells)} |\n";

    /// <summary>The head of a table.</summary>
    public static string Head(params string[] cells) => Row(cells) + Row([.. cells.Select(_ => "---")]);
}
