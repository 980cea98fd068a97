using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Measured;
using Laygate.Engineering.Quantities;
using Laygate.Model.Measures;
using Laygate.Model.Plans;
using Laygate.Model.Records;
using static Laygate.UnitTests.Engineering.Stated;

namespace Laygate.UnitTests.Engineering.Measured;

/// <summary>
/// The fit finds what measurements were made from, says what they do not tell, and a shift left out is met better by it. The measurements are made
/// with the solver itself at stated values and a seeded scatter: they test the fit and say nothing about the solver.
/// </summary>
public sealed class MatFitTests
{
    private static readonly Plan Plan = ScenarioA.Plan with { Mixes = [.. ScenarioA.Plan.Mixes.Select(mix => mix with { Delivery = new() { Expected = C(165) } })] };

    private static readonly double[] Times = [2, 6, 12, 20, 30, 45];

    [Fact]
    public void It_finds_what_the_measurements_were_made_from()
    {
        var fit = MatFits.Of([Shift(1, 1.2, -3), Shift(2, 1.2, -3), Shift(3, 1.2, -3)]);
        Assert.Null(fit.Refusal);
        Assert.Equal(FitState.Learnt, fit.Laying!.State);
        Assert.InRange(-3, fit.Laying.Low, fit.Laying.High);
        Assert.InRange(1.2, fit.Conductivity!.Low, fit.Conductivity.High);
        Assert.All(new[] { fit.Conductivity, fit.Laying }, value => Assert.True(value.Low >= value.Before.Low && value.High <= value.Before.High && value.Low <= value.Value && value.Value <= value.High));
        Assert.True(fit.IsBetter, $"{fit.Off}");
        Assert.Equal(["ac16", "sma8"], fit.Mixes);
    }

    // By hand: readings of the first two minutes in the middle of the mat have felt no surface (see MatComparisonTests), so that they tell nothing of what leads heat away.
    [Fact]
    public void What_the_readings_do_not_tell_is_not_learnt()
    {
        var fit = MatFits.Of([Shift(1, 1.2, -3, 1, 2), Shift(2, 1.2, -3, 1, 2)]);
        Assert.Equal(FitState.NotIdentifiable, fit.Conductivity!.State);
        Assert.Null(MatFits.Values("x", ["ac16"], 2, fit.Conductivity, null));
    }

    [Fact]
    public void A_value_beyond_the_range_is_not_stored()
    {
        var fit = MatFits.Of([Shift(1, 1, -25), Shift(2, 1, -25)]);
        Assert.Equal(FitState.AtItsEnd, fit.Laying!.State);
        Assert.False(fit.MayBeStored);
    }

    [Fact]
    public void One_shift_is_refused_and_so_is_a_record_without_uncertainty()
    {
        Assert.Equal(FitRefusal.FewShifts, MatFits.Of([Shift(1, 1, 0)]).Refusal);
        var (context, record) = Shift(2, 1, 0);
        var silent = MatFits.Of([Shift(1, 1, 0), (context, record with { Uncertainty = new(null, null, null, null) { Temperature = 1 } })]);
        Assert.Equal((FitRefusal.NoUncertainty, 1), (silent.Refusal, silent.Shift));
    }

    // Derived: one reading with the standard uncertainty s of its instrument, and others u that move it, has the variance s² + u²; the weighed square of a difference d is d²/(s² + u²).
    // The spread of places is a range of 12 K, so that u² = 12²/12 = 12 K²; all else that is sampled can only add to it.
    [Fact]
    public void A_difference_weighs_no_more_than_its_uncertainty_lets_it()
    {
        var (context, record) = Shift(1, 1, 0, 2);
        var one = record with { Temperatures = [record.Temperatures[0]] };
        var (tonight, places) = MatComparisons.Places(context, one);
        var nodes = FitNodes.Of(places, context.Assumptions);
        var far = FitEvidence.Of(tonight, MatComparisons.Places(context, one with { Temperatures = [one.Temperatures[0] with { Value = one.Temperatures[0].Value + 40 }] }).Places, one.Uncertainty, nodes)!;
        var middle = FitEvidence.Of(tonight, places, one.Uncertainty, nodes)!;
        var spread = context.Assumptions[AssumptionIds.LayingSpread];
        Assert.Equal((-6, 6), (spread.Low, spread.High));
        var difference = Math.Sqrt(far.Squares(1, 0)) - Math.Sqrt(middle.Squares(1, 0));
        Assert.InRange(difference, 0.1, 40 / Math.Sqrt(1 + 12));
    }

    // Lagrange's polynomial goes through its nodes and gives a polynomial of its degree exactly; by hand: 1.1² = 1.21, 0.9⁴ = 0.6561.
    [Fact]
    public void Between_the_solved_curves_lies_their_polynomial()
    {
        var nodes = new FitNodes((0.5, 1.5), (-6, 6));
        Assert.Equal(1.21, Between((c, _) => c * c, 1.1, 2), 1e-12);
        Assert.Equal(0.6561 * 4, Between((c, k) => Math.Pow(c, 4) * k * k, 0.9, -2), 1e-12);
        Assert.Equal(1, nodes.Weights(0.77, 3.3).Sum(), 1e-12);
        Assert.Equal((1, 0), nodes.All[FitNodes.Centre]);

        double Between(Func<double, double, double> of, double conductivity, double laying) => nodes.Weights(conductivity, laying).Zip(nodes.All, (weight, at) => weight * of(at.Conductivity, at.Laying)).Sum();
    }

    // Readings as the solver gives them for these values, with a scatter of half a kelvin; 85 mm of binder below 25 mm of surface course: 55 mm lies inside the binder.
    private static (QuantityContext Context, ShiftRecord Record) Shift(int seed, double conductivity, double laying, params double[] minutes)
    {
        var start = new DateTimeOffset(2027, 5, 14, 21, 15, 0, TimeSpan.FromHours(2));
        var record = new ShiftRecord
        {
            Uncertainty = new(null, null, null, null) { Temperature = 1, Skin = 2.3 },
            Stations = [.. Enumerable.Range(0, 5).Select(i => new StationReading(default, start.AddMinutes(60 * i), 150 + (150 * i)) { Course = "binder" })],
            Temperatures = [.. from station in new[] { 300.0, 500 }
                               from time in minutes.Length > 0 ? minutes : Times
                               from depth in minutes.Length > 0 ? new[] { 0.055 } : [0.055, 0.0]
                               select new MatTemperature(default, start.AddMinutes(((station - 150) / 2.5) + time), 0) { Station = station, Depth = depth, Course = "binder" }],
        };
        var context = Ask.Context(Plan);
        LearntValues truth = new()
        {
            Id = "truth",
            Mixes = ["ac16", "sma8"],
            Shifts = 2,
            Conductivity = new() { Value = M<Ratio>(100 * conductivity, "%"), Low = M<Ratio>(100 * conductivity, "%"), High = M<Ratio>(100 * conductivity, "%") },
            Laying = new() { Value = M<TemperatureDelta>(Math.Max(-10, laying), "K"), Low = M<TemperatureDelta>(Math.Max(-10, laying), "K"), High = M<TemperatureDelta>(Math.Max(-10, laying), "K") },
        };
        var random = new Random(seed);
        var made = MatComparisons.Of(context, record, [truth]).Compared.Select(one => one.Row with { Value = one.Expected + Math.Min(0, laying + 10) + (random.NextDouble() - 0.5) });
        return (context, record with { Temperatures = [.. made] });
    }
}
