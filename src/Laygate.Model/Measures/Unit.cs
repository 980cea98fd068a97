namespace Laygate.Model.Measures;

/// <summary>Family of units that people of one place use together; reports answer in the family of the plan.</summary>
public enum UnitSystem
{
    /// <summary>Metric units.</summary>
    Metric,

    /// <summary>United States customary units.</summary>
    UnitedStates,
}

/// <summary>One spelling of a unit, with the exact step to the SI unit of its dimension.</summary>
/// <param name="Spelling">The text after the number, for example <c>mm</c>; letter case matters.</param>
/// <param name="Dimension">What it measures.</param>
/// <param name="Factor">SI value of one unit (before the offset).</param>
/// <param name="Offset">Added after the factor; only for temperatures.</param>
/// <param name="System">The family that the unit belongs to.</param>
/// <param name="Source">Where the factor comes from, where no independent table of units has it.</param>
public sealed record Unit(
    string Spelling,
    Dimension Dimension,
    double Factor,
    double Offset = 0,
    UnitSystem System = UnitSystem.Metric,
    string? Source = null)
{
    /// <summary>Turns a number in this unit into the SI unit of the dimension (°C for temperatures).</summary>
    public double ToSi(double number) => (number * Factor) + Offset;

    /// <summary>Turns an SI value (°C for temperatures) into a number in this unit.</summary>
    public double FromSi(double si) => (si - Offset) / Factor;
}
