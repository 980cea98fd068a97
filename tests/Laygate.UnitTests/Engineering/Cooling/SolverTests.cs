using Laygate.Engineering.Cooling;
using Laygate.Engineering.Cooling.Catalogues;
using static Laygate.UnitTests.Engineering.Cooling.CoolingCase;

namespace Laygate.UnitTests.Engineering.Cooling;

public class SolverTests
{
    private static readonly CoolingProblem Forty = new(
        [
            StackLayer.Course("hot", 0.040, Hot, 160),
            StackLayer.Existing("binder", 0.08, Bind, 10),
            StackLayer.Existing("base", 0.14, Old, 10),
            StackLayer.Existing("granular", 0.3, Gran, 10),
        ],
        new TopBoundary.Weather(WeatherSeries.Constant(10, 5, 10), ConvectionForms.Iso6946),
        HalfSpace,
        1800)
    {
        StopAt = new(0, 80),
    };

    [Fact]
    public void Energy_is_conserved_with_closed_faces()
    {
        var curve = Solve([StackLayer.Course("hot", 0.05, Hot, 150), StackLayer.Existing("deck", 0.012, Steel, 10), StackLayer.Existing("old", 0.2, Old, 10)], Insulated, new BottomBoundary.Insulated(), 7200);
        var balance = curve.Balance();
        Assert.Equal((0.05 * Hot.VolumetricHeat * 150) + (0.012 * Steel.VolumetricHeat * 10) + (0.2 * Old.VolumetricHeat * 10), balance.Brought, 1e-9 * balance.Brought);
        Near(balance.Brought, balance.Content, 1e-9 * balance.Brought);
    }

    [Fact]
    public void Energy_balances_with_open_faces_joins_and_weather()
    {
        var series = new WeatherSeries(
            new WeatherPoint(0, 12, 2, 0, 300), new WeatherPoint(3600, 9, 4, -4, 100), new WeatherPoint(7200, 6, 3, -8));
        var curve = Solve(
            [StackLayer.Course("upper", 0.025, Hot, 155, 700), StackLayer.Course("lower", 0.085, Bind, 150, 100), StackLayer.Existing("base", 0.4, Gran, 12)],
            new TopBoundary.Weather(series, ConvectionForms.Vehrencamp),
            new BottomBoundary.GivenTemperature(8),
            7200);
        var balance = curve.Balance();
        Assert.True(balance.ThroughSkin < -1e6);
        Near(0, balance.Gap, 1e-9 * balance.Brought);
    }

    /// <summary>Order conditions of a Runge–Kutta method up to order 4 (Hairer, Nørsett and Wanner, Solving Ordinary Differential Equations I, II.2).</summary>
    [Fact]
    public void Method_is_of_order_four_and_its_estimate_of_order_three()
    {
        var t = Tableau.Esdirk4;
        var b = t.Rows[^1];
        var hat = b.Zip(t.Error, (x, e) => x - e).ToArray();
        double[] Apply(double[] v) => [.. t.Rows.Select(row => row.Zip(v, (a, x) => a * x).Sum())];
        static double Dot(double[] x, double[] y) => x.Zip(y, (p, q) => p * q).Sum();
        double[] one = [1, 1, 1, 1, 1, 1];
        double[] Power(int n) => [.. t.Nodes.Select(c => Math.Pow(c, n))];

        Assert.All(Apply(one).Zip(t.Nodes), p => Assert.Equal(p.Second, p.First, 1e-14));
        foreach (var w in new[] { b, hat })
        {
            Assert.Equal(1, Dot(w, one), 1e-13);
            Assert.Equal(1.0 / 2, Dot(w, Power(1)), 1e-13);
            Assert.Equal(1.0 / 3, Dot(w, Power(2)), 1e-13);
            Assert.Equal(1.0 / 6, Dot(w, Apply(Power(1))), 1e-13);
        }

        Assert.Equal(1.0 / 4, Dot(b, Power(3)), 1e-13);
        Assert.Equal(1.0 / 8, Dot([.. b.Zip(Power(1), (x, c) => x * c)], Apply(Power(1))), 1e-13);
        Assert.Equal(1.0 / 12, Dot(b, Apply(Power(2))), 1e-13);
        Assert.Equal(1.0 / 24, Dot(b, Apply(Apply(Power(1)))), 1e-13);
        Assert.True(Math.Abs(Dot(hat, Power(3)) - 0.25) > 1e-6);
    }

