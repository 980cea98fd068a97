using System.Collections.Concurrent;
using Laygate.Engineering.Cooling;
using Laygate.Engineering.Cooling.Sampling;
using Laygate.Engineering.Quantities;

namespace Laygate.Engineering.Mat;

/// <summary>
/// Solves of one plan and of changed copies of it, found again by the numbers that went in: an answer that a change does
/// not touch is kept because its question is the same, and one that it does touch cannot be taken for it. Serves several threads.
/// </summary>
internal sealed class MatMemory
{
    // A whole curve takes some hundred kilobytes; the answers read from it take none.
    private const int MostCurves = 64;

    private const int MostHistories = 16;

    private readonly Lock gate = new();
    private readonly List<BaseHistory> histories = [];
    private readonly ConcurrentDictionary<MatKey, SamplingResult> runs = new();
    private readonly ConcurrentDictionary<MatKey, (double[]?, CoolingFailure?)> answers = new();
    private readonly ConcurrentDictionary<MatKey, CoolingResult> curves = new();
    private readonly ConcurrentDictionary<string, (LayingWeather Weather, Dictionary<string, MatWeather> Moments)> worst = new(StringComparer.Ordinal);

    /// <summary>Solvers for all copies of the plan: most of what a solver costs in memory it costs once.</summary>
    public SolverPool Solvers { get; } = new();

    /// <summary>Solves that were kept; for tests and measurements.</summary>
    public int Count => runs.Count + answers.Count + curves.Count;

    /// <summary>The history of the base of a context: of a copy with the same weather, place and times, or a new one.</summary>
    public BaseHistory History(QuantityContext context)
    {
        lock (gate)
        {
            var known = histories.Find(one => one.IsOf(context));
            if (known is null && histories.Count < MostHistories)
            {
                histories.Add(known = new BaseHistory(context));
            }

            return known ?? new BaseHistory(context);
        }
    }

    /// <summary>A whole curve, from memory or newly solved: what is asked of it may change without a new solve.</summary>
    public CoolingResult Curve(MatKey key, Func<CoolingResult> solve)
    {
        if (curves.TryGetValue(key, out var known))
        {
            return known;
        }

        var solved = solve();
        return curves.Count < MostCurves ? curves.GetOrAdd(key, solved) : solved;
    }

    /// <summary>Keeps the worst moment of each question to a hot body; a question without an answer takes that of another.</summary>
    public void KeepMoments(string body, LayingWeather weather, IReadOnlyList<CoolingQuestion> questions, WorstMoment?[] moments)
    {
        if (moments.FirstOrDefault(moment => moment is not null) is { } any)
        {
            var byName = questions.Select((question, i) => (question.Name, (moments[i] ?? any).Weather)).ToDictionary(pair => pair.Name, pair => pair.Weather, StringComparer.Ordinal);
            worst.TryAdd(body, (weather, byName));
        }
    }

    /// <summary>The worst moments of a hot body as they were before a change; null where one of the questions is new or the weather itself has changed.</summary>
    public IReadOnlyDictionary<string, MatWeather>? Moments(string body, LayingWeather weather, IReadOnlyList<CoolingQuestion> questions) =>
        worst.TryGetValue(body, out var known) && known.Weather.IsSame(weather) && questions.All(question => known.Moments.ContainsKey(question.Name)) ? known.Moments : null;

    /// <summary>The answers of all samples, from memory or newly solved.</summary>
    public SamplingResult Run(MatKey key, Func<SamplingResult> solve) => runs.TryGetValue(key, out var known) ? known : runs.GetOrAdd(key, solve());

    /// <summary>The answers of one solve, from memory or newly solved.</summary>
    public (double[]? Answers, CoolingFailure? Failure) Answers(MatKey key, Func<(double[]?, CoolingFailure?)> solve) =>
        answers.TryGetValue(key, out var known) ? known : answers.GetOrAdd(key, solve());
}

