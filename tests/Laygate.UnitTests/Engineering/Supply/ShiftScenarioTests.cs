using Laygate.Engineering.Supply.Simulation;
using Laygate.Model.Plans;

namespace Laygate.UnitTests.Engineering.Supply;

/// <summary>
/// Scenario A over a shift. Judgement: the chances of a stop are orders of magnitude from a rough time-step simulation that was not kept (fixed steps of 0.05 min,
/// half-width about 3 points at 4 %, runs that do not finish count as stops), so the tolerances are wide. Waits and survival are derived by hand beside them.
/// </summary>
public class ShiftScenarioTests
{
    [Theory]
    [InlineData(15, 9, 0.15, 0.00, 0.08)] // about 5 % (0 to 5)
    [InlineData(14, 8, 0.15, 0.10, 0.30)] // about 20 %; 18 ± 5
    [InlineData(13, 8, 0.15, 0.45, 0.85)] // about 75 %; leans high there, because runs that do not finish count
    [InlineData(16, 9, 0.25, 0.10, 0.30)] // 20 % with a coefficient of variation of 0.25
    public void Chance_of_a_stop_by_fleet(int big, int small, double spread, double low, double high)
    {
        var result = Shifts.Run(Shifts.A(big, small, haulSpread: spread));
        Assert.InRange(result.StopChance.Expected, low, high);
        Assert.InRange(result.StopChance.Expected, result.StopChance.Low, result.StopChance.High);
    }

    [Fact]
    public void A_lower_buffer_of_40_tonnes_stops_the_paver_every_shift()
    {
        // About 4 times a shift with a call level of 11 to 12 t; the time balance of TwoMixFeedingTests asks for 41.3 t.
        var result = Shifts.Run(Shifts.A(lowerBuffer: 40, call: 11));
        Assert.Equal(1, result.StopChance.Expected);
        Assert.InRange(result.Stops.Expected, 2, 6);
        Assert.InRange(result.StopLength!.Value.Expected / 60, 0.3, 2);
    }

    [Theory]
    [InlineData(42)] // about 4 % of the shifts
    [InlineData(45)]
    [InlineData(50)]
    public void A_lower_buffer_of_42_tonnes_and_more_hardly_ever(double tonnes) =>
        Assert.InRange(Shifts.Run(Shifts.A(lowerBuffer: tonnes)).StopChance.Expected, 0, 0.08);

    [Fact]
    public void Waits_occupation_and_committed_mix_are_those_of_the_scenario()
    {
        var result = Shifts.Run(Shifts.A());
        Assert.Equal(18, result.Wait(0)!.Value.Expected / 60, 3.0); // 15 trucks, one each 5.75 min, 67.7 min without wait: 18.6
        Assert.Equal(0.74, result.FeederUse.Expected, 0.03); // derived: time balance of TwoMixFeedingTests
        var committed = result.Committed();
        Assert.InRange(committed.Middle[60] / 1000, 280, 380); // 280 to 350 t at any time
    }

    [Fact]
    public void Trucks_beyond_the_timetable_wait_at_the_plant_or_on_site()
    {
        // Loaded as fast as they come, nine small trucks wait 9 · 12.9 − 88.1 = 28 min (by hand); by timetable a part of it at the plant.
        var free = Shifts.Run(Shifts.A() with { Dispatch = Dispatch.AsLoaded });
        Assert.Equal(28, free.Wait(1)!.Value.Expected / 60, 7.0);
        Assert.True(Shifts.Run(Shifts.A()).Wait(1)!.Value.Expected < free.Wait(1)!.Value.Expected);
    }

    [Fact]
    public void Each_plant_is_missed_after_about_an_hour()
    {
        // Plant A: 45 to 55 min, plant B: about 60 min, from road, queue and buffer.
        Assert.InRange(Survived("a", fromSilo: false), 42, 65);
        Assert.InRange(Survived("b", fromSilo: false), 50, 80);
        // 300 t of stock less what was used of it by the middle of the shift are at most 69 min more.
        Assert.InRange(Survived("a", fromSilo: true), Survived("a", fromSilo: false) + 20, Survived("a", fromSilo: false) + 100);

        static double Survived(string plant, bool fromSilo)
        {
            var model = Shifts.A();
            return Shifts.Run(model with { Stop = new PlantStop(plant, model.Duration / 2, double.PositiveInfinity, fromSilo) }).Survived.Expected / 60;
        }
    }

    [Fact]
    public void Loads_are_listed_in_the_order_of_the_levels()
    {
        var loads = ShiftSimulator.Loads(Shifts.A())!;
        Assert.Equal(71, loads.Count(load => load.Mix == 0));
        Assert.Equal(32, loads.Count(load => load.Mix == 1));
        Assert.Equal(1_764_000 + 1_000, loads.Where(load => load.Mix == 0).Sum(load => load.Mass), 1_000.0);
        Assert.Equal(2.25, 71.0 / 32, 0.05);
        Assert.All(loads, load => Assert.True(load.Loaded < load.Arrived && load.Arrived <= load.Docked && load.Docked < load.Empty));
        Assert.Equal(loads.OrderBy(load => load.Empty), loads);
    }

    [Fact]
    public void Levels_stay_between_empty_and_full()
    {
        var result = Shifts.Run(Shifts.A(14, 8));
        var level = result.Level(0);
        Assert.Equal(ShiftTally.Moments, level.Times.Count);
        Assert.All(level.Low, low => Assert.InRange(low, 7_999, 50_001));
        Assert.All(level.High, high => Assert.InRange(high, 8_000, 50_001));
        Assert.All(Enumerable.Range(0, level.Times.Count), k => Assert.True(level.Low[k] <= level.Middle[k] && level.Middle[k] <= level.High[k]));
    }
}
