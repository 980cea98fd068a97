using Laygate.Engineering.Mat;

namespace Laygate.UnitTests.Engineering.Mat;

/// <summary>How high an answer may rise between two moments; each expected value is where two straight lines meet, by hand.</summary>
public class HiddenPeakTests
{
    [Theory]
    [InlineData(10, 100, 100, 10, 0.5, 105)] // both lines rise by 10 over the interval: they meet half way
    [InlineData(30, 100, 110, 10, 0.5, 115)] // 100 + 30 x = 110 + 10 (1 - x)
    [InlineData(20, 90, 110, 10, 0.5, 110)] // on the line of the left up to the right end, though the right rises towards it
    [InlineData(10, 100, 110, 50, 0.5, 110)] // on one line up to the right end: nothing hides
    [InlineData(0, 0, 100, 40, 0.5, 140)] // flat, then a jump somewhere: what rises from the right may go on up to it
    [InlineData(double.NaN, 0, 100, 40, 0.5, 240)] // the first interval: the line of the right misses the answer on the left by 140
    [InlineData(20, 100, 130, double.NaN, 0.5, 140)] // the last one: missed by 10
    [InlineData(20, 100, 120, double.NaN, 0.5, 120)] // on the line: nothing hides
    [InlineData(-5, 80, 90, -5, 0.5, 90)] // higher points lie outside
    [InlineData(double.NaN, 80, 90, double.NaN, 0.5, 90)]
    [InlineData(double.NaN, double.NegativeInfinity, 90, 5, 0.5, 95)] // never reached on the left
    public void The_lines_of_both_sides_bound_it(double left, double first, double second, double right, double share, double value)
    {
        var found = HiddenPeak.Of(left, first, second, right, 0.1);
        Assert.Equal(value, found.Value, 1e-9);
        Assert.Equal(share, found.Share, 1e-9);
    }

    [Fact]
    public void A_line_may_steepen_on_the_way()
    {
        // 100 + 20 x = 110 + 20 (1 - x) where both lines, which come with 10, may be twice as steep: x = 0.75.
        var found = HiddenPeak.Of(10, 100, 110, 10, 0.1, steeper: 2);
        Assert.Equal((0.75, 115), (found.Share, found.Value));
    }
}
