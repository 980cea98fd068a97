namespace Laygate.Engineering.Mat;

/// <summary>Stratified samples: in each dimension every one of the equal slices of 0 to 1 holds exactly one sample.</summary>
internal static class LatinHypercube
{
    /// <summary>Draws samples.</summary>
    /// <param name="count">Number of samples.</param>
    /// <param name="dimensions">Number of dimensions.</param>
    /// <param name="seed">Seed; the same seed gives the same samples on every machine.</param>
    /// <returns>Samples by dimension, each above 0 and below 1.</returns>
    public static double[][] Draw(int count, int dimensions, ulong seed)
    {
        var state = seed;
        var samples = new double[count][];
        for (var i = 0; i < count; i++)
        {
            samples[i] = new double[dimensions];
        }

        var order = new int[count];
        for (var d = 0; d < dimensions; d++)
        {
            Shuffle(order, ref state);
            for (var i = 0; i < count; i++)
            {
                samples[i][d] = (order[i] + Fraction(ref state)) / count;
            }
        }

        return samples;
    }

    private static void Shuffle(int[] order, ref ulong state)
    {
        for (var i = 0; i < order.Length; i++)
        {
            order[i] = i;
        }

        for (var i = order.Length - 1; i > 0; i--)
        {
            var j = (int)(Next(ref state) % (ulong)(i + 1));
            (order[i], order[j]) = (order[j], order[i]);
        }
    }

    private static double Fraction(ref ulong state) => ((Next(ref state) >> 11) + 0.5) / (1UL << 53);

    /// <summary>SplitMix64, Steele, Lea and Flood 2014 (from memory).</summary>
    private static ulong Next(ref ulong state)
    {
        state += 0x9E3779B97F4A7C15;
        var z = state;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
        return z ^ (z >> 31);
    }
}
