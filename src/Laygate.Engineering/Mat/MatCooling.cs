using Laygate.Engineering.Cooling;
using Laygate.Engineering.Quantities;
using Laygate.Engineering.Reading;

namespace Laygate.Engineering.Mat;

/// <summary>What is read from one cooling curve while rolling; times in s after the screed concerned, null where not reached.</summary>
/// <param name="Windows">Densification window of each course of the hot body, from bottom to top.</param>
/// <param name="Grit">Until the skin is too cold for grit.</param>
/// <param name="CoreSkin">Largest core-skin difference during the rolling, K.</param>
/// <param name="UnderVibration">Largest core-skin difference under each vibrating roller while the skin is tender, K.</param>
/// <param name="Bears">Until each course is down to its start temperature, where it has one, from bottom to top.</param>
/// <param name="Moments">Temperatures at the times of the passes.</param>
internal sealed record MatReading(
    IReadOnlyList<double?> Windows, double? Grit, double? CoreSkin, IReadOnlyList<double> UnderVibration,
    IReadOnlyList<double?> Bears, IReadOnlyList<MatMoment?> Moments);

/// <summary>Cooling of the hot bodies of one plan; solves once and keeps what it read.</summary>
internal sealed class MatCooling(QuantityContext context)
{
    /// <summary>Samples for low and high.</summary>
    public const int Samples = 64;

    /// <summary>Longest time solved for while rolling, s.</summary>
    public const double LongestRolling = 12 * 3600;

    /// <summary>Longest time solved for until opening, s.</summary>
    public const double LongestOpening = 72 * 3600;

    private readonly CoolingSolver solver = new();
    private readonly Dictionary<PavingPass, FastCooling> fast = [];
    private SlowCooling? slow;

    /// <summary>The cooling of a context.</summary>
    public static MatCooling Of(QuantityContext context) => context.Service(c => new MatCooling(c));

    /// <summary>Cooling of a hot body in the worst hour of laying. The pass must be one whose inputs are complete.</summary>
    public FastCooling While(PavingPass pass)
    {
        if (!fast.TryGetValue(pass, out var known))
        {
            known = FastCooling.Solve(context, solver, pass);
            fast[pass] = known;
        }

        return known;
    }

    /// <summary>Cooling of the uppermost hot body from the last metre on.</summary>
    public SlowCooling Until(PavingPass pass) => slow ??= SlowCooling.Solve(context, solver, pass);
}
