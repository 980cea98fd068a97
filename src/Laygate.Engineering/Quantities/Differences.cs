namespace Laygate.Engineering.Quantities;

/// <summary>Differences that are held against zero. Figures that are equal as they are written leave no remainder of the conversion of units.</summary>
internal static class Differences
{
    private const double Rounding = 1e-9;

    /// <summary>One number less others; exactly zero where no more than the rounding of binary numbers is left.</summary>
    /// <param name="from">The number, in SI.</param>
    /// <param name="less">What is taken from it, in SI.</param>
    public static double Of(double from, params ReadOnlySpan<double> less)
    {
        var (rest, scale) = (from, Math.Abs(from));
        foreach (var part in less)
        {
            (rest, scale) = (rest - part, Math.Max(scale, Math.Abs(part)));
        }

        return Math.Abs(rest) <= Rounding * scale ? 0 : rest;
    }
}
