using Laygate.Engineering.Quantities;
using Laygate.Model.Measures;
using Laygate.Model.Plans;
using Laygate.Reading.Measures;
using Laygate.Reading.Plans;
using Laygate.Reading.RuleFiles;
using Laygate.Reading.Yaml;

namespace Laygate.Checking.Cases;

/// <summary>Reads quantities that a case states directly.</summary>
internal static class GivenReader
{
    /// <summary>The word by which a case takes a value away that a base plan cannot do without.</summary>
    private const string NotStated = "not-stated";

    /// <summary>Gives a quantity its value in a context.</summary>
    /// <exception cref="CaseException">The plan has no such element, or the value does not fit the quantity.</exception>
    public static void Give(QuantityContext context, string address, string name, YamlToken token)
    {
        var quantity = context.Catalogue.Find(name) ?? throw new CaseException($"`{name}` is no quantity.");
        var element = context.Elements.Find(address) ?? throw new CaseException($"The plan has no element `{address}`.");
        if (element.Kind != quantity.Element)
        {
            throw new CaseException($"`{name}` is no quantity of `{address}`.");
        }

        var map = token as MapToken;
        var main = map is null ? (token as ScalarToken)?.Text : map.Text("expected");
        if (main is null)
        {
            throw new CaseException($"`{name}` is given without a value.");
        }

        var input = new InputReference(address, name[(name.IndexOf('.', StringComparison.Ordinal) + 1)..]);
        if (main is NotStated && !quantity.Words.Contains(NotStated, StringComparer.Ordinal))
        {
            context.Give(name, address, Answer.Missing(input));
            return;
        }

        var (value, unit) = Value(quantity, main, context);
        if (map is not null && value is NumberValue number)
        {
            value = number with { Low = End(quantity, map.Text("low")), High = End(quantity, map.Text("high")) };
        }

        context.Give(name, address, new Answer
        {
            Value = value,
            Unit = unit,
            Place = map?.Word<Place>("place") ?? quantity.Place,
            Input = input,
            Origin = Origin.Computed,
        });
    }

    private static (QuantityValue Value, Unit? Unit) Value(QuantityDefinition quantity, string text, QuantityContext context)
    {
        switch (quantity.Kind)
        {
            case ValueKind.Number:
                var (si, unit) = Number(quantity, text);
                return (new NumberValue(si), unit);
            case ValueKind.Flag when text is "yes" or "no":
                return (new FlagValue(text is "yes"), null);
            case ValueKind.Presence when Words.Find<PresenceLevel>(text) is { } level:
                return (new PresenceValue(level, []), null);
            case ValueKind.Moment when ScalarTexts.Moment(text) is { } moment:
                return (new MomentValue(new DateTimeOffset(moment.Local, moment.Offset ?? context.Plan.Shift?.Zone ?? TimeSpan.Zero)), null);
            case ValueKind.Category when quantity.Words.Count == 0 || quantity.Words.Contains(text, StringComparer.Ordinal):
                return (new CategoryValue(text), null);
            default:
                throw new CaseException($"`{quantity.Name}` cannot be `{text}`.");
        }
    }

    private static double? End(QuantityDefinition quantity, string? text) => text is null ? null : Number(quantity, text).Si;

    private static (double Si, Unit? Unit) Number(QuantityDefinition quantity, string text)
    {
        if (quantity.Dimension == Dimension.None)
        {
            return (MeasureReader.ReadNumber(text, out var wrong) ?? throw new CaseException($"`{quantity.Name}`: {wrong!.Message}"), null);
        }

        var (number, unit) = MeasureReader.Read(text, quantity.Dimension, out var problem) ?? throw new CaseException($"`{quantity.Name}`: {problem!.Message}");
        return (unit.ToSi(number), unit);
    }
}
