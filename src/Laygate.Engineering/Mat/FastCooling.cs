using Laygate.Engineering.Cooling;
using Laygate.Engineering.Cooling.Sampling;
using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Quantities;

namespace Laygate.Engineering.Mat;

/// <summary>What was found for one question.</summary>
/// <param name="Band">The answer with its band; null where it is not asked of this body or nothing could be solved.</param>
/// <param name="Weather">Weather from the worst moment of laying on, or that of the envelope; null where nothing was found.</param>
/// <param name="Failure">Why nothing could be solved.</param>
internal sealed record MatFound(MatBand? Band, MatWeather? Weather, CoolingFailure? Failure)
{
    /// <summary>The more careful of this and what was found with what was learnt; this one where the other has no answer.</summary>
    /// <param name="learnt">What was found with it; null where nothing was learnt.</param>
    /// <param name="highIsWorse">Whether a high answer is the unfavourable one.</param>
    public MatFound Careful(MatFound? learnt, bool highIsWorse)
    {
        if (Band is not { } own || learnt?.Band is not { } other || learnt.Weather is null)
        {
            return this;
        }

        var careful = own.Careful(other, highIsWorse);
        return new MatFound(careful, careful.Expected == own.Expected ? Weather : learnt.Weather, null);
    }
}

/// <summary>Cooling of one hot body while it is rolled: each question at the moment of laying that is worst for it by its expected answer.</summary>
internal sealed class FastCooling
{
    private static readonly (double Duration, CoolingStop? Stop) Unbounded = (MatCooling.LongestRolling, null);

    private readonly MatCooling mat;
    private readonly MatModel model;
    private readonly MatQuestions questions;
    private readonly bool withSpread;
    private readonly (double Duration, CoolingStop? Stop) bound;
    private readonly double[] central = MatRanges.Central();
    private readonly Dictionary<(MatWeather Weather, bool IsBounded), SamplingResult> sampled = [];
    private readonly Dictionary<MatWeather, CoolingResult> curves = new(ReferenceEqualityComparer.Instance);
    private readonly IReadOnlyDictionary<string, MatWeather>? known;
    private readonly WorstMoment?[] worst = [];
    private CoolingFailure? failure;
    private FastCooling? learnt;

    private FastCooling(QuantityContext context, MatCooling mat, PavingPass pass, MatInputs inputs, bool everyPass, bool isLearnt = false)
    {
        this.mat = mat;
        model = new MatModel(inputs, context.Assumptions);
        questions = new MatQuestions(context, pass, inputs, everyPass);
        withSpread = context.WithSpread;
        bound = MatNeed.Of(questions.Needs);
        var weather = new MatWeatherReader(context, new Calculation(context)).Read(pass, MatQuestion.Fast)!;
        var body = $"{string.Join('+', pass.Courses.Select(course => course.Id))} {everyPass} {isLearnt}";
        known = withSpread ? null : context.Memory?.Moments(body, weather, questions.All);
        if (known is null)
        {
            worst = Exactly(WorstMoments.Find(weather, questions.HighIsWorse, moments => Expected(moments, CoolingSettings.Coarse)));
            context.Memory?.KeepMoments(body, weather, questions.All, worst);
        }
    }

    /// <summary>Finds the worst moments of a hot body.</summary>
    public static FastCooling Solve(QuantityContext context, MatCooling mat, PavingPass pass, bool everyPass) =>
        new(context, mat, pass, new MatReader(context, new Calculation(context)).Read(pass)!, everyPass)
        {
            learnt = LearntMat.IsFor(context.Plan, pass)
                ? new(context, mat, pass, new MatReader(context, new Calculation(context), context.Plan.Learnt).Read(pass)!, everyPass, isLearnt: true)
                : null,
        };

    /// <summary>The answer to a question at the moment of laying that is worst for it: the more careful one, where something was learnt about the mat.</summary>
    public MatFound Find(string? question) => Found(question).Careful(
        learnt?.Found(question), question is not null && questions.Find(question) is { } index && questions.HighIsWorse[index]);

    /// <summary>The answer by what was learnt alone; null where nothing was.</summary>
    public MatFound? Learnt(string question) => learnt?.Found(question);

    private MatFound Found(string? question)
    {
        if (question is null || questions.Find(question) is not { } index || Worst(index) is not { } found)
        {
            return new MatFound(failure is null && question is not null && questions.Find(question) is not null ? new MatBand(null, 0, 0) : null, null, failure);
        }

        var samples = withSpread ? Sampled(found, index) : new SamplingResult(null, null);
        return samples.Failure is { } failed
            ? new MatFound(null, found.Weather, failed)
            : new MatFound(MatBand.Of(found.Value, samples.Answers?.Around(index, found.Value) ?? [], MatCooling.LongestRolling), found.Weather, null);
    }

    /// <summary>Whether temperatures at a time, s after the last screed, were read.</summary>
    public bool Has(double time) => questions.AtPass("skin", time) is not null;

    /// <summary>A temperature at the time of a pass; see <see cref="MatQuestions.AtPass"/>.</summary>
    public MatFound At(string what, double time) => Find(questions.AtPass(what, time));

    /// <summary>The expected curve of a moment of laying, followed for a time in s.</summary>
    public CoolingResult Curve(MatWeather weather, double duration) => mat.Curve(model.Build(weather, central, duration, null));

    /// <summary>The expected curve by which a question is judged: with what was learnt, where that is the more careful answer, and whether it is.</summary>
    public (CoolingResult Solved, bool IsLearnt) Judged(string question, MatWeather weather, double duration)
    {
        var isLearnt = learnt is not null && Find(question).Band?.Expected is { } careful && Found(question).Band?.Expected is { } own && careful != own;
        return ((isLearnt ? learnt! : this).Curve(weather, duration), isLearnt);
    }

