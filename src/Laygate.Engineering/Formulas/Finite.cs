
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

    /// <summary>A number, or null where it is not finite.</summary>
    public static double? OrNull(double value) => double.IsFinite(value) ? value : null;
}
