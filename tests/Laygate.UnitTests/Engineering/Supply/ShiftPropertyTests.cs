using Laygate.Engineering.Supply.Simulation;
using Laygate.Model.Plans;

namespace Laygate.UnitTests.Engineering.Supply;

/// <summary>What must hold in every simulated shift.</summary>
public class ShiftPropertyTests
{
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    public void No_mix_is_lost_or_made_in_any_replication(int seed)
    {
        var random = new Random(seed);
        for (var i = 0; i < 60; i++)
        {
            var model = Any(random);
            var result = Shifts.Run(model, 8, (ulong)i);
            for (var replication = 0; replication < 8; replication++)
            {
                var (loaded, laid, buffers, trucks) = result.Balance(replication);
                Assert.Equal(loaded, laid + buffers + trucks, 0.01);
                IsSound(model, result.Outcomes[replication], laid);
            }
        }
    }

    [Theory]
    [InlineData(0.15, 0)]
    [InlineData(0.3, 0.3)]
    public void Fewer_trucks_never_lay_more(double haulSpread, double serviceSpread)
    {
        // The k-th load has the same journey whatever the fleet. A restart right at the lowest level keeps the paver from gaining by a stop.
        var before = Enumerable.Repeat(double.PositiveInfinity, 100).ToArray();
        for (var trucks = 9; trucks >= 1; trucks--)
        {
            var model = Steady(Shifts.Single(trucks, haulSpread, serviceSpread));
            var metres = Shifts.Run(model, 100).Outcomes.Select(shift => shift.Metres).ToArray();
            Assert.All(metres.Zip(before), pair => Assert.True(pair.First <= pair.Second + 0.5, $"{trucks}: {pair}"));
            before = metres;
        }

        Assert.True(before.Average() < 300);
    }

    [Fact]
    public void A_slower_plant_never_lays_more()
    {
        var before = Enumerable.Repeat(double.PositiveInfinity, 100).ToArray();
        foreach (var rate in new[] { 120.0, 90, 60, 40, 20, 5, 0 })
        {
            var model = Steady(Shifts.Single());
            model = model with { Lines = [model.Lines[0] with { Rate = rate / 3.6 }] };
            var metres = Shifts.Run(model, 100).Outcomes.Select(shift => shift.Metres).ToArray();
            Assert.All(metres.Zip(before), pair => Assert.True(pair.First <= pair.Second + 0.5, $"{rate}: {pair}"));
            before = metres;
        }

        Assert.Equal(0, before.Max());
    }

    [Fact]
    public void Fewer_trucks_of_either_mix_lay_less_on_average()
    {
        // Two mixes share a feeder that chooses by level, so single shifts may gain by chance: the mean must not, beyond its confidence limits.
        var full = Shifts.Run(Shifts.A());
        foreach (var (big, small) in new[] { (13, 9), (11, 9), (9, 9), (15, 6), (15, 4), (3, 9) })
        {
            Assert.True(Shifts.Run(Shifts.A(big, small)).Metres.Expected <= full.Metres.Expected + 0.5);
        }
    }

    [Fact]
    public void On_any_number_of_cores_the_same()
    {
        var model = Shifts.A(14, 8, serviceSpread: 0.2);
        var one = ShiftSimulator.Run(model, 7, 100, parallel: false)!;
        var all = ShiftSimulator.Run(model, 7, 100)!;
        Assert.Equal(one.Outcomes, all.Outcomes);
        Assert.Equal((one.Wait(0), one.Wait(1), one.LeftOver(0), one.StopChance), (all.Wait(0), all.Wait(1), all.LeftOver(0), all.StopChance));
        Assert.Equal(one.Level(1).Middle, all.Level(1).Middle);
        Assert.NotEqual(one.Outcomes, ShiftSimulator.Run(model, 8, 100)!.Outcomes);
    }

    [Fact]
    public void A_simulation_that_is_called_off_gives_no_half_answer() =>
        Assert.ThrowsAny<OperationCanceledException>(() => ShiftSimulator.Run(Shifts.A(14, 8), 7, 500, cancel: new CancellationToken(canceled: true)));

