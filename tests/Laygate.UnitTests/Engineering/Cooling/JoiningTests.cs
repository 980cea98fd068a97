using Laygate.Engineering.Cooling;
using Laygate.Engineering.Cooling.Catalogues;
using static Laygate.UnitTests.Engineering.Cooling.CoolingCase;

namespace Laygate.UnitTests.Engineering.Cooling;

public class JoiningTests
{
    /// <summary>Slab on a half-space by images (Carslaw and Jaeger, Conduction of Heat in Solids, 2nd ed. 1959, recalled), base OLD, shifted by the time at which the slab is laid on a closed, uniform body.</summary>
    [Theory]
    [InlineData(300, 149.00738, 137.04116, 76.10728, 128.24896)]
    [InlineData(1800, 110.33114, 99.99833, 74.23115, 97.38459)]
    public void Course_laid_later_gives_the_closed_solution_shifted(double time, double top, double middle, double contact, double mean)
    {
        const double Laid = 1234.5;
        var curve = Solve([StackLayer.Course("slab", 0.05, Hot, 150, Laid), StackLayer.Existing("base", 0.1, Old, 10)], Insulated, HalfSpace, 4000);
        Near(10, curve.Value(CoolingPlace.Skin, 1000), 1e-9);
        Assert.Null(curve.Value(CoolingPlace.Mean(0), 1000));
        Near(150, curve.Value(CoolingPlace.Mean(0), Laid), 1e-9);
        Near(top, curve.Value(CoolingPlace.Skin, Laid + time), 0.05);
        Near(middle, curve.Value(CoolingPlace.MidDepth(0), Laid + time), 0.05);
        Near(contact, curve.Value(CoolingPlace.BottomFace(0), Laid + time), 0.05);
        Near(mean, curve.Value(CoolingPlace.Mean(0), Laid + time), 0.05);
    }

    /// <summary>A lower course cools by the transform solution of <see cref="MultilayerTests"/> (derived with tests/Tools/transform.py) until the upper one arrives, then keeps its profile at that moment.</summary>
    [Fact]
    public void Lower_course_keeps_its_own_profile_until_the_upper_arrives()
    {
        var top = new TopBoundary.ConstantCoefficient(25, 10);
        var curve = Solve(
            [StackLayer.Course("upper", 0.025, Hot, 155, 900), StackLayer.Course("lower", 0.050, Hot, 150), StackLayer.Existing("old", 0.1, Old, 10)],
            top, HalfSpace, 3600);
        Near(104.46673, curve.Value(CoolingPlace.Mean(1), 600), 0.1);
        Near(98.48431, curve.Value(CoolingPlace.Skin, 600), 0.1);
        Near(92.51608, curve.Value(CoolingPlace.Mean(1), 900), 0.1);
        Near(155, curve.Value(CoolingPlace.Mean(0), 900), 1e-9);
        Assert.True(curve.Value(CoolingPlace.MidDepth(1), 1500) > curve.Value(CoolingPlace.MidDepth(1), 900) - 5);
        Assert.True(curve.FirstBelow(CoolingPlace.Mean(0), 80) > 900);
    }

    /// <summary>
    /// Flux ramp into a half-space: rise of the skin 4 b t^1.5/(3 √pi e) for a flux b t (Carslaw and Jaeger, 2nd ed., 2.9);
    /// a bend in the ramp is a second ramp.
    /// </summary>
    [Fact]
    public void Weather_bends_are_followed()
    {
        const double Rate = 0.5;
        var still = ConvectionForms.Iso6946 with { Coefficient = static (_, _, _) => 0, IncludesRadiation = true };
        var series = new WeatherSeries(
            new WeatherPoint(0, 10, 0, 10, AddedHeat: 0), new WeatherPoint(1000, 10, 0, 10, AddedHeat: 1000 * Rate), new WeatherPoint(4000, 10, 0, 10, AddedHeat: -2000 * Rate));
        var curve = Solve([StackLayer.Existing("ground", 0.1, Hot, 10)], new TopBoundary.Weather(series, still), HalfSpace, 3000);
        foreach (var t in new[] { 300.0, 1000.0, 1300.0, 3000.0 })
        {
            var rise = Ramp(Rate, t) - (2 * Ramp(Rate, t - 1000));
            Near(10 + rise, curve.Value(CoolingPlace.Skin, t), 0.05);
        }

        static double Ramp(double rate, double t) => t <= 0 ? 0 : 4 * rate * Math.Pow(t, 1.5) / (3 * Math.Sqrt(Math.PI) * Hot.Effusivity);
    }

    [Fact]
    public void Core_is_the_hottest_point_of_the_profile()
    {
        var curve = Solve(
            [StackLayer.Course("upper", 0.025, Hot, 155), StackLayer.Course("lower", 0.085, Bind, 150), StackLayer.Existing("base", 0.1, Gran, 12)],
            new TopBoundary.ConstantCoefficient(25, 12), HalfSpace, 7200);
        foreach (var t in new[] { 60.0, 600, 1800, 3600, 7200 })
        {
            var hottest = Enumerable.Range(0, 1101).Max(i => curve.Value(CoolingPlace.Depth(i * 0.0001), t)!.Value);
            Near(hottest, curve.Value(CoolingPlace.Core, t), 0.02);
        }

        var soft = curve.FirstBelow(CoolingPlace.Core, 100)!.Value;
        Near(100, curve.Value(CoolingPlace.Core, soft), 1e-6);
    }

    /// <summary>Figures of the slab on a half-space by images (Carslaw and Jaeger, Conduction of Heat in Solids, 2nd ed. 1959, recalled).</summary>
    [Fact]
    public void Kept_curve_outlives_the_next_solve()
    {
        var solver = new CoolingSolver();
        var problem = new CoolingProblem([StackLayer.Course("slab", 0.05, Hot, 150), StackLayer.Existing("base", 0.1, Old, 10)], Insulated, HalfSpace, 1800);
        var kept = solver.Solve(problem).Curve!.Keep();
        _ = solver.Solve(problem with { Layers = [StackLayer.Existing("base", 0.1, Old, 10)] });
        Near(110.33114, kept.Value(CoolingPlace.Skin, 1800), 0.05);
        var values = new double[2];
        kept.Series(CoolingPlace.Mean(0), [300, 5000], values);
        Near(128.24896, values[0], 0.05);
        Assert.True(double.IsNaN(values[1]));
    }
}
