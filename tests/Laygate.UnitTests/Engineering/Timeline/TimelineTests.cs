using Laygate.Engineering.Quantities;
using Laygate.Engineering.SheetData;
using Laygate.Engineering.Supply.Simulation;
using Laygate.Model.Measures;
using Laygate.Model.Plans;
using static Laygate.UnitTests.Engineering.Stated;

namespace Laygate.UnitTests.Engineering.Timeline;

/// <summary>When each metre is laid; every expected time is worked out by hand beside its check (derived: length ÷ speed).</summary>
public class TimelineTests
{
    /// <summary>Two lanes, 0 to 900 m, of one paver at 4.5 m/min: 200 min each. Way back 900 m at 3 km/h = 18 min and set-up 20 min, both assumed: the second lane begins at 238 and ends at 438 min.</summary>
    internal static Plan TwoLanes { get; } = Small.Plan with
    {
        Mixes = [Small.Mix with { Density = new MixDensity { Compacted = M<Density>(2.5, "t/m3") } }],
        Courses = [Small.Course with { LayingTemperature = new TemperatureBand { Expected = C(150), Place = Place.CourseMean } }],
        Shift = new Shift { Date = new DateOnly(2027, 6, 1), Start = new TimeOnly(7, 0), End = new TimeOnly(16, 0), Zone = TimeSpan.FromHours(2) },
        Existing = new Existing { Surface = ExistingSurface.Milled },
        Weather = new Weather { Envelope = new WeatherEnvelope { AirLowest = C(15), BaseLowest = C(18), WindHighest = M<Speed>(3, "m/s") } },
        Runs = [Lane("left"), Lane("right")],
        Pavers = [new Paver { Id = "p1", Speed = M<Speed>(4.5, "m/min") }],
        Joints = [new Joint { Id = "middle", Kind = JointKind.Longitudinal, Course = "c", Run = "left", Beside = "right", Form = JointForm.HotEchelon }],
        Supply = new Laygate.Model.Plans.Supply
        {
            Plants = [new Plant { Id = "p", Mixes = ["m"], Planned = TPerH(150) }],
            Trucks = [new TruckGroup { Id = "t", Mix = "m", Count = 9, Payload = T(20), HaulOut = Min(30), HaulBack = Min(25) }],
        },
    };

    [Fact]
    public void Two_lanes_of_one_paver_follow_each_other_with_the_move_between()
    {
        Assert.Equal([0, 200, 238, 438], Runs(TwoLanes, "left", "right"));
        Assert.Equal(7.3, Ask.Number(TwoLanes, "shift.time_needed", "shift", "h"), 9); // 438 / 60
        Assert.Equal(new DateTimeOffset(2027, 6, 1, 14, 18, 0, TimeSpan.FromHours(2)), Moment(TwoLanes, "shift.last_metre"));
        var sheet = new SheetQuantities(Ask.Context(TwoLanes));
        Assert.Equal(1800, sheet.Length, 9);
        Assert.Equal(200, (sheet.HalfWay!.Value - sheet.Start!.Value).TotalMinutes, 3); // half of 1,800 m is the end of the first lane
    }

    [Fact]
    public void The_edge_is_as_old_as_the_way_round_and_not_as_the_plan_would_like()
    {
        // Every point is passed again after 200 min of laying and 38 min of moving.
        Assert.Equal(238, Ask.Number(TwoLanes, "joint.delay_shortest", "joint:middle", "min"), 6);
        Assert.Equal(238, Ask.Number(TwoLanes, "joint.delay_longest", "joint:middle", "min"), 6);
        var hopeful = TwoLanes with { Joints = [TwoLanes.Joints[0] with { Delay = Min(2) }] };
        Assert.Equal(Ask.Number(TwoLanes, "joint.edge_temperature", "joint:middle", "°C"), Ask.Number(hopeful, "joint.edge_temperature", "joint:middle", "°C"), 1e-9);
        Assert.InRange(Ask.Number(hopeful, "joint.edge_temperature", "joint:middle", "°C"), 15, 45); // four hours on: near the base at 18 °C, above the air
        Assert.True(Assert.IsType<FlagValue>(Ask.Answer(hopeful, "joint.has_computed_delay", "joint:middle").Value).Yes);

        // Against a lane that is no run of the plan the stated time counts: two minutes after the screed the mat has lost little of its 150 °C.
        var single = hopeful with { Runs = [Lane("left")], Joints = [hopeful.Joints[0] with { Beside = null }] };
        Assert.InRange(Ask.Number(single, "joint.edge_temperature", "joint:middle", "°C"), 120, 149);
    }

