using MathNet.Numerics;

namespace Laygate.Engineering.Acceptance;

/// <summary>
/// Distances that chance alone exceeds with a given share. The library's own inverses give up where the distance is large (F beyond 1000, as with two results on
/// one side) or the share small; the incomplete beta function below them does not.
/// </summary>
internal static class Tails
{
    /// <summary>Lowest logarithm at which a share of the beta function is looked for; below it no double holds the distance.</summary>
    private const double Lowest = -690;

    /// <summary>t with P(|T| &gt; t) = share; null where no double holds it.</summary>
    /// <param name="degrees">Degrees of freedom, above zero.</param>
    /// <param name="share">Share beyond on both sides together, above 0 and below 1.</param>
    public static double? T(double degrees, double share) =>
        Inverse(degrees / 2, 0.5, share) is { } x ? Math.Sqrt(degrees * (1 - x) / x) : null;

    /// <summary>f with P(F &gt; f) = share; null where no double holds it.</summary>
    /// <param name="first">Degrees of freedom of the numerator, above zero.</param>
    /// <param name="second">Degrees of freedom of the denominator, above zero.</param>
    /// <param name="share">Share beyond, above 0 and below 1.</param>
    public static double? F(double first, double second, double share) =>
        Inverse(second / 2, first / 2, share) is { } x ? second * (1 - x) / (first * x) : null;

    // The x at which the regularised incomplete beta function reaches the share: halved in the logarithm, where small ones keep their digits.
    private static double? Inverse(double a, double b, double share)
    {
        var (low, high) = (Lowest, 0.0);
        if (SpecialFunctions.BetaRegularized(a, b, Math.Exp(low)) >= share)
        {
            return null;
        }

        for (var i = 0; i < 100; i++)
        {
            var middle = (low + high) / 2;
            (low, high) = SpecialFunctions.BetaRegularized(a, b, Math.Exp(middle)) < share ? (middle, high) : (low, middle);
        }

        return Math.Exp((low + high) / 2);
    }
}
