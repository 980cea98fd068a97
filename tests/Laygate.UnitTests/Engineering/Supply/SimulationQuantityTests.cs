using Laygate.Engineering.Quantities;
using Laygate.Engineering.Supply.Simulation;
using Laygate.Model.Measures;
using Laygate.Model.Plans;
using static Laygate.UnitTests.Engineering.Stated;

namespace Laygate.UnitTests.Engineering.Supply;

/// <summary>What the simulated shift says about a plan: scenario A, read from its plan.</summary>
public class SimulationQuantityTests
{
    private static readonly string[] Names =
    [
        "shift.stop_chance", "shift.stops_expected", "shift.stop_length", "shift.finish_chance", "shift.metres_laid", "shift.start_delay",
        "supply.committed_highest", "supply.waiting_highest", "feeder.use", "trucks.wait_mean", "trucks.wait_high", "course.left_over", "plant.stop_survived",
    ];

    private static readonly QuantityContext Asked = Ask.Context(ScenarioA.Plan);

    [Theory]
    [InlineData("shift.stop_chance", "shift", "%", 0, 10)] // judgement: about 5 % in a rough simulation that was not kept
    [InlineData("shift.stops_expected", "shift", "", 0, 0.2)]
    [InlineData("shift.finish_chance", "shift", "%", 90, 100)]
    [InlineData("shift.metres_laid", "shift", "m", 1045, 1050.0001)]
    [InlineData("feeder.use", "feeder:f1", "", 0.70, 0.78)] // derived: 0.74, time balance of TwoMixFeedingTests
    [InlineData("trucks.wait_mean", "trucks:big", "min", 14, 20)] // 18 min
    [InlineData("supply.committed_highest", "supply", "t", 280, 420)] // judgement: 280 to 350 t in that simulation
    [InlineData("plant.stop_survived", "plant:a", "min", 42, 65)] // 45 to 55 min
    [InlineData("plant.stop_survived", "plant:b", "min", 50, 80)] // about 60 min
    [InlineData("course.left_over", "course:binder", "t", 8, 10)] // lowest level 8 t and the step of the last load
    [InlineData("course.left_over", "course:wearing", "t", 5, 7)]
    public void Scenario_a(string quantity, string address, string unit, double low, double high) =>
        Assert.InRange(Ask.In(Asked.Get(quantity, Asked.Elements.Find(address)!), unit), low, high);

    [Fact]
    public void Chances_and_means_carry_their_limits_and_their_assumptions()
    {
        var context = Ask.Context(ScenarioA.Plan with { Supply = Fleet(14, 8) });
        var answer = context.Get("shift.stop_chance", context.Elements.Find("shift")!);
        var number = Assert.IsType<NumberValue>(answer.Value);
        Assert.True(number.Low < number.Si && number.Si < number.High);
        Assert.Contains(answer.Working.Assumptions, use => use.Id == "trucks.haul_spread" && use.StandsFor == new InputReference("trucks:big", "haul_out_bad"));
        Assert.Contains(answer.Working.Inputs, input => input.Quantity == "replications" && input.Number == 500);
        Assert.Equal(Origin.Assumed, answer.Origin);
    }

    [Fact]
    public void Fewer_trucks_raise_the_chance_of_a_stop()
    {
        double[] chances = [.. new[] { (16, 9), (14, 8), (12, 7), (8, 5) }.Select(fleet =>
            Ask.Number(ScenarioA.Plan with { Supply = Fleet(fleet.Item1, fleet.Item2) }, "shift.stop_chance", "shift", "%"))];
        Assert.Equal(chances.Order(), chances);
        // By hand: eight trucks of 25 t bring a load every 67.7/8 = 8.5 min, 5.75 are needed.
        Assert.Equal(100, chances[^1], 1e-9);
    }

