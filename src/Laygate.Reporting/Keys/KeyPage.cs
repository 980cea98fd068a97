using System.Globalization;
using System.Text;
using Laygate.Model.Plans;
using Laygate.Rules.Merging;
using Laygate.Rules.Results;
using static Laygate.Reporting.RulePages.Markdown;

namespace Laygate.Reporting.Keys;

/// <summary>The page of all keys of plans, in Markdown.</summary>
public static class KeyPage
{
    /// <summary>The page.</summary>
    /// <param name="keys">All keys, in the order of the schema.</param>
    /// <param name="general">General practice.</param>
    public static string Of(IReadOnlyList<PlanKey> keys, RuleBook general)
    {
        var text = new StringBuilder("""
            # Keys of a plan

            Generated from `schemas/plan.schema.json` and the rules; do not edit. How a plan grows and how values are written stands in [plan-format.md](plan-format.md); `laygate explain KEY` shows one key.

            A path such as `courses.thickness` leaves out that `courses` is a list. *Must* marks a key that must be there wherever the group around it is. *Asked by* lists the rules of general practice that ask for the key, and the stage from which the first of them speaks; *usual* is the range outside which a rule asks whether the number is meant.


            """);
        foreach (var block in keys.GroupBy(key => key.Path.Split('.')[0], StringComparer.Ordinal))
        {
            text.Append(CultureInfo.InvariantCulture, $"## {block.Key}\n\n").Append(Head("key", "meaning", "value", "example", "usual", "asked by"));
            foreach (var key in block)
            {
                text.Append(OfKey(key, general));
            }

            text.Append('\n');
        }

        return Lists(text.Append("# Words\n"), keys).ToString();
    }

    private static string OfKey(PlanKey key, RuleBook general) => Row(
        $"`{key.Path}`",
        (key.IsRequired ? "*Must.* " : string.Empty) + Plain(key.Meaning),
        key.Words.Count > 0 ? $"[{key.Value}](#{Anchor(key)})" : key.Value,
        key.Example is { } example ? $"`{example}`" : string.Empty,
        string.Join("; ", UsualRange.Of(general, key.Sort).Select(usual => $"{Plain(usual.Range)} ([{usual.Rule}](rules/{usual.Rule}.md))")),
        key.Rules.Count == 0 ? string.Empty : $"{Words.Of(key.Rules.Min(rule => rule.FromStage))}: {string.Join(", ", key.Rules.Select(rule => $"[{rule.Rule}](rules/{rule.Rule}.md)"))}");

    private static StringBuilder Lists(StringBuilder text, IReadOnlyList<PlanKey> keys)
    {
        foreach (var list in keys.Where(key => key.Words.Count > 0).DistinctBy(Anchor, StringComparer.Ordinal))
        {
            text.Append(CultureInfo.InvariantCulture, $"\n## {Noun(list)}\n\n").Append(Head("word", "meaning"));
            foreach (var word in list.Words)
            {
                text.Append(Row($"`{word.Word}`", Plain(word.Meaning)));
            }
        }

        return text;
    }

    private static string Noun(PlanKey key) => key.Value.Replace("list: ", string.Empty, StringComparison.Ordinal);

    private static string Anchor(PlanKey key) => Noun(key).Replace(' ', '-');
}
