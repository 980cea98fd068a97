using System.Runtime.InteropServices;

namespace Laygate.Engineering.Cooling;

/// <summary>A complete question to the cooling kernel.</summary>
/// <param name="Layers">Layers from top to bottom of the finished stack.</param>
/// <param name="Top">What happens at the skin.</param>
/// <param name="Bottom">What happens at the bottom.</param>
/// <param name="Duration">Time in s to solve for; positive.</param>
public sealed record CoolingProblem(
    IReadOnlyList<StackLayer> Layers,
    TopBoundary Top,
    BottomBoundary Bottom,
    double Duration)
{
    /// <summary>Grid, step and tolerance settings; the same for expected values of check and verify.</summary>
    public CoolingSettings Settings { get; init; } = CoolingSettings.Default;

    /// <summary>Ends the solve early, at the first step end at which a course mean is below a temperature.</summary>
    public CoolingStop? StopAt { get; init; }
}

/// <summary>Ends a solve when a layer is laid and its mean is below a temperature.</summary>
/// <param name="Layer">Index of the layer, from the top.</param>
/// <param name="Celsius">Temperature in °C.</param>
/// <param name="NotBefore">Time in s before which it does not end.</param>
public sealed record CoolingStop(int Layer, double Celsius, double NotBefore = 0);

/// <summary>Numerical settings.</summary>
/// <param name="FinestCell">Width of the finest cells, at faces where temperatures jump, as a diffusion time root in √s:
/// a cell of width dz has dz/√alpha. 0.5 is about 0.4 mm of asphalt.</param>
/// <param name="Growth">Growth of the cell width with the distance from such a face (width = finest + growth · distance).</param>
/// <param name="Tolerance">Error allowed per time step in K (weighted root mean square over the hot depth).</param>
/// <param name="MaxSteps">Most time steps of one solve, rejected ones included.</param>
public sealed record CoolingSettings(double FinestCell, double Growth, double Tolerance, int MaxSteps)
{
    /// <summary>The settings of expected values, in check and verify.</summary>
    public static CoolingSettings Default { get; } = new(0.5, 0.15, 1e-3, 50_000);

    /// <summary>
    /// Half as many cells and two thirds of the steps: for samples, whose spread is a hundred times the difference, and for the search for a worst moment,
    /// whose answer is then solved with <see cref="Default"/>. A third of the time.
    /// </summary>
    public static CoolingSettings Coarse { get; } = Default with { FinestCell = 1.5, Growth = 0.3, Tolerance = 0.01 };

    /// <summary>The same grading with cells and steps finer by a factor, for studies of convergence.</summary>
    public CoolingSettings Finer(double factor) =>
        new(FinestCell / factor, Growth / factor, Tolerance / Math.Pow(factor, 4), MaxSteps * 10);
}

/// <summary>Why a problem cannot be computed.</summary>
public enum CoolingFailureKind
{
    /// <summary>The stack has no layer.</summary>
    NoLayers,

    /// <summary>A thickness, property, temperature or time is not a usable number.</summary>
    UnusableValue,

    /// <summary>A layer is laid before the one below it, or after the end of the solve.</summary>
    OrderOfLaying,

    /// <summary>The settings or the grid exceed their bounds.</summary>
    Settings,

    /// <summary>The number of steps reached its bound before the end.</summary>
    TooManySteps,

    /// <summary>The result was not a finite number.</summary>
    NotFinite,
}

/// <summary>Why a problem cannot be computed, and what it is about.</summary>
/// <param name="Kind">The kind of failure.</param>
/// <param name="Subject">The layer or part of the problem concerned.</param>
/// <param name="Reason">What is wrong, in words.</param>
public sealed record CoolingFailure(CoolingFailureKind Kind, string Subject, string Reason);

/// <summary>Either a curve or the reason why there is none.</summary>
/// <param name="Curve">The recorded solve; belongs to the solver and is valid until its next solve (see <see cref="CoolingCurve.Keep"/>).</param>
/// <param name="Failure">Why nothing could be computed.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct CoolingResult(CoolingCurve? Curve, CoolingFailure? Failure);
