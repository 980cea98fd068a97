using System.Globalization;
using Laygate.Reading.Yaml;

namespace Laygate.Reading.Schema;

/// <summary>Words problems with single values.</summary>
internal static class ScalarWording
{
    /// <summary>Everything one schema says about a scalar of an allowed kind.</summary>
    /// <param name="scalar">The scalar.</param>
    /// <param name="node">The schema.</param>
    /// <param name="whole">The schema that the first is a part of; it says what is needed.</param>
    /// <param name="place">Where the scalar stands.</param>
    public static IEnumerable<Found> Check(ScalarToken scalar, SchemaNode node, SchemaNode whole, NamedPlace place)
    {
        var problem = Word(scalar, node, place) ?? Pattern(scalar, node, whole, place) ?? Length(scalar, node, place) ?? Range(scalar, node, place);
        return problem is null ? [] : [new Found(problem, Fit: node.Words.Count == 1 ? Misfit.OtherWord : Misfit.Detail)];
    }

    /// <summary>A value of a kind that does not fit: a list for a measure, a number for a text.</summary>
    public static ReadingProblem WrongKind(YamlToken token, SchemaNode node, NamedPlace place) =>
        token is ScalarToken scalar
            ? WrongForm(scalar, node, place)
            : new ReadingProblem($"{place.Capital} needs {(place.IsTop ? Needs.Kind(Needs.KindsOf(node)) : Needs.Of(node))}, not {TokenNames.Of(token)}.", place.Anchor);

    /// <summary>A scalar that is none of the forms that may stand here.</summary>
    public static ReadingProblem WrongForm(ScalarToken scalar, SchemaNode node, NamedPlace place)
    {
        var trap = ScalarTraps.Explain(scalar);
        var why = trap is null ? string.Empty : $": {trap.Explanation}";
        return new ReadingProblem($"{place.Capital} needs {Needs.Of(node)}, not {TokenNames.Of(scalar)}{why}.", scalar.Span, Advice(scalar, node, trap));
    }

    private static string? Advice(ScalarToken scalar, SchemaNode node, ScalarTrap? trap)
    {
        if (trap?.RightForm is { } right)
        {
            return $"Write `{right}`.";
        }

        var takesText = Needs.KindsOf(node) is var kinds && (kinds == ValueKinds.None || kinds.HasFlag(ValueKinds.Text));
        return IsNumber(scalar.Text, scalar.Style) ? NumberAdvice(scalar, node, takesText)
            : !takesText && IsNumber(scalar.Text, ScalarStyle.Plain) ? $"Write it without quotes: `{scalar.Text}`."
            : null;
    }

    private static string? NumberAdvice(ScalarToken scalar, SchemaNode node, bool takesText)
    {
        if (!takesText)
        {
            return null;
        }

        var parts = node.Conjuncts.ToList();
        var isRightAsText = parts.TrueForAll(part => part.Alternatives.Count == 0 && part.Words.Count == 0 && part.Pattern?.Matches(scalar.Text) != false);
        if (isRightAsText)
        {
            return $"Put it in quotes: `\"{scalar.Text}\"`.";
        }

        var measure = Needs.Examples(node).FirstOrDefault(example => example.Contains(' ', StringComparison.Ordinal));
        return measure is null ? null : $"Write the unit behind the number, with a blank between them, as in `{measure}`.";
    }

    private static bool IsNumber(string text, ScalarStyle style) =>
        ScalarForms.Classify(text, style) is ScalarKind.WholeNumber or ScalarKind.DecimalNumber;

    private static ReadingProblem? Word(ScalarToken scalar, SchemaNode node, NamedPlace place)
    {
        if (node.Words.Count == 0 || node.Words.Contains(scalar.Text, StringComparer.Ordinal))
        {
            return null;
        }

        var near = SameAnswer(scalar.Text, node.Words) ?? NearestNames.Of(scalar.Text, node.Words);
        var ordered = near.Concat(node.Words.Except(near, StringComparer.Ordinal)).ToList();
        var allowed = ordered.Count == 1 ? $"only {Needs.Listed(ordered)} is allowed" : $"it must be one of {Needs.Listed(ordered)}";
        return new ReadingProblem(
            $"{place.Capital} cannot be {TokenNames.Quote(scalar.Text)}; {allowed}.",
            scalar.Span,
            near.Count > 0 ? $"Did you mean `{near[0]}`?" : null);
    }

    // Where yes or no is asked for, the words that other formats use are understood well enough to name the right one.
    private static IReadOnlyList<string>? SameAnswer(string text, List<string> words)
    {
        var answer = text.ToUpperInvariant() switch { "TRUE" or "ON" or "Y" => "yes", "FALSE" or "OFF" or "N" => "no", _ => null };
        return answer is not null && words.Contains(answer, StringComparer.Ordinal) ? [answer] : null;
    }

    private static ReadingProblem? Pattern(ScalarToken scalar, SchemaNode node, SchemaNode whole, NamedPlace place) =>
        scalar.Kind != ScalarKind.Text || node.Pattern is null || node.Pattern.Matches(scalar.Text) ? null : WrongForm(scalar, whole, place);

    private static ReadingProblem? Length(ScalarToken scalar, SchemaNode node, NamedPlace place)
    {
        if (scalar.Kind != ScalarKind.Text)
        {
            return null;
        }

        var length = scalar.Text.Length;
        if (length == 0 && node.MinLength > 0)
        {
            return new ReadingProblem($"{place.Capital} is an empty text.", scalar.Span, "Write a value or remove the key.");
        }

        if (length < node.MinLength)
        {
            return new ReadingProblem(string.Create(CultureInfo.InvariantCulture, $"{place.Capital} has {length} characters; at least {node.MinLength} are needed."), scalar.Span);
        }

        return length > node.MaxLength
            ? new ReadingProblem(string.Create(CultureInfo.InvariantCulture, $"{place.Capital} has {length} characters; at most {node.MaxLength} are allowed."), scalar.Span)
            : null;
    }

    private static ReadingProblem? Range(ScalarToken scalar, SchemaNode node, NamedPlace place)
    {
        if (scalar.Kind is not (ScalarKind.WholeNumber or ScalarKind.DecimalNumber))
        {
            return null;
        }

        var value = decimal.Parse(scalar.Text, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture);
        var limit = value < node.Minimum ? $"at least {Number(node.Minimum)}"
            : value > node.Maximum ? $"at most {Number(node.Maximum)}"
            : value <= node.ExclusiveMinimum ? $"more than {Number(node.ExclusiveMinimum)}"
            : value >= node.ExclusiveMaximum ? $"less than {Number(node.ExclusiveMaximum)}"
            : null;
        return limit is null ? null : new ReadingProblem($"{place.Capital} is {scalar.Text}; it must be {limit}.", scalar.Span);
    }

    private static string Number(decimal? value) => (value ?? 0).ToString(CultureInfo.InvariantCulture);
}
