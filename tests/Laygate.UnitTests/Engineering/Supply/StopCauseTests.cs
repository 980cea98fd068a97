using Laygate.Engineering.Supply.Simulation;
using Laygate.Model.Plans;

namespace Laygate.UnitTests.Engineering.Supply;

/// <summary>
/// What a standing paver is said to wait for, against what helps: the change that aims at the cause named first takes most of the
/// stops away, and the usual answer, more trucks, does not where another cause is named.
/// </summary>
public class StopCauseTests
{
    public static TheoryData<StopCause> Causes => [.. Enum.GetValues<StopCause>()];

    [Theory]
    [MemberData(nameof(Causes))]
    public void What_is_named_is_what_helps(StopCause cause)
    {
        var model = Model(cause);
        var asItIs = Shifts.Run(model);
        Assert.True(asItIs.StopChance.Expected > 0.2);
        Assert.Equal(cause, asItIs.StopCauses()[0].Cause);
        Assert.Equal(1, asItIs.StopCauses().Sum(share => share.Share), 1e-9);
        Assert.True(Shifts.Run(Relaxed(model, cause)).Stops.Expected < 0.3 * asItIs.Stops.Expected);
        if (cause != StopCause.Trucks)
        {
            Assert.True(Shifts.Run(Relaxed(model, StopCause.Trucks)).Stops.Expected > 0.7 * asItIs.Stops.Expected);
        }
    }

    [Fact]
    public void A_shift_without_a_stop_names_nothing() => Assert.Empty(Shifts.Run(Shifts.Single(11)).StopCauses());

    [Fact]
    public void At_fourteen_minutes_a_truck_the_loading_place_is_named_however_many_trucks_there_are()
    {
        // The paver lays a load of 18 t in 12.7 min.
        foreach (var trucks in new[] { 9, 14, 20 })
        {
            Assert.Equal(StopCause.Loading, Shifts.Run(Model(StopCause.Loading, trucks)).StopCauses()[0].Cause);
        }
    }

    private static ShiftModel Model(StopCause cause, int trucks = 12)
    {
        var model = Shifts.Single(cause == StopCause.Trucks ? 6 : trucks, haulSpread: cause == StopCause.Dispatch ? 0.35 : 0.15, serviceSpread: 0.2) with
        {
            Dispatch = cause == StopCause.Dispatch ? Dispatch.Timetable : Dispatch.AsLoaded,
        };
        return cause switch
        {
            StopCause.Dispatch => model with { Trucks = [model.Trucks[0] with { BeforeStart = 1 }] },
            StopCause.Loading => model with { Trucks = [model.Trucks[0] with { Loading = TimeSpread.Lognormal(14 * Shifts.Minute, 0.2) }] },
            StopCause.Plant => model with { Lines = [model.Lines[0] with { Rate = 70 / 3.6 }] },
            StopCause.Feeder => model with { Unloading = model.Unloading with { Rate = 80 / 3.6 } },
            StopCause.Buffer => model with { Buffers = [model.Buffers[0] with { Capacity = 4500, Restart = 2600 }] },
            _ => model,
        };
    }

    private static ShiftModel Relaxed(ShiftModel model, StopCause cause) => cause switch
    {
        StopCause.Dispatch => model with { Dispatch = Dispatch.AsLoaded },
        StopCause.Loading => model with { Lines = [model.Lines[0] with { Places = 2 }] },
        StopCause.Trucks => model with { Trucks = [model.Trucks[0] with { Count = 2 * model.Trucks[0].Count }] },
        StopCause.Plant => model with { Lines = [model.Lines[0] with { Rate = 2 * model.Lines[0].Rate }] },
        StopCause.Feeder => model with { Unloading = model.Unloading with { Rate = 4 * model.Unloading.Rate } },
        _ => model with { Buffers = [model.Buffers[0] with { Capacity = 3 * model.Buffers[0].Capacity }] },
    };
}
