using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Cooling;
using Laygate.Engineering.Cooling.Sampling;
using Laygate.Engineering.Quantities;
using Laygate.Engineering.Reading;

namespace Laygate.Engineering.Mat;

/// <summary>Cooling of the uppermost hot body from the last metre on, until it may be opened or laid upon.</summary>
internal sealed class SlowCooling
{
    private readonly MatModel model;
    private readonly MatWeather weather;
    private readonly double last;
    private readonly double? opening;
    private readonly MatRange overlay;
    private readonly CoolingQuestion[] questions;
    private SampledAnswers? answers;

    private SlowCooling(QuantityContext context, MatInputs inputs, MatWeather weather)
    {
        this.weather = weather;
        last = inputs.LastScreed;
        model = new MatModel(inputs, context.Assumptions);
        opening = context.Plan.Opening?.Below?.Value?.Si;
        overlay = MatLimits.RangeOf(context, AssumptionIds.OverlayLimit);
        questions = [Cold("soft", _ => opening), Cold("overlay", sample => overlay.At(sample, MatRanges.Cessation))];
    }

    /// <summary>Seconds after the last screed until the whole hot body is below the opening temperature, without an expected value where it stays above; null where nothing was solved.</summary>
    public MatBand? SoftUntil => Band(0);

    /// <summary>The same until it may be laid upon.</summary>
    public MatBand? OverlaidFrom => Band(1);

    /// <summary>Weather from the last metre on.</summary>
    public MatWeather Weather => weather;

    /// <summary>Why nothing could be solved.</summary>
    public CoolingFailure? Failure { get; private set; }

    /// <summary>Solves central values, then samples.</summary>
    public static SlowCooling Solve(QuantityContext context, MatCooling mat, PavingPass pass)
    {
        var calculation = new Calculation(context);
        var body = new MatReader(context, calculation).Read(pass)!;
        var cooling = new SlowCooling(context, body, new MatWeatherReader(context, calculation).Read(MatQuestion.Slow)[0]);
        var (duration, central) = cooling.Needed(mat);
        if (!context.WithSpread)
        {
            (cooling.answers, cooling.Failure) = (central.Curve is { } curve ? MatCooling.Expected(curve, cooling.questions) : null, central.Failure);
            return cooling;
        }

        var result = mat.Sample(
            MatRanges.All(isRolled: true),
            (sample, isBounded) => cooling.model.Build(cooling.weather, sample, isBounded ? duration : MatCooling.LongestOpening, null),
            cooling.questions,
            cooling.LookedFor);
        (cooling.answers, cooling.Failure) = (result.Answers, result.Failure);
        return cooling;
    }

    private IEnumerable<double> LookedFor(double[] sample) => [last, opening ?? double.NaN, overlay.At(sample, MatRanges.Cessation)];

    private CoolingQuestion Cold(string name, Func<double[], double?> limit) => new(
        name,
        (curve, sample) => limit(sample) is { } celsius ? curve.FirstBelow(CoolingPlace.Core, celsius, last) - last : null,
        double.PositiveInfinity);

    /// <summary>Time that most samples need, from the expected case, and that case.</summary>
    private (double Duration, CoolingResult Expected) Needed(MatCooling mat)
    {
        var central = MatRanges.Central();
        for (var within = 3 * 3600.0; ; within = Math.Min(MatCooling.LongestOpening, 4 * within))
        {
            var result = mat.Curve(model.Build(weather, central, within, null));
            double?[] times = [.. questions.Select(question => result.Curve is { } curve ? question.Answer(curve, central) : null)];
            if (result.Curve is null || within >= MatCooling.LongestOpening || times.All(time => time is not null))
            {
                return (Math.Min(MatCooling.LongestOpening, (2.5 * (times.Max() ?? 0)) + last + 3600), result);
            }
        }
    }

    private MatBand? Band(int question) => answers is null ? null : MatBand.Of(
        answers.Expected(question), Enumerable.Range(0, answers.Count).Select(sample => answers.Sample(question, sample)), MatCooling.LongestOpening);
}
