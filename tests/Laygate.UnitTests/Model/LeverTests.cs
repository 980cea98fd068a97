using Laygate.Model.Levers;
using Laygate.Model.Measures;
using Laygate.Model.Plans;
using Laygate.UnitTests.Engineering;
using static Laygate.UnitTests.Engineering.Stated;

namespace Laygate.UnitTests.Model;

public class LeverTests
{
    private static readonly Plan Plan = Small.Plan with
    {
        Mixes = [Small.Mix with { Loading = new TemperatureBand { Lowest = C(160), Expected = C(165), Highest = C(175), Place = Place.InLoad }, Delivery = new TemperatureBand { Lowest = C(150), Expected = C(158), Place = Place.InLoad } }],
        Courses = [Small.Course with { Tolerance = Mm(5), ThicknessLowest = Mm(36), LayingTemperature = Band(150) }],
        Shift = new Shift { Date = new DateOnly(2027, 5, 14), Start = new TimeOnly(21, 0), End = new TimeOnly(4, 0) },
        Site = new Site { Closure = new Closure { From = At(14, 19), To = At(15, 5) } },
        Opening = new Opening { At = At(15, 4) },
        Pavers = [new Paver { Id = "p", Speed = M<Speed>(4, "m/min") }],
        Rolling = new Laygate.Model.Plans.Rolling
        {
            Phases = [new Phase { Id = "a", ZoneFrom = Metres(2), ZoneTo = Metres(20) }, new Phase { Id = "b", ZoneFrom = Metres(30), ZoneTo = Metres(50) }],
            Rollers = [new Roller { Id = "r", Phase = "a" }, new Roller { Id = "s", Phase = "a", Spare = true }],
        },
    };

    [Fact]
    public void Speed_ends_at_1_5_metres_per_minute() => Assert.Equal(1.5, Of(LeverKind.PaverSpeed).Lowest, 9);

    [Fact]
    public void In_feet_per_minute_it_is_the_same_speed()
    {
        var plan = Plan with { Pavers = [new Paver { Id = "p", Speed = M<Speed>(15, "ft/min") }] };
        Assert.Equal(1.5 / 0.3048, Of(LeverKind.PaverSpeed, plan).Lowest, 6);
    }

    [Fact]
    public void A_hotter_mix_is_hotter_all_the_way_and_never_hotter_than_the_plan_allows()
    {
        var lever = Of(LeverKind.MixTemperature);
        Assert.Equal(175, lever.Highest);
        var hot = lever.Change(172);
        Assert.Equal(172, hot.Mixes[0].Loading!.Expected!.Number);
        Assert.Equal(165, hot.Mixes[0].Delivery!.Expected!.Number);
        Assert.Equal(157, hot.Courses[0].LayingTemperature!.Expected!.Number);
        Assert.Equal(175, hot.Mixes[0].Loading!.Highest!.Number);
    }

    [Fact]
    public void A_plan_that_states_no_highest_loading_temperature_has_no_such_lever() =>
        Assert.DoesNotContain(PlanLevers.Of(Plan with { Mixes = [Small.Mix with { Loading = new TemperatureBand { Expected = C(165) } }] }), lever => lever.Kind == LeverKind.MixTemperature);

    [Fact]
    public void Thickness_stays_inside_the_tolerance_takes_its_lowest_along_and_is_the_designers()
    {
        var lever = Of(LeverKind.Thickness);
        Assert.Equal((35.0, 45.0, true), (lever.Lowest, lever.Highest, lever.ByDesigner));
        var thick = lever.Change(43).Courses[0];
        Assert.Equal((43.0, 39.0), (thick.Thickness.Number, thick.ThicknessLowest!.Number));
    }

    [Fact]
    public void An_added_roller_is_a_copy_with_an_id_of_its_own()
    {
        var lever = Of(LeverKind.Rollers);
        Assert.Equal((1.0, true), (lever.Current, lever.IsCount));
        var rollers = lever.Change(3).Rolling!.Rollers;
        Assert.Equal(["r", "s", "r-added-1", "r-added-2"], rollers.Select(roller => roller.Id), StringComparer.Ordinal);
        Assert.Equal("roller:r", RollerCopy.ModelOf("roller:r-added-2"));
        Assert.Equal("roller:s", RollerCopy.ModelOf("roller:s"));
    }

