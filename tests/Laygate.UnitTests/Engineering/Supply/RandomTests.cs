using Laygate.Engineering.Numerics;
using Laygate.Engineering.Supply.Simulation;
using MathNet.Numerics.Distributions;

namespace Laygate.UnitTests.Engineering.Supply;

/// <summary>Sampled times against the exact distributions of MathNet.Numerics.</summary>
public class RandomTests
{
    private const int Count = 400_000;

    [Fact]
    public void Normal_samples_follow_the_normal_distribution() =>
        Follows(Draw((ref ulong state) => Ziggurat.Normal(ref state)), x => Normal.CDF(0, 1, x));

    [Fact]
    public void Exponential_samples_follow_the_exponential_distribution() =>
        Follows(Draw((ref ulong state) => Ziggurat.Exponential(ref state)), x => Exponential.CDF(1, x));

    [Fact]
    public void Tails_are_as_heavy_as_they_must_be()
    {
        var normal = Draw((ref ulong state) => Ziggurat.Normal(ref state), 20_000_000);
        Assert.Equal(2 * Normal.CDF(0, 1, -3.7), normal.Count(x => Math.Abs(x) > 3.7) / 2e7, 1e-5);
        var exponential = Draw((ref ulong state) => Ziggurat.Exponential(ref state), 20_000_000);
        Assert.Equal(Math.Exp(-8), exponential.Count(x => x > 8) / 2e7, 2e-5);
    }

    [Fact]
    public void Lognormal_times_have_their_mean_and_variation()
    {
        var sampler = new Sampler(TimeSpread.Lognormal(1620, 0.15).Plus(240));
        var times = Draw((ref ulong state) => sampler.Next(ref state));
        var mean = times.Average();
        // By hand: 1620 s and 240 s.
        Assert.Equal(1860, mean, 1.0);
        Assert.Equal(0.15 * 1620, Math.Sqrt(times.Average(time => (time - mean) * (time - mean))), 1.0);
        Assert.True(times.Min() > 240);
    }

    [Fact]
    public void A_bad_day_is_the_stated_point_of_the_spread()
    {
        var time = TimeSpread.UsualAndBad(27 * 60, 36 * 60, 0.95);
        Assert.Equal(36 * 60, time.Point(0.95), 1e-6);
        Assert.Equal(27 * 60, time.Point(0.5), 1e-6);
        Assert.Equal(27 * 60, time.WithoutSpread(median: true).Expected, 1e-6);
        // By hand: σ = ln(36/27)/1.6449 = 0.1749, variation √(exp σ² − 1).
        Assert.Equal(0.1762, time.Variation, 0.0001);
        Assert.Equal(27 * 60, TimeSpread.UsualAndBad(27 * 60, 27 * 60, 0.95).Point(0.99), 1e-9);
        Assert.Equal(100, TimeSpread.UsualAndVariation(100, 0.15).Point(0.5), 1e-9);
    }

    private delegate double Draws(ref ulong state);

    private static double[] Draw(Draws draw, int count = Count)
    {
        var state = RandomStream.Start(3, 0, 0);
        var values = new double[count];
        for (var i = 0; i < count; i++)
        {
            values[i] = draw(ref state);
        }

        return values;
    }

    /// <summary>Kolmogorov and Smirnov: the largest distance stays below 1.95 / √n, which a right sample exceeds once in a thousand.</summary>
    private static void Follows(double[] values, Func<double, double> distribution)
    {
        Array.Sort(values);
        var distance = values.Select((x, i) => Math.Max(
            Math.Abs(distribution(x) - (i / (double)values.Length)), Math.Abs(distribution(x) - ((i + 1) / (double)values.Length)))).Max();
        Assert.True(distance < 1.95 / Math.Sqrt(values.Length), $"{distance}");
    }
}
