using Laygate.Engineering.Mat;

namespace Laygate.UnitTests.Engineering.Mat;

/// <summary>The largest answer along a grid, held against a look at every point (derived: every function here is given by its formula, whose largest value is known or looked for one by one).</summary>
public sealed class GridPeakTests
{
    [Fact]
    public void One_rise_and_one_fall_are_found_exactly_wherever_they_turn()
    {
        for (var count = 1; count <= 40; count++)
        {
            for (var top = 0; top < count; top++)
            {
                // Steeper before the turn than behind it, as the difference of core and skin is.
                double? Answer(int i) => i <= top ? -7.0 * (top - i) : -0.3 * (i - top);
                Assert.Equal(0, GridPeak.Largest(count, Answer)!.Value);
            }
        }
    }

    [Fact]
    public void Waves_of_ten_steps_and_more_are_found_exactly()
    {
        var random = new Random(4);
        for (var run = 0; run < 2000; run++)
        {
            var (count, length, phase, slope) = (random.Next(1, 400), 10 + (random.NextDouble() * 200), random.NextDouble() * 7, (random.NextDouble() - 0.5) * 0.02);
            double? Answer(int i) => Math.Sin((i / length * 2 * Math.PI) + phase) + (slope * i);
            Assert.Equal(Enumerable.Range(0, count).Max(Answer), GridPeak.Largest(count, Answer));
        }
    }

    [Fact]
    public void Points_without_an_answer_hide_none_beside_them()
    {
        for (var hidden = 0; hidden < 30; hidden++)
        {
            double? Answer(int i) => i == hidden ? null : -Math.Abs(i - hidden);
            Assert.Equal(-1, GridPeak.Largest(30, Answer));
        }

        Assert.Null(GridPeak.Largest(30, _ => null));
        Assert.Null(GridPeak.Largest(0, _ => 1));
    }

    [Fact]
    public void It_asks_less_than_half_of_the_points()
    {
        var asked = 0;
        GridPeak.Largest(180, i => { asked++; return -Math.Abs(i - 20.0); });
        Assert.InRange(asked, 60, 66);
    }
}
