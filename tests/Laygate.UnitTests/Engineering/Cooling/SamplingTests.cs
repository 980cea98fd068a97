using Laygate.Engineering.Cooling;
using Laygate.Engineering.Cooling.Catalogues;
using Laygate.Engineering.Cooling.Sampling;
using static Laygate.UnitTests.Engineering.Cooling.CoolingCase;

namespace Laygate.UnitTests.Engineering.Cooling;

public class SamplingTests
{
    private static readonly ParameterRange[] Ranges =
    [
        new("conductivity", 0.8, 1.2, 1.7), new("specific heat", 850, 920, 1100), new("wind", 2, 4, 7), new("laid", 150, 156, 162), ParameterRange.Choice("form", 3),
    ];

    private static readonly ConvectionForm[] Forms = [ConvectionForms.Iso6946, ConvectionForms.NusseltJuerges, ConvectionForms.RyanHerb];

    private static readonly CoolingQuestion[] Questions =
    [
        CoolingQuestion.Until("window", CoolingPlace.Mean(0), 80), CoolingQuestion.Temperature("skin", CoolingPlace.Skin, 300), CoolingQuestion.Until("never", CoolingPlace.Mean(0), -50),
    ];

    [Fact]
    public void Every_stratum_holds_one_sample()
    {
        var points = LatinHypercube.Points(64, 5, 7);
        for (var d = 0; d < 5; d++)
        {
            var strata = Enumerable.Range(0, 64).Select(i => (int)(64 * points[(i * 5) + d])).Order();
            Assert.Equal(Enumerable.Range(0, 64), strata);
        }

        Assert.Equal(points, LatinHypercube.Points(64, 5, 7));
        Assert.NotEqual(points, LatinHypercube.Points(64, 5, 8));
    }

    /// <summary>SplitMix64 of state 0 begins with 0xE220A8397B1DCDAF (published test vectors, from memory): with one sample and one dimension that is the place within the only stratum.</summary>
    [Fact]
    public void Generator_is_the_published_one() =>
        Near((0xE220A8397B1DCDAF >> 11) / Math.Pow(2, 53), LatinHypercube.Points(1, 1, 0)[0], 1e-15);

    /// <summary>A sum of even ranges has a known mean and variance; stratified samples hit the mean far better than chance (McKay and others 1979).</summary>
    [Fact]
    public void Stratified_means_are_sharp()
    {
        var points = LatinHypercube.Points(300, 4, 1);
        var mean = Enumerable.Range(0, 300).Average(i => points[i * 4] + points[(i * 4) + 1] + points[(i * 4) + 2] + points[(i * 4) + 3]);
        Near(2, mean, 0.002);
    }

    [Fact]
    public void Shapes()
    {
        // By hand: the middle between 4 and 6.
        Assert.Equal(5, new ParameterRange("even", 4, 4.2, 6).At(0.5));
        var triangle = new ParameterRange("triangular", 0, 1, 4, RangeShape.Triangular);
        Near(1, triangle.At(0.25), 1e-12);
        Near(5.0 / 3, Enumerable.Range(0, 1000).Average(i => triangle.At((i + 0.5) / 1000)), 1e-3);
        Assert.Equal([0.0, 1, 2, 2], new[] { 0.1, 0.5, 0.9, 1 }.Select(ParameterRange.Choice("of three", 3).At));
        Assert.Equal(3, new ParameterRange("fixed", 3, 3, 3, RangeShape.Triangular).At(0.7));
    }

    [Fact]
    public void Low_expected_and_high_are_in_order_and_samples_are_at_hand()
    {
        var answers = Run(Ranges, 64);
        Assert.True(answers.Low(0) < answers.Expected(0) && answers.Expected(0) < answers.High(0));
        var below = Enumerable.Range(0, 64).Count(i => answers.Sample(0, i) < answers.Low(0));
        // By hand: 5 % of 64 samples are 3.2.
        Assert.InRange(below, 2, 4);
        var own = Solve(Build(answers.Parameters(11).ToArray())).FirstBelow(CoolingPlace.Mean(0), 80);
        Assert.Equal(own!.Value, answers.Sample(0, 11));
        Assert.Equal(double.PositiveInfinity, answers.Low(2));
        Assert.Equal(double.PositiveInfinity, answers.Expected(2));
    }

