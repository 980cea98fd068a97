using UnitsNet;

namespace Laygate.Model.Measures;

/// <summary>A stated number with its unit, whatever its dimension.</summary>
public interface IMeasure
{
    /// <summary>The number as stated.</summary>
    double Number { get; }

    /// <summary>The unit as stated; reports answer in it.</summary>
    Unit Unit { get; }

    /// <summary>The value in the SI unit of its dimension (°C for temperatures).</summary>
    double Si { get; }
}

/// <summary>A stated number with its unit; <typeparamref name="T"/> is the UnitsNet type of its dimension.</summary>
/// <param name="Number">The number as stated.</param>
/// <param name="Unit">The unit as stated.</param>
/// <typeparam name="T">UnitsNet type; <see cref="FilmThickness"/> for volume per area, which UnitsNet has not.</typeparam>
public sealed record Measure<T>(double Number, Unit Unit) : IMeasure
    where T : struct
{
    /// <inheritdoc/>
    public double Si => Unit.ToSi(Number);
}

/// <summary>Volume per area, for example of a sprayed bond coat.</summary>
/// <param name="Metres">Film thickness in m; 1 L/m² is 0.001 m.</param>
public readonly record struct FilmThickness(double Metres);

/// <summary>Stated measures as UnitsNet values.</summary>
public static class MeasureValues
{
    /// <summary>The length.</summary>
    public static Length Value(this Measure<Length> measure) => Length.FromMeters(measure.Si);

    /// <summary>The area.</summary>
    public static Area Value(this Measure<Area> measure) => Area.FromSquareMeters(measure.Si);

    /// <summary>The temperature.</summary>
    public static Temperature Value(this Measure<Temperature> measure) => Temperature.FromDegreesCelsius(measure.Si);

    /// <summary>The temperature difference.</summary>
    public static TemperatureDelta Value(this Measure<TemperatureDelta> measure) => TemperatureDelta.FromKelvins(measure.Si);

    /// <summary>The elapsed time.</summary>
    public static Duration Value(this Measure<Duration> measure) => Duration.FromSeconds(measure.Si);

    /// <summary>The speed.</summary>
    public static Speed Value(this Measure<Speed> measure) => Speed.FromMetersPerSecond(measure.Si);

    /// <summary>The mass.</summary>
    public static Mass Value(this Measure<Mass> measure) => Mass.FromKilograms(measure.Si);

    /// <summary>The mass flow.</summary>
    public static MassFlow Value(this Measure<MassFlow> measure) => MassFlow.FromKilogramsPerSecond(measure.Si);

    /// <summary>The density.</summary>
    public static Density Value(this Measure<Density> measure) => Density.FromKilogramsPerCubicMeter(measure.Si);

    /// <summary>The mass per area.</summary>
    public static AreaDensity Value(this Measure<AreaDensity> measure) => AreaDensity.FromKilogramsPerSquareMeter(measure.Si);

    /// <summary>The volume per area.</summary>
    public static FilmThickness Value(this Measure<FilmThickness> measure) => new(measure.Si);

    /// <summary>The proportion.</summary>
    public static Ratio Value(this Measure<Ratio> measure) => Ratio.FromDecimalFractions(measure.Si);

    /// <summary>The frequency.</summary>
    public static Frequency Value(this Measure<Frequency> measure) => Frequency.FromHertz(measure.Si);
}
