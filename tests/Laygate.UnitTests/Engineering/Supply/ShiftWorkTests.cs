using Laygate.Engineering.Supply.Simulation;

namespace Laygate.UnitTests.Engineering.Supply;

/// <summary>Loads times replications have a bound, whatever the fleet and the shift.</summary>
public sealed class ShiftWorkTests
{
    [Fact]
    public void An_ordinary_shift_is_simulated_as_often_as_is_asked_for() =>
        Assert.Equal((500, 50), (ShiftSimulator.ReplicationsOf([Shifts.A()], 500), ShiftSimulator.ReplicationsOf([Shifts.A(), Shifts.Single()], 50)));

    // By hand: 1400 m · 0.3552 t/m in loads of 18 t are 28 loads, and the trucks; 500 times up to 400 of them, 500 · 400/(28 + trucks) above, never below a fifth.
    [Theory]
    [InlineData(8, 500)]
    [InlineData(372, 500)]
    [InlineData(773, 250)]
    [InlineData(1900, 104)]
    [InlineData(20_000, 100)]
    public void A_huge_fleet_is_simulated_less_often_down_to_a_fifth(int trucks, int replications) =>
        Assert.InRange(ShiftSimulator.ReplicationsOf([Shifts.Single(trucks)], 500), replications - 2, replications + 2);

    [Fact]
    public void Work_is_bounded()
    {
        for (var trucks = 1; trucks <= ShiftSimulator.MostLoads; trucks += 37)
        {
            var model = Shifts.Single(trucks);
            if (ShiftSimulator.Problem(model) == ShiftProblem.None)
            {
                var loads = (model.Tonnage(0) / model.Trucks[0].Payload) + trucks;
                Assert.True(loads * ShiftSimulator.ReplicationsOf([model], 500) <= 500.0 * ShiftSimulator.UsualLoads * 1.1, $"{trucks} trucks");
            }
        }
    }

    [Fact]
    public void A_fleet_in_twenty_groups_gives_what_the_same_fleet_gives_in_one()
    {
        // The same trucks, each a group of its own: other streams, the same shift within what chance moves (three standard errors of 500 shifts).
        var one = Shifts.Single(8, serviceSpread: 0.2);
        var many = one with { Trucks = [.. Enumerable.Range(0, 8).Select(i => one.Trucks[0] with { Id = $"t{i}", Count = 1, BeforeStart = i < 2 ? 1 : 0 })] };
        var (together, apart) = (Shifts.Run(one), Shifts.Run(many));
        var error = (together.Metres.High - together.Metres.Low) / 3.29 / Math.Sqrt(500);
        Assert.InRange(apart.Metres.Expected - together.Metres.Expected, -(4 * error) - 1, (4 * error) + 1);
        Assert.All(Enumerable.Range(0, 8), group => Assert.NotNull(apart.Wait(group)));
    }
}
