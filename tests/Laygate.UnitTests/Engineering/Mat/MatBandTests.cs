using Laygate.Engineering.Mat;

namespace Laygate.UnitTests.Engineering.Mat;

/// <summary>The band of samples: straight between neighbours, as Hyndman and Fan, Sample quantiles in statistical packages, 1996, definition 7 (recalled).</summary>
public sealed class MatBandTests
{
    // By hand: of n samples in order the point p lies at p (n − 1); of 0 and 10 that is 0.5 and 9.5, of 0, 1 … 10 it is 0.5 and 9.5 too, of 4, 8, 20 it is 4.4 and 18.8.
    [Theory]
    [InlineData(new[] { 10.0, 0.0 }, 0.5, 9.5)]
    [InlineData(new[] { 0.0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10 }, 0.5, 9.5)]
    [InlineData(new[] { 20.0, 4.0, 8.0 }, 4.4, 18.8)]
    public void Ends_lie_between_neighbours(double[] samples, double low, double high)
    {
        var band = MatBand.Of(7, samples, 100);

        Assert.Equal(7.0, band.Expected);
        Assert.Equal(low, band.Low, 1e-12);
        Assert.Equal(high, band.High, 1e-12);
        Assert.Equal(samples, band.Samples);
    }

    [Fact]
    public void A_time_that_is_not_reached_counts_as_the_end_and_one_without_a_value_not_at_all()
    {
        // By hand: of 4, 8 and the end 20; then of 4 and 8.
        var late = MatBand.Of(double.PositiveInfinity, [4, double.PositiveInfinity, 8], 20);
        Assert.Null(late.Expected);
        Assert.Equal(18.8, late.High, 1e-12);
        Assert.NotNull(late.Samples);

        var missing = MatBand.Of(5, [4, double.NaN, 8], 20);
        Assert.Equal(7.8, missing.High, 1e-12);
        Assert.Null(missing.Samples);
    }

    [Theory]
    [InlineData(5.0, 5.0)]
    [InlineData(double.PositiveInfinity, 20.0)]
    [InlineData(double.NaN, 0.0)]
    public void Without_samples_both_ends_are_the_value_itself(double expected, double end)
    {
        var band = MatBand.Of(expected, [3], 20);

        Assert.Equal((end, end), (band.Low, band.High));
    }
}
