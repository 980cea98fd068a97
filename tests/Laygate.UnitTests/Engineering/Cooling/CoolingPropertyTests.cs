using Laygate.Engineering.Cooling;
using Laygate.Engineering.Cooling.Catalogues;
using static Laygate.UnitTests.Engineering.Cooling.CoolingCase;

namespace Laygate.UnitTests.Engineering.Cooling;

/// <summary>Properties over random stacks, seed fixed. Windows are minutes until the top course's mean is below 80 °C.</summary>
public class CoolingPropertyTests
{
    private const int Stacks = 300;

    /// <summary>Allowance for the solver's own error on a window, twice its aim of 0.05 %.</summary>
    private const double Slack = 1.001;

    private readonly CoolingSolver solver = new();

    [Fact]
    public void Harsher_conditions_never_lengthen_the_window()
    {
        ForEach(s =>
        {
            var window = Window(s);
            Assert.True(Window(s with { Air = s.Air - 8, Sky = s.Sky - 8 }) <= window * Slack, $"air {s}");
            Assert.True(Window(s with { Wind = s.Wind + 3 }) <= window * Slack, $"wind {s}");
            Assert.True(Window(s with { Base = s.Base - 8 }) <= window * Slack, $"base {s}");
            Assert.True(Window(s with { Laid = s.Laid - 8 }) <= window * Slack, $"laid {s}");
            Assert.True(Window(s with { Sun = 0 }) <= window * Slack, $"sun {s}");
            Assert.True(Window(s with { Thickness = 0.9 * s.Thickness }) <= window * Slack, $"thickness {s}");
        });
    }

    /// <summary>Maximum principle, with sun off; 0.05 K is the solver's stated error.</summary>
    [Fact]
    public void Temperatures_stay_between_the_extremes_of_the_data()
    {
        var random = new Random(20261125);
        ForEach(s =>
        {
            var curve = Run(s with { Sun = 0 });
            var low = Math.Min(Math.Min(s.Air, s.Sky), s.Base) - 0.05;
            var high = s.Laid + 0.05;
            for (var i = 0; i < 20; i++)
            {
                var t = Math.Pow(random.NextDouble(), 4) * curve.End;
                foreach (var place in new[] { CoolingPlace.Skin, CoolingPlace.Core, CoolingPlace.Mean(0), CoolingPlace.BottomFace(0), CoolingPlace.Depth(random.NextDouble() * 0.2) })
                {
                    var value = curve.Value(place, t)!.Value;
                    Assert.True(value >= low && value <= high, $"{place} {t} {value} {s}");
                }
            }
        });
    }

    [Fact]
    public void Refining_converges()
    {
        ForEach(
            s =>
            {
                var fine = Window(s, CoolingSettings.Default.Finer(3));
                Assert.Equal(fine, Window(s), 0.0005 * fine);
                Assert.Equal(fine, Window(s, CoolingSettings.Default.Finer(2)), 0.0002 * fine);
            },
            40);
    }

    [Fact]
    public void Cutting_a_layer_in_two_changes_nothing()
    {
        ForEach(s =>
        {
            var problem = Problem(s);
            var whole = solver.Solve(problem).Curve!.Keep();
            var (top, ground) = (problem.Layers[0], problem.Layers[1]);
            var cut = solver.Solve(problem with
            {
                Layers = [top with { Thickness = top.Thickness / 2 }, top with { Thickness = top.Thickness / 2 }, ground with { Thickness = ground.Thickness / 2 }, ground with { Thickness = ground.Thickness / 2 }, .. problem.Layers.Skip(2)],
            }).Curve!;
            foreach (var t in new[] { 30.0, 300.0, 900.0 })
            {
                Near(whole.Value(CoolingPlace.Skin, t)!.Value, cut.Value(CoolingPlace.Skin, t), 1e-6);
                Near(whole.Value(CoolingPlace.Core, t)!.Value, cut.Value(CoolingPlace.Core, t), 1e-6);
                Near(whole.Value(CoolingPlace.Mean(0), t)!.Value, (cut.Value(CoolingPlace.Mean(0), t) + cut.Value(CoolingPlace.Mean(1), t)) / 2, 1e-6);
                Near(whole.Value(CoolingPlace.MidDepth(0), t)!.Value, cut.Value(CoolingPlace.BottomFace(0), t), 1e-6);
            }
        });
    }

    private void ForEach(Action<Site> check, int count = Stacks)
    {
        var random = new Random(3);
        double Between(double low, double high) => low + ((high - low) * random.NextDouble());
        LayerMaterial Mix() => new(Between(0.8, 2), Between(1900, 2450), Between(850, 1100), Between(0.85, 0.95), Between(0.8, 0.95));
        for (var i = 0; i < count; i++)
        {
            var air = Between(-5, 30);
            check(new Site(
                Between(0.02, 0.1), Mix(), Between(125, 175), new(Between(0.5, 3), Between(1800, 2400), Between(800, 1500)), Between(-5, 40),
                air, air - Between(0, 20), Between(0, 10), Between(0, 700)));
        }
    }

    private static CoolingProblem Problem(Site s) => new(
        [StackLayer.Course("top", s.Thickness, s.Mix, s.Laid), StackLayer.Existing("old", 0.12, s.Ground, s.Base), StackLayer.Existing("granular", 0.2, Gran, s.Base)],
        new TopBoundary.Weather(WeatherSeries.Constant(s.Air, s.Wind, s.Sky, s.Sun), ConvectionForms.Iso6946),
        HalfSpace,
        6 * 3600);

    private CoolingCurve Run(Site s, CoolingSettings? settings = null)
    {
        var problem = Problem(s) with { StopAt = new(0, 80) };
        return solver.Solve(settings is null ? problem : problem with { Settings = settings }).Curve!;
    }

    private double Window(Site s, CoolingSettings? settings = null) =>
        Run(s, settings).FirstBelow(CoolingPlace.Mean(0), 80) ?? double.PositiveInfinity;

    private sealed record Site(
        double Thickness, LayerMaterial Mix, double Laid, LayerMaterial Ground, double Base, double Air, double Sky, double Wind, double Sun);
}
