namespace Laygate.Engineering.Cooling.Sampling;

/// <summary>
/// Carries the ranges of properties into low and high ends of answers by solving many sampled problems.
/// </summary>
/// <remarks>Each sample is solved alone and written to its own place, so the number of workers changes nothing in the
/// result. Solvers are kept: of the memory only the answers and the problems themselves are new with each run.
/// A sampler serves one caller at a time.</remarks>
public sealed class CoolingSampler
{
    private readonly CoolingSolver[] solvers;

    /// <summary>Makes a sampler of two workers.</summary>
    public CoolingSampler()
        : this(2)
    {
    }

    /// <summary>Makes a sampler.</summary>
    /// <param name="workers">Number of solves at the same time, 1 to 64; results do not depend on it.</param>
    public CoolingSampler(int workers)
    {
        solvers = new CoolingSolver[Math.Clamp(workers, 1, 64)];
        for (var i = 0; i < solvers.Length; i++)
        {
            solvers[i] = new();
        }
    }

    /// <summary>Samples the ranges, solves and asks.</summary>
    /// <param name="ranges">Ranges of the parameters.</param>
    /// <param name="build">Builds a problem from a value for each range; called from several threads, must not keep the array.</param>
    /// <param name="questions">Questions to each curve.</param>
    /// <param name="count">Number of samples; 64 for a check, 300 on request. Positive.</param>
    /// <param name="seed">Seed of the samples.</param>
    /// <param name="cancel">Calls the run off between two solves.</param>
    /// <exception cref="OperationCanceledException">It was called off.</exception>
    public SamplingResult Run(
        IReadOnlyList<ParameterRange> ranges, Func<double[], CoolingProblem> build, IReadOnlyList<CoolingQuestion> questions, int count, int seed, CancellationToken cancel = default)
    {
        var run = new SamplingRun(build, questions, count, ranges.Count, cancel);
        var expected = new double[questions.Count];
        if (run.Ask(solvers[0], [.. ranges.Select(range => range.Expected)], expected, 0, 1) is { } wrong)
        {
            return new(null, wrong);
        }

        run.Place(ranges, LatinHypercube.Points(count, ranges.Count, seed));
        if (solvers.Length == 1)
        {
            run.Work(solvers[0], 0, 1);
        }
        else
        {
            Parallel.For(0, solvers.Length, new ParallelOptions { CancellationToken = cancel }, worker => run.Work(solvers[worker], worker, solvers.Length));
        }

        return run.Failure is { } failure ? new(null, failure) : new(new(count, run.Parameters, run.Answers, expected), null);
    }
}
