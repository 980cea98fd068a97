using Laygate.Engineering.Records;
using Laygate.Model.Measures;

namespace Laygate.UnitTests.Engineering.Records;

/// <summary>
/// The sums of a ledger, worked by hand in the comment of each; examples of publications stand in <c>docs/verification/record-ledger</c>.
/// </summary>
public sealed class LedgerFormulaTests
{
    // By hand: 41.26 - 15.94 = 25.32 t.
    [Fact]
    public void Net_is_gross_less_tare() => Assert.Equal(25_320, LedgerFormulas.Net(41_260, 15_940)!.Value, 1e-6);

    // By hand: 310.4 - 1.2 - 6.0 = 303.2 t; 303.2 / 412 = 0.735922 t/m; 303.2 / (2.40 · 412 · 7.5) = 40.8846 mm.
    [Fact]
    public void What_is_laid_gives_mass_per_metre_and_thickness()
    {
        var laid = LedgerFormulas.Laid(310_400, 1_200, 6_000)!.Value;
        Assert.Equal(303_200, laid, 1e-6);
        Assert.Equal(735.922, LedgerFormulas.PerLength(laid, 412)!.Value, 5e-4);
        Assert.Equal(0.0408846, LedgerFormulas.Thickness(laid, 2400, 412 * 7.5)!.Value, 5e-8);
    }

    // By hand: sqrt(0.2² + 1.0² + 0.5² + 0.1²) % = sqrt(1.30) % = 1.1402 %; of 40.8846 mm that is 0.466 mm, twice 0.932 mm.
    [Fact]
    public void Uncertainty_adds_by_squares()
    {
        var u = LedgerFormulas.Uncertainty(0.002, 0.010, 0.005, 0.001)!.Value;
        Assert.Equal(0.011402, u, 5e-7);
        Assert.Equal(0.932, 2 * u * 40.8846, 5e-4);
    }

    // By hand: 588 · 7.5 · 0.040 · 2.40 = 423.36 t; times 0.735922 / 0.720 = 432.7223 t, 9.362 t more.
    [Fact]
    public void What_is_left_follows_the_yield()
    {
        var planned = 588 * 7.5 * 0.040 * 2400;
        Assert.Equal(423_360, planned, 1e-6);
        var byYield = LedgerFormulas.ByYield(planned, 303_200, 412 * 7.5 * 0.040 * 2400)!.Value;
        Assert.Equal(432_722.3, byYield, 0.05);
        Assert.Equal(9_362, byYield - planned, 0.5);
        // By hand: 432.7223 - 6 - 75 = 351.72 t, by the plan 342.36 t.
        Assert.Equal(351_722.3, LedgerFormulas.ToLoad(byYield, 81_000)!.Value, 0.05);
        Assert.Equal(342_360, LedgerFormulas.ToLoad(planned, 81_000)!.Value, 1e-6);
    }

    // By hand: 432.7223 t / 118 t/h = 220.028 min, and a stop of 20 min: 01:40 and 240.028 min is 05:40:01.7.
    [Fact]
    public void The_end_follows_rate_and_stops()
    {
        var seconds = LedgerFormulas.TimeLeft(432_722.3, 118_000 / 3600.0, 1200)!.Value;
        Assert.Equal("05:40:01", TimeSpan.FromMinutes(100).Add(TimeSpan.FromSeconds(seconds)).ToString(@"hh\:mm\:ss", System.Globalization.CultureInfo.InvariantCulture));
    }

    // By hand: 152.6 short tons on 12 ft x 500 ft: 305 200 lb / 666.667 yd² = 457.8 lb/yd²; at 110 lb/yd² per inch 4.1618 in.
    [Fact]
    public void It_holds_in_us_units()
    {
        var area = 12 * 500 * UnitTable.Find("ft2")!.Factor;
        var rate = LedgerFormulas.PerArea(UnitTable.Find("short ton")!.ToSi(152.6), area)!.Value;
        var perArea = UnitTable.Find("lb/yd2")!.FromSi(rate);
        Assert.Equal(457.8, perArea, 0.05);
        Assert.Equal(4.1618, perArea / 110, 5e-5);
    }

    // By hand: (8.0 + 5.5) / 2 · 300 = 2025 m²; · 0.040 · 2.40 = 194.4 t. A rectangle of 8.0 m would be 230.4 t.
    [Fact]
    public void A_taper_is_no_rectangle() => Assert.Equal(194_400, LedgerFormulas.Taper(8, 5.5, 300)!.Value * 0.040 * 2400, 1e-6);

    [Fact]
    public void Outside_their_range_there_is_no_result()
    {
        Assert.Null(LedgerFormulas.Net(15, 16));
        Assert.Null(LedgerFormulas.Laid(1, 2, 0));
        Assert.Null(LedgerFormulas.PerLength(1, 0));
        Assert.Null(LedgerFormulas.PerArea(1, double.NaN));
        Assert.Null(LedgerFormulas.Thickness(1, 0, 1));
        Assert.Null(LedgerFormulas.ByYield(1, 1, 0));
        Assert.Null(LedgerFormulas.TimeLeft(1, 0, 0));
        Assert.Equal(0, LedgerFormulas.TimeLeft(0, 0, 600));
        Assert.Null(LedgerFormulas.Run(1, 0, 1));
    }
}
