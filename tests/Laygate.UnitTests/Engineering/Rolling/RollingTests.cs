using Laygate.Engineering.Rolling;
using UnitsNet;

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
        var half = Length.FromFeet(0.5);
        Assert.Equal(strips, Strips.Count(Length.FromFeet(12), half, half, Length.FromFeet(drumFeet), half));
    }

    [Theory]
    [InlineData(78, 3)] // Source: derived: (144 + 12 - 6)/(78 - 6) = 2.08, /(84 - 6) = 1.92, rounded up
    [InlineData(84, 2)]
    public void Strips_near_a_whole_number(double drumInches, int strips)
    {
        var half = Length.FromInches(6);
        Assert.Equal(strips, Strips.Count(Length.FromFeet(12), half, half, Length.FromInches(drumInches), half));
    }

    [Fact]
    public void Published_pair_of_paver_and_roller()
    {
        // Source: trade article on rolling patterns without author or year (recalled): 40 ft/min, 5 passes per section, 250 ft/min: efficiency 0.80; with 7 passes 28.6 ft/min.
        var roller = Speed.FromFeetPerMinute(250);
        Assert.Equal(40, RollerOutput.SpeedItFollows(0.80, roller, 1, 5)!.Value.FeetPerMinute, 1e-6);
        Assert.Equal(28.6, RollerOutput.SpeedItFollows(0.80, roller, 1, 7)!.Value.FeetPerMinute, 0.05);
    }

    [Theory]
    [InlineData(2400, 2.5, 27.9)] // Source: Roads and Bridges, Compacting hot-mix asphalt pavements, part II (trade press, recalled): limits; spacing derived, 10.9 and 10.2 per foot
    [InlineData(3600, 4.0, 29.8)]
    public void Impact_spacing_of_published_limits(double perMinute, double milesPerHour, double millimetres) =>
        Assert.Equal(millimetres, RollerOutput.ImpactSpacing(Speed.FromMilesPerHour(milesPerHour), Frequency.FromHertz(perMinute / 60))!.Value.Millimeters, 0.05);

    [Theory]
    [InlineData(4, 22.2)] // Source: derived: speed/50 Hz
    [InlineData(5, 27.8)]
    [InlineData(6, 33.3)]
    public void Impact_spacing(double kilometresPerHour, double millimetres) =>
        Assert.Equal(millimetres, RollerOutput.ImpactSpacing(Speed.FromKilometersPerHour(kilometresPerHour), Frequency.FromHertz(50))!.Value.Millimeters, 0.05);

    [Fact]
    public void One_roller_does_not_quite_follow()
    {
        // By hand: 3.7 m, drum 1.68, overlap and overhang 0.15: 3.85/1.53 = 2.5; 0.8 · 66.67 m/min/(3 · 4) = 4.44.
        var strips = Strips.Count(Length.FromMeters(3.7), Edge, Edge, Length.FromMeters(1.68), Edge)!.Value;
        Assert.Equal(3, strips);
        var speed = RollerOutput.SpeedItFollows(0.8, Speed.FromKilometersPerHour(4), strips, 4)!.Value;
        Assert.Equal(4.44, speed.MetersPerMinutes, 0.005);
        Assert.Equal(1.055, 4.69 / speed.MetersPerMinutes, 0.001);
    }

    [Fact]
    public void Three_rollers_for_a_wide_mat()
    {
        // By hand: paver 5.79 m/min, 7.5 m wide, the same roller: 5 strips, 5.79/2.667 = 2.171 rollers.
        var strips = Strips.Count(Length.FromMeters(7.5), Edge, Edge, Length.FromMeters(1.68), Edge)!.Value;
        var speed = RollerOutput.SpeedItFollows(0.8, Speed.FromKilometersPerHour(4), strips, 4)!.Value;
        Assert.Equal(2.171, 5.79 / speed.MetersPerMinutes, 0.001);
    }

    [Theory]
    [InlineData(1.68, 4, 4, 0.75, 1147.5, 40, 110.2)] // Source: derived: (drum - 0.15) · speed · efficiency/passes, times thickness and 2.40 t/m3
    [InlineData(1.68, 4, 4, 0.75, 1147.5, 100, 275.4)]
    [InlineData(2.13, 6, 3, 0.80, 3168, 40, 304.1)]
    public void Area_output(double drum, double speed, int passes, double efficiency, double area, double millimetres, double tonnes)
    {
        var perSecond = RollerOutput.AreaPerSecond(efficiency, Speed.FromKilometersPerHour(speed), Length.FromMeters(drum), Edge, passes)!.Value;
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
        Assert.Equal(efficiency, RollerOutput.Efficiency(Length.FromMeters(zone), Speed.FromKilometersPerHour(kilometresPerHour), Duration.FromSeconds(10))!.Value, 0.0006);

    [Theory]
    [InlineData(4.69, 10, 46.9)] // Source: derived: speed · time
    [InlineData(12.19, 5, 61.0)]
    public void Zone_length(double metresPerMinute, double minutes, double metres)
    {
        var length = RollerOutput.ZoneLength(Speed.FromMetersPerMinutes(metresPerMinute), Duration.FromMinutes(minutes))!.Value;
        Assert.Equal(metres, length.Meters, 0.06);
        Assert.Equal(minutes, RollerOutput.ZoneTime(length, Speed.FromMetersPerMinutes(metresPerMinute))!.Value.Minutes, 1e-9);
    }

    [Fact]
    public void Linear_load_of_a_building_contract() =>
        // Source: US federal contract general specification, division 1, p. 89 (read): 250 lb per inch of roll; derived 43.8 kN/m.
        Assert.Equal(43.8, RollerOutput.LinearLoad(Mass.FromPounds(250), Length.FromInches(1))!.Value.KilonewtonsPerMeter, 0.05);

    [Fact]
    public void Unusable_inputs_give_no_result()
    {
        Assert.Null(Strips.Count(Length.FromMeters(3), Edge, Edge, Edge, Edge));
        Assert.Null(RollerOutput.Efficiency(Length.FromMeters(-3), Speed.FromKilometersPerHour(4), Duration.Zero));
        Assert.Null(RollerOutput.SpeedItFollows(0.8, Speed.FromKilometersPerHour(4), 3, 0));
    }

    private static Length Edge => Length.FromMeters(0.15);
}