    /// <summary>The expected answer to a question at one moment of laying; null where it is not asked of this body or cannot be answered.</summary>
    public double? At(MatWeather weather, string question)
    {
        if (questions.Find(question) is not { } index || Expected(weather, CoolingSettings.Default) is not { } answers || !double.IsFinite(answers[index]))
        {
            return null;
        }

        return learnt?.At(weather, question) is not { } other ? answers[index] : questions.HighIsWorse[index] ? Math.Max(answers[index], other) : Math.Min(answers[index], other);
    }

    /// <summary>The answer to a question at one moment of laying with its band; null where it is not asked of this body or cannot be answered.</summary>
    public MatBand? BandAt(MatWeather weather, string question)
    {
        if (questions.Find(question) is not { } index || Expected(weather, CoolingSettings.Default) is not { } answers || Sampled(weather, Unbounded, isBounded: false).Answers is not { } samples)
        {
            return null;
        }

        var own = MatBand.Of(answers[index], samples.Around(index, answers[index]), MatCooling.LongestRolling);
        return learnt?.BandAt(weather, question) is { } other ? own.Careful(other, questions.HighIsWorse[index]) : own;
    }

    private WorstMoment? Worst(int index)
    {
        if (known is null)
        {
            return worst[index];
        }

        // A change that leaves the weather as it is keeps the worst moments; what is proposed from it is confirmed with all moments.
        var weather = known[questions.All[index].Name];
        if (!curves.TryGetValue(weather, out var curve))
        {
            curve = Curve(weather, At(weather));
            curves[weather] = curve;
        }

        var value = Answer(curve, index);
        return double.IsNaN(value) ? null : new WorstMoment(weather, double.IsInfinity(value) ? Answer(Curve(weather, Unbounded), index) : value);
    }

    private double Answer(CoolingResult solved, int index) =>
        solved.Curve is { } curve ? questions.All[index].Answer(curve, central) ?? questions.All[index].Absent : double.NaN;

    private CoolingResult Curve(MatWeather weather, (double Duration, CoolingStop? Stop) until)
    {
        var solved = mat.Curve(model.Build(weather, central, until.Duration, until.Stop));
        failure ??= solved.Failure;
        return solved;
    }

    /// <summary>Samples of one moment, followed for what the questions that are worst there need; on to the end where that leaves open what the expected case answers.</summary>
    private SamplingResult Sampled(WorstMoment found, int index)
    {
        var bounded = Sampled(found.Weather, At(found.Weather), isBounded: true);
        return double.IsFinite(found.Value) && bounded.Answers?.Around(index, found.Value).Any(answer => !double.IsFinite(answer)) == true
            ? Sampled(found.Weather, Unbounded, isBounded: false)
            : bounded;
    }

    private SamplingResult Sampled(MatWeather weather, (double Duration, CoolingStop? Stop) until, bool isBounded)
    {
        if (!sampled.TryGetValue((weather, isBounded), out var result))
        {
            result = mat.Sample(MatRanges.All(isRolled: false), sample => model.Build(weather, sample, until.Duration, until.Stop, CoolingSettings.Coarse), questions.All, questions.LookedFor);
            sampled[(weather, isBounded)] = result;
        }

        return result;
    }

    /// <summary>How long the questions that are worst at a moment need a solve to go on.</summary>
    private (double Duration, CoolingStop? Stop) At(MatWeather weather) => MatNeed.Of(
        [.. questions.Needs.Where((_, i) => ReferenceEquals(weather, known is null ? worst[i]?.Weather : known[questions.All[i].Name]))]);

    /// <summary>The worst moments with the answers of the settings that expected values have.</summary>
    private WorstMoment?[] Exactly(WorstMoment?[] found)
    {
        MatWeather[] moments = [.. found.OfType<WorstMoment>().Select(one => one.Weather).Distinct()];
        var answers = moments.Zip(Expected(moments, CoolingSettings.Default)).ToDictionary(pair => pair.First, pair => pair.Second);
        return [.. found.Select((one, i) => one is null || answers[one.Weather] is not { } exact ? null : one with { Value = exact[i] })];
    }

    private double[]? Expected(MatWeather weather, CoolingSettings settings) => Expected([weather], settings)[0];

    // Solved side by side: one moment does not know of another.
    private double[]?[] Expected(IReadOnlyList<MatWeather> moments, CoolingSettings settings)
    {
        var found = new (double[]? Answers, CoolingFailure? Failure)[moments.Count];
        if (moments.Count > 1)
        {
            Parallel.For(0, found.Length, i => found[i] = Answers(moments[i], settings));
        }
        else
        {
            found = [.. moments.Select(moment => Answers(moment, settings))];
        }

        failure ??= found.Select(one => one.Failure).FirstOrDefault(failed => failed is not null);
        return [.. found.Select(one => one.Answers)];
    }

    private (double[]? Answers, CoolingFailure? Failure) Answers(MatWeather weather, CoolingSettings settings)
    {
        var first = Answers(weather, bound, settings);
        return first.Answers?.Any(double.IsInfinity) == true ? Answers(weather, Unbounded, settings) : first;
    }

    private (double[]? Answers, CoolingFailure? Failure) Answers(MatWeather weather, (double Duration, CoolingStop? Stop) until, CoolingSettings settings) =>
        mat.Answers(model.Build(weather, central, until.Duration, until.Stop, settings), questions.All, questions.LookedFor(central));
}
