using System.Globalization;
using Laygate.Engineering.Quantities;
using Laygate.Model.Measures;
using Laygate.Rules.Binding;
using Laygate.Rules.Definitions;
using Laygate.Rules.Results;

namespace Laygate.Rules.Evaluation;

/// <summary>Turns SI values into what a reader is shown: the unit of the plan where it states the value, else the quantity's own.</summary>
internal sealed class Display(QuantityContext context)
{
    /// <summary>The unit in which a value is shown; null for words, ratios and counts.</summary>
    public Unit? UnitOf(QuantityDefinition quantity, Answer answer) =>
        quantity.Kind != ValueKind.Number || quantity.Dimension == Dimension.None ? null : answer.Unit ?? context.UnitOf(quantity);

    /// <summary>A value as shown.</summary>
    public ShownValue Value(QuantityDefinition quantity, Answer answer)
    {
        if (answer.Value is not NumberValue number)
        {
            return new ShownValue(null, string.Empty, Text: TextOf(answer.Value));
        }

        var unit = UnitOf(quantity, answer);
        return Number(number.Si, number.Low, number.High, unit) with { Place = answer.Place ?? quantity.Place };
    }

    /// <summary>The limit of a bound in the unit of the value.</summary>
    public ShownLimit Limit(ResolvedBound resolved, QuantityDefinition quantity, Answer value, IReadOnlyDictionary<string, Source> sources)
    {
        var bound = resolved.Bound;
        var unit = UnitOf(quantity, value);
        var (low, high) = Ends(resolved, quantity, unit);
        return new ShownLimit(
            bound.Definition.Strength,
            bound.Definition.Basis,
            low is null ? null : low with { Place = bound.Definition.Place },
            high is null ? null : high with { Place = bound.Definition.Place },
            bound.Definition.LowExclusive,
            bound.Definition.HighExclusive,
            Stated(resolved, unit),
            (bound.Limit as CheckedQuantity)?.Quantity.Name,
            (bound.Limit as CheckedQuantity)?.Factor,
            resolved.Source,
            sources.GetValueOrDefault(resolved.Source.Source),
            bound.Layer,
            bound.SetBy);
    }

    private static (ShownValue? Low, ShownValue? High) Ends(ResolvedBound resolved, QuantityDefinition quantity, Unit? unit)
    {
        if (resolved.Range is { } range)
        {
            return (range.Low is null ? null : Number(range.Low.Si, null, null, unit), range.High is null ? null : Number(range.High.Si, null, null, unit));
        }

        return resolved.Bound.Limit switch
        {
            CheckedWords words => (Text(string.Join(", ", words.Words)), null),
            CheckedQuantity other => OfQuantity(resolved, other, quantity, unit),
            _ => (Text("stated"), null),
        };
    }

    private static (ShownValue? Low, ShownValue? High) OfQuantity(ResolvedBound resolved, CheckedQuantity other, QuantityDefinition quantity, Unit? unit)
    {
        var shown = resolved.Other!.Value is NumberValue number
            ? Number(number.Si * other.Factor, number.Low * other.Factor, number.High * other.Factor, unit)
            : Text(TextOf(resolved.Other.Value));
        var isUpper = quantity.Kind == ValueKind.Number && resolved.Bound.IsUpper;
        return isUpper ? (null, shown) : (shown, null);
    }

    private string? Stated(ResolvedBound resolved, Unit? unit)
    {
        if (resolved.Range is { } range)
        {
            var ends = new[] { range.Low, range.High }.OfType<LimitEnd>().ToList();
            return ends.Exists(end => Differs(UnitTable.Find(end.Stated.Unit), unit))
                ? string.Join(" to ", ends.Select(end => end.Stated.Text))
                : null;
        }

        if (resolved.Bound.Limit is not CheckedQuantity other || resolved.Other!.Value is not NumberValue number
            || UnitOf(other.Quantity, resolved.Other) is not { } own || !Differs(own, unit))
        {
            return null;
        }

        return string.Create(CultureInfo.InvariantCulture, $"{own.FromSi(number.Si):G6} {own.Spelling}");
    }

    private static bool Differs(Unit? stated, Unit? shown) =>
        stated is not null && shown is not null && (!stated.Factor.Equals(shown.Factor) || !stated.Offset.Equals(shown.Offset));

    // Where assumptions of a whole range give one value, there is no band to show.
    private static ShownValue Number(double si, double? low, double? high, Unit? unit) => new NumberValue(si, low, high).IsSpread
        ? new(In(si, unit), unit?.Spelling ?? string.Empty, low is { } from ? In(from, unit) : null, high is { } to ? In(to, unit) : null)
        : new(In(si, unit), unit?.Spelling ?? string.Empty);

    private static double In(double si, Unit? unit) => unit is null ? si : unit.FromSi(si);

    private static ShownValue Text(string text) => new(null, string.Empty, Text: text);

    private static string TextOf(QuantityValue? value) => value is MomentValue moment
        ? moment.At.ToString("yyyy-MM-dd'T'HH:mmzzz", CultureInfo.InvariantCulture)
        : Matching.WordOf(value) ?? string.Empty;
}
