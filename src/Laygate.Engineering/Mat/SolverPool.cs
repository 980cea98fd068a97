using System.Collections.Concurrent;
using Laygate.Engineering.Cooling;
using Laygate.Engineering.Cooling.Sampling;

namespace Laygate.Engineering.Mat;

/// <summary>Solvers and samplers that are free; as many as are used at one time, for as long as the plan is judged. Serves several threads.</summary>
internal sealed class SolverPool
{
    private readonly ConcurrentBag<CoolingSolver> solvers = [];
    private readonly ConcurrentBag<CoolingSampler> samplers = [];

    /// <summary>Lends a solver; its curve is valid inside the use only.</summary>
    public T UseSolver<T>(Func<CoolingSolver, T> use) => Use(solvers, use);

    /// <summary>Lends a sampler.</summary>
    public T UseSampler<T>(Func<CoolingSampler, T> use) => Use(samplers, use);

    private static T Use<TOne, T>(ConcurrentBag<TOne> free, Func<TOne, T> use)
        where TOne : new()
    {
        var one = free.TryTake(out var known) ? known : new TOne();
        try
        {
            return use(one);
        }
        finally
        {
            free.Add(one);
        }
    }
}
