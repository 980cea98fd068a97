using Laygate.Engineering.Supply.Simulation;
using Laygate.Model.Measures;
using Laygate.Model.Plans;
using static Laygate.UnitTests.Engineering.Stated;

namespace Laygate.UnitTests.Engineering.Supply;

/// <summary>Shifts in which nothing varies against plain arithmetic, and shifts with bad figures.</summary>
public class ShiftTests
{
    private static ShiftModel Still => Shifts.Single(haulSpread: 0);

    [Fact]
    public void Enough_trucks_lay_all_in_length_over_speed()
    {
        var result = Shifts.Run(Still, 1);
        var shift = result.Outcomes[0];
        Assert.True(shift.Finished);
        Assert.Equal(0, shift.Stops);
        Assert.Equal(1400 / 4.0 * 60, shift.Ended - shift.Started, 1e-6);
        Assert.Equal(0, shift.Started, 1e-9);
    }

    [Theory]
    [InlineData(2)]
    [InlineData(4)]
    [InlineData(6)]
    [InlineData(7)]
    [InlineData(9)]
    public void Rounds_keep_the_deterministic_bound_exactly(int trucks)
    {
        // The feeder gives just what the paver takes, so that each discharge lasts P / R. Round: loading 6, out 4 + 30, exchange 1.5, discharge, back 5 + 26 min.
        var perMetre = Still.Stretches[0].PerMetre[0];
        var rate = perMetre * 4 / 60;
        var model = Shifts.Single(trucks, 0) with
        {
            Duration = 40 * 3600,
            Stretches = [new ShiftStretch(30_000, [perMetre])],
            Unloading = Still.Unloading with { Rate = rate },
            Lines = [Still.Lines[0] with { Rate = 1000 }],
        };
        var loads = ShiftSimulator.Loads(model)!.Select(load => load.Empty).Skip(3 * trucks).SkipLast(trucks).ToList();
        var service = 90 + (18_000 / rate);
        var bound = Laygate.Engineering.Supply.Queueing.ClosedNetwork.DeterministicBound(
            trucks, Si(4 + 30 + 5 + 26, "min"), [Si(6, "min"), service])!.Value;
        Assert.True(loads.Count > 2 * trucks);
        Assert.All(loads.Zip(loads.Skip(trucks)), pair => Assert.Equal(trucks / bound, pair.Second - pair.First, 1e-6));
    }

    [Fact]
    public void A_feeder_slower_than_the_demand_sets_the_pace()
    {
        var model = Still with { Unloading = Still.Unloading with { Rate = 50 / 3.6 }, Duration = 20 * 3600, Stretches = [new ShiftStretch(9000, Still.Stretches[0].PerMetre)] };
        var result = Shifts.Run(model, 1);
        // By hand: a load every 18 t / 50 t/h + 1.5 min = 23.1 min: 46.75 t/h, after the hopper's start level.
        Assert.Equal(46.75, result.Balance(0).Laid / 1000 / 20, 1.0);
    }

    [Fact]
    public void A_planned_stop_takes_its_time()
    {
        var shift = Shifts.Run(Still with { Pauses = [new ShiftPause(3600, 1200)], Duration = 400 * 60 }, 1).Outcomes[0];
        Assert.Equal((1400 / 4.0 * 60) + 1200, shift.Ended - shift.Started, 1e-6);
        Assert.Equal(0, shift.Stops);
    }

    [Fact]
    public void The_last_load_is_sized()
    {
        // By hand: 497.28 t + 2 t lowest level: 27 loads of 18 t and one of 14 t, so that 2.72 t stay in the hopper.
        var result = Shifts.Run(Still, 1);
        Assert.Equal(500_000, result.Balance(0).Loaded, 1e-6);
        Assert.Equal(2_720, result.LeftOver(0).Expected, 1e-3);
    }

    [Fact]
    public void A_wider_place_takes_more_mix_from_the_same_trucks()
    {
        // 3.7 m, then 7.4 m: the demand doubles to 170 t/h, more than 8 trucks carry.
        var one = Still.Stretches[0].PerMetre[0];
        var model = Still with { Stretches = [new ShiftStretch(700, [one]), new ShiftStretch(500, [2 * one])] };
        var result = Shifts.Run(model, 1);
        Assert.True(result.Outcomes[0].Stops > 0);
        Assert.True(Shifts.Run(Still, 1).Outcomes[0].Stops == 0);
    }

    [Fact]
    public void The_paver_starts_when_the_loads_wait()
    {
        var late = Still with { Trucks = [Still.Trucks[0] with { BeforeStart = 4 }], Lines = [Still.Lines[0] with { Rate = 20 / 3.6 }], Dispatch = Dispatch.AsLoaded };
        var result = Shifts.Run(late, 1);
        Assert.Equal(0, result.Outcomes[0].Started, 60.0); // The plant opens earlier in its stead.
        var more = Still with { Trucks = [Still.Trucks[0] with { BeforeStart = 20 }] };
        Assert.True(Shifts.Run(more, 1).Outcomes[0].Finished); // More than there are trucks: all of them.
    }

