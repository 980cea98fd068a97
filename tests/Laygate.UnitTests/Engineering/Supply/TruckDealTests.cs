using Laygate.Engineering.Quantities;
using Laygate.Engineering.SheetData;
using Laygate.Engineering.Supply.Simulation;
using Laygate.Model.Plans;
using Laygate.UnitTests.Engineering.Timeline;
using static Laygate.UnitTests.Engineering.Stated;

namespace Laygate.UnitTests.Engineering.Supply;

/// <summary>Two pavers that lay one mix: who has which trucks, and what share of the plant. Expected counts are worked out by hand beside each check (derived: trucks in proportion to what each paver lays in an hour).</summary>
public class TruckDealTests
{
    [Fact]
    public void Trucks_are_dealt_out_by_what_each_paver_lays_in_an_hour()
    {
        // 315 t in 200 min and in 250 min: 94.5 and 75.6 t/h, 5 to 4. Of 18 trucks 10 and 8; of 300 t/h 166.7 and 133.3.
        var models = Models(TimelineTests.Echelon(3.6));
        Assert.Equal([10, 8], models.Select(model => Assert.Single(model.Trucks).Count));
        Assert.Equal([166.7, 133.3], models.Select(model => Math.Round(Assert.Single(model.Lines).Rate * 3.6, 1)));
        Assert.Equal([0, 5], models.Select(model => Math.Round(model.Begins / 60, 6)));
        var context = Ask.Context(TimelineTests.Echelon(3.6));
        Assert.Contains(
            context.Get("shift.finish_chance", context.Elements.Find("shift")!).Working!.Assumptions,
            use => use is { Id: "trucks.stay_with_one_paver", StandsFor: { Address: "trucks:t", Key: "paver" } });
        Assert.Equal(2, new SheetQuantities(context).Loads().Select(load => load.Ends!.Run.Id).Distinct(StringComparer.Ordinal).Count());
    }

    [Fact]
    public void A_train_with_its_trucks_is_the_same_as_if_it_were_alone_with_them()
    {
        var (_, slow) = (Models(TimelineTests.Echelon(3.6))[0], Models(TimelineTests.Echelon(3.6))[1]);
        var alone = TimelineTests.Echelon(3.6);
        alone = alone with
        {
            Runs = [alone.Runs[1] with { StartsAfter = Min(5) }],
            Joints = [],
            Supply = alone.Supply! with { Plants = [alone.Supply!.Plants[0] with { Planned = TPerH(300.0 * 4 / 9) }], Trucks = [alone.Supply!.Trucks[0] with { Count = 8 }] },
        };
        var one = Assert.Single(Models(alone));
        Assert.Equal((slow.Begins, slow.Length, slow.Trucks[0]), (one.Begins, one.Length, one.Trucks[0]));
        Assert.Equal(slow.Lines[0].Rate, one.Lines[0].Rate, 1e-9);
    }

    [Fact]
    public void Who_lays_later_has_all_trucks()
    {
        // The second paver begins when the first has ended, at 200 min.
        var plan = TimelineTests.TwoCourses with { Courses = [TimelineTests.TwoCourses.Courses[0], TimelineTests.TwoCourses.Courses[1] with { Mix = "m" }] };
        Assert.Equal([9, 9], Models(plan).Select(model => Assert.Single(model.Trucks).Count));
        Assert.Equal([150, 150], Models(plan).Select(model => Math.Round(model.Lines[0].Rate * 3.6, 6)));
    }

    [Fact]
    public void What_the_plan_gives_to_a_paver_stays_there_and_counts_first()
    {
        // Six of 18 are given to the slow paver. The other twelve go where least is: 94.5 : 75.6 of 18 is 10 : 8, so 10 and 2.
        var plan = TimelineTests.Echelon(3.6);
        var group = plan.Supply!.Trucks[0];
        var given = plan with { Supply = plan.Supply with { Trucks = [group with { Id = "own", Count = 6, Paver = "p2" }, group with { Count = 12 }] } };
        Assert.Equal([("t", 10), ("own", 6), ("t", 2)], Models(given).SelectMany(model => model.Trucks.Select(trucks => (trucks.Id, trucks.Count))));
    }

    [Fact]
    public void A_paver_without_a_truck_is_named()
    {
        var plan = TimelineTests.Echelon(3.6);
        var one = plan with { Supply = plan.Supply! with { Trucks = [plan.Supply!.Trucks[0] with { Count = 1 }] } };
        Assert.Equal(SimulationNotes.TooFewTrucks, Ask.Answer(one, "shift.stop_chance", "shift").Absence!.Note!.Id);
        var elsewhere = plan with { Supply = plan.Supply! with { Trucks = [plan.Supply!.Trucks[0] with { Paver = "p1" }] } };
        Assert.Equal(SimulationNotes.TooFewTrucks, Ask.Answer(elsewhere, "shift.stop_chance", "shift").Absence!.Note!.Id);
    }

    [Fact]
    public void More_trucks_than_are_simulated_are_not_dealt_one_by_one()
    {
        // Two thousand million would take minutes; such a shift is refused, and the reason is told at once.
        var plan = TimelineTests.Echelon(3.6);
        var many = plan with { Supply = plan.Supply! with { Trucks = [plan.Supply!.Trucks[0] with { Count = int.MaxValue }, plan.Supply!.Trucks[0] with { Id = "more", Count = int.MaxValue }] } };
        Assert.Equal(SimulationNotes.TooLarge, Ask.Answer(many, "shift.stop_chance", "shift").Absence!.Note!.Id);
    }

    [Fact]
    public void What_is_assumed_stands_once_in_the_working_for_each_group()
    {
        var context = Ask.Context(TimelineTests.Echelon(3.6));
        var inputs = context.Get("shift.finish_chance", context.Elements.Find("shift")!).Working!.Inputs;
        Assert.Single(inputs, input => input.Quantity is "trucks.stay_with_one_paver");
        Assert.Equal(inputs.Distinct().Count(), inputs.Count);
    }

    [Fact]
    public void Every_truck_is_dealt_once_and_one_more_takes_none_away()
    {
        int[]? before = null;
        for (var count = 2; count <= 40; count++)
        {
            var plan = TimelineTests.Echelon(3.6);
            var group = plan.Supply!.Trucks[0];
            plan = plan with { Supply = plan.Supply with { Trucks = [group with { Id = "a", Count = count / 3 }, group with { Id = "b", Count = count - (count / 3) }] } };
            int[] now = [.. Models(plan).Select(model => model.Trucks.Sum(trucks => trucks.Count))];
            Assert.Equal(count, now.Sum());
            Assert.True(before is null || (now[0] >= before[0] && now[1] >= before[1]), $"{count} trucks");
            before = now;
        }
    }

    [Fact]
    public void Fewer_trucks_never_lay_more()
    {
        var metres = Enumerable.Range(1, 6).Select(third => Laid(3 * third)).ToList();
        Assert.All(metres.Zip(metres.Skip(1)), pair => Assert.True(pair.First <= pair.Second + 1e-6, string.Join(' ', metres)));
        Assert.True(metres[0] < metres[^1] - 100);

        static double Laid(int count)
        {
            var plan = TimelineTests.Echelon(3.6);
            return Ask.Number(plan with { Supply = plan.Supply! with { Trucks = [plan.Supply!.Trucks[0] with { Count = count }] } }, "shift.metres_laid", "shift", "m");
        }
    }

    private static IReadOnlyList<ShiftModel> Models(Plan plan) => ShiftSimulation.Of(Ask.Context(plan)).Models;
}
