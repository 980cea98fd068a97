using Laygate.Engineering.Cooling;
using Laygate.Engineering.Quantities;
using Laygate.Engineering.Reading;

namespace Laygate.Engineering.Mat;

/// <summary>Cooling of one hot body while it is rolled, in the worst hour of laying by expected window.</summary>
internal sealed class FastCooling
{
    private readonly CoolingSolver solver;
    private readonly MatModel model;
    private readonly MatInputs inputs;
    private readonly MatRange[] cessation;
    private readonly MatRange embedment;
    private readonly (double From, double To) rolling;
    private readonly IReadOnlyList<VibrationSpan> vibration;
    private readonly double tender;
    private readonly (CoolingPlaceKind Kind, double Celsius)?[] start;
    private readonly double[] times;
    private readonly int[] layers;
    private double floor = double.PositiveInfinity;
    private readonly MatMemory? memory;
    private readonly List<MatReading> samples = [];

    private FastCooling(QuantityContext context, CoolingSolver solver, PavingPass pass, MatInputs inputs)
    {
        this.solver = solver;
        this.inputs = inputs;
        memory = context.Memory;
        model = new MatModel(inputs, context.Assumptions);
        cessation = [.. pass.Courses.Select(course => MatLimits.CessationRange(context, course))];
        embedment = MatLimits.EmbedmentRange(context, pass.Top);
        rolling = MatLimits.Rolling(new Calculation(context));
        vibration = VibrationSpan.Of(new Calculation(context));
        tender = MatLimits.Tender(new Calculation(context), pass.Top);
        start = [.. pass.Courses.Select(course => MatLimits.Start(new Calculation(context), course))];
        layers = [.. pass.Courses.Select(course => inputs.LayerOf(course.Id))];
        times = [.. PassPlan.Of(new Calculation(context)).SelectMany(planned => new[] { planned.Earliest, planned.Middle, planned.Latest })
            .Where(time => time <= MatCooling.LongestRolling / 2).Distinct().Order()];
    }

    /// <summary>Reading at central values; null where nothing could be solved.</summary>
    public MatReading? Expected { get; private set; }

    /// <summary>Why nothing could be solved.</summary>
    public CoolingFailure? Failure { get; private set; }

    /// <summary>Weather of the worst hour, or of the envelope; null where nothing could be solved.</summary>
    public MatWeather? Weather { get; private set; }

    /// <summary>Solves the worst hour, then its samples.</summary>
    public static FastCooling Solve(QuantityContext context, CoolingSolver solver, PavingPass pass)
    {
        var calculation = new Calculation(context);
        var body = new MatReader(context, calculation).Read(pass)!;
        var cooling = new FastCooling(context, solver, pass, body);
        foreach (var weather in new MatWeatherReader(context, calculation).Read(CoolingQuestion.Fast))
        {
            var reading = cooling.Read(weather, null);
            if (reading is not null && (cooling.Expected is null || Shortest(reading) < Shortest(cooling.Expected)))
            {
                (cooling.Weather, cooling.Expected) = (weather, reading);
            }
        }

        if (cooling.Weather is { } worst && context.WithSpread)
        {
            cooling.SetFloor();
            foreach (var sample in LatinHypercube.Draw(MatCooling.Samples, MatModel.Dimensions, context.Seed))
            {
                cooling.samples.Add(cooling.Read(worst, sample) ?? cooling.Expected!);
            }
        }

        return cooling;
    }

    /// <summary>Largest core-skin difference under a vibrating roller while the skin is tender, with its band; null where it does not vibrate on this body.</summary>
    public MatBand? BandUnder(string roller)
    {
        var index = vibration.ToList().FindIndex(span => PlanView.Same(span.Roller, roller));
        return index < 0 || Expected is null ? null : Band(reading => reading.UnderVibration[index]);
    }

    /// <summary>A temperature at the time of a pass, with its band; null where that time lies outside the solve.</summary>
    public MatBand? At(double time, Func<MatMoment, double> read)
    {
        var index = Array.IndexOf(times, time);
        return index < 0 || Expected?.Moments[index] is not { } expected
            ? null
            : MatBand.Of(read(expected), samples.Select(sample => sample.Moments[index]).OfType<MatMoment>().Append(expected).Select(moment => (double?)read(moment)), 0);
    }

    /// <summary>A value with its band.</summary>
    public MatBand Band(Func<MatReading, double?> read) =>
        MatBand.Of(read(Expected!), samples.Select(read), MatCooling.LongestRolling);

    private static double Shortest(MatReading reading) => reading.Windows
        .Append(reading.Grit)
        .Min(time => time ?? double.PositiveInfinity);

    private MatReading? Read(MatWeather weather, double[]? sample)
    {
        double[] limits = [.. cessation.Select(range => range.At(sample, MatModel.Cessation))];
        var lowest = inputs.LayerOf(inputs.Courses[inputs.HotFrom].Id);
        var stop = double.IsNaN(limits[0]) ? null : new CoolingStop(lowest, Math.Min(limits[0] - 1, floor));
        var reading = Read(weather, sample, limits, stop);
        return stop is not null && reading is not null && reading.Windows.Where((time, i) => time is null && !double.IsNaN(limits[i])).Any()
            ? Read(weather, sample, limits, null)
            : reading;
    }

