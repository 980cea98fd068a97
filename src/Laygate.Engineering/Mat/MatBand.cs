using Laygate.Engineering.Numerics;

namespace Laygate.Engineering.Mat;

/// <summary>An expected value with the 5 % and 95 % points of its samples.</summary>
/// <param name="Expected">Value at central assumptions; null where it is not reached.</param>
/// <param name="Low">5 % point.</param>
/// <param name="High">95 % point.</param>
internal sealed record MatBand(double? Expected, double Low, double High)
{
    /// <summary>The samples in the order in which they were drawn; null where some have no value.</summary>
    public IReadOnlyList<double>? Samples { get; init; }

    /// <summary>The expected value with its ends, which samples do not put on its other side; null where it is not reached.</summary>
    public (double Expected, double Low, double High)? Ends => Expected is { } expected ? (expected, Math.Min(Low, expected), Math.Max(High, expected)) : null;

    /// <summary>The more careful of two bands of one question: its expected value, each sample and both ends are the more unfavourable ones.</summary>
    /// <param name="other">The other band, of the same samples.</param>
    /// <param name="highIsWorse">Whether a high answer is the unfavourable one.</param>
    public MatBand Careful(MatBand other, bool highIsWorse)
    {
        double Worse(double a, double b) => double.IsNaN(b) ? a : double.IsNaN(a) ? b : highIsWorse ? Math.Max(a, b) : Math.Min(a, b);
        var expected = Worse(Whole, other.Whole);
        var samples = Samples is { } own && other.Samples is { } others && own.Count == others.Count ? own.Zip(others, Worse).ToArray() : null;
        double? known = double.IsFinite(expected) ? expected : null;
        return samples is null
            ? new MatBand(known, Worse(Low, other.Low), Worse(High, other.High))
            : new MatBand(known, Quantiles.Of([.. samples.Order()], 0.05), Quantiles.Of([.. samples.Order()], 0.95)) { Samples = samples };
    }

    // What is not reached counts as later than all; a value that does not exist as none.
    private double Whole => Expected ?? (High > 0 ? double.PositiveInfinity : double.NaN);

    /// <summary>Takes the band from samples.</summary>
    /// <param name="expected">Value at central assumptions; not finite where there is none.</param>
    /// <param name="samples">Samples: positive infinity where a time is not reached, not a number where there is no value.</param>
    /// <param name="end">Time solved for, which a sample counts that is not reached.</param>
    public static MatBand Of(double expected, IEnumerable<double> samples, double end)
    {
        double[] drawn = [.. samples.Select(sample => double.IsPositiveInfinity(sample) ? end : sample)];
        double? known = double.IsFinite(expected) ? expected : null;
        var absent = double.IsPositiveInfinity(expected) ? end : 0;
        var sorted = drawn.Where(double.IsFinite).Order().ToArray();
        return sorted.Length < 2
            ? new MatBand(known, known ?? absent, known ?? absent)
            : new MatBand(known, Quantiles.Of(sorted, 0.05), Quantiles.Of(sorted, 0.95)) { Samples = sorted.Length == drawn.Length ? drawn : null };
    }
}