    [Fact]
    public void The_seed_of_the_check_decides_and_nothing_else()
    {
        var plan = ScenarioA.Plan with { Supply = Fleet(14, 8) };
        Assert.Equal(Ask.Number(plan, "shift.stop_chance", "shift"), Ask.Number(plan, "shift.stop_chance", "shift"));
    }

    [Fact]
    public void Nothing_is_simulated_before_a_rule_asks()
    {
        var context = Ask.Context(ScenarioA.Plan);
        context.Get("trucks.cycle", context.Elements.Find("trucks:big")!);
        var before = GC.GetAllocatedBytesForCurrentThread();
        Assert.NotNull(ShiftSimulation.Of(context).Model);
        Assert.True(GC.GetAllocatedBytesForCurrentThread() - before < 400_000); // The replications alone would write 500 · 121 · 4 samples.
        Assert.NotNull(ShiftSimulation.Of(context).Result);
    }

    [Fact]
    public void A_call_level_that_is_not_stated_is_the_middle_of_its_band()
    {
        var paver = ScenarioA.Plan.Pavers[0];
        var plan = ScenarioA.Plan with { Pavers = [paver with { Buffers = [paver.Buffers[0], paver.Buffers[1] with { Call = null }] }] };
        Assert.Equal((10.5 + 15.5) / 2, ShiftSimulation.Of(Ask.Context(plan)).Model!.Buffers[1].Call!.Value / 1000, 0.05); // derived: band 10.5 to 15.5 t, time balance of TwoMixFeedingTests
    }

    [Fact]
    public void Loads_are_listed_by_balance_and_by_level()
    {
        var simulation = ShiftSimulation.Of(Asked);
        var order = simulation.OrderByBalance()!;
        Assert.Equal((71, 32), (order.Count(isUpper => !isUpper), order.Count(isUpper => isUpper))); // derived: 1756/25 and 500/16, rounded up
        Assert.Equal(order.Count, simulation.Loads!.Count);
        Assert.Null(ShiftSimulation.Of(Ask.Context(Simple)).OrderByBalance());
    }

    [Fact]
    public void A_taper_changes_the_demand_along_the_run()
    {
        // By hand: 8.0 to 5.5 m, 31 % less demand.
        var run = ScenarioA.Plan.Runs[0] with { Width = null, Widths = [Width(8, 150), Width(8, 600), Width(5.5, 700)] };
        var plan = ScenarioA.Plan with { Runs = [run] };
        var model = ShiftSimulation.Of(Ask.Context(plan)).Model!;
        Assert.Equal(1 - 0.31, model.Stretches[^1].PerMetre[0] / model.Stretches[0].PerMetre[0], 0.005);
        Assert.Equal(1050, model.Length, 1e-6);
        Assert.Equal(Ask.Number(plan, "course.tonnage_computed", "course:binder"), model.Tonnage(0), 1e-3);
        Assert.Equal(Ask.Number(plan, "course.tonnage_computed", "course:wearing"), model.Tonnage(1), 1e-3);
    }

    [Fact]
    public void One_course_without_buffer_or_feeder_is_laid_from_a_plain_hopper()
    {
        var model = ShiftSimulation.Of(Ask.Context(Simple)).Model!;
        // Assumed: 12 t (plain hoppers hold 10 to 15 t, recalled) and 3 t (judgement).
        Assert.Equal((12_000, 3_000), (model.Buffers[0].Capacity, model.Buffers[0].Lowest));
        Assert.False(model.Unloading.OneForAll);
        Assert.InRange(Ask.Number(Simple, "shift.metres_laid", "shift", "m"), 100, 1000);
        Assert.IsType<Absence>(Ask.Answer(Simple, "plant.stop_survived", "plant:p").Absence ?? new Absence(AbsenceReason.NotComputable, []));
    }

