using Laygate.Model.Measures;

namespace Laygate.Engineering.Quantities.Values;

/// <summary>A number that a plan states, as something that a rule may be about.</summary>
/// <param name="Owner">Address of the element that states it.</param>
/// <param name="Key">Key within the element, with dots.</param>
/// <param name="Sort">What is measured, a word of <see cref="ValueSorts"/>; values of one sort are usual within one range.</param>
/// <param name="Measure">The number with its unit; null for a count.</param>
/// <param name="Count">The count; null for a number with a unit.</param>
public sealed record StatedValue(string Owner, string Key, string Sort, IMeasure? Measure, int? Count)
{
    /// <summary>Owner, <c>/</c> and key: <c>course:wearing/thickness</c>.</summary>
    public string Address => $"{Owner}/{Key}";

    /// <summary>Its dimension.</summary>
    public Dimension Dimension => Measure?.Unit.Dimension ?? Dimension.None;

    /// <summary>The number in the SI unit of its dimension (°C for temperatures); a count as it is.</summary>
    public double Si => Measure?.Si ?? Count ?? double.NaN;
}
