using System.Globalization;
using System.Text;
using Laygate.Model.Plans;
using Laygate.Reporting.Language;
using Laygate.Reporting.Rules;
using Laygate.Rules.Definitions;
using Laygate.Rules.Merging;
using Laygate.Rules.Results;
using static Laygate.Reporting.RulePages.Markdown;

namespace Laygate.Reporting.RulePages;

/// <summary>What a specification does to a rule.</summary>
/// <param name="Specification">The specification.</param>
/// <param name="Book">General practice with that specification alone.</param>
/// <param name="Rule">The rule in it.</param>
public sealed record RuleUnderSpecification(Specification Specification, RuleBook Book, MergedRule Rule);

/// <summary>The page of one rule in Markdown.</summary>
public static class RulePage
{
    /// <summary>The page.</summary>
    /// <param name="general">General practice.</param>
    /// <param name="rule">The rule: in general practice, or in the specification that adds it.</param>
    /// <param name="specifications">Specifications that touch it.</param>
    /// <param name="cases">Its cases.</param>
    public static string Of(RuleBook general, MergedRule rule, IReadOnlyList<RuleUnderSpecification> specifications, IReadOnlyList<CaseSummary> cases)
    {
        var definition = rule.Rule.Definition;
        var text = new StringBuilder($"# {definition.Id} {Plain(definition.Title)}\n\n{Plain(definition.Why)}\n\n");
        text.Append(Head("", ""));
        text.Append(Row("rule", $"`{definition.Family}/{definition.Name}`, {Words.Of(definition.Life.State).Replace('-', ' ')} since {Plain(definition.Life.Since)}{(definition.Life.Successor is { } next ? $", followed by {Plain(next)}" : string.Empty)}"));
        text.Append(Row("looks at", Plain(RuleWords.AppliesTo(rule.Rule))));
        text.Append(Row("compares", Plain(RuleWords.Check(rule.Rule))));
        text.Append(Row("from stage", Words.Of(definition.FromStage)));
        if (definition.Severity is { } severity)
        {
            text.Append(Row("severity", severity == Severity.A ? "A: no departure, and no specification can weaken it" : severity.ToString()));
        }

        text.Append(CultureInfo.InvariantCulture, $"\n**What to do:** {Plain(definition.Remedy)}\n\n{OnSite(definition)}**Whom to ask:** {Plain(definition.Local)}\n\n## Limits\n\n");
        General(text, general, rule);
        foreach (var under in specifications)
        {
            UnderSpecification(text, under);
        }

        Cases(text, cases);
        return text.ToString();
    }

    private static string OnSite(RuleDefinition definition) =>
        definition.OnSite is { } site ? $"**On site:** {Plain(site.Watch)}: the limit. {Plain(site.Otherwise)}\n\n" : string.Empty;

    private static void General(StringBuilder text, RuleBook general, MergedRule rule)
    {
        if (rule.AddedBy is { } by)
        {
            text.Append(CultureInfo.InvariantCulture, $"The rule is there only with the specification [{Plain(by)}](specifications/{by}.md).\n\n");
            return;
        }

        text.Append(rule switch
        {
            { Rule.Bounds.Count: 0 } => "General practice sets no limit here: a specification must.\n\n",
            { InForce: false } => "Out of force until a specification asks for it.\n\n",
            _ => string.Empty,
        });
        Limits(text, RuleWords.Limits(rule.Rule, general.Sources));
    }

    private static void UnderSpecification(StringBuilder text, RuleUnderSpecification under)
    {
        var specification = under.Specification;
        text.Append(CultureInfo.InvariantCulture, $"### With [{Plain(specification.Name)}](specifications/{specification.Name}.md)\n\n");
        var set = specification.Set.FirstOrDefault(one => string.Equals(one.Rule, under.Rule.Rule.Definition.Id, StringComparison.Ordinal));
        if (under.Rule.Reason is { } taken)
        {
            text.Append(CultureInfo.InvariantCulture, $"Out of force: {Plain(taken)}\n\n");
            return;
        }

        if (set?.Reason is { } reason)
        {
            text.Append(Plain(reason)).Append("\n\n");
        }

        Limits(text, RuleWords.Limits(under.Rule.Rule, under.Book.Sources));
    }

    private static void Limits(StringBuilder text, IReadOnlyList<LimitLine> limits)
    {
        if (limits.Count == 0)
        {
            return;
        }

        var keys = limits.Select(limit => limit.Keys).FirstOrDefault(text => text.Length > 0);
        text.Append(Head(keys is null ? "for" : $"for ({Plain(keys)})", "limit", "", "source", "known", "remark"));
        foreach (var limit in limits)
        {
            text.Append(Row(Plain(limit.For), Plain(limit.Limit), limit.Strength, Plain(limit.Source), Plain(limit.Known), Plain(limit.Remark)));
        }

        text.Append('\n');
    }

    private static void Cases(StringBuilder text, IReadOnlyList<CaseSummary> cases)
    {
        text.Append("## Cases\n\n").Append(Head("case", "outcome", "status", "with"));
        foreach (var one in cases)
        {
            text.Append(Row(Plain(one.Case), one.Outcome.Replace('-', ' '), one.Status ?? string.Empty, string.Join(", ", one.With)));
        }

        text.Append('\n').Append(string.Join(' ', Caution.Sentences)).Append('\n');
    }
}
