using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Laygate.Engineering.Assumptions;
using Laygate.Model.Plans;
using Laygate.Rules.Binding;
using Laygate.Rules.Definitions;

namespace Laygate.Rules.Merging;

/// <summary>The merged book as text that a person can read and that is always the same for the same book.</summary>
internal static class CanonicalText
{
    /// <summary>SHA-256 of a text, lower-case hex.</summary>
    public static string HashOf(string text) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)));

    /// <summary>The whole book.</summary>
    public static string Of(RuleBook book)
    {
        var lines = new Lines();
        foreach (var layer in book.Layers)
        {
            lines.Add(0, $"layer {Words.Of(layer.Layer)}: {layer.Name}; {layer.Title}; {layer.Edition}; {layer.Status}; {layer.Jurisdiction}");
        }

        foreach (var merged in book.All)
        {
            Rule(lines, merged);
        }

        foreach (var assumption in book.Assumptions)
        {
            lines.Add(0, Text(assumption));
        }

        foreach (var source in book.Sources.Values.OrderBy(source => source.Id, StringComparer.Ordinal))
        {
            lines.Add(0, $"source {source.Id}: {source.Title}; {source.Issuer}; {source.Edition}; {source.Year}; {source.Address}; {source.Carrier}; {source.Licence}");
        }

        return lines.ToString();
    }

    /// <summary>Bounds, to tell whether two lists of them are the same.</summary>
    public static string Of(IReadOnlyList<CheckedBound> bounds)
    {
        var lines = new Lines();
        foreach (var bound in bounds)
        {
            OfBound(lines, bound.Definition, setBy: null);
        }

        return lines.ToString();
    }

    /// <summary>A limit, to tell whether two are the same.</summary>
    public static string Of(Limit limit)
    {
        var lines = new Lines();
        OfLimit(lines, limit, lowExclusive: false, highExclusive: false);
        return lines.ToString();
    }

    private static void Rule(Lines lines, MergedRule merged)
    {
        var rule = merged.Rule.Definition;
        var state = merged.InForce ? "in force" : $"out of force {merged.TakenOutBy} {merged.Reason}".TrimEnd();
        lines.Add(0, $"rule {rule.Id} {rule.Family}/{rule.Name} {merged.AddedBy}: {state}");
        lines.Add(1, $"title: {rule.Title}");
        lines.Add(1, $"why: {rule.Why}");
        lines.Add(1, $"remedy: {rule.Remedy}");
        lines.Add(1, $"local: {rule.Local}");
        if (rule.Asks is { } asks)
        {
            lines.Add(1, $"asks whether: {asks}");
        }

        if (rule.Holds is { } holds)
        {
            lines.Add(1, $"holds: {holds}");
        }

        if (rule.OnSite is { } site)
        {
            lines.Add(1, $"on site: {site.Watch}; otherwise: {site.Otherwise}");
        }

        lines.Add(1, $"life: {Words.Of(rule.Life.State)} {rule.Life.Since} {rule.Life.Successor}");
        lines.Add(1, $"from stage {Words.Of(rule.FromStage)}; severity {rule.Severity}; places {string.Join(", ", merged.Rule.Jurisdictions)}");
        if (rule.NotIn.Count > 0)
        {
            lines.Add(1, $"not in {string.Join(", ", rule.NotIn)}");
        }

        foreach (var condition in rule.When)
        {
            lines.Add(1, $"when {condition.Quantity} {LimitTexts.Match(condition.Words, condition.AtLeast, condition.Below)}");
        }

        lines.Add(1, $"{Words.Of(rule.AppliesTo)}: {rule.Quantity} {Words.Of(rule.Check)}");
        foreach (var bound in merged.Rule.Bounds)
        {
            OfBound(lines, bound.Definition, $"{Words.Of(bound.Layer)} {bound.SetBy}".TrimEnd());
        }
    }

    private static void OfBound(Lines lines, Bound bound, string? setBy)
    {
        lines.Add(1, $"{Words.Of(bound.Strength)}, {Words.Of(bound.Basis)}{(bound.Place is { } place ? ", " + Words.Of(place) : string.Empty)}{(setBy is null ? string.Empty : ", set by " + setBy)}");
        OfLimit(lines, bound.Limit, bound.LowExclusive, bound.HighExclusive);
        lines.Add(2, Text(bound.Source));
        foreach (var other in bound.Also)
        {
            lines.Add(2, "also " + Text(other));
        }
    }

    private static void OfLimit(Lines lines, Limit limit, bool lowExclusive, bool highExclusive)
    {
        switch (limit)
        {
            case ConstantLimit constant:
                lines.Add(2, LimitTexts.Ends(constant.Low, constant.High, lowExclusive, highExclusive));
                break;
            case QuantityLimit quantity:
                lines.Add(2, $"{quantity.Quantity} times {quantity.Factor.ToString("R", CultureInfo.InvariantCulture)}");
                break;
            case WordsLimit words:
                lines.Add(2, string.Join(" or ", words.Words));
                break;
            case TableLimit table:
                lines.Add(2, $"by {string.Join(", ", table.Keys)}");
                foreach (var row in table.Rows)
                {
                    lines.Add(2, $"[{LimitTexts.RowKey(row)}]: {LimitTexts.Ends(row.Low, row.High, lowExclusive, highExclusive)}{(row.Source is null ? string.Empty : "; " + Text(row.Source))}");
                }

                break;
            case PresenceLimit { Entries.Count: > 0 } presence:
                lines.Add(2, LimitTexts.Entries(presence));
                break;
            default:
                lines.Add(2, "stated");
                break;
        }
    }

    private static string Text(SourceReference source) => string.Create(
        CultureInfo.InvariantCulture,
        $"source {source.Source} {source.Clause}; {Words.Of(source.Evidence)}; {source.ValidFrom:yyyy-MM-dd}..{source.ValidTo:yyyy-MM-dd}; {source.Successor}; {source.Remark}; {source.Confirmation?.By} {source.Confirmation?.On:yyyy-MM-dd} {source.Confirmation?.Edition} {source.Confirmation?.Page}");

    private static string Text(Assumption assumption) => string.Create(
        CultureInfo.InvariantCulture,
        $"assume {assumption.Id}: {assumption.Number:R} {assumption.Unit} ({assumption.Low:R} to {assumption.High:R}); {assumption.Source}; {Words.Of(assumption.Evidence)}");

    private sealed class Lines
    {
        private readonly StringBuilder text = new();

        public void Add(int depth, string line) =>
            text.Append(' ', depth * 2).Append(line.ReplaceLineEndings(" ").TrimEnd()).Append('\n');

        public override string ToString() => text.ToString();
    }
}
