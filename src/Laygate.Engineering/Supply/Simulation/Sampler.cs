using System.Runtime.InteropServices;
using Laygate.Engineering.Numerics;
using MathNet.Numerics.Distributions;

namespace Laygate.Engineering.Supply.Simulation;

/// <summary>A time ready for sampling: the numbers of its shape worked out beforehand.</summary>
[StructLayout(LayoutKind.Auto)]
internal readonly struct Sampler
{
    private const ulong Another = 0xD1B54A32D192ED03; // Draws that no load has.

    private readonly SpreadKind kind;
    private readonly double a;
    private readonly double b;
    private readonly double fixedPart;

    public Sampler(TimeSpread time)
    {
        kind = time.Kind;
        fixedPart = time.Fixed + (kind == SpreadKind.Constant ? time.Mean : 0);
        a = kind == SpreadKind.Lognormal ? time.LogMean : time.Mean;
        b = kind == SpreadKind.Lognormal ? time.LogDeviation : 0;
    }

    /// <summary>The time that belongs to one thing of a stream, s.</summary>
    public double Of(ulong stream, int number)
    {
        var state = RandomStream.Of(stream, number);
        return Next(ref state);
    }

    /// <summary>The time that belongs to one thing of a stream, which is known to take longer than some time, s: its own where that is longer, else another of those that are.</summary>
    public double Of(ulong stream, int number, double longerThan)
    {
        var own = Of(stream, number);
        if (own > longerThan)
        {
            return own;
        }

        var state = RandomStream.Of(stream, number) + Another;
        var share = RandomStream.Fraction(ref state);
        return kind switch
        {
            SpreadKind.Constant => longerThan,
            SpreadKind.Exponential => Math.Max(longerThan, fixedPart) - (a * Math.Log(share)),
            _ => Math.Max(longerThan, fixedPart + Math.Exp(a - (b * Normal.InvCDF(0, 1, share * Normal.CDF(0, 1, -(Math.Log(longerThan - fixedPart) - a) / b))))),
        };
    }

    /// <summary>The next time of a stream, s.</summary>
    public double Next(ref ulong state) => kind switch
    {
        SpreadKind.Constant => fixedPart,
        SpreadKind.Exponential => fixedPart + (a * Ziggurat.Exponential(ref state)),
        _ => fixedPart + Math.Exp(a + (b * Ziggurat.Normal(ref state))),
    };
}
