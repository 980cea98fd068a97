using Laygate.Engineering.Cooling;

namespace Laygate.Engineering.Mat;

/// <summary>Temperatures of a hot body at one moment, °C.</summary>
/// <param name="Skin">Skin.</param>
/// <param name="Core">Hottest point.</param>
/// <param name="Means">Mean of each course, from bottom to top.</param>
/// <param name="MidDepths">Middle of each course, from bottom to top.</param>
internal sealed record MatMoment(double Skin, double Core, IReadOnlyList<double> Means, IReadOnlyList<double> MidDepths)
{
    /// <summary>Core minus skin, K.</summary>
    public double CoreSkin => Core - Skin;

    /// <summary>The temperatures of a curve at one time of its solve; null where the curve does not reach it.</summary>
    public static MatMoment? Of(CoolingCurve curve, IReadOnlyList<int> layers, double time) =>
        curve.Value(CoolingPlace.Skin, time) is { } skin && curve.Value(CoolingPlace.Core, time) is { } core
            ? new MatMoment(
                skin,
                core,
                [.. layers.Select(layer => curve.Value(CoolingPlace.Mean(layer), time) ?? double.NaN)],
                [.. layers.Select(layer => curve.Value(CoolingPlace.MidDepth(layer), time) ?? double.NaN)])
            : null;
}