    /// <summary>
    /// Error against the closed solution of a slab on a half-space (Carslaw and Jaeger, Conduction of Heat in Solids, 2nd ed. 1959, by images; OLD, 900 s) while the grid is refined: third order on coarse
    /// grids, second in the limit, where what the first contact leaves behind decides.
    /// </summary>
    [Fact]
    public void Converges_in_space()
    {
        var errors = new[] { 1.0, 2.0, 4.0 }.Select(f => SpaceError(new(2 / f, 0.4 / f, 1e-6, 1_000_000))).ToArray();
        Assert.True(errors[0] / errors[1] > 4, $"{errors[0]} {errors[1]} {errors[2]}");
        Assert.True(errors[1] / errors[2] > 4, $"{errors[0]} {errors[1]} {errors[2]}");
    }

    private static double SpaceError(CoolingSettings settings)
    {
        var curve = Solve(new CoolingProblem([StackLayer.Course("slab", 0.05, Hot, 150), StackLayer.Existing("base", 0.1, Old, 10)], Insulated, HalfSpace, 900) { Settings = settings });
        double[] errors =
        [
            curve.Value(CoolingPlace.Skin, 900)!.Value - 132.62131,
            curve.Value(CoolingPlace.MidDepth(0), 900)!.Value - 116.53891,
            curve.Value(CoolingPlace.BottomFace(0), 900)!.Value - 75.98525,
            curve.Value(CoolingPlace.Depth(0.075), 900)!.Value - 41.99445,
        ];
        return Math.Sqrt(errors.Sum(e => e * e));
    }

    /// <summary>Error against a solve with the tightest tolerance on the same grid; the method's order is 4, its control works on order 3.</summary>
    [Fact]
    public void Converges_in_time()
    {
        var exact = Solve(Timed(1e-9));
        var (coarse, fine) = (Solve(Timed(1e-2)), Solve(Timed(1e-5)));
        var (coarseSteps, coarseError) = (coarse.Count, TimeError(coarse, exact));
        var (fineSteps, fineError) = (fine.Count, TimeError(fine, exact));
        var order = Math.Log(coarseError / fineError) / Math.Log((double)fineSteps / coarseSteps);
        Assert.True(order > 3, $"{coarseSteps} {coarseError} {fineSteps} {fineError} {order}");

        static CoolingProblem Timed(double tolerance) => Forty with { StopAt = null, Settings = new(0.5, 0.15, tolerance, 1_000_000) };
        static double TimeError(CoolingCurve a, CoolingCurve b)
        {
            double[] times = [120, 300, 600, 1200, 1800];
            return times.Max(t => Math.Abs(a.Value(CoolingPlace.Mean(0), t)!.Value - b.Value(CoolingPlace.Mean(0), t)!.Value));
        }
    }

    [Fact]
    public void Default_settings_hold_a_thousandth_against_a_fine_grid()
    {
        var expected = Solve(Forty with { Settings = CoolingSettings.Default.Finer(4) }).FirstBelow(CoolingPlace.Mean(0), 80)!.Value;
        Near(expected, Solve(Forty).FirstBelow(CoolingPlace.Mean(0), 80), 0.0005 * expected);
    }

    [Fact]
    public void Second_solve_allocates_nothing()
    {
        var solver = new CoolingSolver();
        for (var i = 0; i < 50; i++)
        {
            Run(solver);
        }

        var before = GC.GetAllocatedBytesForCurrentThread();
        var sum = 0.0;
        for (var i = 0; i < 10; i++)
        {
            sum += Run(solver);
        }

        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);
        Assert.True(sum > 0);

