using Laygate.Engineering.Supply;
using Laygate.Model.Measures;
using static Laygate.UnitTests.Engineering.Stated;

namespace Laygate.UnitTests.Engineering.Supply;

/// <summary>Trucks; the source of each figure stands beside it.</summary>
public class FleetTests
{
    [Fact]
    public void Plant_with_silo_stock()
    {
        // Source: NAPA, asphalt pavement handbook online, 6.2 Planning (read): 250 tons over 10 h add 25 tons/h to 250; with trucks of 20 tons and a round of 60 min derived: 13.75.
        var rate = Demand.WithStock(Si(250, "short ton/h"), Si(250, "short ton"), Si(10, "h"))!.Value;
        Assert.Equal(275, rate.In("short ton/h"), 1e-6);
        Assert.Equal(14, Fleet.MinimumCount(rate, Si(60, "min"), Si(20, "short ton")));
    }

    [Theory]
    [InlineData(13.1, 14)] // Source: NAPA, asphalt pavement handbook online, 6.2 Planning (read): 13.1 trucks are 14
    [InlineData(13.0, 13)] // Source: derived: an exact whole number must not round up
    [InlineData(5.0000000001, 5)]
    [InlineData(5.00001, 6)]
    public void Always_rounded_up(double trucks, int count) =>
        Assert.Equal(count, Fleet.MinimumCount(Si(60 * trucks, "t/h"), Si(20, "min"), Si(20, "t")));

    [Fact]
    public void Tippers_of_a_rate_book()
    {
        // Source: Odisha Analysis of Rates 2006, item 46 (read): 450 t in 6 h, 10 t tippers; derived with load 3, dump 5 min, 20 km at 30 and 40 km/h: 78 min, 9.75 tippers.
        var cycle = Fleet.Cycle(Si(3, "min"), Si(20.0 / 30, "h"), Si(5, "min"), Si(20.0 / 40, "h"))!.Value;
        Assert.Equal(78, cycle.In("min"), 1e-9);
        Assert.Equal(10, Fleet.MinimumCount(Si(75, "t/h"), cycle, Si(10, "t")));
        Assert.Equal(8, Fleet.Interval(Si(10, "t"), Si(75, "t/h"))!.Value.In("min"), 1e-9);
    }

    [Theory]
    [InlineData(150, 8.0)] // Source: derived: 20 t/150 t/h straight into the paver
    [InlineData(600, 2.0)] // the same through a feeder
    public void Discharge_is_no_constant(double tonnesPerHour, double minutes) =>
        Assert.Equal(minutes, Fleet.Discharge(Si(20, "t"), Si(tonnesPerHour, "t/h"))!.Value.In("min"), 1e-9);

    [Fact]
    public void Unusable_inputs_give_no_result()
    {
        Assert.Null(Fleet.MinimumCount(Si(100, "t/h"), Si(60, "min"), Si(0, "t")));
        Assert.Null(Fleet.Cycle(Si(-1, "min"), Si(10, "min")));
        Assert.Null(Fleet.Interval(Si(1e300, "t"), 1e-300));
    }
}
