using Laygate.Model.Measures;
using Laygate.Reading.Measures;
using Laygate.Reading.Yaml;

namespace Laygate.Checking.Verification;

/// <summary>What a value of a case file measures: a dimension of plans, or one that only verification needs.</summary>
internal sealed class CaseDimension
{
    private readonly Dimension known;

    private CaseDimension(Dimension known, string noun, string example, IReadOnlyList<Unit> units) =>
        (this.known, Noun, Example, Units) = (known, noun, example, units);

    public static CaseDimension Length { get; } = Known(Dimension.Length);

    public static CaseDimension Area { get; } = Known(Dimension.Area);

    public static CaseDimension Temperature { get; } = Known(Dimension.Temperature);

    public static CaseDimension TemperatureDifference { get; } = Known(Dimension.TemperatureDifference);

    public static CaseDimension Duration { get; } = Known(Dimension.Duration);

    public static CaseDimension Speed { get; } = Known(Dimension.Speed);

    public static CaseDimension Mass { get; } = Known(Dimension.Mass);

    public static CaseDimension MassFlow { get; } = Known(Dimension.MassFlow);

    public static CaseDimension Density { get; } = Known(Dimension.Density);

    public static CaseDimension MassPerArea { get; } = Known(Dimension.MassPerArea);

    public static CaseDimension Volume { get; } = Known(Dimension.Volume);

    public static CaseDimension VolumePerArea { get; } = Known(Dimension.VolumePerArea);

    public static CaseDimension Proportion { get; } = Known(Dimension.Proportion);

    public static CaseDimension Frequency { get; } = Known(Dimension.Frequency);

    public static CaseDimension Irradiance { get; } = Known(Dimension.Irradiance);

    public static CaseDimension Angle { get; } = Known(Dimension.Angle);

    /// <summary>A count or ratio without a unit.</summary>
    public static CaseDimension Plain { get; } = new(Dimension.None, "a number without a unit", "3", []);

    /// <summary>A whole number.</summary>
    public static CaseDimension Count { get; } = new(Dimension.None, "a whole number", "3", []);

    public static CaseDimension Conductivity { get; } = Own("a thermal conductivity", "W/(m K)", "1.2");

    public static CaseDimension SpecificHeat { get; } = Own("a specific heat", "J/(kg K)", "920");

    public static CaseDimension Coefficient { get; } = Own("a heat transfer coefficient", "W/(m2 K)", "25");

    public static CaseDimension Resistance { get; } = Own("a thermal resistance", "m2 K/W", "0.01");

    public static CaseDimension RainRate { get; } = Own("a rate of rain", "mm/h", "1");

    public static CaseDimension AreaPerTime { get; } = new(
        Dimension.None, "an area per time", "1100 m2/h", [new Unit("m2/h", Dimension.None, 1.0 / 3600), new Unit("m2/s", Dimension.None, 1)]);

    public static CaseDimension MassPerLength { get; } = new(
        Dimension.None, "a mass per length", "1.7 t/m", [new Unit("t/m", Dimension.None, 1000), new Unit("kg/m", Dimension.None, 1), new Unit("lb/ft", Dimension.None, 0.45359237 / 0.3048)]);

    /// <summary>Mass per area for a thickness, as the trade states densities.</summary>
    public static CaseDimension RatePerThickness { get; } = new(
        Dimension.None, "a mass per area and thickness", "110 lb/(yd2 in)",
        [new Unit("lb/(yd2 in)", Dimension.None, 0.45359237 / (9 * 0.3048 * 0.3048 * 0.0254)), new Unit("kg/(m2 mm)", Dimension.None, 1000), new Unit("kg/(m2 cm)", Dimension.None, 100), .. UnitTable.Of(Dimension.Density)]);

    /// <summary>A density, in pounds per gallon too.</summary>
    public static CaseDimension DensityByGallon { get; } = new(
        Dimension.None, "a density", "8.328 lb/gal", [new Unit("lb/gal", Dimension.None, 0.45359237 / 3.785411784e-3), new Unit("kg/L", Dimension.None, 1000), .. UnitTable.Of(Dimension.Density)]);

    public static CaseDimension Roughness { get; } = new(
        Dimension.None, "a roughness", "1.2 m/km", [new Unit("m/km", Dimension.None, 1e-3), new Unit("in/mi", Dimension.None, 0.0254 / 1609.344)]);

    public static CaseDimension LoadPerWidth { get; } = new(
        Dimension.None, "a load per width", "40 kN/m", [new Unit("kN/m", Dimension.None, 1000), new Unit("N/m", Dimension.None, 1)]);

    /// <summary>The dimension with its article.</summary>
    public string Noun { get; }

    /// <summary>A well-written value.</summary>
    public string Example { get; }

    /// <summary>Its units; none for plain numbers.</summary>
    public IReadOnlyList<Unit> Units { get; }

    /// <summary>Dimension of differences: of two temperatures it is the temperature difference.</summary>
    public CaseDimension OfDifferences => known == Dimension.Temperature ? TemperatureDifference : this;

    /// <summary>The unit of a spelling, or null.</summary>
    public Unit? Find(string spelling)
    {
        var digits = spelling.Replace('²', '2').Replace('³', '3');
        return Units.FirstOrDefault(unit => string.Equals(unit.Spelling, digits, StringComparison.Ordinal));
    }

    /// <summary>A value in SI units (temperatures in °C), or the problem.</summary>
    public double? Read(ScalarToken token, List<ReadingProblem> problems)
    {
        if (Units.Count == 0)
        {
            return ReadPlain(token, problems);
        }

        if (MeasureText.Split(token.Text) is { } parts && Find(parts.Unit) is { } unit)
        {
            return unit.ToSi(double.Parse(parts.Number, System.Globalization.CultureInfo.InvariantCulture));
        }

        var explained = known == Dimension.None ? null : MeasureReader.Explain(token.Text, known);
        problems.Add(new ReadingProblem(
            explained?.Message ?? $"{TokenNames.Quote(token.Text)} is not {Noun}.",
            token.Span,
            explained?.Hint ?? $"Write a number, one blank and a unit, such as `{Example}`."));
        return null;
    }

    private static CaseDimension Known(Dimension dimension) =>
        new(dimension, MeasureDimensions.Noun(dimension), MeasureDimensions.Example(dimension), [.. UnitTable.Of(dimension)]);

    private static CaseDimension Own(string noun, string unit, string number) =>
        new(Dimension.None, noun, $"{number} {unit}", [new Unit(unit, Dimension.None, 1)]);

    private double? ReadPlain(ScalarToken token, List<ReadingProblem> problems)
    {
        if (token.Kind is ScalarKind.WholeNumber || (token.Kind is ScalarKind.DecimalNumber && this != Count))
        {
            return double.Parse(token.Text, System.Globalization.CultureInfo.InvariantCulture);
        }

        problems.Add(new ReadingProblem($"{TokenNames.Quote(token.Text)} is not {Noun}.", token.Span, $"Write the digits alone, such as `{Example}`."));
        return null;
    }
}
