using Laygate.Engineering.Numerics;
using MathNet.Numerics.Statistics;

namespace Laygate.UnitTests.Engineering.Numerics;

/// <summary>Points of samples. Outside reference: definition R7 of MathNet.Numerics 5.0.0, an independent open-source library.</summary>
public class QuantileTests
{
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(20)]
    [InlineData(101)]
    [InlineData(1000)]
    public void A_point_lies_where_MathNet_finds_it(int count)
    {
        var state = RandomStream.Start(7, 0, count);
        var samples = Enumerable.Range(0, count).Select(_ => RandomStream.Fraction(ref state)).Order().ToArray();
        Assert.All(new[] { 0, 0.05, 0.25, 0.5, 0.95, 1 }, share =>
            Assert.Equal(SortedArrayStatistics.QuantileCustom(samples, share, QuantileDefinition.R7), Quantiles.Of(samples, share), 1e-12));
    }

    [Fact]
    public void A_time_that_is_never_reached_leaves_the_points_below_it_finite()
    {
        double[] samples = [10, 20, 30, double.PositiveInfinity, double.PositiveInfinity];
        Assert.Equal(20, Quantiles.Of(samples, 0.25));
        Assert.Equal(30, Quantiles.Of(samples, 0.5));
        Assert.Equal(double.PositiveInfinity, Quantiles.Of(samples, 0.6));
        Assert.Equal(double.PositiveInfinity, Quantiles.Of(samples, 0.95));
    }
}
