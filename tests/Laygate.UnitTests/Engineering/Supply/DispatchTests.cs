using Laygate.Engineering.Supply.Simulation;
using Laygate.Model.Plans;

namespace Laygate.UnitTests.Engineering.Supply;

/// <summary>The three ways of sending loads, each against what it means on site.</summary>
public class DispatchTests
{
    private static ShiftModel Long(int trucks, Dispatch dispatch, int before = 2)
    {
        var model = Shifts.Single(trucks, haulSpread: 0.3, serviceSpread: 0.2);
        return model with
        {
            Duration = 420 * Shifts.Minute,
            Dispatch = dispatch,
            Trucks = [model.Trucks[0] with { Out = TimeSpread.Lognormal(45 * Shifts.Minute, 0.3).Plus(4 * Shifts.Minute), BeforeStart = before }],
        };
    }

    [Theory]
    [InlineData(Dispatch.Timetable)]
    [InlineData(Dispatch.OnCall)]
    public void Trucks_beyond_those_that_keep_up_do_not_help_where_loads_are_held_back(Dispatch dispatch)
    {
        var (eleven, fourteen) = (Shifts.Run(Long(11, dispatch)), Shifts.Run(Long(14, dispatch)));
        Assert.Equal(eleven.StopChance.Expected, fourteen.StopChance.Expected, 0.01);
        Assert.True(fourteen.StopChance.Expected > 0.1);
        Assert.Equal(StopCause.Dispatch, fourteen.StopCauses()[0].Cause);
    }

    [Fact]
    public void Fourteen_trucks_stop_the_paver_as_often_as_eleven_by_timetable_and_hardly_ever_sent_as_loaded()
    {
        // Judgement. The same seven hours with a journey that varies less. Luck of simulated shifts: no outside source has these chances, what is asked is how they compare.
        double Chance(int trucks, Dispatch dispatch)
        {
            var model = Long(trucks, dispatch);
            return Shifts.Run(model with { Trucks = [model.Trucks[0] with { Out = TimeSpread.Lognormal(45 * Shifts.Minute, 0.2).Plus(4 * Shifts.Minute) }] }).StopChance.Expected;
        }

        Assert.Equal(Chance(11, Dispatch.Timetable), Chance(14, Dispatch.Timetable), 0.002);
        Assert.InRange(Chance(14, Dispatch.Timetable), 0.02, 0.08);
        Assert.InRange(Chance(14, Dispatch.AsLoaded), 0, 0.002);
    }

    [Fact]
    public void Sent_as_loaded_more_trucks_help_and_wait_longer()
    {
        var results = new[] { 9, 10, 11, 14 }.Select(trucks => Shifts.Run(Long(trucks, Dispatch.AsLoaded))).ToList();
        Assert.All(results.Zip(results.Skip(1)), pair =>
        {
            Assert.True(pair.Second.StopChance.Expected < pair.First.StopChance.Expected);
            Assert.True(pair.Second.Wait(0)!.Value.Expected > pair.First.Wait(0)!.Value.Expected);
        });
        Assert.True(results[^1].StopChance.Expected < 0.01);
    }

    [Theory]
    [InlineData(Dispatch.Timetable)]
    [InlineData(Dispatch.OnCall)]
    public void More_loads_before_the_start_are_a_reserve_for_the_whole_shift(Dispatch dispatch) =>
        Assert.True(Shifts.Run(Long(14, dispatch, before: 4)).Stops.Expected < 0.5 * Shifts.Run(Long(14, dispatch)).Stops.Expected);

    [Fact]
    public void In_a_shift_in_which_nothing_varies_each_load_of_the_timetable_arrives_when_its_mix_is_needed()
    {
        const double rate = 300 / 3.6; // 300 t/h in kg/s
        var model = Shifts.Single(14) with { Lines = [new ShiftLine("p", "mix", rate, 0, 0)] };
        var loads = ShiftSimulator.Loads(model)!;
        var perSecond = model.Speed * model.Stretches[0].PerMetre[0];
        for (var k = 2; k < loads.Count - 2; k++)
        {
            var used = loads.Take(k).Skip(2).Sum(load => load.Mass); // two loads are there before; half a minute for mean against median
            var late = loads[k].Arrived - (used / perSecond);
            var loadedNext = loads[k].Loaded - loads[k - 1].Loaded - Math.Max(loads[k].Mass / rate, model.Trucks[0].Loading.Expected); // the plant opens for the loads before the start: the next follow as fast as it loads
            Assert.True(Math.Abs(late) <= 30 || (late > 0 && Math.Abs(loadedNext) <= 30), $"load {k}: {late:0} s late, {loadedNext:0} s after the one before");
        }
    }

