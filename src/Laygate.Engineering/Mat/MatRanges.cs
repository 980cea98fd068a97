using Laygate.Engineering.Cooling.Sampling;

namespace Laygate.Engineering.Mat;

/// <summary>
/// Dimensions over which a hot body is sampled, each from 0 (low end of the assumption) to 1 (high end). The expected case has no
/// share, which <see cref="MatModel"/> reads as the central value: it need not lie in the middle of its range.
/// </summary>
internal static class MatRanges
{
    public const int Mix = 0;
    public const int Heat = 1;
    public const int Emissive = 2;
    public const int Ground = 3;
    public const int Wind = 4;
    public const int Laying = 5;
    public const int Form = 6;
    public const int Sky = 7;
    public const int Absorptive = 8;
    public const int Cessation = 9;
    public const int Embedment = 10;
    public const int BuildUp = 11;
    public const int Sun = 12;
    public const int Rise = 13;
    public const int Film = 14;
    public const int Loose = 15;
    public const int Base = 16;
    public const int Air = 17;
    public const int Depth = 18;

    private static readonly string[] Names =
    [
        "conductivity of the mix", "specific heat", "emissivity", "ground", "wind", "laying temperature", "convection form", "sky", "absorptivity",
        "cessation", "embedment and marking", "build-up", "sun", "rise of the specific heat", "water below", "looseness", "base", "air", "base at depth",
    ];

    /// <summary>Central values in every dimension.</summary>
    public static double[] Central() => [.. Names.Select(_ => double.NaN)];

    /// <summary>
    /// The ranges. A mat is loose behind the screed and compacted soon after, so that a share near 0 (compacted) is likeliest while it is
    /// rolled; where it is followed until opening it counts as compacted.
    /// </summary>
    public static ParameterRange[] All(bool isRolled) =>
    [
        .. Names.Select((name, i) => i == Loose
            ? new ParameterRange(name, 0, isRolled ? double.NaN : 0, isRolled ? 0 : 1, isRolled ? RangeShape.Even : RangeShape.Triangular)
            : new ParameterRange(name, 0, double.NaN, 1)),
    ];
}
