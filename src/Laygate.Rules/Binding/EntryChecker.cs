using Laygate.Engineering.Quantities;
using Laygate.Rules.Definitions;

namespace Laygate.Rules.Binding;

/// <summary>Checks which entries a bound asks of a list: known kinds, known keys, and lines only where there is a list.</summary>
internal static class EntryChecker
{
    /// <summary>Checks the lines; gives null when they cannot be used.</summary>
    public static CheckedPresence? Check(PresenceLimit limit, QuantityDefinition quantity, BookPlace place, CheckContext context)
    {
        var before = context.Problems.Count;
        var isList = quantity.EntryNeeds.Count > 0;
        if (isList != limit.Entries.Count > 0)
        {
            context.Problems.Add(place.In("entries"), isList ? new BookMistake.EntriesMissing(quantity.Name) : new BookMistake.EntriesOfNoList(quantity.Name));
            return null;
        }

        for (var index = 0; index < limit.Entries.Count; index++)
        {
            var at = place.In("entries", index);
            Check(limit.Entries[index].AnyOf, quantity.Words, quantity, at.In("any_of"), context);
            Check(limit.Entries[index].Asks, quantity.EntryMay, quantity, at.In("asks"), context);
        }

        return context.Problems.Count == before ? new CheckedPresence(limit.Entries) : null;
    }

    private static void Check(IReadOnlyList<string> words, IReadOnlyList<string> known, QuantityDefinition quantity, BookPlace place, CheckContext context)
    {
        for (var index = 0; index < words.Count; index++)
        {
            if (!known.Contains(words[index], StringComparer.Ordinal))
            {
                context.Problems.Add(
                    place.In(FormattableString.Invariant($"{index}")),
                    new BookMistake.UnknownWord(words[index], quantity.Name, known));
            }
        }
    }
}
