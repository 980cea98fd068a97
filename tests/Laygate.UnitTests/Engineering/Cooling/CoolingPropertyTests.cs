using Laygate.Engineering.Cooling;
using static Laygate.UnitTests.Engineering.Cooling.CoolingCase;

namespace Laygate.UnitTests.Engineering.Cooling;

/// <summary>
/// Properties over random stacks (<see cref="RandomStacks"/>). Windows run from laying until the upper course's mean is
/// below 80 °C. Domain: mix at 125 to 175 °C on a colder base (−5 to 40 °C) in colder air, so that every skin loses heat.
/// </summary>
public class CoolingPropertyTests
{
    /// <summary>Allowance for the solver's own error on a window, twice its aim of 0.05 %.</summary>
    private const double Slack = 1.001;

    [Fact]
    public void Harsher_conditions_never_lengthen_the_window()
    {
        RandomStacks.ForEach(400, (solver, s, _) =>
        {
            var window = Window(solver, s);
            Shorter("air", s with { Air = s.Air - 8 });
            Shorter("wind", s with { Wind = s.Wind + 3 });
            Shorter("base", s with { Base = s.Base - 8 });
            Shorter("laid", s with { Laid = s.Laid - 8 });
            Shorter("sun", s with { Sun = 0.3 * s.Sun });
            Shorter("thickness", s.IsPair ? s with { Lower = 0.9 * s.Lower } : s with { Thickness = 0.9 * s.Thickness });

            void Shorter(string what, RandomStack harsher) =>
                Assert.True(Window(solver, harsher) <= window * Slack, $"{what} {s}");
        });
    }

    /// <summary>Maximum principle, with sun off; 0.05 K is the solver's stated error.</summary>
    [Fact]
    public void Temperatures_stay_between_the_extremes_of_the_data()
    {
        RandomStacks.ForEach(400, (solver, stack, number) =>
        {
            var s = stack with { Sun = 0 };
            var random = new Random(number);
            var curve = solver.Solve(s.Problem() with { StopAt = new(0, 60) }).Curve!;
            var low = Math.Min(s.Air - s.SkyBelow, s.Base) - 0.05;
            var high = Math.Max(s.Laid, s.IsPair ? s.LowerLaid : 0) + 0.05;
            for (var i = 0; i < 20; i++)
            {
                var t = Math.Pow(random.NextDouble(), 4) * curve.End;
                foreach (var place in new[] { CoolingPlace.Skin, CoolingPlace.Core, CoolingPlace.Mean(0), CoolingPlace.BottomFace(0), CoolingPlace.Depth(0.1 + (random.NextDouble() * 0.2)) })
                {
                    var value = curve.Value(place, t);
                    Assert.True(value is null || (value >= low && value <= high), $"{place} {t} {value} {s}");
                }
            }
        });
    }

    [Fact]
    public void Refining_converges()
    {
        RandomStacks.ForEach(60, (solver, s, _) =>
        {
            var fine = Window(solver, s, CoolingSettings.Default.Finer(3));
            var (plain, finer) = (Window(solver, s), Window(solver, s, CoolingSettings.Default.Finer(2)));
            Assert.True(fine.Equals(plain) || Math.Abs(fine - plain) <= 0.001 * fine, $"{fine} {plain} {s}");
            Assert.True(fine.Equals(finer) || Math.Abs(fine - finer) <= 0.0003 * fine, $"{fine} {finer} {s}");
        });
    }

    /// <summary>The stated accuracy of check, 0.05 K from 60 s on, against a grid and steps three times finer.</summary>
    [Fact]
    public void Temperatures_agree_with_a_finer_solve()
    {
        RandomStacks.ForEach(60, (solver, s, _) =>
        {
            var problem = s.Problem() with { Duration = 3600 };
            var fine = solver.Solve(problem with { Settings = CoolingSettings.Default.Finer(3) }).Curve!.Keep();
            var plain = solver.Solve(problem).Curve!;
            var start = s.IsPair ? s.Gap : 0;
            foreach (var t in new[] { 60.0, 300, 1000, 2600 })
            {
                foreach (var place in new[] { CoolingPlace.Skin, CoolingPlace.Mean(0), CoolingPlace.MidDepth(0), CoolingPlace.BottomFace(0), CoolingPlace.Core, CoolingPlace.Depth(s.Thickness + s.Lower + 0.03) })
                {
                    Near(fine.Value(place, start + t)!.Value, plain.Value(place, start + t), 0.05);
                }
            }
        });
    }

