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

/// <summary>A stated number with its unit; <typeparamref name="T"/> says of which dimension.</summary>
/// <param name="Number">The number as stated.</param>
/// <param name="Unit">The unit as stated.</param>
/// <typeparam name="T">Its dimension.</typeparam>
public sealed record Measure<T>(double Number, Unit Unit) : IMeasure
    where T : IDimension
{
    /// <inheritdoc/>
    public double Si => Unit.ToSi(Number);
}
