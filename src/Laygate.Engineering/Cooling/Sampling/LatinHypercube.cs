using Laygate.Engineering.Numerics;

namespace Laygate.Engineering.Cooling.Sampling;

/// <summary>Stratified samples of the unit cube.</summary>
public static class LatinHypercube
{
    /// <summary>
    /// Samples such that in every dimension each of <paramref name="count"/> equal strata holds exactly one, at a random
    /// place within it; the strata of different dimensions are paired at random.
    /// </summary>
    /// <remarks>Source: McKay, Beckman and Conover, Technometrics 21 (1979) 239–245 (recalled).</remarks>
    /// <param name="count">Number of samples; positive.</param>
    /// <param name="dimensions">Number of dimensions.</param>
    /// <param name="seed">Seed.</param>
    /// <returns>Shares from 0 to below 1, one row of dimensions per sample.</returns>
    public static double[] Points(int count, int dimensions, int seed)
    {
        var points = new double[count * dimensions];
        var strata = new int[count];
        var state = (ulong)(uint)seed;
        for (var d = 0; d < dimensions; d++)
        {
            Shuffle(strata, ref state);
            for (var i = 0; i < count; i++)
            {
                points[(i * dimensions) + d] = (strata[i] + Next(ref state)) / count;
            }
        }

        return points;
    }

    private static void Shuffle(int[] strata, ref ulong state)
    {
        for (var i = 0; i < strata.Length; i++)
        {
            strata[i] = i;
        }

        for (var i = strata.Length - 1; i > 0; i--)
        {
            var j = (int)(Next(ref state) * (i + 1));
            (strata[i], strata[j]) = (strata[j], strata[i]);
        }
    }

    /// <summary>Next number from 0 to below 1, of 53 bits.</summary>
    private static double Next(ref ulong state) => (RandomStream.Next(ref state) >> 11) * (1.0 / (1UL << 53));
}