    [Fact]
    public void Stated_times_take_the_place_of_assumed_ones()
    {
        var moved = TwoLanes with { Runs = [Lane("left"), Lane("right") with { Move = Min(50) }] };
        Assert.Equal(200 + 50 + 200, Needed(moved), 6);
        Assert.DoesNotContain(Ask.Answer(moved, "shift.time_needed", "shift").Working.Assumptions, use => use.Id.StartsWith("paver.", StringComparison.Ordinal));
        var fast = TwoLanes with { Pavers = [TwoLanes.Pavers[0] with { TravelSpeed = M<Speed>(9, "km/h"), Reset = Min(12) }] };
        Assert.Equal(200 + 6 + 12 + 200, Needed(fast), 6);
        var late = TwoLanes with { Runs = [Lane("left"), Lane("right") with { StartsAfter = Min(300) }] };
        Assert.Equal(300 + 200, Needed(late), 6);

        // The assumed move is given with its range: 10 km/h and 10 min, 2 km/h and 40 min.
        var number = Assert.IsType<NumberValue>(Ask.Answer(TwoLanes, "shift.time_needed", "shift").Value);
        Assert.Equal(400 + 5.4 + 10, number.Low!.Value / 60, 6);
        Assert.Equal(400 + 27 + 40, number.High!.Value / 60, 6);
    }

    [Fact]
    public void The_order_is_the_stated_one_and_runs_end_to_end_need_no_move()
    {
        var ordered = TwoLanes with { Runs = [Lane("left") with { Order = 2 }, Lane("right") with { Order = 1 }] };
        Assert.Equal([0, 200, 238, 438], Runs(ordered, "right", "left"));
        var on = TwoLanes with { Runs = [Lane("a") with { To = Metres(400) }, Lane("b") with { From = Metres(400) }] };
        Assert.Equal(200, Needed(on), 6);
    }

    [Fact]
    public void Availability_and_stops_count_once_and_everywhere()
    {
        // 4.5 m/min at 40 % are 1.8 m/min: 500 min a lane; a stop of 30 min after 100 min; the move of 38 min.
        var slow = TwoLanes with { Pavers = [TwoLanes.Pavers[0] with { Availability = M<Ratio>(40, "%"), Stops = [new PlannedStop { Id = "meal", After = Min(100), Length = Min(30) }] }] };
        Assert.Equal(500 + 30 + 38 + 500, Needed(slow), 6);
        Assert.Equal([0, 530, 568, 1068], Runs(slow, "left", "right"));

        // 1,068 min are more than the shift of 540: no simulated shift finishes, and the sheet says the same time.
        Assert.Equal(0, Ask.Number(slow, "shift.finish_chance", "shift"), 9);
        var sheet = new SheetQuantities(Ask.Context(slow));
        Assert.Equal(Moment(slow, "shift.last_metre"), sheet.LastMetre);
        Assert.Equal(1068, (sheet.LastMetre!.Value - sheet.Start!.Value).TotalMinutes, 3);
        var opened = slow with { Opening = new Opening { At = new Moment(new DateTime(2027, 6, 1, 20, 0, 0), null) } };
        Assert.Equal(20 - 7 - (1068 / 60.0), Ask.Number(opened, "opening.time_after_laying", "opening", "h"), 6); // opened before the last metre
    }

