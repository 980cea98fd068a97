using Laygate.Engineering.Layers;
using Laygate.Engineering.Supply;
using Laygate.Model.Measures;
using static Laygate.UnitTests.Engineering.Stated;

namespace Laygate.UnitTests.Engineering.Supply;

/// <summary>Paver speed and supply; the source of each figure stands beside it.</summary>
public class DemandTests
{
    [Theory]
    [InlineData(100, 3.7, 40, 2.40, 4.692)] // Source: AAPA Work Tip 31, Asphalt paving speed, November 2001 (read): 4.7 m/min goes with 100 t/h
    [InlineData(150, 3.5, 50, 2.40, 5.952)] // Source: derived: supply/(60 · width · thickness · density), and so on
    [InlineData(250, 7.5, 40, 2.40, 5.787)]
    [InlineData(80, 3.0, 40, 2.35, 4.728)]
    [InlineData(300, 8.5, 100, 2.45, 2.401)]
    public void Paver_speed_from_supply(double tonnesPerHour, double width, double millimetres, double density, double metresPerMinute)
    {
        var spread = SpreadOf(millimetres, density);
        var speed = Demand.PaverSpeed(Si(tonnesPerHour, "t/h"), width, spread)!.Value;
        Assert.Equal(metresPerMinute, speed.In("m/min"), 0.0005);
        Assert.Equal(tonnesPerHour, Demand.Of(speed, width, spread)!.Value.In("t/h"), 1e-9);
    }

    [Fact]
    public void The_published_pair_backwards() =>
        // Source: derived: 4.7 m/min · 60 · 3.7 m · 0.040 m · 2.4 t/m3 = 100.17 t/h.
        Assert.Equal(100.17, Demand.Of(Si(4.7, "m/min"), 3.7, SpreadOf(40, 2.4))!.Value.In("t/h"), 0.005);

    [Theory]
    [InlineData(1320.0 / 9, 528.0)] // Source: US Navy, NAVEDTRA 14080 Equipment Operator, p. 8-31 (read): 110 lb/yd2 per inch; 40 · 60 · 12 · 0.25 · 146.67/2000
    [InlineData(146, 525.6)] // 146 lb/ft3 of the same page
    public void High_output_lane(double poundsPerCubicFoot, double shortTonsPerHour)
    {
        var spread = Spread.Rate(Si(3, "in"), Si(poundsPerCubicFoot, "lb/ft3"))!.Value;
        Assert.Equal(shortTonsPerHour, Demand.Of(Si(40, "ft/min"), Si(12, "ft"), spread)!.Value.In("short ton/h"), 0.001);
    }

    [Fact]
    public void Average_output_of_a_government_rate_book() =>
        // Source: Odisha Analysis of Rates 2006, item 46 (read): 450 t in 6 h are 75 t/h; here as stock alone spread over the shift.
        Assert.Equal(75, Demand.WithStock(Si(1e-9, "t/h"), Si(450, "t"), Si(6, "h"))!.Value.In("t/h"), 1e-6);

    [Fact]
    public void Speed_while_moving() =>
        // Source: derived: 80 % availability, 4.692 m/min on average: 4.692/0.80.
        Assert.Equal(5.87, Demand.WhileMoving(Si(4.692, "m/min"), Si(80, "%"))!.Value.In("m/min"), 0.01);

    private static double SpreadOf(double millimetres, double density) =>
        Spread.Rate(Si(millimetres, "mm"), Si(density, "t/m3"))!.Value;

    // By hand: 250 t in loads of 20 t are twelve and a half, so thirteen; what is no mass, no payload, or a million loads, is none.
    [Theory]
    [InlineData(250.0, 20.0, 13)]
    [InlineData(240.0, 20.0, 12)]
    [InlineData(0.0, 20.0, null)]
    [InlineData(-20.0, 20.0, null)]
    [InlineData(250.0, 0.0, null)]
    [InlineData(250.0, -20.0, null)]
    [InlineData(20e6, 20.0, null)]
    public void Loads_that_carry_a_mass(double tonnes, double payload, int? loads) =>
        Assert.Equal(loads, ShiftTonnage.Loads(Si(tonnes, "t"), Si(payload, "t")));
}
