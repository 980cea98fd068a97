using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;
using Laygate.Rules.Binding;

namespace Laygate.Rules.Evaluation;

/// <summary>Holds the value of a quantity against what a condition or a table row asks.</summary>
internal static class Matching
{
    /// <summary>Whether a value matches.</summary>
    public static bool Matches(CheckedMatch match, QuantityValue value)
    {
        if (match.Any)
        {
            return true;
        }

        if (match.Words is { } words)
        {
            return WordOf(value) is { } word && words.Contains(word, StringComparer.Ordinal);
        }

        return value is NumberValue number && InBand(match, number);
    }

    /// <summary>The word of a category, flag or presence; null for numbers and moments.</summary>
    public static string? WordOf(QuantityValue? value) => value switch
    {
        CategoryValue category => category.Word,
        FlagValue flag => flag.Yes ? "yes" : "no",
        PresenceValue presence => Words.Of(presence.Level),
        _ => null,
    };

    // Half-open: the lower end belongs to the band, the upper end to the next one.
    private static bool InBand(CheckedMatch match, NumberValue value)
    {
        var dimension = match.Quantity.Dimension;
        return (match.AtLeast is not { } low || LimitComparison.MeetsLow(value.Si, low.Si, exclusive: false, dimension, value.Scale))
            && (match.Below is not { } high || LimitComparison.MeetsHigh(value.Si, high.Si, exclusive: true, dimension, value.Scale));
    }
}
