using System.Runtime.InteropServices;
using Laygate.Engineering.Numerics;

namespace Laygate.Engineering.Supply.Simulation;

/// <summary>A time ready for sampling: the numbers of its shape worked out beforehand.</summary>
[StructLayout(LayoutKind.Auto)]
internal readonly struct Sampler
{
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

    /// <summary>The next time of a stream, s.</summary>
    public double Next(ref ulong state) => kind switch
    {
        SpreadKind.Constant => fixedPart,
        SpreadKind.Exponential => fixedPart + (a * Ziggurat.Exponential(ref state)),
        _ => fixedPart + Math.Exp(a + (b * Ziggurat.Normal(ref state))),
    };
}
