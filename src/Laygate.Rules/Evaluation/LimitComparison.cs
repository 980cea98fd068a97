using Laygate.Engineering.Quantities;
using Laygate.Model.Measures;

namespace Laygate.Rules.Evaluation;

/// <summary>
/// The one place in which numbers meet limits. The tolerance covers rounding of unit conversions only (relative 1e-9); it is no engineering allowance.
/// A number that was worked out from larger ones carries their rounding too (<see cref="NumberValue.Scale"/>): 90 mm less 83 mm less 7 mm is nothing.
/// A value within rounding of a limit is on the limit: inside an inclusive end, outside an exclusive one.
/// </summary>
public static class LimitComparison
{
    /// <summary>Relative tolerance for rounding.</summary>
    public const double RelativeTolerance = 1e-9;

    private const double AbsoluteZeroBelowCelsius = 273.15;

    /// <summary>Whether two numbers are equal but for rounding.</summary>
    /// <param name="one">A number in SI (°C for temperatures).</param>
    /// <param name="other">The other.</param>
    /// <param name="dimension">Their dimension; temperatures are rounded on the absolute scale, because 0 °C is no zero.</param>
    /// <param name="scale">Largest figure from which either was worked out, in SI; 0 for stated ones.</param>
    public static bool AreEqual(double one, double other, Dimension dimension, double scale = 0)
    {
        // An open end equals only itself: the tolerance scales with the numbers and would swallow everything.
        if (double.IsInfinity(one) || double.IsInfinity(other))
        {
            return one.Equals(other);
        }

        var offset = dimension == Dimension.Temperature ? AbsoluteZeroBelowCelsius : 0;
        var larger = Math.Max(Math.Abs(one + offset), Math.Abs(other + offset));
        return Math.Abs(one - other) <= Math.Max(RelativeTolerance * larger, NumberValue.RoundingOfScale * scale);
    }

    /// <summary>Whether a value is on or above a lower end.</summary>
    /// <param name="value">Value in SI.</param>
    /// <param name="low">Lower end in SI.</param>
    /// <param name="exclusive">Whether the end itself is outside.</param>
    /// <param name="dimension">Dimension of both.</param>
    /// <param name="scale">Largest figure from which either was worked out, in SI; 0 for stated ones.</param>
    public static bool MeetsLow(double value, double low, bool exclusive, Dimension dimension, double scale = 0) =>
        AreEqual(value, low, dimension, scale) ? !exclusive : value > low;

    /// <summary>Whether a value is on or below an upper end.</summary>
    /// <param name="value">Value in SI.</param>
    /// <param name="high">Upper end in SI.</param>
    /// <param name="exclusive">Whether the end itself is outside.</param>
    /// <param name="dimension">Dimension of both.</param>
    /// <param name="scale">Largest figure from which either was worked out, in SI; 0 for stated ones.</param>
    public static bool MeetsHigh(double value, double high, bool exclusive, Dimension dimension, double scale = 0) =>
        AreEqual(value, high, dimension, scale) ? !exclusive : value < high;
}