    [Fact]
    public void Zero_ranges_give_zero_spread()
    {
        var answers = Run([.. Ranges.Select(r => ParameterRange.Fixed(r.Name, r.Expected))], 64);
        Assert.Equal(answers.Low(0), answers.High(0));
        Assert.Equal(answers.Expected(0), answers.Low(0));
        Assert.Equal(answers.Low(1), answers.High(1));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void Doubling_a_range_widens_the_spread(int index)
    {
        var range = Ranges[index];
        var narrow = range with { Low = range.Expected - ((range.Expected - range.Low) / 2), High = range.Expected + ((range.High - range.Expected) / 2) };
        ParameterRange[] Only(ParameterRange one) => [.. Ranges.Select((r, i) => i == index ? one : ParameterRange.Fixed(r.Name, r.Expected))];
        Assert.True(Spread(Run(Only(range), 64)) > 1.5 * Spread(Run(Only(narrow), 64)));
        ParameterRange[] withNarrow = [.. Ranges.Select((r, i) => i == index ? narrow : r)];
        Assert.True(Spread(Run(Ranges, 300)) > Spread(Run(withNarrow, 300)));

        static double Spread(SampledAnswers answers) => answers.High(0) - answers.Low(0);
    }

    [Fact]
    public void Workers_change_nothing()
    {
        var (one, two, five) = (Run(Ranges, 64, 1), Run(Ranges, 64, 2), Run(Ranges, 64, 5));
        for (var q = 0; q < 2; q++)
        {
            for (var i = 0; i < 64; i++)
            {
                Assert.Equal(one.Sample(q, i), two.Sample(q, i));
                Assert.Equal(one.Sample(q, i), five.Sample(q, i));
            }
        }
    }

    [Theory]
    [InlineData(1)]
    [InlineData(3)]
    public void A_run_that_is_called_off_ends_between_two_solves(int workers)
    {
        using var off = new CancellationTokenSource();
        var solves = 0;
        CoolingProblem Counted(double[] sample)
        {
            if (Interlocked.Increment(ref solves) == 5)
            {
                off.Cancel();
            }

            return Build(sample);
        }

        Assert.ThrowsAny<OperationCanceledException>(() => new CoolingSampler(workers).Run(Ranges, Counted, Questions, 300, 1, off.Token));
        Assert.InRange(solves, 5, 5 + workers);
    }

    /// <summary>Beyond the problems that the builder makes, a run keeps a few dozen bytes per sample.</summary>
    [Fact]
    public void Memory_is_bounded()
    {
        var problem = Build([.. Ranges.Select(r => r.Expected)]);
        var sampler = new CoolingSampler(1);
        for (var i = 0; i < 3; i++)
        {
            Assert.Null(sampler.Run(Ranges, _ => problem, Questions, 300, 1).Failure);
        }

        var before = GC.GetAllocatedBytesForCurrentThread();
        Assert.Null(sampler.Run(Ranges, _ => problem, Questions, 300, 1).Failure);
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 300 * 200);
    }

    [Fact]
    public void A_sample_that_cannot_be_computed_is_named()
    {
        var result = new CoolingSampler().Run([new("thickness", -0.01, 0.04, 0.05)], v => new([StackLayer.Course("hot", v[0], Hot, 150)], Insulated, HalfSpace, 60), Questions, 64, 1);
        Assert.Null(result.Answers);
        Assert.Equal("hot", result.Failure!.Subject);
    }

    private static SampledAnswers Run(IReadOnlyList<ParameterRange> ranges, int count, int workers = 2)
    {
        var result = new CoolingSampler(workers).Run(ranges, Build, Questions, count, 1);
        Assert.Null(result.Failure);
        return result.Answers!;
    }

    private static CoolingProblem Build(double[] v) => new(
        [StackLayer.Course("hot", 0.040, new(v[0], 2350, v[1]), v[3]), StackLayer.Existing("old", 0.1, Old, 10)],
        new TopBoundary.Weather(WeatherSeries.Constant(10, v[2], 4), Forms[(int)v[4]]), HalfSpace, 3600);
}
