using Laygate.Exchange;
using Laygate.Exchange.RuleLists;
using Laygate.Reporting.Json;
using Laygate.Rules.Merging;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Rules;

/// <summary>Rules as JSON, as <c>schemas/rules.schema.json</c> describes them.</summary>
public static class RuleJson
{
    /// <summary>Writes a list of rules.</summary>
    public static void Write(Stream output, RuleBook book, RuleFilter filter) =>
        JsonOutput.Write(output, new RuleListShape(book.Hash, filter.Of(book).Select(merged => Of(book, merged, []))), Shapes.Default.RuleListShape, JsonOutput.Options);

    /// <summary>Writes one rule with its cases.</summary>
    public static void Write(Stream output, RuleBook book, MergedRule merged, IReadOnlyList<CaseSummary> cases) =>
        JsonOutput.Write(output, Of(book, merged, cases), Shapes.Default.RuleShape, JsonOutput.Options);

    private static RuleShape Of(RuleBook book, MergedRule merged, IReadOnlyList<CaseSummary> cases)
    {
        var rule = merged.Rule.Definition;
        return new RuleShape(
            rule.Id,
            rule.Family,
            rule.Name,
            rule.Title,
            rule.Why,
            rule.Remedy,
            rule.Local,
            rule.Asks,
            rule.Holds,
            rule.OnSite?.Watch,
            rule.OnSite?.Otherwise,
            rule.AppliesTo,
            RuleWords.AppliesTo(merged.Rule),
            rule.Check,
            rule.Quantity,
            rule.FromStage,
            rule.Severity,
            rule.Life.State,
            merged.InForce,
            merged.AddedBy,
            merged.TakenOutBy,
            merged.Rule.Jurisdictions,
            rule.NotIn,
            [.. RuleWords.Limits(merged.Rule, book.Sources).Select(Of)],
            [.. cases.Select(one => new RuleCaseShape(one.Case, one.Outcome, one.Status, one.With))]);
    }

    private static RuleLimitShape Of(LimitLine line) => new(line.For, line.Keys, line.Limit, line.Strength, line.Source, line.Known, line.SetBy, line.Remark);
}
