namespace Laygate.Engineering.Mat;

/// <summary>An expected value with the 5 % and 95 % points of its samples.</summary>
/// <param name="Expected">Value at central assumptions; null where it is not reached.</param>
/// <param name="Low">5 % point.</param>
/// <param name="High">95 % point.</param>
internal sealed record MatBand(double? Expected, double Low, double High)
{
    /// <summary>Takes the band from samples; a sample that is not reached counts as the end of the time solved for. Without samples it has no width.</summary>
    public static MatBand Of(double? expected, IEnumerable<double?> samples, double end)
    {
        var sorted = samples.Select(sample => sample ?? end).Order().ToArray();
        if (sorted.Length == 0)
        {
            return new(expected, expected ?? end, expected ?? end);
        }

        return new(expected, Point(sorted, 0.05), Point(sorted, 0.95));
    }

    private static double Point(double[] sorted, double share)
    {
        if (sorted.Length == 1)
        {
            return sorted[0];
        }

        var place = share * (sorted.Length - 1);
        var i = Math.Min((int)place, sorted.Length - 2);
        return sorted[i] + ((place - i) * (sorted[i + 1] - sorted[i]));
    }
}
