using System.Text.Json;
using Laygate.Engineering.Supply.Simulation;
using Laygate.Model.Plans;

namespace Laygate.UnitTests.Engineering.Supply;

/// <summary>A shift goes on from each of its states as if it had never been interrupted, and no state loses a kilogram.</summary>
public sealed class ShiftStateTests
{
    public static TheoryData<string> Kinds => ["pair", "pair-on-call", "pair-in-parts", "single", "single-stop", "single-move", "plant-stop", "few-trucks"];

    [Theory]
    [MemberData(nameof(Kinds))]
    public void A_run_that_goes_on_from_a_written_state_is_the_whole_run(string kind)
    {
        var model = Model(kind);
        var (loads, outcome) = ShiftSimulator.Steady(model)!.Value;
        var states = ShiftSimulator.States(model).ToList();
        Assert.True(states.Count > 100);
        foreach (var state in states)
        {
            var read = JsonSerializer.Deserialize<ShiftState>(JsonSerializer.Serialize(state))!;
            var (rest, end) = ShiftSimulator.Steady(model, read)!.Value;
            Assert.Equal(outcome, end);
            Assert.Equal(loads.Skip(loads.Count - rest.Count), rest);
        }
    }

    // Chance belongs to the loads: a state of the first replication goes on with its luck.
    [Fact]
    public void A_run_with_chance_goes_on_with_the_same_luck()
    {
        var model = Shifts.A(haulSpread: 0.2, serviceSpread: 0.2);
        var whole = Shifts.Run(model, 3, seed: 7);
        foreach (var state in Chance(model, 7).Where((_, i) => i % 7 == 0))
        {
            var rest = ShiftSimulator.Run(model, 7, 1, from: state)!;
            Assert.Equal(whole.Outcomes[0], rest.Outcomes[0]);
            Assert.Equal(whole.Balance(0), rest.Balance(0));
        }
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void No_kilogram_is_lost_in_any_state(string kind)
    {
        foreach (var state in ShiftSimulator.States(Model(kind)))
        {
            Assert.Equal(state.Mixes.Sum(mix => mix.Loaded), state.Mass, 1e-3);
        }
    }

    [Fact]
    public void A_state_of_another_shift_is_turned_down()
    {
        var state = ShiftSimulator.States(Shifts.Single()).ElementAt(50);
        Assert.Null(ShiftSimulator.Steady(Shifts.A(), state));
        Assert.Null(ShiftSimulator.Run(Shifts.Single(trucks: 7), 1, 10, from: state));
    }

    private static IEnumerable<ShiftState> Chance(ShiftModel model, ulong seed)
    {
        var plan = new ShiftPlan(model);
        return new ShiftRunner(model, plan, new ShiftArrays(1, model.Buffers.Count, plan.Mixes.Count, model.Trucks.Count)).States(seed, 0);
    }

    private static ShiftModel Model(string kind)
    {
        var (pair, single) = (Shifts.A(), Shifts.Single());
        return kind switch
        {
            "pair" => pair,
            "pair-on-call" => pair with { Dispatch = Dispatch.OnCall },
            "pair-in-parts" => pair with { Dispatch = Dispatch.AsLoaded, Unloading = pair.Unloading with { InParts = true } },
            "single-stop" => single with { Pauses = [new ShiftPause(3600, 900), new ShiftPause(9000, 300)] },
            "single-move" => single with { Dispatch = Dispatch.OnCall, Stretches = [new ShiftStretch(700, [3.7 * 0.040 * 2400]), new ShiftStretch(700, [3.7 * 0.040 * 2400]) { Move = 1500 }] },
            "plant-stop" => single with { Stop = new PlantStop("p", 6000, 2700, FromSilo: false) },
            "few-trucks" => Shifts.Single(trucks: 3),
            _ => single,
        };
    }
}
