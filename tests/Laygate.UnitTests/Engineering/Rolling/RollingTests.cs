using Laygate.Engineering.Rolling;
using Laygate.Model.Measures;
using static Laygate.UnitTests.Engineering.Stated;

namespace Laygate.UnitTests.Engineering.Rolling;

/// <summary>Rollers; the source of each figure stands beside it.</summary>
public class RollingTests
{
    [Theory]
    [InlineData(4.5, 4)] // Source: trade article on rolling without author or year (recalled): 12 ft lane, 6 in overhang and overlap
    [InlineData(5.5, 3)]
    [InlineData(7.0, 2)]
    [InlineData(13.0, 1)] // the 13 ft drum that does not exist, same article
    public void Strips_of_a_lane(double drumFeet, int strips)
    {
        var half = Si(0.5, "ft");
        Assert.Equal(strips, Strips.Count(Si(12, "ft"), half, half, Si(drumFeet, "ft"), half));
    }

    [Theory]
    [InlineData(78, 3)] // Source: derived: (144 + 12 - 6)/(78 - 6) = 2.08, /(84 - 6) = 1.92, rounded up
    [InlineData(84, 2)]
    public void Strips_near_a_whole_number(double drumInches, int strips)
    {
        var half = Si(6, "in");
        Assert.Equal(strips, Strips.Count(Si(12, "ft"), half, half, Si(drumInches, "in"), half));
    }

    [Fact]
    public void Published_pair_of_paver_and_roller()
    {
        // Source: trade article on rolling patterns without author or year (recalled): 40 ft/min, 5 passes per section, 250 ft/min: efficiency 0.80; with 7 passes 28.6 ft/min.
        var roller = Si(250, "ft/min");
        Assert.Equal(40, RollerOutput.SpeedItFollows(0.80, roller, 1, 5)!.Value.In("ft/min"), 1e-6);
        Assert.Equal(28.6, RollerOutput.SpeedItFollows(0.80, roller, 1, 7)!.Value.In("ft/min"), 0.05);
    }

    [Theory]
    [InlineData(2400, 2.5, 27.9)] // Source: Roads and Bridges, Compacting hot-mix asphalt pavements, part II (trade press, recalled): limits; spacing derived, 10.9 and 10.2 per foot
    [InlineData(3600, 4.0, 29.8)]
    public void Impact_spacing_of_published_limits(double perMinute, double milesPerHour, double millimetres) =>
        Assert.Equal(millimetres, RollerOutput.ImpactSpacing(Si(milesPerHour, "mph"), perMinute / 60)!.Value.In("mm"), 0.05);

    [Theory]
    [InlineData(4, 22.2)] // Source: derived: speed/50 Hz
    [InlineData(5, 27.8)]
    [InlineData(6, 33.3)]
    public void Impact_spacing(double kilometresPerHour, double millimetres) =>
        Assert.Equal(millimetres, RollerOutput.ImpactSpacing(Si(kilometresPerHour, "km/h"), 50)!.Value.In("mm"), 0.05);

    [Fact]
    public void One_roller_does_not_quite_follow()
    {
        // By hand: 3.7 m, drum 1.68, overlap and overhang 0.15: 3.85/1.53 = 2.5; 0.8 · 66.67 m/min/(3 · 4) = 4.44.
        var strips = Strips.Count(3.7, Edge, Edge, 1.68, Edge)!.Value;
        Assert.Equal(3, strips);
        var speed = RollerOutput.SpeedItFollows(0.8, Si(4, "km/h"), strips, 4)!.Value;
        Assert.Equal(4.44, speed.In("m/min"), 0.005);
        Assert.Equal(1.055, 4.69 / speed.In("m/min"), 0.001);
    }

    [Fact]
    public void Three_rollers_for_a_wide_mat()
    {
        // By hand: paver 5.79 m/min, 7.5 m wide, the same roller: 5 strips, 5.79/2.667 = 2.171 rollers.
        var strips = Strips.Count(7.5, Edge, Edge, 1.68, Edge)!.Value;
        var speed = RollerOutput.SpeedItFollows(0.8, Si(4, "km/h"), strips, 4)!.Value;
        Assert.Equal(2.171, 5.79 / speed.In("m/min"), 0.001);
    }

    [Theory]
    [InlineData(1.68, 4, 4, 0.75, 1147.5, 40, 110.2)] // Source: derived: (drum - 0.15) · speed · efficiency/passes, times thickness and 2.40 t/m3
    [InlineData(1.68, 4, 4, 0.75, 1147.5, 100, 275.4)]
    [InlineData(2.13, 6, 3, 0.80, 3168, 40, 304.1)]
    public void Area_output(double drum, double speed, int passes, double efficiency, double area, double millimetres, double tonnes)
    {
        var perSecond = RollerOutput.AreaPerSecond(efficiency, Si(speed, "km/h"), drum, Edge, passes)!.Value;
        Assert.Equal(area, perSecond * 3600, 0.05);
        Assert.Equal(tonnes, perSecond * 3600 * millimetres * 2.40 / 1000, 0.05);
    }

    [Theory]
    [InlineData(20, 4, 0.643)] // Source: derived: time of a pass over time of a pass and 10 s
    [InlineData(30, 4, 0.730)]
    [InlineData(50, 4, 0.818)]
    [InlineData(75, 4, 0.871)]
    [InlineData(100, 4, 0.900)]
    [InlineData(20, 5, 0.590)]
    [InlineData(100, 5, 0.878)]
    public void Reversals_cost_output(double zone, double kilometresPerHour, double efficiency) =>
        Assert.Equal(efficiency, RollerOutput.Efficiency(zone, Si(kilometresPerHour, "km/h"), 10)!.Value, 0.0006);

    [Theory]
    [InlineData(4.69, 10, 46.9)] // Source: derived: speed · time
    [InlineData(12.19, 5, 61.0)]
    public void Zone_length(double metresPerMinute, double minutes, double metres)
    {
        var length = RollerOutput.ZoneLength(Si(metresPerMinute, "m/min"), Si(minutes, "min"))!.Value;
        Assert.Equal(metres, length, 0.06);
        Assert.Equal(minutes, RollerOutput.ZoneTime(length, Si(metresPerMinute, "m/min"))!.Value.In("min"), 1e-9);
    }

    [Fact]
    public void Linear_load_of_a_building_contract() =>
        // Source: US federal contract general specification, division 1, p. 89 (read): 250 lb per inch of roll; derived 43.8 kN/m.
        Assert.Equal(43.8, RollerOutput.LinearLoad(Si(250, "lb"), Si(1, "in"))!.Value.In("kN/m"), 0.05);

    [Fact]
    public void Unusable_inputs_give_no_result()
    {
        Assert.Null(Strips.Count(3, Edge, Edge, Edge, Edge));
        Assert.Null(RollerOutput.Efficiency(-3, Si(4, "km/h"), 0));
        Assert.Null(RollerOutput.SpeedItFollows(0.8, Si(4, "km/h"), 3, 0));
    }

    private static double Edge => 0.15;
}
