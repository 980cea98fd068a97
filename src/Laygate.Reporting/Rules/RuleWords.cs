using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;
using Laygate.Reporting.Language;
using Laygate.Reporting.Text;
using Laygate.Rules.Binding;
using Laygate.Rules.Definitions;
using Laygate.Rules.Merging;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Rules;

/// <summary>One limit of a rule in words: a bound, or a row of its table.</summary>
/// <param name="For">What the row is for; empty where the limit is no table.</param>
/// <param name="Limit">The limit.</param>
/// <param name="Strength">How strongly it speaks.</param>
/// <param name="Source">Publication and clause.</param>
/// <param name="Known">How it is known.</param>
/// <param name="SetBy">Layer that set it, with its name.</param>
/// <param name="Remark">Validity, and how it was read; empty where there is nothing to say.</param>
public sealed record LimitLine(string For, string Limit, string Strength, string Source, string Known, string SetBy, string Remark)
{
    /// <summary>The quantities that the row asks, in words, in the order of its key; empty where the limit is no table.</summary>
    public string Keys { get; init; } = string.Empty;
}

/// <summary>Words rules as they stand in a book, without a plan.</summary>
public static class RuleWords
{
    /// <summary>On what and under which conditions a rule looks.</summary>
    public static string AppliesTo(CheckedRule rule)
    {
        var when = rule.When.Select(match => Condition(match, rule.Definition.AppliesTo)).ToList();
        var places = rule.Jurisdictions.Count > 0 ? $", in {string.Join(" or ", rule.Jurisdictions)}" : string.Empty;
        var others = rule.Definition.NotIn.Count > 0 ? $", not in {string.Join(" or ", rule.Definition.NotIn)}" : string.Empty;
        return $"{Element(rule.Definition.AppliesTo)}{places}{others}{(when.Count > 0 ? ", when " + string.Join(" and ", when) : string.Empty)}";
    }

    /// <summary>What a rule compares.</summary>
    public static string Check(CheckedRule rule)
    {
        var quantity = Names.OfQuantity(rule.Quantity.Name);
        return rule.Definition.Check switch
        {
            CheckKind.AtLeast => $"{quantity}: not below the limit",
            CheckKind.AtMost => $"{quantity}: not above the limit",
            CheckKind.Between => $"{quantity}: between the ends of the limit",
            CheckKind.Present => $"{quantity}: stated; required asks that it is there at all, advised that nothing of it is missing",
            CheckKind.NotBefore => $"{quantity}: not before the other moment",
            _ => $"{quantity}: in agreement with the limit",
        };
    }

    /// <summary>The limits of a rule, one line per bound or row.</summary>
    public static IReadOnlyList<LimitLine> Limits(CheckedRule rule, IReadOnlyDictionary<string, Source> sources) =>
        [.. rule.Bounds.SelectMany(bound => Lines(rule, bound, sources).Concat(bound.Definition.Also.Select(other =>
            Line(rule, bound, other, string.Empty, "another reading", sources) with { Strength = "also read", Known = SourceWords.Of(other.Evidence) })))];

    private static IEnumerable<LimitLine> Lines(CheckedRule rule, CheckedBound bound, IReadOnlyDictionary<string, Source> sources)
    {
        if (bound.Definition.Limit is not TableLimit table)
        {
            yield return Line(rule, bound, bound.Definition.Source, string.Empty, Readable(rule, bound), sources);
            yield break;
        }

        for (var index = 0; index < table.Rows.Count; index++)
        {
            var row = table.Rows[index];
            yield return Line(rule, bound, row.Source ?? bound.Definition.Source, LimitTexts.RowKey(row), LimitTexts.Of(bound.Definition, index + 1) ?? string.Empty, sources) with
            {
                Keys = string.Join(", ", table.Keys.Select(key => Named(key, rule.Definition.AppliesTo))),
            };
        }
    }

    private static LimitLine Line(CheckedRule rule, CheckedBound bound, SourceReference source, string what, string limit, IReadOnlyDictionary<string, Source> sources)
    {
        var definition = bound.Definition;
        var other = bound.Limit as CheckedQuantity;
        var shown = new ShownLimit(
            definition.Strength, definition.Basis, null, null, definition.LowExclusive, definition.HighExclusive, null, other?.Quantity.Name, other?.Factor, source, sources.GetValueOrDefault(source.Source), bound.Layer, bound.SetBy)
        {
            SilenceFails = rule.Definition is { LifeCritical: true, Check: CheckKind.Present } && definition.Strength == Strength.Required,
        };
        var place = definition.Place is { } at ? " " + Names.Of(at) : string.Empty;
        var remarks = new[] { SourceWords.Validity(source), source.Remark is { Length: > 0 } remark ? PlainText.Show(remark) : null };
        return new LimitLine(
            what,
            PlainText.Show(limit) + place,
            Names.Of(definition.Strength, definition.Basis),
            SourceWords.Publication(shown),
            SourceWords.HowKnown(shown),
            SourceWords.SetBy(shown),
            string.Join(' ', remarks.OfType<string>()));
    }

    private static string Readable(CheckedRule rule, CheckedBound bound)
    {
        if (bound.Limit is not CheckedQuantity other)
        {
            return LimitTexts.Of(bound.Definition, null) ?? string.Empty;
        }

        var compared = rule.Definition.Check switch
        {
            CheckKind.AtLeast => "at least",
            CheckKind.AtMost => "at most",
            CheckKind.NotBefore => "not before",
            _ => "the same as",
        };
        var factor = other.Factor.Equals(1) ? string.Empty : $"{other.FactorText} times ";
        return $"{compared} {factor}{Named(other.Quantity.Name, rule.Definition.AppliesTo)}";
    }

    private static string Condition(CheckedMatch match, ElementKind of)
    {
        var quantity = Named(match.Quantity.Name, of);
        return match.Words is { } words
            ? $"{quantity} is {string.Join(" or ", words)}"
            : $"{quantity} is {LimitTexts.Ends(match.AtLeast?.Stated, match.Below?.Stated, lowExclusive: false, highExclusive: true)}";
    }

    // A quantity of another element than the rule's own says whose it is.
    private static string Named(string quantity, ElementKind of)
    {
        var element = quantity.Split('.')[0];
        var name = Names.OfQuantity(quantity);
        return string.Equals(element, Words.Of(of), StringComparison.Ordinal) ? name : $"{element.Replace('-', ' ')} {name}";
    }

    private static string Element(ElementKind kind) => kind switch
    {
        ElementKind.Trucks => "each group of trucks",
        ElementKind.Value => "each number that the plan states",
        ElementKind.EarlyFriction => "early skid resistance",
        ElementKind.Job => "the job",
        ElementKind.JobShift => "each shift of a job",
        ElementKind.Interval => "what lies between two shifts of a job",
        ElementKind.JobCourse => "each course of a job",
        ElementKind.JobRun => "each run of a job",
        ElementKind.JobPlant => "each plant of a job",
        ElementKind.JobJoint => "each joint of a job",
        ElementKind.JobLot => "each lot of a job",
        _ when PlanElements.IsSingle(kind) => $"the {Words.Of(kind).Replace('-', ' ')}",
        _ => $"each {Words.Of(kind).Replace('-', ' ')}",
    };
}
