using Laygate.Engineering.Supply;
using UnitsNet;

namespace Laygate.UnitTests.Engineering.Supply;

/// <summary>Trucks; the source of each figure stands beside it.</summary>
public class FleetTests
{
    [Fact]
    public void Plant_with_silo_stock()
    {
        // Source: NAPA, asphalt pavement handbook online, 6.2 Planning (read): 250 tons over 10 h add 25 tons/h to 250; with trucks of 20 tons and a round of 60 min derived: 13.75.
        var rate = Demand.WithStock(MassFlow.FromShortTonsPerHour(250), Mass.FromShortTons(250), Duration.FromHours(10))!.Value;
        Assert.Equal(275, rate.ShortTonsPerHour, 1e-6);
        Assert.Equal(14, Fleet.MinimumCount(rate, Duration.FromMinutes(60), Mass.FromShortTons(20)));
    }

    [Theory]
    [InlineData(13.1, 14)] // Source: NAPA, asphalt pavement handbook online, 6.2 Planning (read): 13.1 trucks are 14
    [InlineData(13.0, 13)] // Source: derived: an exact whole number must not round up
    [InlineData(5.0000000001, 5)]
    [InlineData(5.00001, 6)]
    public void Always_rounded_up(double trucks, int count) =>
        Assert.Equal(count, Fleet.MinimumCount(MassFlow.FromTonnesPerHour(60 * trucks), Duration.FromMinutes(20), Mass.FromTonnes(20)));

    [Fact]
    public void Tippers_of_a_rate_book()
    {
        // Source: Odisha Analysis of Rates 2006, item 46 (read): 450 t in 6 h, 10 t tippers; derived with load 3, dump 5 min, 20 km at 30 and 40 km/h: 78 min, 9.75 tippers.
        var cycle = Fleet.Cycle(Duration.FromMinutes(3), Duration.FromHours(20.0 / 30), Duration.FromMinutes(5), Duration.FromHours(20.0 / 40))!.Value;
        Assert.Equal(78, cycle.Minutes, 1e-9);
        Assert.Equal(10, Fleet.MinimumCount(MassFlow.FromTonnesPerHour(75), cycle, Mass.FromTonnes(10)));
        Assert.Equal(8, Fleet.Interval(Mass.FromTonnes(10), MassFlow.FromTonnesPerHour(75))!.Value.Minutes, 1e-9);
    }

    [Theory]
    [InlineData(150, 8.0)] // Source: derived: 20 t/150 t/h straight into the paver
    [InlineData(600, 2.0)] // the same through a feeder
    public void Discharge_is_no_constant(double tonnesPerHour, double minutes) =>
        Assert.Equal(minutes, Fleet.Discharge(Mass.FromTonnes(20), MassFlow.FromTonnesPerHour(tonnesPerHour))!.Value.Minutes, 1e-9);

    [Fact]
    public void Unusable_inputs_give_no_result()
    {
        Assert.Null(Fleet.MinimumCount(MassFlow.FromTonnesPerHour(100), Duration.FromMinutes(60), Mass.FromTonnes(0)));
        Assert.Null(Fleet.Cycle(Duration.FromMinutes(-1), Duration.FromMinutes(10)));
        Assert.Null(Fleet.Interval(Mass.FromTonnes(1e300), MassFlow.FromKilogramsPerSecond(1e-300)));
    }
}