    [Fact]
    public void A_zone_ends_where_the_next_one_begins() =>
        Assert.Equal(30, PlanLevers.Of(Plan).First(lever => lever is { Kind: LeverKind.ZoneLength, Address: "phase:a" }).Highest);

    [Fact]
    public void Opening_and_start_stay_inside_the_closure()
    {
        // Minutes from the midnight before the shift: the closure runs from 19:00 (1140) to 05:00 (1740); the shift lasts 7 h.
        var opening = Of(LeverKind.Opening);
        Assert.Equal((1680.0, 1680.0, 1740.0), (opening.Lowest, opening.Current, opening.Highest));
        var start = Of(LeverKind.ShiftStart);
        Assert.Equal((1140.0, 1260.0, 1320.0), (start.Lowest, start.Current, start.Highest));
        var moved = start.Change(1320).Shift!;
        Assert.Equal((new TimeOnly(22, 0), new TimeOnly(5, 0)), (moved.Start!.Value, moved.End!.Value));
    }

    [Fact]
    public void Without_a_closure_neither_moves() =>
        Assert.DoesNotContain(PlanLevers.Of(Plan with { Site = null }), lever => lever.Kind is LeverKind.Opening or LeverKind.ShiftStart);

    [Fact]
    public void Proposed_values_are_round_and_in_order_and_end_at_the_end()
    {
        var lever = Of(LeverKind.PaverSpeed) with { Current = 3.85 };
        Assert.Equal([3.9, 4.0, 4.1], lever.Values(up: true).Take(3));
        Assert.Equal(3.8, lever.Values(up: false)[0]);
        Assert.Equal(1.5, lever.Values(up: false)[^1]);
    }

    /// <summary>A list of a thousand million speeds took 24 GB; what is not asked for is not made.</summary>
    [Theory]
    [InlineData(1e4)]
    [InlineData(1e7)]
    [InlineData(1e300)]
    public void An_absurd_figure_costs_no_memory(double current)
    {
        var lever = Of(LeverKind.PaverSpeed) with { Current = current };
        lever.Values(up: false);
        var before = GC.GetAllocatedBytesForCurrentThread();
        var values = lever.Values(up: false);
        var (count, nearest, farthest) = (values.Count, values.Count > 0 ? values[0] : double.NaN, values.Count > 0 ? values[^1] : double.NaN);
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 10_000);

