using System.Globalization;
using System.Text;
using Laygate.Model.Plans;
using Laygate.Reporting.Rules;
using Laygate.Rules.Definitions;
using Laygate.Rules.Merging;
using static Laygate.Reporting.RulePages.Markdown;

namespace Laygate.Reporting.RulePages;

/// <summary>The index of all rules by family, and the coverage table of a specification, in Markdown.</summary>
public static class IndexPage
{
    /// <summary>The index.</summary>
    /// <param name="general">General practice.</param>
    /// <param name="added">Rules that shipped specifications add.</param>
    /// <param name="specifications">The shipped specifications.</param>
    public static string Of(RuleBook general, IReadOnlyList<MergedRule> added, IReadOnlyList<Specification> specifications)
    {
        List<MergedRule> rules = [.. general.All, .. added];
        var text = new StringBuilder("# Rules\n\nGenerated from `rules/`; do not edit. ");
        text.Append(CultureInfo.InvariantCulture, $"{rules.Count} rules, {rules.Count(rule => rule.InForce && rule.AddedBy is null)} of them in force in general practice. Figures that are only recalled stand in one [list](recalled.md).\n\n## Specifications\n\n");
        Specifications(text, specifications.Where(specification => !specification.IsUnread));
        text.Append("\n### Started from memory\n\nNothing of these was read. They may be named, a check then says so on its first line, and their limits only warn.\n\n");
        Specifications(text, specifications.Where(specification => specification.IsUnread));

        foreach (var family in rules.GroupBy(rule => rule.Rule.Definition.Family, StringComparer.Ordinal).OrderBy(family => family.Key, StringComparer.Ordinal))
        {
            text.Append(CultureInfo.InvariantCulture, $"\n## {Plain(family.Key)}\n\n").Append(Head("rule", "bad situation", "known", ""));
            foreach (var rule in family.OrderBy(rule => rule.Rule.Definition.Id, StringComparer.Ordinal))
            {
                var known = string.Join(", ", RuleFilter.EvidenceOf(rule).Select(evidence => Words.Of(evidence)));
                var state = rule.AddedBy is { } by ? $"only with {Plain(by)}" : rule.InForce ? string.Empty : "on demand";
                text.Append(Row($"[{rule.Rule.Definition.Id}]({rule.Rule.Definition.Id}.md)", Plain(rule.Rule.Definition.Title), known, state));
            }
        }

        return text.ToString();
    }

    private static void Specifications(StringBuilder text, IEnumerable<Specification> specifications)
    {
        text.Append(Head("name", "title", "issuer", "edition", "place", "status"));
        foreach (var specification in specifications)
        {
            text.Append(Row($"[{specification.Name}](specifications/{specification.Name}.md)", Plain(specification.Title), Plain(specification.Issuer), Plain(specification.Edition), Plain(specification.Jurisdiction), Plain(specification.Status ?? string.Empty)));
        }
    }

    /// <summary>The coverage table of a specification.</summary>
    /// <param name="specification">The specification.</param>
    public static string Of(Specification specification)
    {
        var text = new StringBuilder($"# {Plain(specification.Title)}\n\n");
        text.Append(Head("", ""));
        text.Append(Row("name", $"`{specification.Name}`: `laygate check PLAN --rules {specification.Name}`"));
        text.Append(Row("issuer", Plain(specification.Issuer)));
        text.Append(Row("edition", Plain(specification.Edition)));
        text.Append(Row("status", Plain(specification.Status ?? "not stated")));
        text.Append(Row("place", Plain(specification.Jurisdiction)));
        text.Append(CultureInfo.InvariantCulture, $"\n{Plain(specification.Coverage ?? "What it covers is not stated.")}\n\n## Clauses\n\n");
        if (specification.Clauses.Count == 0)
        {
            text.Append("The clauses are not listed yet.\n");
        }
        else
        {
            Clauses(text, specification.Clauses);
        }

        text.Append("\n## What it does to the rules\n\n").Append(Head("rule", "", "reason"));
        foreach (var (rule, what, reason) in Changes(specification).OrderBy(change => change.Rule, StringComparer.Ordinal))
        {
            text.Append(Row($"[{rule}](../{rule}.md)", what, Plain(reason)));
        }

        return text.Append("\nYour specification governs; this is what the cited publications say.\n").ToString();
    }

    private static void Clauses(StringBuilder text, IReadOnlyList<ClauseCoverage> clauses)
    {
        text.Append(Head("clause", "subject", "coverage", "rules", "note"));
        foreach (var clause in clauses)
        {
            var rules = string.Join(", ", clause.Rules.Select(rule => $"[{rule}](../{rule}.md)"));
            text.Append(Row(Plain(clause.Number), Plain(clause.Subject), Of(clause.Status), rules, Plain(clause.Note ?? string.Empty)));
        }

        var counts = Enum.GetValues<ClauseStatus>().Select(status => string.Create(CultureInfo.InvariantCulture, $"{clauses.Count(clause => clause.Status == status)} {Of(status)}"));
        text.Append(CultureInfo.InvariantCulture, $"\n{string.Join(", ", counts)}.\n");
    }

    private static string Of(ClauseStatus status) => status switch
    {
        ClauseStatus.Automated => "automated",
        ClauseStatus.Partly => "partly",
        ClauseStatus.Person => "by a person",
        _ => "out of scope",
    };

    private static IEnumerable<(string Rule, string What, string Reason)> Changes(Specification specification) =>
    [
        .. specification.BringIn.Select(rule => (rule, "brings into force", string.Empty)),
        .. specification.Set.Select(set => (set.Rule, "sets the limits", set.Reason ?? string.Empty)),
        .. specification.Move.Select(move => (move.Rule, $"makes {Words.Of(move.From)} {Words.Of(move.To)}", move.Reason)),
        .. specification.TakeOut.Select(taken => (taken.Rule, "takes out of force", taken.Reason)),
        .. specification.Rules.Select(rule => (rule.Id, "adds", rule.Title)),
    ];
}
