using Laygate.Engineering.Quantities;
using Laygate.Model.Measures;
using Laygate.Rules.Definitions;

namespace Laygate.Rules.Binding;

/// <summary>Checks the limit of a bound against the check and the quantity that it limits.</summary>
internal sealed class LimitChecker(RuleDefinition rule, QuantityDefinition quantity, CheckContext context)
{
    /// <summary>Checks a bound's limit; gives null when it cannot be used.</summary>
    public CheckedLimit? Check(Bound bound, BookPlace place) => (bound.Limit, rule.Check) switch
    {
        (ConstantLimit constant, CheckKind.AtLeast or CheckKind.AtMost or CheckKind.Between) =>
            Range(constant.Low, constant.High, bound, place) is { } range ? new CheckedConstant(range) : null,
        (TableLimit table, CheckKind.AtLeast or CheckKind.AtMost or CheckKind.Between) =>
            new TableChecker(rule, context, (row, at) => Range(row.Low, row.High, bound, at)).Check(table, bound, place.In("table")),
        (QuantityLimit other, CheckKind.AtLeast or CheckKind.AtMost or CheckKind.NotBefore or CheckKind.Agrees) =>
            Other(other, bound, place),
        (WordsLimit words, CheckKind.Agrees) when quantity.Kind is ValueKind.Category or ValueKind.Flag => OfWords(words, place),
        (PresenceLimit presence, CheckKind.Present) => EntryChecker.Check(presence, quantity, place, context),
        _ => Unfit(bound.Limit, place),
    };

    private CheckedLimit? Unfit(Limit limit, BookPlace place)
    {
        context.Problems.Add(place, new BookMistake.LimitDoesNotFit(rule.Check, limit));
        return null;
    }

    private CheckedWords OfWords(WordsLimit words, BookPlace place)
    {
        MatchChecker.CheckWords(quantity, words.Words, place.In("words"), context);
        return new CheckedWords(words.Words);
    }

    private CheckedRange? Range(LimitValue? low, LimitValue? high, Bound bound, BookPlace place)
    {
        var before = context.Problems.Count;
        CheckEnds(low, high, place);
        var range = new CheckedRange(
            context.End(low, quantity, place.In(bound.LowExclusive ? "above" : "at_least")),
            context.End(high, quantity, place.In(bound.HighExclusive ? "below" : "at_most")));
        if (range is { Low: { } from, High: { } to } && (from.Si > to.Si || (from.Si >= to.Si && (bound.LowExclusive || bound.HighExclusive))))
        {
            context.Problems.Add(place, new BookMistake.EmptyRange(from.Stated.Text, to.Stated.Text));
        }

        return context.Problems.Count == before ? range : null;
    }

    private void CheckEnds(LimitValue? low, LimitValue? high, BookPlace place)
    {
        var needsLow = rule.Check is CheckKind.AtLeast or CheckKind.Between;
        var needsHigh = rule.Check is CheckKind.AtMost or CheckKind.Between;
        if (needsLow != low is not null)
        {
            context.Problems.Add(place, needsLow ? new BookMistake.MissingLowEnd(rule.Check) : new BookMistake.NeedlessLowEnd(rule.Check));
        }

        if (needsHigh != high is not null)
        {
            context.Problems.Add(place, needsHigh ? new BookMistake.MissingHighEnd(rule.Check) : new BookMistake.NeedlessHighEnd(rule.Check));
        }
    }

    private CheckedQuantity? Other(QuantityLimit limit, Bound bound, BookPlace place)
    {
        var at = place.In("quantity");
        var other = context.Quantity(limit.Quantity, rule.AppliesTo, at);
        if (other is null)
        {
            return null;
        }

        var before = context.Problems.Count;
        if (string.Equals(other.Name, quantity.Name, StringComparison.Ordinal))
        {
            context.Problems.Add(at, new BookMistake.LimitIsItself(other.Name));
        }
        else if (other.Kind != quantity.Kind || other.Dimension != quantity.Dimension)
        {
            context.Problems.Add(at, new BookMistake.QuantitiesDiffer(quantity.Name, other.Name));
        }

        CheckPlaces(other, bound, at);
        CheckFactor(limit, place);
        return context.Problems.Count == before ? new CheckedQuantity(other, limit.Factor, limit.FactorText) : null;
    }

    private void CheckPlaces(QuantityDefinition other, Bound bound, BookPlace place)
    {
        var limitPlace = bound.Place ?? other.Place;
        if (other.Place is { } own && limitPlace != own)
        {
            context.Problems.Add(place, new BookMistake.OtherPlace(other.Name, own, limitPlace!.Value));
        }
        else if (bound.Place is null && quantity.Place is { } here && other.Place is { } there && here != there)
        {
            context.Problems.Add(place, new BookMistake.OtherPlace(quantity.Name, here, there));
        }
    }

    private void CheckFactor(QuantityLimit limit, BookPlace place)
    {
        // Zero of the Celsius scale is arbitrary, so a multiple of a temperature means nothing; nor does one of a word or a moment.
        var mustBeOne = quantity.Kind != ValueKind.Number || quantity.Dimension == Dimension.Temperature || rule.Check == CheckKind.Agrees;
        if (!double.IsFinite(limit.Factor) || limit.Factor <= 0 || (mustBeOne && Math.Abs(limit.Factor - 1) > 0))
        {
            context.Problems.Add(
                place.In("times"), new BookMistake.WrongFactor(limit.Factor));
        }
    }
}