/// <summary>All numbers of a question to the solver of a cooling mat, in a fixed order; equal only bit by bit.</summary>
internal sealed class MatKey : IEquatable<MatKey>
{
    /// <summary>Temperatures, °C, at which a law of specific heat is read: its lines bend only at and below freezing.</summary>
    private static readonly double[] HeatReadAt = [-20, -1, -0.75, -0.5, -0.25, -0.1, 0, 0.1, 0.5, 1, 20, 150];

    private readonly double[] numbers;
    private readonly string words;
    private readonly int hash;

    private MatKey(double[] numbers, string words)
    {
        this.numbers = numbers;
        this.words = words;
        var code = new HashCode();
        code.Add(words, StringComparer.Ordinal);
        foreach (var number in numbers)
        {
            code.Add(BitConverter.DoubleToInt64Bits(number));
        }

        hash = code.ToHashCode();
    }

    /// <summary>The key of problems as <see cref="MatModel"/> builds them, and of what is looked for in their curves.</summary>
    /// <param name="problems">The problems.</param>
    /// <param name="lookedFor">Numbers of the questions.</param>
    /// <param name="questions">Names of the questions.</param>
    public static MatKey Of(IReadOnlyList<CoolingProblem> problems, IEnumerable<double> lookedFor, IEnumerable<string> questions)
    {
        var all = new List<double>(256 * problems.Count);
        foreach (var problem in problems)
        {
            AddSolve(all, problem);
            AddLayers(all, problem);
            AddWeather(all, (TopBoundary.Weather)problem.Top);
        }

        all.AddRange(lookedFor);
        return new MatKey([.. all], string.Join('\n', questions.Concat(problems.Select(problem => ((TopBoundary.Weather)problem.Top).Convection.Id))));
    }

    private static void AddSolve(List<double> all, CoolingProblem problem) => Add(all, [
        problem.Duration,
        problem.Settings.FinestCell,
        problem.Settings.Growth,
        problem.Settings.Tolerance,
        problem.StopAt?.Layer ?? -1,
        problem.StopAt?.Celsius ?? double.NaN,
        problem.StopAt?.NotBefore ?? double.NaN,
        problem.Bottom is BottomBoundary.GivenTemperature given ? given.Celsius : double.NaN,
        problem.Bottom is BottomBoundary.ConstantCoefficient hung ? hung.Coefficient : double.NaN,
        problem.Bottom is BottomBoundary.ConstantCoefficient air ? air.Fluid : double.NaN,
        problem.Layers.Count,
    ]);

    private static void AddLayers(List<double> all, CoolingProblem problem)
    {
        foreach (var layer in problem.Layers)
        {
            var material = layer.Material;
            Add(all, [
                (int)layer.Role, layer.Thickness, layer.LaidAt, layer.ResistanceBelow,
                material.Conductivity, material.Density, material.SpecificHeat, material.Emissivity, material.Absorptivity]);
            all.AddRange(layer.Initial.Numbers);
            foreach (var celsius in HeatReadAt)
            {
                all.Add(material.HeatLaw?.At(celsius) ?? double.NaN);
            }
        }
    }

    private static void AddWeather(List<double> all, TopBoundary.Weather weather)
    {
        all.Add(weather.Series.Count);
        for (var i = 0; i < weather.Series.Count; i++)
        {
            var point = weather.Series[i];
            Add(all, [point.Time, point.Air, point.Wind, point.Sky, point.Sun, point.AddedHeat, point.Rain, point.DewPoint]);
        }
    }

    // Keys are made by the thousand: their numbers need no array of their own on the way.
    private static void Add(List<double> all, ReadOnlySpan<double> numbers) => all.AddRange(numbers);

    /// <inheritdoc/>
    public bool Equals(MatKey? other) => other is not null && hash == other.hash
        && string.Equals(words, other.words, StringComparison.Ordinal)
        && System.Runtime.InteropServices.MemoryMarshal.AsBytes(numbers.AsSpan()).SequenceEqual(System.Runtime.InteropServices.MemoryMarshal.AsBytes(other.numbers.AsSpan()));

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as MatKey);

    /// <inheritdoc/>
    public override int GetHashCode() => hash;
}