        // From 10,000.0 m/min in steps of 0.1 m/min down to 1.5 m/min.
        Assert.Equal(current switch { 1e4 => 99_985, 1e7 => 99_999_985, _ => 0 }, count);
        Assert.Equal(count == 0 ? (double.NaN, double.NaN) : (current - 0.1, 1.5), (nearest, farthest));
    }

    /// <summary>No figure is published for these ends; they keep a proposal within what one shift can arrange (the reasons stand at PlanLevers).</summary>
    [Fact]
    public void No_fleet_or_order_grows_beyond_its_double()
    {
        var supply = new Laygate.Model.Plans.Supply { Trucks = [new TruckGroup { Id = "a", Plant = "x", Mix = "m", Count = 12 }] };
        Assert.Equal(24, Of(LeverKind.TruckCount, Plan with { Supply = supply }).Highest);
        var course = Plan.Courses[0] with { Tonnage = M<Mass>(300, "t") };
        Assert.Equal(600, Of(LeverKind.Tonnage, Plan with { Courses = [course] }).Highest);
        Assert.Equal(3, Of(LeverKind.Rollers).Highest);
    }

    [Theory]
    [InlineData(Laying.Separately, 6)]
    [InlineData(Laying.HotOnHot, 5)]
    public void A_paver_of_a_pair_is_hurried_less_than_one_of_a_single_course(Laying laid, double highest) =>
        Assert.Equal(highest, Of(LeverKind.PaverSpeed, Plan with { Courses = [Plan.Courses[0], Plan.Courses[0] with { Id = "upper", Laid = laid }] }).Highest, 9);

    [Fact]
    public void The_share_of_its_room_that_a_change_uses()
    {
        var lever = Of(LeverKind.PaverSpeed); // 4 m/min, up to 6, down to 1.5.
        Assert.Equal((0.25, 0.4, 0.0), (lever.Share(4.5), lever.Share(3), lever.Share(4)));
    }

    [Fact]
    public void What_is_not_stated_cannot_be_moved() => Assert.Empty(PlanLevers.Of(Small.Plan));

    [Fact]
    public void The_time_of_a_phase_may_be_moved_and_takes_nothing_along()
    {
        var phase = new Phase { Id = "a", DoneWithin = M<Duration>(6, "min") };
        var plan = Plan with { Rolling = Plan.Rolling! with { Phases = [phase, Plan.Rolling.Phases[1]] } };
        var lever = Of(LeverKind.DoneWithin, plan);
        Assert.Equal(("phase:a", "done_within", 6.0, false), (lever.Address, lever.Key, lever.Current, lever.IsCount));
        Assert.Equal([7, 8, 9], lever.Values(up: true).Take(3));
        var changed = lever.Change(9).Rolling!;
        Assert.Equal(9, changed.Phases[0].DoneWithin!.Number);
        Assert.Equal(plan.Rolling.Phases[1], changed.Phases[1]);
        Assert.DoesNotContain(PlanLevers.Of(Plan), other => other.Kind == LeverKind.DoneWithin);
    }

    [Fact]
    public void A_buffer_is_given_by_its_machine_and_its_call_level_is_not()
    {
        var buffer = new MixBuffer { Course = "wearing", Capacity = M<Mass>(12, "t"), Lowest = M<Mass>(2, "t"), Call = M<Mass>(5, "t") };
        var plan = Plan with { Pavers = [new Paver { Id = "p", Buffers = [buffer] }] };
        Assert.True(Of(LeverKind.BufferCapacity, plan).IsGiven);
        var call = Of(LeverKind.CallLevel, plan);
        Assert.Equal((false, 2.0, 12.0), (call.IsGiven, call.Lowest, call.Highest));
    }

    [Theory]
    [InlineData(6, 2, 20, 5)]
    [InlineData(6, 2, 4, 4)]
    [InlineData(3, 2, 20, 3)]
    public void No_more_loads_wait_than_there_are_trucks_or_places(int places, int others, int trucks, double highest)
    {
        var supply = new Laygate.Model.Plans.Supply
        {
            WaitingPlaces = places,
            Trucks =
            [
                new TruckGroup { Id = "a", Plant = "x", Mix = "m", Count = trucks, LoadsBeforeStart = 3 },
                new TruckGroup { Id = "b", Plant = "x", Mix = "n", Count = 9, LoadsBeforeStart = others },
            ],
        };
        Assert.Equal(highest, Of(LeverKind.LoadsBeforeStart, Plan with { Supply = supply }).Highest);
    }

    [Fact]
    public void A_plant_without_a_name_plate_is_not_asked_for_more()
    {
        var plant = new Plant { Id = "x", Mixes = ["m"], Planned = M<MassFlow>(100, "t/h") };
        Assert.Equal(100, Of(LeverKind.PlantOutput, Plan with { Supply = new Laygate.Model.Plans.Supply { Plants = [plant] } }).Highest);
        plant = plant with { Nameplate = M<MassFlow>(120, "t/h") };
        Assert.Equal(120, Of(LeverKind.PlantOutput, Plan with { Supply = new Laygate.Model.Plans.Supply { Plants = [plant] } }).Highest);
    }

    private static Lever Of(LeverKind kind, Plan? plan = null) => PlanLevers.Of(plan ?? Plan).First(lever => lever.Kind == kind);

    private static Moment At(int day, int hour) => new(new DateTime(2027, 5, day, hour, 0, 0, DateTimeKind.Unspecified), null);
}