    [Fact]
    public void What_is_missing_is_named()
    {
        var missing = Ask.Missing(Ask.Answer(Simple with { Supply = Simple.Supply! with { Trucks = [Simple.Supply!.Trucks[0] with { Payload = null, HaulOut = null }] } }, "shift.stop_chance", "shift"));
        Assert.Equal(["trucks:t/haul_out", "trucks:t/payload"], missing.Order(StringComparer.Ordinal), StringComparer.Ordinal);
        Assert.Contains("supply/trucks", Ask.Missing(Ask.Answer(Small.Plan, "shift.stop_chance", "shift")), StringComparer.Ordinal);
        Assert.Contains("shift/end", Ask.Missing(Ask.Answer(Simple with { Shift = Simple.Shift! with { End = null } }, "shift.metres_laid", "shift")), StringComparer.Ordinal);
    }

    [Fact]
    public void What_cannot_be_simulated_has_a_reason()
    {
        Assert.Equal(SimulationNotes.NoTrucks, Reason(WithTrucks(trucks => trucks with { Count = 0 })));
        Assert.Equal(SimulationNotes.PlantWithoutMix, Reason(Simple with { Supply = Simple.Supply! with { Plants = [Simple.Supply!.Plants[0] with { Mixes = ["other"] }] } }));
        Assert.Equal(SimulationNotes.TooLarge, Reason(WithTrucks(trucks => trucks with { Payload = T(1e-6) })));
        Assert.Equal(SimulationNotes.TooLarge, Reason(WithTrucks(trucks => trucks with { HaulOut = Min(1e9) })));
        Assert.Equal(NoteIds.OutsideFormula, Reason(Simple with { Pavers = [Simple.Pavers[0] with { Speed = M<Speed>(0, "m/min") }] }));
        var runs = new[] { Simple.Runs[0] with { Paver = "p1" }, Simple.Runs[0] with { Id = "2", Paver = "p2", StartsAfter = Min(60) } };
        var slower = Simple.Pavers[0] with { Id = "p2", Speed = M<Speed>(Simple.Pavers[0].Speed!.Number / 2, Simple.Pavers[0].Speed!.Unit.Spelling) };
        Assert.Equal(SimulationNotes.TooFewTrucks, Reason(WithTrucks(trucks => trucks with { Count = 1 }) with { Runs = runs, Pavers = [Simple.Pavers[0], slower] }));

        static string Reason(Plan plan) => Ask.Answer(plan, "shift.stop_chance", "shift").Absence!.Note!.Id;

        static Plan WithTrucks(Func<TruckGroup, TruckGroup> change) => Simple with { Supply = Simple.Supply! with { Trucks = [change(Simple.Supply!.Trucks[0])] } };
    }

