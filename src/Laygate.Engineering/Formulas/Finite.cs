using UnitsNet;

namespace Laygate.Engineering.Formulas;

/// <summary>Keeps unusable numbers out of results.</summary>
internal static class Finite
{
    /// <summary>Whether a number is finite and above zero.</summary>
    public static bool Positive(double value) => value > 0 && double.IsFinite(value);

    /// <summary>Whether a number is finite and not below zero.</summary>
    public static bool NotNegative(double value) => value >= 0 && double.IsFinite(value);

    /// <summary>Whether all numbers are finite and above zero.</summary>
    public static bool Positive(double a, double b, double c) => Positive(a) && Positive(b) && Positive(c);

    /// <summary>A quantity from a number, or null where the number is not finite, which UnitsNet would refuse with an exception.</summary>
    public static T? Of<T>(double value, Func<QuantityValue, T> make)
        where T : struct => double.IsFinite(value) ? make(value) : null;
}
