using Laygate.Engineering.Quantities;
using Laygate.Rules.Definitions;

namespace Laygate.ConformanceTests.Specifications;

/// <summary>A figure of the rule book and how it is known.</summary>
/// <param name="Rule">Id of the rule.</param>
/// <param name="For">What the row of a table asks; empty for a constant.</param>
/// <param name="Limit">The figure or band as written.</param>
/// <param name="Ends">Number of figures in it.</param>
/// <param name="Source">Where it comes from.</param>
internal sealed record KnownFigure(string Rule, string For, string Limit, int Ends, SourceReference Source)
{
    public Evidence Evidence => Source.Evidence;
}

/// <summary>Lists the figures of the rule book.</summary>
internal static class KnownFigures
{
    public static IEnumerable<KnownFigure> Of(Specification specification) =>
        specification.Set.SelectMany(set => set.Bounds.SelectMany(bound => Of(set.Rule, bound)));

    public static IEnumerable<KnownFigure> Of(RuleDefinition rule) => rule.Bounds.SelectMany(bound => Of(rule.Id, bound));

    public static IEnumerable<string> SourcesOf(IEnumerable<Bound> bounds) => bounds.SelectMany(bound =>
        (bound.Limit as TableLimit)?.Rows.Select(row => row.Source?.Source).OfType<string>().Append(bound.Source.Source) ?? [bound.Source.Source]);

    private static IEnumerable<KnownFigure> Of(string rule, Bound bound) => bound.Limit switch
    {
        TableLimit table => table.Rows.Select(row => new KnownFigure(
            rule, string.Join(", ", row.Matches.Select(Match).Where(text => text.Length > 0)), Ends(row.Low, row.High, bound), Count(row.Low, row.High), row.Source ?? bound.Source)),
        ConstantLimit constant => [new KnownFigure(rule, string.Empty, Ends(constant.Low, constant.High, bound), Count(constant.Low, constant.High), bound.Source)],
        WordsLimit words => [new KnownFigure(rule, string.Empty, string.Join(", ", words.Words), 1, bound.Source)],
        PresenceLimit => [new KnownFigure(rule, string.Empty, "stated", 1, bound.Source)],
        _ => [],
    };

    private static int Count(LimitValue? low, LimitValue? high) => (low is null ? 0 : 1) + (high is null ? 0 : 1);

    private static string Ends(LimitValue? low, LimitValue? high, Bound bound) => (low, high) switch
    {
        ({ } from, { } to) => $"{from.Text} to {to.Text}",
        ({ } from, null) => $"{(bound.LowExclusive ? "above" : "at least")} {from.Text}",
        (null, { } to) => $"{(bound.HighExclusive ? "below" : "at most")} {to.Text}",
        _ => string.Empty,
    };

    private static string Match(RowMatch match) => match switch
    {
        { Any: true } => string.Empty,
        { Words: { } words } => string.Join(" or ", words),
        { AtLeast: { } from, Below: { } to } => $"{from.Text} and more, below {to.Text}",
        { AtLeast: { } from } => $"{from.Text} and more",
        _ => $"below {match.Below!.Text}",
    };
}
