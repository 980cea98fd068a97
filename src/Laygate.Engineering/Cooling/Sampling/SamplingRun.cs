namespace Laygate.Engineering.Cooling.Sampling;

/// <summary>The arrays of one run of a sampler; workers write to different places of them.</summary>
internal sealed class SamplingRun(Func<double[], CoolingProblem> build, IReadOnlyList<CoolingQuestion> questions, int count, int dimensions, CancellationToken cancel)
{
    private readonly CoolingFailure?[] failures = new CoolingFailure?[count];

    public double[] Parameters { get; } = new double[count * dimensions];

    /// <summary>One row of samples per question.</summary>
    public double[] Answers { get; } = new double[count * questions.Count];

    /// <summary>Failure of the sample with the lowest index.</summary>
    public CoolingFailure? Failure => Array.Find(failures, failure => failure is not null);

    public void Place(IReadOnlyList<ParameterRange> ranges, double[] shares)
    {
        for (var i = 0; i < shares.Length; i++)
        {
            Parameters[i] = ranges[i % dimensions].At(shares[i]);
        }
    }

    /// <summary>Solves every sample of one worker.</summary>
    public void Work(CoolingSolver solver, int first, int stride)
    {
        var vector = new double[dimensions];
        for (var i = first; i < count; i += stride)
        {
            cancel.ThrowIfCancellationRequested();
            Parameters.AsSpan(i * dimensions, dimensions).CopyTo(vector);
            failures[i] = Ask(solver, vector, Answers, i, count);
        }
    }

    /// <summary>Solves one problem and writes its answers from a place on, a stride apart.</summary>
    public CoolingFailure? Ask(CoolingSolver solver, double[] vector, double[] target, int place, int stride)
    {
        var result = solver.Solve(build(vector));
        if (result.Curve is not { } curve)
        {
            return result.Failure;
        }

        for (var q = 0; q < questions.Count; q++)
        {
            target[(q * stride) + place] = questions[q].Answer(curve, vector) ?? questions[q].Absent;
        }

        return null;
    }
}