    [Fact]
    public void A_stop_within_a_move_is_made_when_laying_goes_on()
    {
        // Lane 1 ends at 200, the move at 238; the stop due at 210 is made then: 238 + 15.
        var plan = TwoLanes with { Pavers = [TwoLanes.Pavers[0] with { Stops = [new PlannedStop { Id = "meal", After = Min(210), Length = Min(15) }] }] };
        Assert.Equal(238 + 15 + 200, Needed(plan), 6);
        Assert.Equal(Needed(plan), Steady(plan), 0.001);
    }

    [Fact]
    public void Two_lanes_are_simulated_with_their_loads_and_their_finish()
    {
        // 3.5 m · 40 mm · 2.5 t/m³ = 350 kg/m: 315 t a lane, 630 t and 3 t that stay in the hopper: 31 loads of 20 t and one of 13 t.
        var sheet = new SheetQuantities(Ask.Context(TwoLanes));
        Assert.True(sheet.IsSimulated);
        var loads = sheet.Loads();
        Assert.Equal(633, loads.Sum(load => load.Load.Size) / 1000, 6);
        Assert.Equal(32, loads.Count);
        Assert.Equal(1800, loads[^1].Load.EndsAt, 6);
        Assert.Equal(438, Steady(TwoLanes), 0.001);
        Assert.Equal(Moment(TwoLanes, "shift.last_metre"), sheet.LastMetre);

        // The 16th load ends at 320 t less nothing: 914 m, 14 m into the second lane, so it is used up there.
        Assert.Equal(("right", 14.286), (loads[15].Ends!.Run.Id, Math.Round(loads[15].Ends!.Station, 3)));
    }

    [Fact]
    public void A_second_paver_in_echelon_follows_by_the_delay_of_the_joint()
    {
        // The second lane begins 5 min later and ends 5 min later: 205 min in all, against 438 with one paver.
        var echelon = Echelon(4.5);
        Assert.Equal(205, Needed(echelon), 6);
        Assert.Equal(5, Ask.Number(echelon, "joint.delay_longest", "joint:middle", "min"), 6);
        var simulation = ShiftSimulation.Of(Ask.Context(echelon));
        var model = Assert.Single(simulation.Models);
        Assert.Equal((2, 630.0), (model.Buffers.Count, Math.Round((model.Tonnage(0) + model.Tonnage(1)) / 1000, 6)));
        Assert.Equal(205 * 4.5, model.Length, 6); // 22.5 m of the leader alone, 877.5 m together, 22.5 m of the follower alone
        Assert.Equal(205, Steady(echelon), 0.001);
    }

    [Fact]
    public void A_faster_follower_does_not_overtake_and_a_slower_one_falls_behind()
    {
        Assert.Equal(205, Needed(Echelon(6)), 6);

        // 900 m at 3.6 m/min take 250 min: 5 min behind at the start, 55 at the end.
        Assert.Equal(5 + 250, Needed(Echelon(3.6)), 6);
        Assert.Equal(5, Ask.Number(Echelon(3.6), "joint.delay_shortest", "joint:middle", "min"), 6);
        Assert.Equal(55, Ask.Number(Echelon(3.6), "joint.delay_longest", "joint:middle", "min"), 6);

        // They cannot be one train: each has trucks of its own (TruckDealTests).
        Assert.Equal(2, ShiftSimulation.Of(Ask.Context(Echelon(3.6))).Models.Count);
    }

    [Fact]
    public void Two_courses_by_two_pavers_one_after_the_other()
    {
        // The binder course takes 200 min; the second paver lays upon it when it is complete: 900 m at 6 m/min = 150 min.
        var plan = TwoCourses;
        Assert.Equal([0, 200, 200, 350], Runs(plan, "lower", "upper"));
        Assert.Equal(350, Needed(plan), 6);
        var models = ShiftSimulation.Of(Ask.Context(plan)).Models;
        Assert.Equal([0, 200], models.Select(model => Math.Round(model.Begins / 60, 6)));
        Assert.Equal(1800, Ask.Number(plan, "shift.metres_laid", "shift", "m"), 1);
        Assert.Equal(350, Steady(plan), 0.001);
        Assert.Equal(["c", "d"], new SheetQuantities(Ask.Context(plan)).Loads().Select(load => load.Course.Id).Distinct(StringComparer.Ordinal), StringComparer.Ordinal);
    }

