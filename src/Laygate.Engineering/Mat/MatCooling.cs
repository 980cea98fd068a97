using Laygate.Engineering.Cooling;
using Laygate.Engineering.Cooling.Sampling;
using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Quantities;

namespace Laygate.Engineering.Mat;

/// <summary>Cooling of the hot bodies of one plan; solves once and keeps what it read.</summary>
internal sealed class MatCooling(QuantityContext context)
{
    /// <summary>Longest time solved for while rolling, s.</summary>
    public const double LongestRolling = 12 * 3600;

    /// <summary>Longest time solved for until opening, s.</summary>
    public const double LongestOpening = 72 * 3600;

    private readonly SolverPool solvers = context.Memory?.Solvers ?? new();
    private readonly Dictionary<PavingPass, FastCooling> fast = [];
    private readonly Dictionary<PavingPass, FastCooling> timed = [];
    private SlowCooling? slow;

    /// <summary>The cooling of a context.</summary>
    public static MatCooling Of(QuantityContext context) => context.Service(c => new MatCooling(c));

    /// <summary>Cooling of a hot body, each question at its worst moment of laying. The pass must be one whose inputs are complete.</summary>
    public FastCooling While(PavingPass pass)
    {
        if (!fast.TryGetValue(pass, out var known))
        {
            known = FastCooling.Solve(context, this, pass, everyPass: false);
            fast[pass] = known;
        }

        return known;
    }

    /// <summary>The same, with temperatures at a moment of any pass; solved again only for a moment that the usual questions do not need.</summary>
    public FastCooling While(PavingPass pass, double time)
    {
        var usual = While(pass);
        if (usual.Has(time))
        {
            return usual;
        }

        if (!timed.TryGetValue(pass, out var known))
        {
            known = FastCooling.Solve(context, this, pass, everyPass: true);
            timed[pass] = known;
        }

        return known;
    }

    /// <summary>Cooling of the uppermost hot body from the last metre on.</summary>
    public SlowCooling Until(PavingPass pass) => slow ??= SlowCooling.Solve(context, this, pass);

    /// <summary>Solves the samples of a body.</summary>
    /// <param name="ranges">Ranges of the parameters.</param>
    /// <param name="build">Builds a problem from a sample.</param>
    /// <param name="questions">Questions to each curve.</param>
    /// <param name="lookedFor">Numbers that the questions look for at a sample.</param>
    public SamplingResult Sample(
        ParameterRange[] ranges, Func<double[], CoolingProblem> build, IReadOnlyList<CoolingQuestion> questions, Func<double[], IEnumerable<double>> lookedFor)
    {
        if (context.Memory is not { } memory)
        {
            return Solve();
        }

        // What varies does so between its ends, so that the expected case, the ends and two mixed corners tell one body from another.
        double[][] probes =
        [
            MatRanges.Central(),
            [.. ranges.Select(range => range.At(0))],
            [.. ranges.Select(range => range.At(1))],
            [.. ranges.Select((range, i) => range.At(i % 2))],
            [.. ranges.Select((range, i) => range.At(((i % 5) + 0.5) / 5))],
        ];
        var key = MatKey.Of([.. probes.Select(build)], [context.Samples, context.Seed, .. probes.SelectMany(lookedFor)], questions.Select(question => question.Name));
        return memory.Run(key, Solve);

        SamplingResult Solve() => solvers.UseSampler(sampler =>
            sampler.Run(ranges, build, questions, context.Samples, unchecked((int)(context.Seed ^ (context.Seed >> 32))), context.Cancel));
    }

    /// <summary>Answers of the expected case to all questions.</summary>
    /// <param name="problem">The problem at central values.</param>
    /// <param name="questions">The questions.</param>
    /// <param name="lookedFor">Numbers that they look for.</param>
    public (double[]? Answers, CoolingFailure? Failure) Answers(CoolingProblem problem, IReadOnlyList<CoolingQuestion> questions, IEnumerable<double> lookedFor)
    {
        return context.Memory is { } memory ? memory.Answers(MatKey.Of([problem], lookedFor, questions.Select(question => question.Name)), Solve) : Solve();

        (double[]?, CoolingFailure?) Solve()
        {
            context.Cancel.ThrowIfCancellationRequested();
            return solvers.UseSolver(solver =>
            {
                var result = solver.Solve(problem);
                return (result.Curve is { } curve ? Expected(curve, questions) : null, result.Failure);
            });
        }
    }

    /// <summary>The curve of one problem; it stays valid.</summary>
    public CoolingResult Curve(CoolingProblem problem) => Curve(context.Memory, solvers, problem);

    /// <summary>The curve of one problem, from memory or newly solved; it stays valid.</summary>
    public static CoolingResult Curve(MatMemory? memory, SolverPool solvers, CoolingProblem problem)
    {
        return memory?.Curve(MatKey.Of([problem], [], []), Solve) ?? Solve();

        CoolingResult Solve() => solvers.UseSolver(solver =>
        {
            var result = solver.Solve(problem);
            return result.Curve is { } curve ? new CoolingResult(curve.Keep(), result.Failure) : result;
        });
    }

    /// <summary>The answers of one curve of the expected case.</summary>
    public static double[] Expected(CoolingCurve curve, IReadOnlyList<CoolingQuestion> questions)
    {
        var central = MatRanges.Central();
        return [.. questions.Select(question => question.Answer(curve, central) ?? question.Absent)];
    }
}
