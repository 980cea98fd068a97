using Laygate.Engineering.Quantities;
using Laygate.Engineering.SheetData;
using Laygate.Engineering.Supply.Simulation;
using Laygate.Model.Measures;
using Laygate.Model.Plans;
using static Laygate.UnitTests.Engineering.Stated;

namespace Laygate.UnitTests.Engineering.Timeline;

/// <summary>Findings, sheet and list of loads ask one timeline, so they cannot differ.</summary>
public class TimelinePropertyTests
{
    private const int Plans = 60;

    [Fact]
    public void Finish_in_findings_on_the_sheet_and_in_the_list_of_loads_agree()
    {
        var simulated = 0;
        for (var seed = 1; seed <= Plans; seed++)
        {
            var plan = Drawn(new Random(seed));
            var context = Ask.Context(plan);
            var sheet = new SheetQuantities(context);
            var shift = context.Elements.Find("shift")!;
            var last = Assert.IsType<MomentValue>(context.Get("shift.last_metre", shift).Value).At;
            var needed = Assert.IsType<NumberValue>(context.Get("shift.time_needed", shift).Value).Si;
            var ends = plan.Runs.Max(run => Ask.In(context.Get("run.ended_after", context.Elements.Find($"run:{run.Id}")!), string.Empty));
            Assert.Equal(last, sheet.LastMetre);
            Assert.Equal(needed, ends, 1e-6);
            Assert.True((last - sheet.Start!.Value).TotalSeconds >= needed - 1e-3, $"seed {seed}: the sheet ends before the runs do");
            var loads = sheet.Loads();
            simulated += sheet.IsSimulated ? 1 : 0;
            Assert.NotEmpty(loads);
            Assert.All(loads, load => Assert.True(load.TipsBy <= last, $"seed {seed}: a load tips after the last metre"));

            // What is sent reaches to the end of each course's way, and the last of it is used up where its last run ends.
            foreach (var course in loads.GroupBy(load => (load.Course.Id, load.Train)))
            {
                var end = course.MaxBy(load => load.Load.EndsAt)!.Ends!;
                Assert.Equal(end.Run.To!.Si, end.Station, 1e-6);
            }

            var opening = Ask.In(context.Get("opening.time_after_laying", context.Elements.Find("opening")!), string.Empty);
            var over = last > sheet.End!.Value ? last : sheet.End.Value;
            Assert.Equal((new DateTimeOffset(2027, 6, 3, 7, 0, 0, TimeSpan.FromHours(2)) - over).TotalSeconds, opening, 1e-3);
        }

        Assert.InRange(simulated, Plans / 2, Plans);
    }

    [Fact]
    public void Less_availability_longer_moves_and_more_stops_never_end_sooner_nor_lay_more()
    {
        for (var seed = 1; seed <= Plans; seed++)
        {
            var plan = Drawn(new Random(seed));
            var paver = plan.Pavers[0];
            var before = Ask.Number(plan, "shift.time_needed", "shift");
            Plan[] worse =
            [
                plan with { Pavers = [paver with { Availability = M<Ratio>(0.9 * (paver.Availability?.Number ?? 100), "%") }, .. plan.Pavers.Skip(1)] },
                plan with { Pavers = [paver with { Reset = Min(90), TravelSpeed = M<Speed>(1, "km/h") }, .. plan.Pavers.Skip(1)] },
                plan with { Pavers = [paver with { Stops = [.. paver.Stops, new PlannedStop { Id = "more", After = Min(1), Length = Min(10) }] }, .. plan.Pavers.Skip(1)] },
            ];
            Assert.All(worse, changed => Assert.True(Ask.Number(changed, "shift.time_needed", "shift") >= before - 1e-6, $"seed {seed}"));
        }
    }

    /// <summary>
    /// However long the shift drags on for want of mix: what waits for the last metre, such as the end of the closure, never comes sooner. A paver that has
    /// stopped goes on with a fuller hopper and may so gain what one load lasts.
    /// </summary>
    [Theory]
    [InlineData(30)]
    [InlineData(240)]
    [InlineData(1200)]
    public void Fewer_trucks_never_lay_the_last_metre_sooner(int journey)
    {
        var before = DateTimeOffset.MinValue;
        for (var trucks = 12; trucks >= 1; trucks--)
        {
            var supply = TimelineTests.TwoLanes.Supply!;
            var plan = TimelineTests.TwoLanes with
            {
                Supply = supply with { Trucks = [.. supply.Trucks.Select(group => group with { Count = trucks, HaulOut = Min(journey), HaulOutBad = null, HaulBack = Min(journey), HaulBackBad = null })] },
            };
            var context = Ask.Context(plan);
            var last = Assert.IsType<MomentValue>(context.Get("shift.last_metre", context.Elements.Find("shift")!).Value).At;
            var ofOneLoad = TimeSpan.FromSeconds(Ask.Number(plan, "shift.time_needed", "shift") / ShiftSimulation.Of(context).Steady.Sum(train => train.Loads.Count));
            Assert.True(last + ofOneLoad >= before, $"{trucks} trucks end at {last}, one more at {before}");
            before = last;
        }
    }

    /// <summary>One to three runs side by side or end to end, of one paver or of two with a mix each, with or without availability, stops and stated moves.</summary>
    private static Plan Drawn(Random random)
    {
        var plan = random.Next(3) == 0 ? TimelineTests.TwoCourses : TimelineTests.TwoLanes;
        var paver = plan.Pavers[0] with
        {
            Speed = M<Speed>(2 + (4 * random.NextDouble()), "m/min"),
            Availability = random.Next(2) == 0 ? M<Ratio>(40 + (60 * random.NextDouble()), "%") : null,
            Stops = random.Next(2) == 0 ? [new PlannedStop { Id = "meal", After = Min(random.Next(300)), Length = Min(5 + random.Next(40)) }] : [],
        };
        plan = plan with { Pavers = [paver, .. plan.Pavers.Skip(1)], Opening = new Opening { At = new Moment(new DateTime(2027, 6, 3, 7, 0, 0), null) } };
        if (plan.Pavers.Count > 1)
        {
            return plan;
        }

        var lanes = Enumerable.Range(1, 1 + random.Next(3)).Select(i => TimelineTests.Lane($"r{i}") with
        {
            From = Metres(random.Next(2) == 0 ? 0 : 100 * i),
            To = Metres(400 + (100 * i)),
            Order = random.Next(2) == 0 ? 4 - i : null,
            Move = random.Next(2) == 0 ? Min(random.Next(90)) : null,
        });
        return plan with { Runs = [.. lanes], Joints = [] };
    }
}
