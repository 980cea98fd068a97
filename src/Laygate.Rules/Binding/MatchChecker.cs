using Laygate.Engineering.Quantities;
using Laygate.Rules.Definitions;

namespace Laygate.Rules.Binding;

/// <summary>Checks conditions and the matches of table rows.</summary>
internal static class MatchChecker
{
    private static readonly IReadOnlyList<string> FlagWords = ["yes", "no"];
    private static readonly IReadOnlyList<string> PresenceWords = ["stated", "thin", "absent"];

    /// <summary>Checks a condition of a rule.</summary>
    public static CheckedMatch? Condition(Condition condition, RuleDefinition rule, BookPlace place, CheckContext context)
    {
        var quantity = context.Quantity(condition.Quantity, rule.AppliesTo, place.In("quantity"));
        return quantity is null ? null : Match(quantity, condition.Words, condition.AtLeast, condition.Below, place, "is", context);
    }

    /// <summary>Checks a match of a table row.</summary>
    public static CheckedMatch? Row(RowMatch match, QuantityDefinition key, BookPlace place, CheckContext context) =>
        match.Any ? new CheckedMatch(key, null, null, null, Any: true)
            : Match(key, match.Words, match.AtLeast, match.Below, place, step: null, context);

    /// <summary>Checks that words belong to a quantity's list.</summary>
    public static void CheckWords(QuantityDefinition quantity, IReadOnlyList<string> words, BookPlace place, CheckContext context)
    {
        if (words.Count == 0)
        {
            context.Problems.Add(place, new BookMistake.NoWords(quantity.Name));
        }

        var known = WordsOf(quantity);
        for (var index = 0; index < words.Count; index++)
        {
            if (known.Count > 0 && !known.Contains(words[index], StringComparer.Ordinal))
            {
                context.Problems.Add(
                    place.In(FormattableString.Invariant($"{index}")),
                    new BookMistake.UnknownWord(words[index], quantity.Name, known));
            }
        }
    }

    private static CheckedMatch? Match(
        QuantityDefinition quantity, IReadOnlyList<string>? words, LimitValue? atLeast, LimitValue? below, BookPlace place, string? step, CheckContext context)
    {
        if (quantity.Kind == ValueKind.Moment)
        {
            context.Problems.Add(place, new BookMistake.KindCannotMatch(quantity.Name, quantity.Kind));
            return null;
        }

        if (quantity.Kind == ValueKind.Number)
        {
            return Band(quantity, words, atLeast, below, place, context);
        }

        if (words is null || atLeast is not null || below is not null)
        {
            context.Problems.Add(
                place, new BookMistake.NumberForWords(quantity.Name, quantity.Kind, WordsOf(quantity)));
            return null;
        }

        CheckWords(quantity, words, step is null ? place : place.In(step), context);
        return new CheckedMatch(quantity, words, null, null, Any: false);
    }

    private static CheckedMatch? Band(
        QuantityDefinition quantity, IReadOnlyList<string>? words, LimitValue? atLeast, LimitValue? below, BookPlace place, CheckContext context)
    {
        if (words is not null || (atLeast is null && below is null))
        {
            context.Problems.Add(place, new BookMistake.WordsForNumber(quantity.Name));
            return null;
        }

        var low = context.End(atLeast, quantity, place.In("at_least"));
        var high = context.End(below, quantity, place.In("below"));
        if (low is not null && high is not null && low.Si >= high.Si)
        {
            context.Problems.Add(place, new BookMistake.EmptyRange(low.Stated.Text, high.Stated.Text));
        }

        return new CheckedMatch(quantity, null, low, high, Any: false);
    }

    private static IReadOnlyList<string> WordsOf(QuantityDefinition quantity) => quantity.Kind switch
    {
        ValueKind.Flag => FlagWords,
        ValueKind.Presence => PresenceWords,
        _ => quantity.Words,
    };
}
