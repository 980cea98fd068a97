using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Cooling;
using Laygate.Engineering.Cooling.Sampling;
using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Quantities;
using Laygate.Engineering.Timeline;

namespace Laygate.Engineering.Mat;

/// <summary>
/// Cooling of the uppermost hot body from the last metre on, until all of it may be opened or laid upon. Nearly always the last metre is the last to
/// cool; a metre that was laid before it on a hot base in the sun can be later, so every moment of laying is asked.
/// </summary>
internal sealed class SlowCooling
{
    private readonly MatCooling mat;
    private readonly MatModel model;
    private readonly LayingWeather weather;
    private readonly DateTimeOffset? end;
    private readonly double last;
    private readonly double? opening;
    private readonly MatRange overlay;
    private readonly CoolingQuestion[] questions;
    private readonly bool withSpread;
    private readonly double[] central = MatRanges.Central();
    private readonly Dictionary<MatWeather, SamplingResult> sampled = new(ReferenceEqualityComparer.Instance);
    private readonly WorstMoment?[] worst;
    private readonly string body;
    private CoolingFailure? failure;
    private SlowCooling? learnt;

    private SlowCooling(QuantityContext context, MatCooling mat, PavingPass pass, MatInputs inputs, bool isLearnt = false)
    {
        this.mat = mat;
        body = isLearnt ? "slow learnt" : "slow";
        weather = new MatWeatherReader(context, new Calculation(context)).Read(pass, MatQuestion.Slow)!;
        end = LayingSpan.Of(context, pass)?.Last;
        withSpread = context.WithSpread;
        last = inputs.LastScreed;
        model = new MatModel(inputs, context.Assumptions);
        opening = context.Plan.Opening?.Below?.Value?.Si;
        overlay = MatLimits.RangeOf(context, AssumptionIds.OverlayLimit);
        questions = [Cold("soft", _ => opening), Cold("overlay", sample => overlay.At(sample, MatRanges.Cessation))];
        worst = Worst(context.Memory);
    }

    /// <summary>Seconds from the last metre until the whole hot body is below the opening temperature everywhere, without an expected value where it stays above.</summary>
    public MatFound SoftUntil => Find(0).Careful(learnt?.Find(0), highIsWorse: true);

    /// <summary>The same until it may be laid upon.</summary>
    public MatFound OverlaidFrom => Find(1).Careful(learnt?.Find(1), highIsWorse: true);

    /// <summary>Solves central values for every moment of laying.</summary>
    public static SlowCooling Solve(QuantityContext context, MatCooling mat, PavingPass pass) =>
        new(context, mat, pass, new MatReader(context, new Calculation(context)).Read(pass)!)
        {
            learnt = LearntMat.IsFor(context.Plan, pass) ? new(context, mat, pass, new MatReader(context, new Calculation(context), context.Plan.Learnt).Read(pass)!, isLearnt: true) : null,
        };

    private MatFound Find(int question)
    {
        if (worst[question] is not { } found)
        {
            return new MatFound(null, null, failure);
        }

        var (before, answers) = (Before(found.Weather), default(SampledAnswers));
        if (withSpread)
        {
            (answers, var failed) = Sampled(found.Weather);
            if (failed is not null)
            {
                return new MatFound(null, found.Weather, failed);
            }
        }

        // A metre that is cold before the last one is laid keeps nobody waiting.
        var samples = answers?.Around(question, found.Value > 0 ? found.Value + before : answers.Expected(question)).Select(sample => Math.Max(0, sample - before)) ?? [];
        return new MatFound(MatBand.Of(found.Value, samples, MatCooling.LongestOpening), found.Weather, null);
    }

    /// <summary>How long before the last metre one is laid, s.</summary>
    private double Before(MatWeather metre) => metre.Start is { } start && end is { } until ? (until - start).TotalSeconds : 0;

