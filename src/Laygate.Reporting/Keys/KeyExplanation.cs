using Laygate.Model.Plans;
using Laygate.Reporting.Terminal;
using Laygate.Reporting.Text;
using Laygate.Rules.Merging;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Keys;

/// <summary>Keys of a plan for a person at a terminal.</summary>
public static class KeyExplanation
{
    private const int TextColumn = 12;
    private const int MostInFull = 3;
    private const int MostRules = 12;

    /// <summary>Lines for the keys that were meant: up to three in full, more by their path and meaning.</summary>
    /// <param name="keys">The keys, at least one.</param>
    /// <param name="book">The rules.</param>
    /// <param name="width">Columns of the terminal.</param>
    public static IReadOnlyList<TerminalLine> Lines(IReadOnlyList<PlanKey> keys, RuleBook book, int width)
    {
        var page = new Page(width);
        if (keys.Count > MostInFull)
        {
            page.Flow(0, 2, [new TextSpan(TextStyle.Plain, "Several keys are called so. Name one by its path.")]);
            foreach (var key in keys)
            {
                page.Flow(0, 2, [new TextSpan(TextStyle.Heading, key.Path), new TextSpan(TextStyle.Plain, $": {key.Meaning}")]);
            }

            return page.Take();
        }

        foreach (var key in keys)
        {
            if (!ReferenceEquals(key, keys[0]))
            {
                page.Blank();
            }

            InFull(page, key, book);
        }

        return page.Take();
    }

    private static void InFull(Page page, PlanKey key, RuleBook book)
    {
        page.Flow(0, 2, [new TextSpan(TextStyle.Heading, key.Path)]);
        Row(page, "means", key.Meaning);
        Row(page, "value", key.IsRequired ? $"{key.Value}; it must be there" : key.Value);
        foreach (var word in key.Words)
        {
            Row(page, "word", $"{word.Word}: {word.Meaning}");
        }

        if (key.Example is { } example)
        {
            Row(page, "example", example);
        }

        if (key.Address.Length > 0)
        {
            Row(page, "findings", $"name it {key.Address}, {key.Within}");
        }

        foreach (var (rule, range) in UsualRange.Of(book, key.Sort))
        {
            Row(page, "usual", $"{range} ({rule})");
        }

        foreach (var rule in key.Rules.Take(MostRules))
        {
            Row(page, "asked by", $"{rule.Rule} {PlainText.Show(rule.Title)}, from {Words.Of(rule.FromStage)}");
        }

        if (key.Rules.Count > MostRules)
        {
            Row(page, "and by", string.Join(", ", key.Rules.Skip(MostRules).Select(rule => rule.Rule)));
        }
    }

    private static void Row(Page page, string label, string text) => page.Labelled(0, TextColumn, label, [new TextSpan(TextStyle.Plain, text)]);
}
