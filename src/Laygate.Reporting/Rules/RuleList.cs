using System.Globalization;
using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;
using Laygate.Reporting.Language;
using Laygate.Reporting.Terminal;
using Laygate.Reporting.Text;
using Laygate.Rules.Definitions;
using Laygate.Rules.Merging;

namespace Laygate.Reporting.Rules;

/// <summary>Which rules are listed; null: all.</summary>
/// <param name="Family">Family.</param>
/// <param name="Jurisdiction">Place in which they hold; those that hold anywhere are in it.</param>
/// <param name="Evidence">Word for how at least one of their limits is known; one of <see cref="EvidenceWords"/>.</param>
/// <param name="InForceOnly">Whether those out of force are left out.</param>
public sealed record RuleFilter(string? Family, string? Jurisdiction, string? Evidence, bool InForceOnly)
{
    /// <summary>The words for how a limit is known.</summary>
    public static IReadOnlyList<string> EvidenceWords => Words.Of<Evidence>();

    /// <summary>The rules of a book that it lets through, by id.</summary>
    public IReadOnlyList<MergedRule> Of(RuleBook book) => [.. book.All.Where(Lets)];

    private bool Lets(MergedRule merged)
    {
        var rule = merged.Rule;
        return (Family is null || string.Equals(rule.Definition.Family, Family, StringComparison.Ordinal))
            && (Jurisdiction is not { } place || rule.Jurisdictions.Count == 0 || rule.Jurisdictions.Any(own => Laygate.Rules.Merging.Jurisdiction.LiesIn(place, own)))
            && (Jurisdiction is not { } where || !rule.Definition.NotIn.Any(own => Laygate.Rules.Merging.Jurisdiction.LiesIn(where, own)))
            && (Evidence is not { } evidence || EvidenceOf(merged).Any(known => string.Equals(Words.Of(known), evidence, StringComparison.Ordinal)))
            && (!InForceOnly || merged.InForce);
    }

    /// <summary>How the limits of a rule are known, each way once.</summary>
    public static IReadOnlyList<Evidence> EvidenceOf(MergedRule merged) =>
    [
        .. merged.Rule.Bounds
            .SelectMany(bound => bound.Definition.Limit is TableLimit table ? table.Rows.Select(row => (row.Source ?? bound.Definition.Source).Evidence) : [bound.Definition.Source.Evidence])
            .Distinct().Order(),
    ];
}

/// <summary>Rules as a list for a person at a terminal.</summary>
public static class RuleList
{
    private const int TextColumn = 11;

    /// <summary>Lines for the rules that a filter lets through, by family, with a tally below.</summary>
    public static IReadOnlyList<TerminalLine> Lines(RuleBook book, RuleFilter filter, int width)
    {
        var page = new Page(width);
        var rules = filter.Of(book);
        foreach (var family in rules.GroupBy(merged => merged.Rule.Definition.Family, StringComparer.Ordinal))
        {
            page.Blank();
            page.Flow(0, 2, [new TextSpan(TextStyle.Heading, PlainText.Show(family.Key))]);
            foreach (var merged in family)
            {
                Write(page, merged);
            }
        }

        page.Blank();
        page.Flow(0, 2, [new TextSpan(TextStyle.Plain, Tally(book, rules))]);
        return page.Take();
    }

    private static void Write(Page page, MergedRule merged)
    {
        var rule = merged.Rule.Definition;
        var known = string.Join(", ", RuleFilter.EvidenceOf(merged).Select(evidence => Words.Of(evidence)));
        var state = merged switch
        {
            { InForce: true } => string.Empty,
            { TakenOutBy: { } by } => $"out of force: {PlainText.Show(by)} takes it out",
            { Rule.Definition.Life.State: LifeState.Gone } => "gone",
            _ => "out of force until a specification asks for it",
        };
        var tags = new[]
        {
            known,
            rule.Severity is { } severity ? $"severity {severity}" : string.Empty,
            merged.Rule.Jurisdictions.Count > 0 ? string.Join(", ", merged.Rule.Jurisdictions) : string.Empty,
            merged.AddedBy is { } by2 ? $"added by {PlainText.Show(by2)}" : string.Empty,
            state,
        };
        page.Labelled(2, TextColumn, rule.Id, [new TextSpan(TextStyle.Plain, PlainText.Show(rule.Title)), new TextSpan(TextStyle.Quiet, $" ({string.Join("; ", tags.Where(tag => tag.Length > 0))})")]);
    }

    private static string Tally(RuleBook book, IReadOnlyList<MergedRule> rules)
    {
        var inForce = rules.Count(merged => merged.InForce);
        return string.Create(CultureInfo.InvariantCulture, $"{rules.Count} rules, {inForce} in force. Layers: {string.Join("; then ", book.Layers.Select(layer => $"{PlainText.Show(layer.Title)} ({Names.Of(layer.Layer)})"))}. Rule book {book.Hash[..12]}.");
    }
}