    /// <summary>The last metre, or one before it that is cold later still; a change that leaves the weather as it is keeps the metre.</summary>
    private WorstMoment?[] Worst(MatMemory? memory)
    {
        MatWeather[] metres = !withSpread && memory?.Moments(body, weather, questions) is { } known
            ? [.. known.Values.Distinct()]
            : [.. weather.Stated.Reverse(), .. weather.Envelope is { } envelope ? [envelope] : Array.Empty<MatWeather>()];
        var found = metres.Length > 1 ? Latest(Metres(Latest(metres, CoolingSettings.Coarse)), CoolingSettings.Default) : Latest(metres, CoolingSettings.Default);
        memory?.KeepMoments(body, weather, questions, found);
        return found;

        static IReadOnlyList<MatWeather> Metres(WorstMoment?[] found) => [.. found.OfType<WorstMoment>().Select(one => one.Weather).Distinct()];
    }

    /// <summary>For each question the metre that is cold last.</summary>
    private WorstMoment?[] Latest(IReadOnlyList<MatWeather> metres, CoolingSettings settings)
    {
        var found = new WorstMoment?[questions.Length];
        foreach (var metre in metres)
        {
            int[] open = [.. Enumerable.Range(0, questions.Length).Where(q => Asked(q) && !double.IsPositiveInfinity(found[q]?.Value ?? 0))];
            var before = Before(metre);
            var times = Times(metre, open, before + last + open.Select(q => found[q]?.Value ?? (3 * 3600.0)).DefaultIfEmpty(0).Max() + 60, settings);
            foreach (var q in open.Where(_ => times is not null))
            {
                var value = Math.Max(0, times![q] - before);
                found[q] = found[q] is { } until && !(value > until.Value + 1) ? until : new WorstMoment(metre, value);
            }
        }

        return found;
    }

    private bool Asked(int question) => question > 0 || opening is not null;

    /// <summary>Expected answers of one metre; the solve goes on until it has all that are open, first for as long as another metre needed.</summary>
    private double[]? Times(MatWeather metre, int[] open, double needed, CoolingSettings settings)
    {
        for (var within = Math.Min(MatCooling.LongestOpening, needed); ; within = Math.Min(MatCooling.LongestOpening, 4 * within))
        {
            var (times, failed) = mat.Answers(model.Build(metre, central, within, null, settings), questions, LookedFor(central));
            failure ??= failed;
            if (times is null || within >= MatCooling.LongestOpening || Array.TrueForAll(open, q => double.IsFinite(times[q])))
            {
                return times;
            }
        }
    }

    private SamplingResult Sampled(MatWeather metre)
    {
        if (sampled.TryGetValue(metre, out var known))
        {
            return known;
        }

        var times = worst.Where(one => one is not null && double.IsFinite(one.Value)).Select(one => one!.Value).DefaultIfEmpty(0).Max() + Before(metre);
        var result = Run(Math.Min(MatCooling.LongestOpening, (2.5 * times) + last + 3600));
        if (result.Answers is { } answers && Enumerable.Range(0, questions.Length).Any(q => double.IsFinite(worst[q]?.Value ?? double.NaN) && IsOpen(answers, q)))
        {
            result = Run(MatCooling.LongestOpening);
        }

        return sampled[metre] = result;

        SamplingResult Run(double duration) => mat.Sample(MatRanges.All(isRolled: true), sample => model.Build(metre, sample, duration, null, CoolingSettings.Coarse), questions, LookedFor);

        static bool IsOpen(SampledAnswers answers, int question) => Enumerable.Range(0, answers.Count).Any(sample => !double.IsFinite(answers.Sample(question, sample)));
    }

    private IEnumerable<double> LookedFor(double[] sample) => [last, opening ?? double.NaN, overlay.At(sample, MatRanges.Cessation)];

    private CoolingQuestion Cold(string name, Func<double[], double?> limit) => new(
        name,
        (curve, sample) => limit(sample) is { } celsius ? curve.FirstBelow(CoolingPlace.Core, celsius, last) - last : null,
        double.PositiveInfinity);
}