    [Fact]
    public void On_call_a_move_of_the_paver_is_way_too()
    {
        // Two runs of 700 m with an hour between: by hand, mix is needed at used / 355.2 kg/m / 4 m/min, and an hour later in the second run.
        var single = Shifts.Single(14);
        var model = single with
        {
            Dispatch = Dispatch.OnCall,
            Duration = 36_000,
            Stretches = [single.Stretches[0] with { Length = 700 }, single.Stretches[0] with { Length = 700, Move = 60 * Shifts.Minute }],
        };
        var loads = ShiftSimulator.Loads(model)!;
        var lead = model.Trucks[0].Out.Expected + model.Trucks[0].Loading.Expected;
        var judged = 0;
        for (var k = 2; k < loads.Count; k++)
        {
            var place = loads.Take(k).Skip(2).Sum(load => load.Mass) / 355.2;
            var needed = (place / model.Speed) + (place > 700 ? 3600 : 0);
            if (needed > lead + 600)
            {
                Assert.InRange(loads[k].Arrived - needed, -300, 300);
                judged++;
            }
        }

        Assert.True(judged > 20);
    }

    [Fact]
    public void On_call_nothing_is_sent_while_the_paver_stands_as_planned()
    {
        // Eighty minutes of planned stop: the timetable knows of it, and so does the call; what is loaded as it comes fills the site.
        var pause = new ShiftPause(7200, 4800);
        var (call, loaded) = (Of(Dispatch.OnCall), Of(Dispatch.AsLoaded));
        var lead = Shifts.Single().Trucks[0].Out.Expected + Shifts.Single().Trucks[0].Loading.Expected;
        Assert.DoesNotContain(call, load => load.Loaded > pause.After + lead && load.Loaded < pause.After + pause.Length);
        Assert.Contains(loaded, load => load.Loaded > pause.After + lead && load.Loaded < pause.After + pause.Length);

        IReadOnlyList<FedLoad> Of(Dispatch dispatch) => ShiftSimulator.Loads(Shifts.Single(14) with { Dispatch = dispatch, Pauses = [pause], Duration = 36_000 })!;
    }

    [Fact]
    public void On_call_loads_follow_a_paver_that_is_late_and_a_timetable_does_not()
    {
        // The plant stops for an hour in mid-shift: afterwards the timetable sends without a break what is overdue, the call goes on in step.
        var stop = new PlantStop("p", 7200, 3600, false);
        Assert.True(Most(Dispatch.OnCall) < Most(Dispatch.Timetable));

        double Most(Dispatch dispatch) => Shifts.Run(
            Shifts.Single(14) with { Dispatch = dispatch, Stop = stop, Duration = 36_000, Lines = [new ShiftLine("p", "mix", 300 / 3.6, 0, 0)] }, 50).Wait(0)!.Value.Expected;
    }

    [Theory]
    [InlineData(Dispatch.Timetable)]
    [InlineData(Dispatch.OnCall)]
    [InlineData(Dispatch.AsLoaded)]
    public void A_paver_slower_than_its_haul_is_served_in_every_way(Dispatch dispatch)
    {
        // Ten minutes of mix under way at most, and no load before the start: nothing may wait for a call that never comes.
        var model = Shifts.Single(3) with { Speed = 0.2 / 60, Duration = 72_000, Stretches = [new ShiftStretch(150, [3.7 * 0.040 * 2400])], Dispatch = dispatch };
        model = model with { Trucks = [model.Trucks[0] with { BeforeStart = 0 }] };
        var result = Shifts.Run(model, 50);
        Assert.Equal(1, result.FinishChance.Expected);
    }
}
