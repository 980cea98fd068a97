using Laygate.Engineering.Quantities;
using Laygate.Model.Measures;
using Laygate.Rules.Definitions;

namespace Laygate.Rules.Binding;

/// <summary>What every check of a definition needs: the catalogue, the bibliography, and where mistakes go.</summary>
internal sealed record CheckContext(QuantityCatalogue Catalogue, IReadOnlyDictionary<string, Source> Sources, BookProblems Problems)
{
    /// <summary>Finds a quantity that a rule on an element may refer to; reports and gives null when it may not.</summary>
    public QuantityDefinition? Quantity(string name, ElementKind element, BookPlace place)
    {
        var quantity = Catalogue.Find(name);
        if (quantity is null)
        {
            Problems.Add(place, new BookMistake.UnknownQuantity(name));
            return null;
        }

        if (PlanElements.CanRelate(element, quantity.Element))
        {
            return quantity;
        }

        Problems.Add(
            place, new BookMistake.UnrelatedQuantity(element, name, quantity.Element));
        return null;
    }

    /// <summary>Turns a number with unit into SI; reports and gives null when the unit does not fit.</summary>
    public LimitEnd? End(LimitValue? value, QuantityDefinition quantity, BookPlace place)
    {
        if (value is null)
        {
            return null;
        }

        if (quantity.Dimension == Dimension.None || value.Unit.Length == 0)
        {
            return Unitless(value, quantity, place);
        }

        var unit = UnitTable.Find(value.Unit);
        if (unit is null)
        {
            Problems.Add(place, new BookMistake.UnknownUnit(value.Unit, Units(quantity.Dimension)));
            return null;
        }

        if (unit.Dimension == quantity.Dimension)
        {
            return new LimitEnd(unit.ToSi(value.Number), value);
        }

        Problems.Add(
            place, new BookMistake.WrongUnit(value.Unit, quantity.Name, Units(quantity.Dimension)));
        return null;
    }

    /// <summary>Checks where a limit comes from.</summary>
    public void Source(SourceReference source, BookPlace place)
    {
        if (!Sources.ContainsKey(source.Source))
        {
            Problems.Add(place.In("id"), new BookMistake.UnknownSource(source.Source));
        }

        if (source is { ValidFrom: { } from, ValidTo: { } to } && to < from)
        {
            Problems.Add(place.In("valid_to"), new BookMistake.EndsBeforeItStarts(from, to));
        }

        if (source.Evidence == Evidence.Confirmed != source.Confirmation is not null)
        {
            Problems.Add(place.In("evidence"), new BookMistake.ConfirmationIncomplete());
        }
    }

    private LimitEnd? Unitless(LimitValue value, QuantityDefinition quantity, BookPlace place)
    {
        if (value.Unit.Length > 0)
        {
            Problems.Add(place, new BookMistake.NeedlessUnit(value.Unit, quantity.Name));
            return null;
        }

        if (quantity.Dimension == Dimension.None)
        {
            return new LimitEnd(value.Number, value);
        }

        Problems.Add(
            place, new BookMistake.MissingUnit(value.Text, quantity.Name, Units(quantity.Dimension)));
        return null;
    }

    private static string[] Units(Dimension dimension) => [.. UnitTable.Of(dimension).Select(unit => unit.Spelling)];
}

/// <summary>Dates as text.</summary>
internal static class Dates
{
    /// <summary>Year, month and day.</summary>
    public static string Text(DateOnly date) => date.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);
}