    [Fact]
    public void Two_courses_by_one_paver_come_from_one_hopper_in_turn()
    {
        // 200 min, 38 min back and set up, 200 min; the first load of the upper mix leaves long after that of the lower.
        var plan = TwoCourses with { Pavers = [TwoLanes.Pavers[0]], Runs = [Lane("all")] };
        Assert.Equal(438, Needed(plan), 6);
        Assert.Equal(438, Steady(plan), 0.001);
        var loads = ShiftSimulation.Of(Ask.Context(plan)).Loads!;
        Assert.InRange(loads.Where(load => load.Buffer == 1).Min(load => load.Loaded) / 60, 100, 238);
        Assert.InRange(Ask.Number(plan, "shift.finish_chance", "shift", "%"), 95, 100);
    }

    [Fact]
    public void Runs_side_by_side_without_a_joint_are_named()
    {
        Assert.Equal("stated", Joint(TwoLanes, "right"));
        Assert.Null(Joint(TwoLanes with { Joints = [] }, "right"));
        Assert.Equal("apart", Joint(TwoLanes with { Joints = [], Runs = [.. TwoLanes.Runs.Select(run => run with { LeftEdge = EdgeKind.Kerb, RightEdge = EdgeKind.Free })] }, "right"));
        var three = TwoLanes with { Runs = [.. TwoLanes.Runs, Lane("hard") with { From = Metres(850), To = Metres(1000) }] };
        Assert.Null(Joint(three, "hard"));
        Assert.Equal("stated", Joint(three with { Joints = [.. three.Joints, new Joint { Id = "j", Run = "hard", Beside = "right" }] }, "hard"));
        Assert.False(Flag(TwoLanes, "run.lies_beside_another", "run:left"));
        Assert.False(Flag(TwoLanes with { Runs = [Lane("a") with { To = Metres(400) }, Lane("b") with { From = Metres(400) }] }, "run.lies_beside_another", "run:b"));

        static string? Joint(Plan plan, string run) => (Ask.Answer(plan, "run.joint_to_neighbour", $"run:{run}").Value as CategoryValue)?.Word;
    }

    [Fact]
    public void A_joint_at_older_asphalt_is_no_joint_between_two_runs()
    {
        Run[] runs = [.. TwoLanes.Runs.Select(run => run with { LeftEdge = run.Id == "left" ? EdgeKind.ExistingCold : EdgeKind.Hot, RightEdge = run.Id == "left" ? EdgeKind.Hot : EdgeKind.Free })];
        var plan = TwoLanes with { Runs = runs, Joints = [new Joint { Id = "old", Kind = JointKind.Longitudinal, Run = "left" }] };
        Assert.Equal([new InputReference("plan", "joints")], Ask.Answer(plan, "run.joint_to_neighbour", "run:right").Absence!.Missing);
        var both = plan with { Joints = [.. plan.Joints, new Joint { Id = "middle", Kind = JointKind.Longitudinal, Run = "right", Beside = "left" }] };
        Assert.Equal(new CategoryValue("stated"), Ask.Answer(both, "run.joint_to_neighbour", "run:right").Value);
    }

    [Fact]
    public void A_warm_course_of_the_same_paver_is_as_old_as_the_way_round()
    {
        var plan = TwoCourses with { Pavers = [TwoLanes.Pavers[0]], Runs = [Lane("all")] };
        plan = plan with { Courses = [plan.Courses[0], plan.Courses[1] with { Laid = Laying.HotOnWarm, On = "c", Delay = Min(30) }] };
        Assert.Equal(238, Ask.Number(plan, "course.delay_shortest", "course:d", "min"), 6);

        // Two pavers: the second follows 30 min behind, as stated.
        var two = plan with { Pavers = [TwoLanes.Pavers[0] with { Courses = ["c"] }, TwoLanes.Pavers[0] with { Id = "p2", Courses = ["d"] }] };
        Assert.Equal(30, Ask.Number(two, "course.delay_longest", "course:d", "min"), 6);
        Assert.Equal(230, Needed(two), 6);
    }