        static double Run(CoolingSolver solver) => solver.Solve(Forty).Curve!.FirstBelow(CoolingPlace.Mean(0), 80)!.Value;
    }

    [Fact]
    public void Bad_problems_are_refused_with_a_reason()
    {
        var course = StackLayer.Course("wearing", 0.04, Hot, 160);
        var ground = StackLayer.Existing("ground", 0.1, Old, 10);
        Refused(CoolingFailureKind.NoLayers, "stack", Forty with { Layers = [] });
        Refused(CoolingFailureKind.UnusableValue, "wearing", Forty with { Layers = [course with { Thickness = 0 }, ground] });
        Refused(CoolingFailureKind.UnusableValue, "wearing", Forty with { Layers = [course with { Thickness = double.NaN }, ground] });
        Refused(CoolingFailureKind.UnusableValue, "wearing", Forty with { Layers = [course with { Material = Hot with { Conductivity = -1 } }, ground] });
        Refused(CoolingFailureKind.UnusableValue, "wearing", Forty with { Layers = [course with { Material = Hot with { Emissivity = 1.1 } }, ground] });
        Refused(CoolingFailureKind.UnusableValue, "wearing", Forty with { Layers = [course with { Initial = InitialTemperature.Constant(-300) }, ground] });
        Refused(CoolingFailureKind.UnusableValue, "wearing", Forty with { Layers = [course with { Initial = InitialTemperature.Profile((0.1, 20), (0.0, 30)) }, ground] });
        Refused(CoolingFailureKind.UnusableValue, "wearing", Forty with { Layers = [course with { Initial = InitialTemperature.Profile() }, ground] });
        Refused(CoolingFailureKind.UnusableValue, "duration", Forty with { Duration = double.PositiveInfinity });
        Refused(CoolingFailureKind.UnusableValue, "stop", Forty with { StopAt = new(7, 80) });
        Refused(CoolingFailureKind.UnusableValue, "skin", Forty with { Top = new TopBoundary.ConstantCoefficient(-1, 10) });
        Refused(CoolingFailureKind.UnusableValue, "skin", Forty with { Top = new TopBoundary.Weather(WeatherSeries.Constant(10, -1, 10), ConvectionForms.Iso6946) });
        Refused(CoolingFailureKind.UnusableValue, "skin", Forty with { Top = new TopBoundary.Weather(new WeatherSeries(), ConvectionForms.Iso6946) });
        Refused(CoolingFailureKind.UnusableValue, "bottom", Forty with { Bottom = new BottomBoundary.GivenTemperature(double.NaN) });
        Refused(CoolingFailureKind.UnusableValue, "bottom", Forty with { Bottom = new BottomBoundary.ConstantCoefficient(-1, 10) });
        Refused(CoolingFailureKind.OrderOfLaying, "wearing", Forty with { Layers = [course with { LaidAt = 1800 }, ground] });
        Refused(CoolingFailureKind.OrderOfLaying, "wearing", Forty with { Layers = [course, StackLayer.Course("binder", 0.08, Hot, 150, 60), ground] });
        Refused(CoolingFailureKind.OrderOfLaying, "ground", Forty with { Layers = [ground, course] });
        Refused(CoolingFailureKind.Settings, "settings", Forty with { Settings = new(0.5, 0.15, 0, 100) });
        Refused(CoolingFailureKind.Settings, "grid", Forty with { Settings = new(1e-7, 1e-7, 1e-3, 100) });
        Refused(CoolingFailureKind.TooManySteps, "settings", Forty with { Settings = new(0.5, 0.15, 1e-3, 5) });

        static void Refused(CoolingFailureKind kind, string subject, CoolingProblem problem)
        {
            var result = new CoolingSolver().Solve(problem);
            Assert.Null(result.Curve);
            Assert.Equal((kind, subject), (result.Failure!.Kind, result.Failure.Subject));
        }
    }

    [Fact]
    public void Extreme_values_end_in_an_answer_or_a_reason()
    {
        foreach (var scale in new[] { 1e-12, 1e-6, 1e6, 1e12 })
        {
            foreach (var thickness in new[] { 1e-9, 1e-4, 1e3 })
            {
                var material = new LayerMaterial(1.2 * scale, 2300, 920);
                var result = new CoolingSolver().Solve(Forty with { Layers = [StackLayer.Course("odd", thickness, material, 160), StackLayer.Existing("old", 0.1, Old, 10)] });
                Assert.True(result.Failure is not null || double.IsFinite(result.Curve!.Value(CoolingPlace.Mean(0), 100) ?? 0));
            }
        }
    }
}
