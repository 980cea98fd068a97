using Laygate.Engineering.Cooling;

namespace Laygate.Engineering.Mat;

/// <summary>How the temperatures below the surface that is laid upon are known.</summary>
internal enum BaseSource
{
    /// <summary>As at the surface, within a range: neither stated nor to be worked out.</summary>
    Assumed,

    /// <summary>What the days before leave.</summary>
    Computed,

    /// <summary>Stated at depth.</summary>
    Stated,
}

/// <summary>
/// Temperatures below the surface that is laid upon, as differences from it: straight lines between the depths, constant below the last.
/// </summary>
/// <param name="Source">How they are known.</param>
/// <param name="Depths">Depths below the surface in m, rising, the first 0.</param>
/// <param name="Differences">Temperature there less that of the surface, K; for <see cref="BaseSource.Assumed"/> the share of the assumed difference that is reached there.</param>
internal sealed record BaseProfile(BaseSource Source, double[] Depths, double[] Differences)
{
    /// <summary>
    /// Depth in m within which an assumed difference comes to 63 %: the daily wave falls to 1/e within √(2 α/ω), 0.12 to 0.14 m for the
    /// asphalt of the catalogue (Carslaw and Jaeger, Conduction of Heat in Solids, 2nd ed., chapter 2; worked out there with α 5.7 to 7.1e-7 m²/s).
    /// </summary>
    private const double DailyDepth = 0.13;

    /// <summary>Least distance of two depths of one layer, m: below it rounding could make them one.</summary>
    private const double Apart = 1e-6;

    private static readonly double[] Usual = [0, 0.01, 0.025, 0.05, 0.075, 0.1, 0.15, 0.2, 0.3, 0.5];

    /// <summary>The shape of a difference that nobody knows.</summary>
    public static BaseProfile Unknown { get; } = new(BaseSource.Assumed, Usual, [.. Usual.Select(depth => 1 - Math.Exp(-depth / DailyDepth))]);

    /// <summary>Depths at which a computed profile is read, m.</summary>
    public static IReadOnlyList<double> ReadAt => Usual;

    /// <summary>Difference from the surface at a depth in m, K.</summary>
    public double At(double depth)
    {
        var i = 1;
        while (i < Depths.Length && Depths[i] < depth)
        {
            i++;
        }

        return i >= Depths.Length
            ? Differences[^1]
            : Differences[i - 1] + ((depth - Depths[i - 1]) / (Depths[i] - Depths[i - 1]) * (Differences[i] - Differences[i - 1]));
    }

    /// <summary>Temperature of one layer of the base.</summary>
    /// <param name="surface">Temperature of the surface, °C.</param>
    /// <param name="scale">Factor of the differences.</param>
    /// <param name="top">Depth of its top face below the surface, m.</param>
    /// <param name="thickness">Its thickness, m; it goes on below with its last value.</param>
    /// <param name="highest">It is never warmer than this, °C.</param>
    /// <param name="isLast">Whether nothing lies below it, so that it goes on down to the last depth.</param>
    public InitialTemperature Layer(double surface, double scale, double top, double thickness, double highest, bool isLast)
    {
        if (scale.Equals(0))
        {
            return InitialTemperature.Constant(Math.Min(surface, highest));
        }

        var bottom = isLast ? Math.Max(top + thickness, Depths[^1]) : top + thickness;
        double[] within = [top, .. Depths.Where(depth => depth > top + Apart && depth < bottom - Apart), bottom];
        return InitialTemperature.Profile([.. within.Select(depth => (depth.Equals(bottom) && !isLast ? thickness : depth - top, Math.Min(surface + (scale * At(depth)), highest)))]);
    }
}