    [Fact]
    public void A_later_course_is_judged_by_the_weather_from_its_own_begin()
    {
        // The upper course is begun at 10:20 at the earliest; what lies before 09:00 meets only the lower one.
        var (cold, mild) = (TwoCourses with { Weather = Hours(2) }, TwoCourses with { Weather = Hours(18) });
        Assert.Equal(Window(mild, "d"), Window(cold, "d"), 0.05);
        Assert.True(Window(cold, "c") < Window(mild, "c") - 2);

        static double Window(Plan plan, string course) => Ask.Number(plan, "course.densification_window", $"course:{course}", "min");

        static Weather Hours(double first) => new() { Hours = [Hour(7, first), .. Enumerable.Range(9, 9).Select(hour => Hour(hour, 18))] };

        static WeatherHour Hour(int hour, double celsius) => new()
        {
            At = new Moment(new DateTime(2027, 6, 1, hour, 0, 0), null),
            Air = C(celsius),
            Base = C(celsius),
            Wind = M<Speed>(3, "m/s"),
        };
    }

    internal static Plan TwoCourses { get; } = TwoLanes with
    {
        Mixes = [TwoLanes.Mixes[0], TwoLanes.Mixes[0] with { Id = "n" }],
        Courses = [TwoLanes.Courses[0], TwoLanes.Courses[0] with { Id = "d", Mix = "n" }],
        Runs = [Lane("lower") with { Courses = ["c"], Paver = "p1" }, Lane("upper") with { Courses = ["d"], Paver = "p2" }],
        Pavers = [TwoLanes.Pavers[0], TwoLanes.Pavers[0] with { Id = "p2", Speed = M<Speed>(6, "m/min") }],
        Joints = [],
        Supply = new Laygate.Model.Plans.Supply
        {
            Plants = [new Plant { Id = "p", Mixes = ["m"], Planned = TPerH(150) }, new Plant { Id = "q", Mixes = ["n"], Planned = TPerH(200) }],
            Trucks =
            [
                new TruckGroup { Id = "t", Plant = "p", Mix = "m", Count = 9, Payload = T(20), HaulOut = Min(30), HaulBack = Min(25) },
                new TruckGroup { Id = "u", Plant = "q", Mix = "n", Count = 12, Payload = T(20), HaulOut = Min(30), HaulBack = Min(25) },
            ],
        },
    };

    internal static Plan Echelon(double speed) => TwoLanes with
    {
        Runs = [Lane("left") with { Paver = "p1" }, Lane("right") with { Paver = "p2" }],
        Pavers = [TwoLanes.Pavers[0], new Paver { Id = "p2", Speed = M<Speed>(speed, "m/min") }],
        Joints = [TwoLanes.Joints[0] with { Delay = Min(5) }],
        Supply = TwoLanes.Supply! with { Plants = [TwoLanes.Supply!.Plants[0] with { Planned = TPerH(300) }], Trucks = [TwoLanes.Supply!.Trucks[0] with { Count = 18 }] },
    };

    internal static Run Lane(string id) => new() { Id = id, From = Metres(0), To = Metres(900), Width = Metres(3.5) };

    private static double Needed(Plan plan) => Ask.Number(plan, "shift.time_needed", "shift", "min");

    private static IEnumerable<double> Runs(Plan plan, params string[] runs) => runs.SelectMany(run => new[] { "begun_after", "ended_after" }
        .Select(name => Math.Round(Ask.Number(plan, $"run.{name}", $"run:{run}", "min"), 6)));

    private static double Steady(Plan plan) => ShiftSimulation.Of(Ask.Context(plan)).LastMetre!.Value / 60;

    private static bool Flag(Plan plan, string quantity, string address) => Assert.IsType<FlagValue>(Ask.Answer(plan, quantity, address).Value).Yes;

    private static DateTimeOffset Moment(Plan plan, string quantity) => Assert.IsType<MomentValue>(Ask.Answer(plan, quantity, "shift").Value).At;
}
