using Laygate.Model.Measures;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Quantities;

/// <summary>How a computed quantity is found.</summary>
/// <param name="Expression">Formula or rule.</param>
/// <param name="Source">Where it comes from.</param>
/// <param name="Range">Range in which it holds, and what happens outside.</param>
internal sealed record Method(string Expression, string Source, string Range);

/// <summary>Shape of a number: its dimension and the units in which computed values are shown.</summary>
/// <param name="Dimension">Dimension.</param>
/// <param name="Metric">Unit in metric plans.</param>
/// <param name="Us">Unit in US plans.</param>
internal sealed record Shape(Dimension Dimension, string Metric, string Us)
{
    public static readonly Shape None = new(Dimension.None, string.Empty, string.Empty);
    public static readonly Shape Thickness = new(Dimension.Length, "mm", "in");
    public static readonly Shape Length = new(Dimension.Length, "m", "ft");
    public static readonly Shape Temperature = new(Dimension.Temperature, "°C", "°F");
    public static readonly Shape Difference = new(Dimension.TemperatureDifference, "K", "K");
    public static readonly Shape Minutes = new(Dimension.Duration, "min", "min");
    public static readonly Shape Hours = new(Dimension.Duration, "h", "h");
    public static readonly Shape Days = new(Dimension.Duration, "d", "d");
    public static readonly Shape PaverSpeed = new(Dimension.Speed, "m/min", "ft/min");
    public static readonly Shape RoadSpeed = new(Dimension.Speed, "km/h", "mph");
    public static readonly Shape WindSpeed = new(Dimension.Speed, "m/s", "mph");
    public static readonly Shape Mass = new(Dimension.Mass, "t", "short ton");
    public static readonly Shape Flow = new(Dimension.MassFlow, "t/h", "short ton/h");
    public static readonly Shape Density = new(Dimension.Density, "t/m3", "lb/ft3");
    public static readonly Shape Spread = new(Dimension.MassPerArea, "kg/m2", "lb/yd2");
    public static readonly Shape Film = new(Dimension.VolumePerArea, "L/m2", "gal/yd2");
    public static readonly Shape Share = new(Dimension.Proportion, "%", "%");
    public static readonly Shape LineLoad = new(Dimension.ForcePerLength, "kN/m", "lb/in");
    public static readonly Shape Light = new(Dimension.Illuminance, "lx", "fc");
    public static readonly Shape InAir = new(Dimension.Concentration, "mg/m3", "mg/m3");
    public static readonly Shape Vibration = new(Dimension.Acceleration, "m/s2", "m/s2");
    public static readonly Shape Sun = new(Dimension.Irradiance, "W/m2", "W/m2");
    public static readonly Shape Voltage = new(Dimension.Voltage, "kV", "kV");
}

/// <summary>Makes the quantities of one kind of element.</summary>
internal sealed class Define(ElementKind kind)
{
    /// <summary>A number.</summary>
    public QuantityDefinition Number(
        string name, Shape shape, string meaning, Func<QuantityContext, Element, Answer> compute, Method? method = null, Place? place = null) => new()
        {
            Name = Named(name),
            Element = kind,
            Kind = ValueKind.Number,
            Dimension = shape.Dimension,
            MetricUnit = shape.Metric,
            UsUnit = shape.Us,
            Meaning = meaning,
            Place = place,
            Formula = method?.Expression ?? string.Empty,
            Source = method?.Source ?? string.Empty,
            Range = method?.Range ?? string.Empty,
            Compute = compute,
        };

    /// <summary>A word of a closed list, or of an open one when the list is empty.</summary>
    public QuantityDefinition Category(
        string name, IReadOnlyList<string> words, string meaning, Func<QuantityContext, Element, Answer> compute) =>
        Plain(name, ValueKind.Category, meaning, compute) with { Words = words };

    /// <summary>A yes or no.</summary>
    public QuantityDefinition Flag(string name, string meaning, Func<QuantityContext, Element, Answer> compute) =>
        Plain(name, ValueKind.Flag, meaning, compute);

    /// <summary>A presence.</summary>
    public QuantityDefinition Presence(string name, string meaning, Func<QuantityContext, Element, Answer> compute) =>
        Plain(name, ValueKind.Presence, meaning, compute);

    /// <summary>A moment.</summary>
    public QuantityDefinition Moment(string name, string meaning, Func<QuantityContext, Element, Answer> compute) =>
        Plain(name, ValueKind.Moment, meaning, compute);

    /// <summary>A stated number.</summary>
    public QuantityDefinition Stated<T>(string name, Shape shape, string key, string meaning, Func<T, IMeasure?> read)
        where T : class => Number(name, shape, meaning, (_, e) => Answers.Measure(Read(e, read), Input(e, key)));

    /// <summary>A stated temperature with its place.</summary>
    public QuantityDefinition StatedTemperature<T>(string name, string key, string meaning, Func<T, (IMeasure? Value, Place? Place)> read)
        where T : class => Number(name, Shape.Temperature, meaning, (_, e) =>
        {
            var (value, place) = e.Subject is T subject ? read(subject) : default;
            return Answers.Measure(value, Input(e, key), place);
        });

    /// <summary>A stated count.</summary>
    public QuantityDefinition StatedCount<T>(string name, string key, string meaning, Func<T, int?> read)
        where T : class => Number(name, Shape.None, meaning, (_, e) =>
            Answers.Count(e.Subject is T subject ? read(subject) : null, Input(e, key)));

    /// <summary>A stated word.</summary>
    public QuantityDefinition StatedWord<T, TWord>(string name, string key, string meaning, Func<T, TWord?> read)
        where T : class
        where TWord : struct, Enum => Category(name, Words.Of<TWord>(), meaning, (_, e) =>
            Answers.Word(e.Subject is T subject && read(subject) is { } word ? Words.Of(word) : null, Input(e, key)));

    /// <summary>A stated yes or no.</summary>
    public QuantityDefinition StatedFlag<T>(string name, string key, string meaning, Func<T, bool?> read)
        where T : class => Flag(name, meaning, (_, e) => Answers.Flag(e.Subject is T subject ? read(subject) : null, Input(e, key)));

    /// <summary>Presence of a text or block with fields.</summary>
    public QuantityDefinition StatedFields<T>(string name, string key, string meaning, Func<T?, (string Key, bool Given)[]> read)
        where T : class => Presence(name, meaning, (_, e) => Answers.Fields(Input(e, key), read(e.Subject as T)));

    private static IMeasure? Read<T>(Element element, Func<T, IMeasure?> read)
        where T : class => element.Subject is T subject ? read(subject) : null;

    private static InputReference Input(Element element, string key) => new(element.Address, key);

    private string Named(string name) => $"{Words.Of(kind)}.{name}";

    private QuantityDefinition Plain(string name, ValueKind valueKind, string meaning, Func<QuantityContext, Element, Answer> compute) => new()
    {
        Name = Named(name),
        Element = kind,
        Kind = valueKind,
        Meaning = meaning,
        Compute = compute,
    };
}
