using Laygate.Engineering.Cooling;
using Laygate.Engineering.Cooling.Sampling;
using Laygate.Engineering.Quantities;
using Laygate.Engineering.Reading;

namespace Laygate.Engineering.Mat;

/// <summary>Cooling of one hot body while it is rolled, in the worst hour of laying by expected window.</summary>
internal sealed class FastCooling
{
    /// <summary>How far below the expected mean at the last pass samples are followed, K, so that few have to be solved twice.</summary>
    private const double Margin = 25;

    private readonly MatModel model;
    private readonly MatInputs inputs;
    private readonly MatQuestions questions;
    private readonly double[] central = MatRanges.Central();
    private SampledAnswers? answers;

    private FastCooling(QuantityContext context, PavingPass pass, MatInputs inputs, bool everyPass)
    {
        this.inputs = inputs;
        model = new MatModel(inputs, context.Assumptions);
        questions = new MatQuestions(context, pass, inputs, everyPass);
    }

    /// <summary>Why nothing could be solved.</summary>
    public CoolingFailure? Failure { get; private set; }

    /// <summary>Weather of the worst hour, or of the envelope; null where nothing could be solved.</summary>
    public MatWeather? Weather { get; private set; }

    private int Lowest => inputs.LayerOf(inputs.Courses[inputs.HotFrom].Id);

    /// <summary>Solves every hour, then the samples of the worst.</summary>
    public static FastCooling Solve(QuantityContext context, MatCooling mat, PavingPass pass, bool everyPass)
    {
        var calculation = new Calculation(context);
        var body = new MatReader(context, calculation).Read(pass)!;
        var cooling = new FastCooling(context, pass, body, everyPass);
        var hours = new MatWeatherReader(context, calculation).Read(MatQuestion.Fast);
        if (!context.WithSpread)
        {
            cooling.SolveExpected(context, mat, pass, hours);
            return cooling;
        }

        cooling.FindWorst(mat, hours);
        if (cooling.Weather is { } worst)
        {
            context.Memory?.KeepWorst(NameOf(pass), hours, worst);
            var stop = cooling.Stop(cooling.ColdestNeeded(mat, worst));
            var result = mat.Sample(
                MatRanges.All(isRolled: false),
                (sample, isBounded) => cooling.model.Build(worst, sample, MatCooling.LongestRolling, isBounded ? stop : null),
                cooling.questions.All,
                cooling.questions.LookedFor);
            (cooling.answers, cooling.Failure) = (result.Answers, result.Failure);
        }

        return cooling;
    }

    /// <summary>The answer to a question with its band; null where it is not asked of this body or nothing could be solved.</summary>
    public MatBand? Band(string question) => answers is not null && questions.Find(question) is { } index
        ? MatBand.Of(answers.Expected(index), Enumerable.Range(0, answers.Count).Select(sample => answers.Sample(index, sample)), MatCooling.LongestRolling)
        : null;

    /// <summary>Whether temperatures at a time were read.</summary>
    public bool Has(double time) => Array.IndexOf(questions.Times, time) >= 0;

    /// <summary>A temperature at the time of a pass, with its band; null where that time lies outside the solve.</summary>
    public MatBand? At(double time, Func<MatMoment, double> read)
    {
        var index = Array.IndexOf(questions.Times, time);
        if (index < 0 || answers is null || questions.MomentAt(index, answers.Expected) is not { } expected)
        {
            return null;
        }

        var samples = Enumerable.Range(0, answers.Count)
            .Select(sample => questions.MomentAt(index, question => answers.Sample(question, sample)) is { } moment ? read(moment) : double.NaN);
        return MatBand.Of(read(expected), samples, MatCooling.LongestRolling);
    }

    /// <summary>The expected curve of the worst hour, followed for a time in s; valid until the solver's next solve.</summary>
    public CoolingCurve? Curve(CoolingSolver solver, double duration) => Weather is { } worst
        ? solver.Solve(model.Build(worst, central, duration, null)).Curve
        : null;

    private static string NameOf(PavingPass pass) => string.Join('+', pass.Courses.Select(course => course.Id));

    /// <summary>
    /// Solves the expected case alone. A change that leaves the weather as it is keeps the worst hour; what is proposed from
    /// it is confirmed with every hour.
    /// </summary>
    private void SolveExpected(QuantityContext context, MatCooling mat, PavingPass pass, IReadOnlyList<MatWeather> hours)
    {
        var shortest = double.NaN;
        CoolingCurve? whole = null;
        foreach (var weather in context.Memory?.Worst(NameOf(pass), hours) is { } known ? [known] : hours)
        {
            var result = mat.Curve(model.Build(weather, central, MatCooling.LongestRolling, Stop(double.PositiveInfinity)));
            Failure ??= result.Failure;
            if (result.Curve is { } curve && questions.Shortest(curve, central) is var time && !(time >= shortest))
            {
                (Weather, shortest, whole) = (weather, time, curve);
            }
        }

        if (whole is not null && whole.End < questions.LastTime)
        {
            // Whole hours, so that a pass that moves by minutes finds the curve of its neighbour.
            var until = Math.Ceiling((questions.LastTime + 1) / 3600) * 3600;
            whole = mat.Curve(model.Build(Weather!, central, until, null)).Curve ?? whole;
        }

        answers = whole is null ? null : MatCooling.Expected(whole, questions.All);
    }

    private void FindWorst(MatCooling mat, IReadOnlyList<MatWeather> hours)
    {
        var (shortest, stop) = (double.NaN, Stop(double.PositiveInfinity));
        foreach (var weather in hours)
        {
            var (shortestHere, failure) = mat.Read(
                model.Build(weather, central, MatCooling.LongestRolling, stop),
                curve => questions.Shortest(curve, central),
                questions.LookedFor(central),
                questions.All.Select(question => question.Name));
            Failure ??= failure;
            if (shortestHere is { } time && !(time >= shortest))
            {
                (Weather, shortest) = (weather, time);
            }
        }
    }

    /// <summary>Ends a solve when the lowest hot course is below every cessation temperature, and below the given one.</summary>
    private CoolingStop? Stop(double needed)
    {
        var limits = questions.Cessation.Where(range => !double.IsNaN(range.Central)).Select(range => range.Low).ToList();
        return limits.Count == 0 ? null : new CoolingStop(Lowest, Math.Min(limits.Min() - 1, needed));
    }

    /// <summary>Mean of the lowest course that samples must reach to be followed until the last question.</summary>
    private double ColdestNeeded(MatCooling mat, MatWeather worst)
    {
        var (mean, _) = mat.Read(
            model.Build(worst, central, questions.LastTime + 1, null), curve => curve.Value(CoolingPlace.Mean(Lowest), questions.LastTime), [Lowest, questions.LastTime], ["mean"]);
        return mean - Margin ?? double.PositiveInfinity;
    }
}
