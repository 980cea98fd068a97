namespace Laygate.Engineering.Numerics;

/// <summary>
/// Random numbers from one word of state: the same seed gives the same numbers on every machine and version. SplitMix64 (Steele,
/// Lea and Flood 2014, from memory); a stream is a start far away in the same period, and each load has a place in it, which
/// the sources of MathNet.Numerics cannot be set to.
/// </summary>
internal static class RandomStream
{
    private const ulong Step = 0x9E3779B97F4A7C15;

    /// <summary>Start of a stream, mixed from what tells it apart.</summary>
    public static ulong Start(ulong seed, int replication, int stream)
    {
        var state = seed + (Step * (ulong)(uint)stream);
        state = Next(ref state) + (0xD1B54A32D192ED03 * ((ulong)(uint)replication + 1));
        return Next(ref state);
    }

    /// <summary>
    /// Start of the draws that belong to one thing, such as a load, inside a stream: the same thing meets the same luck whatever
    /// else the plan changes (common random numbers). Each has room for 64 numbers, far more than one time takes.
    /// </summary>
    public static ulong Of(ulong stream, int number) => unchecked(stream + (Step * (64 * (ulong)(uint)number)));

    /// <summary>64 random bits.</summary>
    public static ulong Next(ref ulong state)
    {
        state += Step;
        var z = state;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
        return z ^ (z >> 31);
    }

    /// <summary>A number above 0 and below 1.</summary>
    public static double Fraction(ref ulong state) => ((Next(ref state) >> 11) + 0.5) * (1.0 / (1UL << 53));
}
