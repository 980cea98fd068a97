using Laygate.Model.Measures;

namespace Laygate.Engineering.Quantities.Values;

/// <summary>Stated numbers, each as an element of its own: what is measured, and the number of each dimension.</summary>
internal static class ValueQuantities
{
    private static readonly Define Value = new(ElementKind.Value);

    public static IEnumerable<QuantityDefinition> All() =>
    [
        Value.Category("sort", ValueSorts.All, "What a stated number measures.", (_, e) =>
            Answers.Word(e.Subject is StatedValue value ? value.Sort : null, Input(e))),
        Number("temperature", Shape.Temperature),
        Number("length", Shape.Length),
        Number("area", new Shape(Dimension.Area, "m2", "ft2")),
        Number("speed", Shape.RoadSpeed),
        Number("mass", Shape.Mass),
        Number("flow", Shape.Flow),
        Number("duration", Shape.Minutes),
        Number("share", Shape.Share),
        Number("spread", Shape.Spread),
        Number("film", Shape.Film),
        Number("frequency", new Shape(Dimension.Frequency, "Hz", "vpm")),
        Number("line_load", Shape.LineLoad),
        Number("temperature_difference", Shape.Difference),
        Number("light", Shape.Light),
        Number("acceleration", Shape.Vibration),
        Number("concentration", Shape.InAir),
        Number("sun", Shape.Sun),
        Number("voltage", Shape.Voltage),
        Value.Number("count", Shape.None, "Stated count.", (_, e) =>
            Answers.Count(e.Subject is StatedValue { Measure: null } value ? value.Count : null, Input(e))),
    ];

    private static QuantityDefinition Number(string name, Shape shape) =>
        Value.Number(name, shape, $"Stated {name.Replace('_', ' ')}.", (_, e) =>
            Answers.Measure(e.Subject is StatedValue value && value.Dimension == shape.Dimension ? value.Measure : null, Input(e)));

    private static InputReference Input(Element element) =>
        element.Subject is StatedValue value ? new InputReference(value.Owner, value.Key) : new InputReference(element.Address, string.Empty);
}
