using Laygate.Engineering.Layers;
using Laygate.Model.Measures;
using static Laygate.UnitTests.Engineering.Stated;

namespace Laygate.UnitTests.Engineering.Layers;

/// <summary>Yield and thickness; the source of each figure stands beside it.</summary>
public class SpreadTests
{
    private const double LbPerYd2 = 0.45359237 / (9 * 0.3048 * 0.3048);

    [Fact]
    public void Target_spread_from_maximum_density_in_Florida()
    {
        // Source: Florida DOT training slides on specification 330-2.2 (recalled: slide): 43.3 · Gmm lb/yd2 per inch; Gmm 2.339, 1.5 in: 151.92 lb/yd2.
        // 46.8 lb/yd2 per inch is water (62.4 lb/ft3 · 9/12), so 43.3/46.8 of the maximum density.
        var maximum = Si(2.339 * 62.4, "lb/ft3");
        var density = Spread.Compacted(maximum, 43.3 / 46.8)!.Value;
        var spread = Spread.Rate(Si(1.5, "in"), density)!.Value;
        Assert.Equal(151.918, spread / LbPerYd2, 0.001);
        Assert.Equal(82.46, Spread.Rate(Si(1.5, "in"), density)!.Value, 0.1);
    }

    [Theory]
    [InlineData(146, 438)] // Source: US Navy, NAVEDTRA 14080 Equipment Operator, p. 8-31 (read): 146 lb/ft3
    [InlineData(146.6666666666667, 440)] // 110 lb/yd2 per inch, the rule of the same page
    public void Tonnage_of_a_lane_per_foot(double poundsPerCubicFoot, double poundsPerFoot)
    {
        var spread = Spread.Rate(Si(3, "in"), Si(poundsPerCubicFoot, "lb/ft3"))!.Value;
        Assert.Equal(poundsPerFoot, Spread.Tonnage(spread, Si(12, "ft2"))!.Value.In("lb"), 0.001);
    }

    [Theory]
    [InlineData(0, 355.2)] // Source: derived: 3700 m2 · 0.040 m · 2.4 t/m3
    [InlineData(5, 372.96)]
    public void Tonnage_with_waste(double waste, double tonnes)
    {
        var spread = Spread.Rate(Si(40, "mm"), Si(2.4, "t/m3"))!.Value;
        Assert.Equal(tonnes, Spread.Tonnage(spread, 3700, Si(waste, "%"))!.Value.In("t"), 1e-6);
    }

    [Theory]
    [InlineData(25, 7.5, 80, 2.45, 17.01)] // Source: derived: 25/(7.5 · 0.080 · 2.45)
    [InlineData(20, 3.7, 40, 2.40, 56.31)] // 20/(3.7 · 0.040 · 2.40)
    public void Run_per_load(double tonnes, double width, double millimetres, double density, double metres)
    {
        var spread = Spread.Rate(Si(millimetres, "mm"), Si(density, "t/m3"))!.Value;
        Assert.Equal(metres, Spread.RunPerLoad(Si(tonnes, "t"), width, spread)!.Value, 0.005);
    }

    [Theory]
    [InlineData(142, 2274.6, 106.5)] // Source: derived: lb/ft3 · 0.45359237/0.3048³ kg/m3, and lb/ft3 · 9/12 lb/yd2 per inch
    [InlineData(145, 2322.7, 108.75)]
    [InlineData(148, 2370.7, 111.0)]
    [InlineData(150, 2402.8, 112.5)]
    [InlineData(155, 2482.9, 116.25)]
    public void Density_factors(double poundsPerCubicFoot, double kilograms, double poundsPerYardInch)
    {
        var density = Si(poundsPerCubicFoot, "lb/ft3");
        Assert.Equal(kilograms, density, 0.05);
        Assert.Equal(poundsPerYardInch, Spread.Rate(Si(1, "in"), density)!.Value / LbPerYd2, 0.005);
    }

    [Fact]
    public void Rule_of_110_pounds_is_2_349_kilograms_per_millimetre() =>
        // Source: US Navy, NAVEDTRA 14080 Equipment Operator, p. 8-31 (read): 110 lb/yd2 per inch; conversion exact.
        Assert.Equal(2.349, Spread.Rate(Si(1, "mm"), Si(110 * 12 / 9.0, "lb/ft3"))!.Value, 0.0005);

    [Theory]
    [InlineData("1/2 in", 2.0, "in", 4.0)] // Source: derived: 2 in/0.5 in, 50/12.5, 85/16; a sieve counts by its name
    [InlineData("12.5 mm", 50.0, "mm", 4.0)]
    [InlineData("16 mm", 85.0, "mm", 5.3125)]
    public void Thickness_over_aggregate_size_takes_the_tabled_size(string sieve, double number, string unit, double ratio)
    {
        var thickness = M<Length>(number, unit);
        Assert.Equal(ratio, CourseThickness.ToAggregateSize(thickness.Si, Sieve.Find(sieve)!, thickness.Unit.System)!.Value, 1e-9);
    }

    [Theory]
    [InlineData(85, 98, 93, 89.6)] // Source: derived by mass balance: 85 · 98/93 = 89.6, 85 · 98/88, 25 · 98/90
    [InlineData(85, 98, 88, 94.7)]
    [InlineData(25, 98, 90, 27.2)]
    public void Thickness_behind_the_screed(double compacted, double final, double behind, double millimetres) =>
        Assert.Equal(millimetres, CourseThickness.BehindScreed(Si(compacted, "mm"), Si(final, "%"), Si(behind, "%"))!.Value.In("mm"), 0.06);

    [Fact]
    public void Unusable_inputs_give_no_result()
    {
        Assert.Null(Spread.Rate(0, 2400));
        Assert.Null(Spread.RunPerLoad(Si(20, "t"), -1, 100));
        Assert.Null(CourseThickness.BehindScreed(0.05, Si(90, "%"), Si(95, "%")));
    }
}
