using Laygate.Engineering.Numerics;

namespace Laygate.Engineering.Cooling.Sampling;

/// <summary>Answers of all samples to all questions.</summary>
public sealed class SampledAnswers
{
    private readonly double[] parameters;
    private readonly double[] answers;
    private readonly double[] sorted;
    private readonly double[] expected;

    internal SampledAnswers(int count, double[] parameters, double[] answers, double[] expected)
    {
        (Count, this.parameters, this.answers, this.expected) = (count, parameters, answers, expected);
        sorted = [.. answers];
        for (var q = 0; q < expected.Length; q++)
        {
            Array.Sort(sorted, q * count, count);
        }
    }

    /// <summary>Number of samples.</summary>
    public int Count { get; }

    /// <summary>Answer with every parameter at its expected value.</summary>
    public double Expected(int question) => expected[question];

    /// <summary>5 % point: a twentieth of the samples lies below it.</summary>
    public double Low(int question) => Point(question, 0.05);

    /// <summary>95 % point: a twentieth of the samples lies above it.</summary>
    public double High(int question) => Point(question, 0.95);

    /// <summary>Answer of one sample. Sets of one seed, count and number of ranges hold the same samples, so differences
    /// between them may be taken sample by sample.</summary>
    public double Sample(int question, int sample) => answers[(question * Count) + sample];

    /// <summary>
    /// The samples around an expected answer that was solved more exactly than they were: all are moved by what the two differ in, but none to or
    /// through zero, which says that there was nothing to answer.
    /// </summary>
    /// <param name="question">Index of the question.</param>
    /// <param name="expected">The more exact answer; where it or that of the samples is not finite, nothing moves.</param>
    public IEnumerable<double> Around(int question, double expected)
    {
        var moved = expected - Expected(question);
        return Enumerable.Range(0, Count).Select(i => Sample(question, i)).Select(sample => double.IsFinite(moved) && sample is > 0 or < 0 ? Math.Max(Math.Min(0, sample), sample + moved) : sample);
    }

    /// <summary>Parameters of one sample, in the order of the ranges.</summary>
    public ReadOnlySpan<double> Parameters(int sample)
    {
        var dimensions = parameters.Length / Count;
        return parameters.AsSpan(sample * dimensions, dimensions);
    }

    /// <summary>
    /// Point below which a share of the samples lies (<see cref="Quantiles"/>). Infinite where the points it lies between are;
    /// NaN where a sample has no answer.
    /// </summary>
    /// <param name="question">Index of the question.</param>
    /// <param name="share">0 to 1.</param>
    public double Point(int question, double share)
    {
        var row = sorted.AsSpan(question * Count, Count);
        return double.IsNaN(row[0]) ? double.NaN : Quantiles.Of(row, share);
    }
}

/// <summary>Either answers or the reason why a sample could not be computed.</summary>
/// <param name="Answers">The answers.</param>
/// <param name="Failure">Failure of the expected case, else of the first sample that failed.</param>
public sealed record SamplingResult(SampledAnswers? Answers, CoolingFailure? Failure);