    [Fact]
    public void Nothing_is_allocated_while_a_shift_runs()
    {
        var model = Shifts.A(14, 8, serviceSpread: 0.2);
        var plan = new ShiftPlan(model);
        // Methods may allocate until the runtime has optimised them, which it does when it finds the time; what is left after that allocates always.
        const int Most = 2000;
        var attempts = Enumerable.Range(0, Most).Select(_ => Allocated()).TakeWhile(bytes => bytes > 0).Count();
        Assert.InRange(attempts, 0, Most - 1);

        long Allocated()
        {
            var runner = new ShiftRunner(model, plan, new ShiftArrays(50, 2, 2, 2));
            Assert.True(runner.Run(1, 0, 10));
            var before = GC.GetAllocatedBytesForCurrentThread();
            Assert.True(runner.Run(1, 10, 50));
            return GC.GetAllocatedBytesForCurrentThread() - before;
        }
    }

    private static ShiftModel Steady(ShiftModel model) => model with { Buffers = [model.Buffers[0] with { Restart = model.Buffers[0].Lowest + 100 }] };

    private static void IsSound(ShiftModel model, ShiftOutcome shift, double laid)
    {
        Assert.All(
            new[] { shift.Stopped, shift.LongestStop, shift.Metres, shift.Started, shift.Ended, shift.FeederUse, shift.CommittedHighest, shift.FirstStopAfterPlant },
            value => Assert.True(double.IsFinite(value)));
        Assert.InRange(shift.Metres, 0, model.Length + 1e-6);
        Assert.InRange(shift.Ended, shift.Started, model.Duration + 1e-6);
        Assert.True(shift.LongestStop <= shift.Stopped + 1e-6 && shift.Stopped <= model.Duration);
        Assert.Equal(shift.Finished, shift.Metres >= model.Length - 1e-6);
        Assert.True(laid <= model.Buffers.Select((_, i) => model.Tonnage(i)).Sum() + 0.01);
        Assert.InRange(shift.FeederUse, 0, 1 + 1e-6);
    }

    /// <summary>Any shift: one course or two, one plant or two, tapers, stops, loads too large, call levels out of their band.</summary>
    private static ShiftModel Any(Random random)
    {
        var model = random.Next(3) == 0
            ? Shifts.Single(random.Next(1, 12), random.NextDouble() * 0.4, random.NextDouble() * 0.4)
            : Shifts.A(random.Next(1, 20), random.Next(1, 12), 9 + (random.NextDouble() * 60), 1 + (random.NextDouble() * 35), random.NextDouble() * 0.4, random.NextDouble() * 0.4);
        var perMetre = model.Stretches[0].PerMetre;
        return model with
        {
            Duration = 60 * (30 + random.Next(500)),
            Speed = (0.5 + (random.NextDouble() * 6)) / 60,
            Stretches = [.. Enumerable.Range(0, random.Next(1, 6)).Select(_ => new ShiftStretch(
                random.Next(0, 400) + 1, [.. perMetre.Select(mass => mass * (0.2 + random.NextDouble()))]))],
            Unloading = model.Unloading with
            {
                Rate = (40 + (random.NextDouble() * 1000)) / 3.6,
                InParts = random.Next(2) == 0,
                OneForAll = random.Next(4) > 0,
            },
            Lines = [.. model.Lines.Select(line => line with { Rate = line.Rate * random.NextDouble() * 1.5, Stock = line.Stock * random.Next(2) })],
            Pauses = random.Next(3) == 0 ? [new ShiftPause(random.Next(5000), random.Next(3000)), new ShiftPause(9000, 600)] : [],
            Stop = random.Next(4) == 0 ? new PlantStop(model.Lines[0].Plant, random.Next(9000), random.Next(2) == 0 ? double.PositiveInfinity : 1800, random.Next(2) == 0) : null,
            Dispatch = (Dispatch)random.Next(3),
        };
    }
}