    /// <summary>What samples and the search for a worst moment give away for half the cells: far less than the spread of a sampled window, some tens of per cent.</summary>
    [Fact]
    public void Half_as_many_cells_move_no_answer_by_more_than_samples_can_tell()
    {
        RandomStacks.ForEach(200, (solver, s, _) =>
        {
            var (plain, coarse) = (Window(solver, s), Window(solver, s, CoolingSettings.Coarse));
            Assert.True(plain.Equals(coarse) || Math.Abs(plain - coarse) <= 0.002 * plain, $"{plain} {coarse} {s}");
            var problem = s.Problem() with { Duration = 3600 };
            var kept = solver.Solve(problem).Curve!.Keep();
            var fewer = solver.Solve(problem with { Settings = CoolingSettings.Coarse }).Curve!;
            Assert.InRange(fewer.Cells, 1, 0.6 * kept.Cells);
            var start = s.IsPair ? s.Gap : 0;
            foreach (var t in new[] { 60.0, 300, 1000, 2600 })
            {
                foreach (var place in new[] { CoolingPlace.Skin, CoolingPlace.Mean(0), CoolingPlace.MidDepth(0), CoolingPlace.Core })
                {
                    Near(kept.Value(place, start + t)!.Value, fewer.Value(place, start + t), 0.2);
                }
            }
        });
    }

    [Fact]
    public void Cutting_every_layer_in_two_changes_nothing()
    {
        RandomStacks.ForEach(300, (solver, s, _) =>
        {
            var problem = s.Problem() with { Duration = 3600 };
            var whole = solver.Solve(problem).Curve!.Keep();
            var cut = solver.Solve(problem with { Layers = [.. problem.Layers.SelectMany(layer => Enumerable.Repeat(layer with { Thickness = layer.Thickness / 2 }, 2))] }).Curve!;
            foreach (var t in new[] { 30.0, 1000.0, 2700.0 }.Where(t => whole.Value(CoolingPlace.Mean(0), t) is not null))
            {
                Near(whole.Value(CoolingPlace.Skin, t)!.Value, cut.Value(CoolingPlace.Skin, t), 1e-6);
                Near(whole.Value(CoolingPlace.Core, t)!.Value, cut.Value(CoolingPlace.Core, t), 1e-6);
                Near(whole.Value(CoolingPlace.Mean(0), t)!.Value, (cut.Value(CoolingPlace.Mean(0), t) + cut.Value(CoolingPlace.Mean(1), t)) / 2, 1e-6);
                Near(whole.Value(CoolingPlace.MidDepth(0), t)!.Value, cut.Value(CoolingPlace.BottomFace(0), t), 1e-6);
            }
        });
    }

    /// <summary>Heat in the body changes by what passed its faces, to 1e-9 of the heat brought in.</summary>
    [Fact]
    public void Heat_balances()
    {
        RandomStacks.ForEach(400, (solver, s, _) =>
        {
            var balance = solver.Solve(s.Problem() with { StopAt = new(0, 80) }).Curve!.Balance();
            Assert.True(Math.Abs(balance.Gap) <= 1e-9 * s.Laid * s.Thickness * s.Mix.VolumetricHeat, $"{balance.Gap} {s}");
        });
    }

    private static double Window(CoolingSolver solver, RandomStack s, CoolingSettings? settings = null)
    {
        var problem = s.Problem() with { StopAt = new(0, 80), Settings = settings ?? CoolingSettings.Default };
        return solver.Solve(problem).Curve!.FirstBelow(CoolingPlace.Mean(0), 80) - (s.IsPair ? s.Gap : 0) ?? double.PositiveInfinity;
    }
}
