namespace Laygate.Engineering.Mat;

/// <summary>The largest of many answers along an even grid, when they rise and fall over several steps: every third is asked, and around each rise all.</summary>
internal static class GridPeak
{
    private const int Stride = 3;

    /// <summary>The largest answer; null where none has one.</summary>
    /// <param name="count">Points of the grid.</param>
    /// <param name="answer">Answer at a point; null where there is none.</param>
    public static double? Largest(int count, Func<int, double?> answer)
    {
        if (count <= 0)
        {
            return null;
        }

        var coarse = new double?[((count - 1) / Stride) + 1];
        for (var i = 0; i < coarse.Length; i++)
        {
            coarse[i] = answer(i * Stride);
        }

        double? largest = null;
        for (var i = 0; i < coarse.Length; i++)
        {
            largest = Larger(largest, coarse[i]);
            if (IsAbove(coarse, i, i - 1) && IsAbove(coarse, i, i + 1))
            {
                var last = Math.Min(count - 1, ((i + 1) * Stride) - 1);
                for (var point = Math.Max(0, ((i - 1) * Stride) + 1); point <= last; point++)
                {
                    largest = point == i * Stride ? largest : Larger(largest, answer(point));
                }
            }
        }

        return largest;
    }

    // What has no answer is looked at closely from both sides.
    private static bool IsAbove(double?[] coarse, int i, int beside) =>
        beside < 0 || beside >= coarse.Length || coarse[i] is not { } here || coarse[beside] is not { } there || here >= there;

    private static double? Larger(double? one, double? other) => other is null || one >= other ? one : other;
}
