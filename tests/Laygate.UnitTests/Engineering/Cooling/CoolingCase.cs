using Laygate.Engineering.Cooling;

namespace Laygate.UnitTests.Engineering.Cooling;

/// <summary>Materials of the exact solutions, round numbers within the published ranges of mixes and bases, and shortcuts.</summary>
internal static class CoolingCase
{
    public static readonly LayerMaterial Hot = new(1.2, 2300, 920);
    public static readonly LayerMaterial Old = new(1.5, 2350, 900);
    public static readonly LayerMaterial Conc = new(2.0, 2350, 950);
    public static readonly LayerMaterial Gran = new(1.0, 2000, 900);
    public static readonly LayerMaterial Soil = new(1.5, 1800, 1500);
    public static readonly LayerMaterial Steel = new(50, 7850, 460);
    public static readonly LayerMaterial Bind = new(1.3, 2350, 900);

    public static readonly BottomBoundary HalfSpace = new BottomBoundary.HalfSpace();
    public static readonly TopBoundary Insulated = new TopBoundary.Insulated();

    public static LayerMaterial Named(string name) => name switch
    {
        "HOT" => Hot,
        "OLD" => Old,
        "CONC" => Conc,
        "GRAN" => Gran,
        "SOIL" => Soil,
        "STEEL" => Steel,
        _ => throw new ArgumentOutOfRangeException(nameof(name)),
    };

    public static CoolingCurve Solve(CoolingProblem problem)
    {
        var result = new CoolingSolver().Solve(problem);
        Assert.Null(result.Failure);
        return result.Curve!;
    }

    public static CoolingCurve Solve(IReadOnlyList<StackLayer> layers, TopBoundary top, BottomBoundary bottom, double duration) =>
        Solve(new CoolingProblem(layers, top, bottom, duration));

    public static void Near(double expected, double? actual, double tolerance)
    {
        Assert.NotNull(actual);
        Assert.True(Math.Abs(expected - actual.Value) <= tolerance, FormattableString.Invariant($"expected {expected}, computed {actual}, tolerance {tolerance}"));
    }
}