    private MatReading? Read(MatWeather weather, double[]? sample, double[] limits, CoolingStop? stop)
    {
        var problem = model.Build(weather, sample, MatCooling.LongestRolling, stop);
        var (reading, failure) = memory is null
            ? Solve(problem, weather, sample, limits)
            : memory.Reading(MatKey.Of(problem, LookedFor(sample, limits)), () => Solve(problem, weather, sample, limits));
        Failure ??= failure;
        return reading;
    }

    // Everything besides the problem that a reading depends on.
    private IEnumerable<double> LookedFor(double[]? sample, double[] limits) =>
    [
        .. limits, embedment.At(sample, MatModel.Embedment), inputs.LastScreed, inputs.HotFrom, rolling.From, rolling.To, tender,
        .. vibration.SelectMany(span => new[] { span.From, span.To }),
        .. start.SelectMany(limit => limit is { } known ? new[] { (double)known.Kind, known.Celsius } : [-1, double.NaN]),
        .. times, .. layers.Select(layer => (double)layer),
    ];

    private (MatReading? Reading, CoolingFailure? Failure) Solve(CoolingProblem problem, MatWeather weather, double[]? sample, double[] limits)
    {
        var result = Curve(problem, sample);
        return (result.Curve is { } curve ? Look(curve, weather, sample, limits) : null, result.Failure);
    }

    // The few curves at central values are kept whole: a change of the rolling looks elsewhere on the same curve.
    private CoolingResult Curve(CoolingProblem problem, double[]? sample) =>
        memory is null || sample is not null ? solver.Solve(problem) : memory.Curve(MatKey.Of(problem, []), () => solver.Solve(problem));

    private MatReading Look(CoolingCurve curve, MatWeather weather, double[]? sample, double[] limits)
    {
        var last = inputs.LastScreed;
        var reading = new MatReading(
            [.. limits.Select((limit, i) => Window(curve, inputs.Courses[inputs.HotFrom + i], limit))],
            double.IsNaN(embedment.Central) ? null : curve.FirstBelow(CoolingPlace.Skin, embedment.At(sample, MatModel.Embedment), last) - last,
            CoreSkin(curve, last),
            [.. vibration.Select(span => UnderVibration(curve, last, span))],
            [.. start.Select((limit, i) => Bears(curve, i, limit))],
            Moments(curve));
        return times.Length > 0 && curve.End < last + times[^1] ? reading with { Moments = LaterMoments(weather, sample) } : reading;
    }

    /// <summary>
    /// Once the worst hour is known, each sample is solved on to a temperature that it reaches only after the last pass, so that few have to be solved twice.
    /// </summary>
    private void SetFloor()
    {
        if (times.Length > 0 && Expected!.Moments[^1] is { } end)
        {
            floor = Math.Max(45, end.Means[0] - 15);
        }
    }

    private IReadOnlyList<MatMoment?> Moments(CoolingCurve curve) =>
        [.. times.Select(time => MatMoment.Of(curve, layers, inputs.LastScreed + time))];

    /// <summary>Solves again up to the last pass, where the first solve ended before it.</summary>
    private IReadOnlyList<MatMoment?> LaterMoments(MatWeather weather, double[]? sample)
    {
        var result = Curve(model.Build(weather, sample, inputs.LastScreed + times[^1] + 1, null), sample);
        return result.Curve is { } curve ? Moments(curve) : [.. times.Select(_ => (MatMoment?)null)];
    }

    private double? Bears(CoolingCurve curve, int course, (CoolingPlaceKind Kind, double Celsius)? limit)
    {
        var laid = inputs.Courses[inputs.HotFrom + course].LaidAt;
        return limit is { } known ? curve.FirstBelow(new CoolingPlace(known.Kind, layers[course]), known.Celsius, laid) - laid : null;
    }

    private double? Window(CoolingCurve curve, MatCourse course, double limit) => double.IsNaN(limit)
        ? null
        : curve.FirstBelow(CoolingPlace.Mean(inputs.LayerOf(course.Id)), limit, course.LaidAt) - course.LaidAt;

    /// <summary>Largest difference over the rolling, looked for at each half minute.</summary>
    private double? CoreSkin(CoolingCurve curve, double last)
    {
        if (!(rolling.To >= rolling.From))
        {
            return null;
        }

        double? largest = null;
        var end = Math.Min(last + rolling.To, curve.End);
        for (var time = last + rolling.From; time <= end; time += 30)
        {
            var difference = curve.Value(CoolingPlace.CoreSkinDifference, time);
            largest = difference <= largest ? largest : difference ?? largest;
        }

        return largest;
    }

    /// <summary>Largest difference while a roller vibrates on a skin below the tender limit, looked for at each quarter minute; 0 while the skin is hotter.</summary>
    private double UnderVibration(CoolingCurve curve, double last, VibrationSpan span)
    {
        var largest = 0.0;
        var end = Math.Min(last + span.To, curve.End);
        for (var time = last + span.From; time <= end; time += 15)
        {
            if (curve.Value(CoolingPlace.Skin, time) < tender && curve.Value(CoolingPlace.CoreSkinDifference, time) is { } difference)
            {
                largest = Math.Max(largest, difference);
            }
        }

        return largest;
    }
}
