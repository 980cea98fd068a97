using Laygate.Engineering.Cooling;
using Laygate.Engineering.Cooling.Catalogues;
using Laygate.Engineering.Cooling.Sampling;

namespace Laygate.Benchmarks;

/// <summary>What is timed of the cooling model, at the settings that check uses; free of any benchmark library.</summary>
internal sealed class CoolingCases
{
    private static readonly LayerMaterial Hot = new(1.2, 2300, 920);
    private static readonly LayerMaterial Binder = new(1.3, 2350, 900);
    private static readonly LayerMaterial Old = new(1.5, 2350, 900);
    private static readonly LayerMaterial Granular = new(1.0, 2000, 900);

    private readonly CoolingSolver solver = new();
    private static readonly ParameterRange[] Ranges =
    [
        new("conductivity", 0.8, 1.2, 1.7), new("specific heat", 850, 920, 1100), new("emissivity", 0.85, 0.95, 0.95),
        new("ground", 1.2, 1.5, 2.2), new("wind", 3.5, 5, 6.5), new("laid", 155, 160, 165),
    ];

    private static readonly CoolingQuestion[] Questions = [CoolingQuestion.Until("window", CoolingPlace.Mean(0), 80)];

    private readonly CoolingSampler sampler = new();
    private readonly CoolingSampler oneWorker = new(1);
    private readonly CoolingProblem[] shift = new CoolingProblem[12];
    private CoolingProblem forty = null!;
    private CoolingProblem varying = null!;

    /// <summary>Every case by name, for the stopwatch.</summary>
    public IReadOnlyList<(string Name, Func<double> Run)> All =>
    [
        (nameof(FortyMillimetresToMean80), FortyMillimetresToMean80),
        (nameof(FortyMillimetresVaryingHeat), FortyMillimetresVaryingHeat),
        (nameof(PairAtTwelveLayingTimes), PairAtTwelveLayingTimes),
        (nameof(ThreeHundredSolves), ThreeHundredSolves),
        (nameof(ThreeHundredSamples), ThreeHundredSamples),
        (nameof(ThreeHundredSamplesOneWorker), ThreeHundredSamplesOneWorker),
    ];

    /// <summary>Builds the problems.</summary>
    public CoolingCases()
    {
        forty = new(
            [
                StackLayer.Course("wearing", 0.040, Hot, 160),
                StackLayer.Existing("binder", 0.08, Binder, 10),
                StackLayer.Existing("base", 0.14, Old, 10),
                StackLayer.Existing("granular", 0.3, Granular, 10),
            ],
            new TopBoundary.Weather(WeatherSeries.Constant(10, 5, 10), ConvectionForms.Iso6946),
            new BottomBoundary.HalfSpace(),
            3600)
        {
            StopAt = new(0, 80),
        };
        varying = forty with
        {
            Layers = [forty.Layers[0] with { Material = Hot.WithHeatLaw(HeatLaws.Mix(0.06), 100) }, .. forty.Layers.Skip(1)],
        };
        for (var i = 0; i < shift.Length; i++)
        {
            shift[i] = Pair(i);
        }
    }

    /// <summary>40 mm on three layers to a mean of 80 °C.</summary>
    public double FortyMillimetresToMean80() => Window(forty);

    /// <summary>The same with a specific heat that changes with temperature.</summary>
    public double FortyMillimetresVaryingHeat() => Window(varying);

    /// <summary>A pair laid at each of 12 hours, each followed for 12 h of hourly weather.</summary>
    public double PairAtTwelveLayingTimes()
    {
        var sum = 0.0;
        foreach (var problem in shift)
        {
            sum += Window(problem);
        }

        return sum;
    }

    /// <summary>300 solves of the 40 mm case on one core.</summary>
    public double ThreeHundredSolves()
    {
        var sum = 0.0;
        for (var i = 0; i < 300; i++)
        {
            sum += Window(forty);
        }

        return sum;
    }

    /// <summary>300 samples of the 40 mm case over six ranges, two workers.</summary>
    public double ThreeHundredSamples() => Spread(sampler);

    /// <summary>The same with one worker.</summary>
    public double ThreeHundredSamplesOneWorker() => Spread(oneWorker);

    private double Spread(CoolingSampler by)
    {
        var answers = by.Run(Ranges, Sampled, Questions, 300, 1).Answers!;
        return answers.High(0) - answers.Low(0);
    }

    private CoolingProblem Sampled(double[] v) => forty with
    {
        Layers =
        [
            StackLayer.Course("wearing", 0.040, new(v[0], 2300, v[1], v[2]), v[5]),
            forty.Layers[1],
            StackLayer.Existing("base", 0.14, Old with { Conductivity = v[3] }, 10),
            forty.Layers[3],
        ],
        Top = new TopBoundary.Weather(WeatherSeries.Constant(10, v[4], 10), ConvectionForms.Iso6946),
    };

    private static CoolingProblem Pair(int hour)
    {
        var points = new WeatherPoint[13];
        for (var i = 0; i < points.Length; i++)
        {
            var phase = Math.Sin(2 * Math.PI * (hour + i) / 24);
            points[i] = new(3600 * i, 10 + (5 * phase), 3 + phase, 5 * phase, Math.Max(0, 400 * phase));
        }

        return new(
            [
                StackLayer.Course("wearing", 0.025, Hot, 155, 30),
                StackLayer.Course("binder", 0.085, Binder, 150),
                StackLayer.Existing("base", 0.14, Old, 10),
                StackLayer.Existing("granular", 0.3, Granular, 10),
            ],
            new TopBoundary.Weather(new WeatherSeries(points), ConvectionForms.Iso6946),
            new BottomBoundary.HalfSpace(),
            12 * 3600);
    }

    private double Window(CoolingProblem problem) => solver.Solve(problem).Curve?.FirstBelow(CoolingPlace.Mean(0), 80) ?? 0;
}