    [Fact]
    public void Every_quantity_of_the_simulation_answers_with_low_and_high()
    {
        var context = Ask.Context(ScenarioA.Plan);
        foreach (var name in Names)
        {
            var element = context.Elements.Of(context.Catalogue.Find(name)!.Element).First();
            var number = Assert.IsType<NumberValue>(context.Get(name, element).Value);
            Assert.InRange(number.Si, number.Low!.Value, number.High!.Value);
        }
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1e-9)]
    [InlineData(0.01)]
    [InlineData(3)]
    [InlineData(1e4)]
    [InlineData(1e12)]
    [InlineData(-3)]
    public void Any_figure_gives_an_answer_or_a_reason_in_bounded_time(double number)
    {
        var (plan, supply, paver) = (ScenarioA.Plan, ScenarioA.Plan.Supply!, ScenarioA.Plan.Pavers[0]);
        var (big, feeder, plant) = (supply.Trucks[0], supply.Feeder!, supply.Plants[0]);
        Plan[] changed =
        [
            plan with { Pavers = [paver with { Speed = M<Speed>(number, "m/min") }] },
            plan with { Pavers = [paver with { Buffers = [paver.Buffers[0] with { Capacity = T(number) }, paver.Buffers[1]] }] },
            plan with { Pavers = [paver with { Buffers = [paver.Buffers[0] with { Lowest = T(number) }, paver.Buffers[1]] }] },
            plan with { Pavers = [paver with { Buffers = [paver.Buffers[0], paver.Buffers[1] with { Call = T(number) }] }] },
            plan with { Pavers = [paver with { Buffers = [paver.Buffers[0] with { Call = T(number) }, paver.Buffers[1]] }] },
            plan with { Pavers = [paver with { Stops = [new PlannedStop { Id = "s", After = Min(number), Length = Min(number) }] }] },
            plan with { Runs = [plan.Runs[0] with { To = Metres(number) }] },
            plan with { Runs = [plan.Runs[0] with { Width = Metres(number) }] },
            plan with { Courses = [plan.Courses[0] with { Thickness = Mm(number) }, plan.Courses[1]] },
            plan with { Supply = supply with { Feeder = feeder with { Rate = TPerH(number) } } },
            plan with { Supply = supply with { Feeder = feeder with { Exchange = Min(number) } } },
            plan with { Supply = supply with { Feeder = feeder with { Changeover = Min(number) } } },
            plan with { Supply = supply with { Feeder = feeder with { UnloadingInParts = true, Rate = TPerH(number) } } },
            plan with { Supply = supply with { Plants = [plant with { Planned = TPerH(number) }, supply.Plants[1]] } },
            plan with { Supply = supply with { Plants = [plant with { SiloAtStart = T(number) }, supply.Plants[1]] } },
            plan with { Supply = supply with { Plants = [plant with { SiloCapacity = T(number) }, supply.Plants[1]] } },
            .. new Func<TruckGroup, TruckGroup>[]
            {
                trucks => trucks with { Payload = T(number) },
                trucks => trucks with { Loading = Min(number) },
                trucks => trucks with { Ticket = Min(number) },
                trucks => trucks with { Cleaning = Min(number) },
                trucks => trucks with { HaulOut = Min(number) },
                trucks => trucks with { HaulOutBad = Min(number) },
                trucks => trucks with { HaulBack = Min(number) },
                trucks => trucks with { Count = (int)Math.Clamp(number, -3, 1e9) },
                trucks => trucks with { LoadsBeforeStart = (int)Math.Clamp(number, -3, 1e9) },
            }.Select(change => plan with { Supply = supply with { Trucks = [change(big), supply.Trucks[1]] } }),
        ];
        foreach (var one in changed)
        {
            var context = Ask.Context(one);
            foreach (var name in new[] { "shift.stop_chance", "trucks.wait_mean", "course.left_over", "supply.committed_highest" })
            {
                var answer = context.Get(name, context.Elements.Of(context.Catalogue.Find(name)!.Element).First());
                Assert.True(answer.Value is NumberValue value ? value.Low <= value.Si && value.Si <= value.High && double.IsFinite(value.High!.Value) : answer.Absence is not null, name);
            }
        }
    }

    private static Laygate.Model.Plans.Supply Fleet(int big, int small) => ScenarioA.Plan.Supply! with
    {
        Trucks = [ScenarioA.Plan.Supply!.Trucks[0] with { Count = big }, ScenarioA.Plan.Supply!.Trucks[1] with { Count = small }],
    };

    private static Plan Simple { get; } = Small.Plan with
    {
        Shift = new Shift { Date = new DateOnly(2027, 6, 1), Start = new TimeOnly(7, 0), End = new TimeOnly(12, 0) },
        Runs = [new Run { Id = "1", From = Metres(0), To = Metres(1000), Width = Metres(3.7) }],
        Pavers = [new Paver { Id = "p1", Speed = M<Speed>(4, "m/min") }],
        Supply = new Laygate.Model.Plans.Supply
        {
            Plants = [new Plant { Id = "p", Mixes = ["m"], Planned = TPerH(120) }],
            Trucks = [new TruckGroup { Id = "t", Mix = "m", Count = 8, Payload = T(18), HaulOut = Min(30), HaulBack = Min(25) }],
        },
    };
}
