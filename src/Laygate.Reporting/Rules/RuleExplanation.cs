using Laygate.Model.Plans;
using Laygate.Reporting.Language;
using Laygate.Reporting.Terminal;
using Laygate.Reporting.Text;
using Laygate.Rules.Merging;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Rules;

/// <summary>One rule in full for a person at a terminal.</summary>
public static class RuleExplanation
{
    private const int TextColumn = 12;

    /// <summary>Lines for one rule.</summary>
    /// <param name="book">The merged book.</param>
    /// <param name="merged">The rule.</param>
    /// <param name="cases">Its cases; empty where they are not at hand.</param>
    /// <param name="width">Columns of the terminal.</param>
    public static IReadOnlyList<TerminalLine> Lines(RuleBook book, MergedRule merged, IReadOnlyList<CaseSummary> cases, int width)
    {
        var page = new Page(width);
        var rule = merged.Rule.Definition;
        page.Flow(0, 2, [new TextSpan(TextStyle.Heading, $"{rule.Id} {PlainText.Show(rule.Title)}")]);
        Row(page, "rule", $"{rule.Family}/{rule.Name}, {Life(merged)}");
        Row(page, "why", PlainText.Show(rule.Why));
        Row(page, "looks at", RuleWords.AppliesTo(merged.Rule));
        Row(page, "compares", RuleWords.Check(merged.Rule));
        Row(page, "from stage", Words.Of(rule.FromStage));
        WriteLimits(page, book, merged);
        Row(page, "do", PlainText.Show(rule.Remedy));
        if (rule.OnSite is { } site)
        {
            Row(page, "on site", $"{PlainText.Show(site.Watch)}. {PlainText.Show(site.Otherwise)}");
        }

        Row(page, "ask", PlainText.Show(rule.Local));
        if (rule.LifeCritical)
        {
            Row(page, "severity", "A: nobody can permit a departure, and no specification can weaken it.");
        }

        WriteCases(page, cases);
        page.Blank();
        foreach (var sentence in Caution.Brief)
        {
            page.Flow(0, 2, [new TextSpan(TextStyle.Heading, sentence)]);
        }

        return page.Take();
    }

    private static void WriteLimits(Page page, RuleBook book, MergedRule merged)
    {
        var limits = RuleWords.Limits(merged.Rule, book.Sources);
        if (limits.Count == 0)
        {
            Row(page, "limit", "none: a specification must set it.");
        }

        foreach (var limit in limits)
        {
            var what = limit.For.Length > 0 ? $" for `{PlainText.Show(limit.For)}` ({limit.Keys})" : string.Empty;
            Row(page, "limit", $"{limit.Limit}{what}: {limit.Strength}. {limit.Source} ({limit.Known}). Set by {limit.SetBy}.{(limit.Remark.Length > 0 ? " " + limit.Remark : string.Empty)}");
        }
    }

    private static void WriteCases(Page page, IReadOnlyList<CaseSummary> cases)
    {
        foreach (var one in cases)
        {
            var with = one.With.Count > 0 ? $" with {string.Join(", ", one.With)}" : string.Empty;
            Row(page, "case", $"{PlainText.Show(one.Case)}: {one.Outcome.Replace('-', ' ')}{(one.Status is { } status ? ", " + status : string.Empty)}{with}");
        }
    }

    private static string Life(MergedRule merged)
    {
        var life = merged.Rule.Definition.Life;
        var state = merged.InForce ? "in force" : merged.Reason is { } reason ? $"out of force ({PlainText.Show(merged.TakenOutBy!)}: {PlainText.Show(reason)})" : "out of force until a specification asks for it";
        return $"{Words.Of(life.State).Replace('-', ' ')} since {PlainText.Show(life.Since)}{(life.Successor is { } next ? ", followed by " + PlainText.Show(next) : string.Empty)}, {state}";
    }

    private static void Row(Page page, string label, string text) =>
        page.Labelled(0, TextColumn, label, [new TextSpan(TextStyle.Plain, text)]);
}
