using Laygate.Engineering.Numerics;
using Laygate.Engineering.Quantities;
using Laygate.Model.Measures;
using Laygate.Rules.Binding;
using Laygate.Rules.Definitions;
using Laygate.Rules.Results;

namespace Laygate.Rules.Evaluation;

/// <summary>How a value stands against one bound.</summary>
/// <param name="Bound">The bound.</param>
/// <param name="Met">Whether the expected value meets it.</param>
/// <param name="Band">Where the ends lie.</param>
/// <param name="Distance">Distance from the nearest end of the limit in SI; 0 for words and presence.</param>
/// <param name="Note">A remark on how the ends were found.</param>
internal sealed record Judgement(ResolvedBound Bound, bool Met, Band Band, double Distance, Note? Note);

/// <summary>Holds the value of a quantity against a resolved bound.</summary>
internal sealed class BoundJudge(IJointSamples? samples)
{
    public Judgement Judge(CheckedRule rule, ResolvedBound bound, QuantityValue value, string address) => value switch
    {
        _ when rule.Definition.Check == CheckKind.Agrees => Plain(bound, Agrees(bound, value, rule.Quantity.Dimension)),
        PresenceValue presence => Plain(bound, IsPresent(bound, presence)),
        MomentValue moment => Plain(bound, bound.Other?.Value is MomentValue other && moment.At >= other.At),
        NumberValue number when bound.Range is { } range => Fixed(rule, bound, number, range),
        NumberValue number => Moving(rule, bound, number, address),
        _ => throw new InvalidOperationException($"The check {rule.Definition.Check} cannot judge {value.GetType().Name}."),
    };

    private static Judgement Plain(ResolvedBound bound, bool met) => new(bound, met, Band.None, 0, null);

    // Required asks that something is stated at all, advised that nothing is missing from it.
    private static bool IsPresent(ResolvedBound bound, PresenceValue presence) =>
        bound.Bound.Definition.Strength == Strength.Required
            ? presence.Level != PresenceLevel.Absent
            : presence.Level == PresenceLevel.Stated;

    private static bool Agrees(ResolvedBound bound, QuantityValue value, Dimension dimension) => (bound.Bound.Limit, value) switch
    {
        (CheckedWords words, _) => Matching.WordOf(value) is { } word && words.Words.Contains(word, StringComparer.Ordinal),
        (_, NumberValue number) => bound.Other?.Value is NumberValue other && LimitComparison.AreEqual(number.Si, other.Si, dimension, Math.Max(number.Scale, other.Scale)),
        _ => string.Equals(Matching.WordOf(value), Matching.WordOf(bound.Other?.Value), StringComparison.Ordinal),
    };

    private static Judgement Fixed(CheckedRule rule, ResolvedBound bound, NumberValue number, CheckedRange range)
    {
        var ends = new Ends(bound.Bound.Definition, rule.Quantity.Dimension, number.Scale);
        double? low = range.Low?.Si;
        double? high = range.High?.Si;
        var met = ends.Meets(number.Si, low, number.Si, high);
        var from = number.Low ?? number.Si;
        var to = number.High ?? number.Si;
        var band = number.Low is null && number.High is null
            ? Band.None
            : BandOf(allMeet: ends.Meets(from, low, to, high), someMeet: ends.Meets(to, low, from, high));
        var distance = Math.Min(
            low is null ? double.PositiveInfinity : Math.Abs(number.Si - low.Value),
            high is null ? double.PositiveInfinity : Math.Abs(number.Si - high.Value));
        return new Judgement(bound, met, band, distance, null);
    }

    private Judgement Moving(CheckedRule rule, ResolvedBound bound, NumberValue number, string address)
    {
        var other = (CheckedQuantity)bound.Bound.Limit;
        var limit = (NumberValue)bound.Other!.Value!;
        var scaled = new NumberValue(limit.Si * other.Factor, limit.Low * other.Factor, limit.High * other.Factor);
        var ends = new Ends(bound.Bound.Definition, rule.Quantity.Dimension, Math.Max(number.Scale, Math.Abs(other.Factor) * limit.Scale));
        var met = ends.Meets(number.Si, scaled.Si, bound.Bound.IsUpper);
        var valueMoves = number.Low is not null || number.High is not null;
        var limitMoves = scaled.Low is not null || scaled.High is not null;
        var distance = Math.Abs(number.Si - scaled.Si);
        if (!valueMoves && !limitMoves)
        {
            return new Judgement(bound, met, Band.None, distance, null);
        }

        if (valueMoves && limitMoves && samples?.Find(rule.Quantity.Name, other.Quantity.Name, address) is { Count: > 0 } pairs)
        {
            return new Judgement(bound, met, OfSamples(pairs, other.Factor, scaled.Si, ends, bound.Bound.IsUpper), distance, null);
        }

        var note = valueMoves && limitMoves ? Note.Of(FindingNotes.EndsCombined) : null;
        return new Judgement(bound, met, Combined(number, scaled, ends, bound.Bound.IsUpper), distance, note);
    }

    // Without joint samples the worst end of one is held against the worst end of the other, which can only widen the band.
    private static Band Combined(NumberValue number, NumberValue limit, Ends ends, bool isUpper)
    {
        var (lowest, highest) = (number.Low ?? number.Si, number.High ?? number.Si);
        var (limitLowest, limitHighest) = (limit.Low ?? limit.Si, limit.High ?? limit.Si);
        return isUpper
            ? BandOf(ends.Meets(highest, limitLowest, isUpper), ends.Meets(lowest, limitHighest, isUpper))
            : BandOf(ends.Meets(lowest, limitHighest, isUpper), ends.Meets(highest, limitLowest, isUpper));
    }

    private static Band OfSamples(IReadOnlyList<(double Value, double Limit)> pairs, double factor, double limit, Ends ends, bool isUpper)
    {
        var differences = pairs.Select(pair => pair.Value - (factor * pair.Limit)).Order().ToArray();
        var low = limit + Quantiles.Of(differences, 0.05);
        var high = limit + Quantiles.Of(differences, 0.95);
        return isUpper
            ? BandOf(ends.Meets(high, limit, isUpper), ends.Meets(low, limit, isUpper))
            : BandOf(ends.Meets(low, limit, isUpper), ends.Meets(high, limit, isUpper));
    }

    private static Band BandOf(bool allMeet, bool someMeet) => allMeet ? Band.Meets : someMeet ? Band.Straddles : Band.Misses;

    /// <summary>The ends of a bound with their openness.</summary>
    private sealed record Ends(Bound Bound, Dimension Dimension, double Scale)
    {
        public bool Meets(double againstLow, double? low, double againstHigh, double? high) =>
            (low is not { } from || LimitComparison.MeetsLow(againstLow, from, Bound.LowExclusive, Dimension, Scale))
            && (high is not { } to || LimitComparison.MeetsHigh(againstHigh, to, Bound.HighExclusive, Dimension, Scale));

        public bool Meets(double value, double limit, bool isUpper) => isUpper
            ? LimitComparison.MeetsHigh(value, limit, Bound.HighExclusive, Dimension, Scale)
            : LimitComparison.MeetsLow(value, limit, Bound.LowExclusive, Dimension, Scale);
    }
}