    [Fact]
    public void A_plant_stop_is_survived_on_the_committed_mix()
    {
        var model = Shifts.A(haulSpread: 0);
        var committed = Shifts.Run(model, 1).Committed();
        var stop = new PlantStop("a", committed.Times[60], double.PositiveInfinity, FromSilo: false);
        var minutes = Shifts.Run(model with { Stop = stop }, 1).Survived.Expected / 60;
        // Lower mix on the road, waiting and in its buffer above 8 t, over 4.35 t/min (derived: stock/demand).
        var loads = ShiftSimulator.Loads(model)!.Where(load => load.Mix == 0 && load.Loaded <= stop.At).Sum(load => load.Mass);
        var used = (stop.At - 0) / 60 * 2.6 * model.Stretches[0].PerMetre[0];
        Assert.Equal((loads - used - 8_000) / (2.6 * model.Stretches[0].PerMetre[0]), minutes, 1.0);
    }

    [Fact]
    public void A_short_plant_stop_is_not_felt()
    {
        var model = Shifts.A(haulSpread: 0) with { Stop = new PlantStop("a", 200 * 60, 20 * 60, FromSilo: false) };
        Assert.Equal(0, Shifts.Run(model, 1).Outcomes[0].Stops);
    }

    [Fact]
    public void A_load_that_does_not_fit_locks_nothing()
    {
        // Upper loads of 25 t into 24 t (by hand: 25 t never fit above the lowest level): the paver stops again and again, but goes on.
        var model = Shifts.A(call: 15);
        model = model with
        {
            Buffers = [model.Buffers[0], model.Buffers[1] with { Capacity = 24_000 }],
            Trucks = [model.Trucks[0], model.Trucks[1] with { Payload = 25_000 }],
        };
        var result = Shifts.Run(model, 50);
        Assert.All(result.Outcomes, shift => Assert.True(shift.Metres > 500));
        Assert.True(result.StopChance.Expected > 0.9);
        Assert.True(result.Outcomes.Sum(shift => shift.BrokenOff) > 0);
        var parts = Shifts.Run(model with { Unloading = model.Unloading with { InParts = true } }, 50);
        Assert.True(parts.Metres.Expected >= result.Metres.Expected);
    }

    [Theory]
    [InlineData(20)]
    [InlineData(28)]
    [InlineData(35)]
    public void A_call_level_above_its_band_starves_the_lower_course(double call)
    {
        var result = Shifts.Run(Shifts.A(call: call), 100);
        Assert.Equal(1, result.StopChance.Expected);
        Assert.All(result.Outcomes, shift => Assert.True(shift.Metres > 500));
    }

    [Fact]
    public void A_haul_longer_than_the_shift_brings_each_truck_once()
    {
        var model = Still with { Trucks = [Still.Trucks[0] with { Out = TimeSpread.Constant(8 * 3600), Back = TimeSpread.Constant(8 * 3600) }] };
        var result = Shifts.Run(model, 1);
        Assert.InRange(result.Balance(0).Loaded / 18_000, 1, 8);
        Assert.False(result.Outcomes[0].Finished);
    }

    [Fact]
    public void Bad_figures_have_a_reason()
    {
        Assert.Equal(ShiftProblem.UnusableFigures, ShiftSimulator.Problem(Still with { Speed = 0 }));
        Assert.Equal(ShiftProblem.UnusableFigures, ShiftSimulator.Problem(Still with { Speed = double.NaN }));
        Assert.Equal(ShiftProblem.UnusableFigures, ShiftSimulator.Problem(Still with { Duration = 0 }));
        Assert.Equal(ShiftProblem.UnusableFigures, ShiftSimulator.Problem(Still with { Trucks = [Still.Trucks[0] with { Payload = 0 }] }));
        Assert.Equal(ShiftProblem.NoTrucks, ShiftSimulator.Problem(Still with { Trucks = [Still.Trucks[0] with { Count = 0 }] }));
        Assert.Equal(ShiftProblem.NoTrucks, ShiftSimulator.Problem(Still with { Lines = [Still.Lines[0] with { Mix = "other" }] }));
        Assert.Equal(ShiftProblem.NoPlant, ShiftSimulator.Problem(Still with { Trucks = [Still.Trucks[0], Still.Trucks[0] with { Line = 3 }] }));
        Assert.Equal(ShiftProblem.TooLarge, ShiftSimulator.Problem(Still with { Trucks = [Still.Trucks[0] with { Payload = 1 }] }));
        Assert.Equal(ShiftProblem.TooLarge, ShiftSimulator.Problem(Still with { Trucks = [Still.Trucks[0] with { Out = TimeSpread.Constant(1e9) }] }));
        Assert.Equal(ShiftProblem.TooManyCourses, ShiftSimulator.Problem(Still with { Buffers = [] }));
        Assert.Null(ShiftSimulator.Run(Still with { Speed = 0 }, 1));
        Assert.Null(ShiftSimulator.Loads(Still with { Speed = 0 }));
    }
}
