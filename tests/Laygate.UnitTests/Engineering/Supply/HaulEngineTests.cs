using Laygate.Engineering.Supply.Queueing;
using Laygate.Engineering.Supply.Simulation;
using Laygate.Model.Measures;
using MathNet.Numerics.Distributions;
using static Laygate.UnitTests.Engineering.Stated;

namespace Laygate.UnitTests.Engineering.Supply;

/// <summary>
/// The engine that runs the shift against queueing theory: exact results inside its 99 % confidence interval, and a service
/// time that is 3 % off outside. Load 4, unload 5, haul 20, return 18 min.
/// </summary>
public class HaulEngineTests
{
    private const int Replications = 20;
    private const double Load = 240;
    private const double Unload = 300;

    private static readonly double Student = StudentT.InvCDF(0, 1, Replications - 1, 0.995);

    [Theory]
    [InlineData(4)]
    [InlineData(6)]
    [InlineData(9)]
    [InlineData(14)]
    public void Closed_network_agrees_with_mean_value_analysis(int trucks)
    {
        var seen = Watch(Network(trucks, TimeSpread.Exponential(Load), TimeSpread.Exponential(Unload), 0.3), 1, 4e6);
        var (mean, half) = Interval(seen, tally => tally.Throughput);
        Assert.True(half <= 0.01 * mean);
        Assert.InRange(Exact(trucks, Unload).Throughput, mean - half, mean + half);
        Assert.True(Math.Abs(Exact(trucks, Unload * 1.03).Throughput - mean) > half || trucks == 4);
        var (wait, halfWait) = Interval(seen, tally => tally.Wait);
        Assert.InRange(Exact(trucks, Unload).Wait[1], wait - halfWait, wait + halfWait);
        Assert.True(Math.Abs(Exact(trucks, Unload * 1.03).Wait[1] - wait) > halfWait);
    }

    [Theory]
    [InlineData(6, 1, 2400, 240)]
    [InlineData(12, 2, 2400, 300)]
    [InlineData(15, 2, 1620, 240)] // 15 trucks, 2 pavers, 15 km at 60 and 75 km/h, 4 min: Trani, Virginia Tech CEE 3604, Finite source stochastic queues (inputs read, answer not)
    public void Finite_source_queue_agrees_with_its_closed_form(int trucks, int servers, double away, double service)
    {
        var network = new HaulNetwork(
            [new HaulStation(servers)], [new HaulGroup(trucks, [new HaulStop(0, TimeSpread.Exponential(service), TimeSpread.Exponential(away))])]);
        var seen = Watch(network, 0, 4e6);
        var (mean, half) = Interval(seen, tally => tally.Busy / tally.Time / servers);
        Assert.True(half <= 0.01 * mean);
        Assert.InRange(Of(service).ServerUse, mean - half, mean + half);
        Assert.True(Math.Abs(Of(service * 1.03).ServerUse - mean) > half);
        var (wait, halfWait) = Interval(seen, tally => tally.Wait);
        Assert.InRange(Of(service).Wait, wait - halfWait, wait + halfWait);

        FiniteSourceState Of(double seconds) => FiniteSource.Of(away, seconds, trucks, servers)!.Value;
    }

    [Theory]
    [InlineData(4)]
    [InlineData(6)]
    [InlineData(9)]
    [InlineData(10)]
    [InlineData(14)]
    public void Constant_times_give_the_deterministic_bound_exactly(int trucks)
    {
        // A whole number of rounds of 47 min and of services of 5 min is watched, from a moment at which nothing happens.
        var network = Network(trucks, TimeSpread.Constant(Load), TimeSpread.Constant(Unload), 0);
        var tally = HaulRun.Watch(network, 1, (235 * 60 * 20) + 0.5, 235 * 60 * 40, 1, 1)![0];
        var bound = ClosedNetwork.DeterministicBound(trucks, Si(38, "min"), [Load, Unload])!.Value;
        Assert.Equal(Math.Round(bound * tally.Time), tally.Departures);
        Assert.Equal(bound, tally.Throughput, 1e-12);
    }

    [Theory]
    [InlineData(6, 7.33, 0.611)] // Source: derived with another simulation, tests/Tools/closed_network.py: service cv 0.3, travel cv 0.15
    [InlineData(9, 10.41, 0.867)]
    [InlineData(10, 11.18, 0.931)]
    public void Moderate_variation_agrees_with_another_simulation(int trucks, double loads, double use)
    {
        var seen = Watch(Network(trucks, TimeSpread.Lognormal(Load, 0.3), TimeSpread.Lognormal(Unload, 0.3), 0.15), 1, 1e6);
        Assert.Equal(loads, seen.Average(tally => tally.Throughput) * 3600, loads * 0.01);
        Assert.Equal(use, seen.Average(tally => tally.Busy / tally.Time), 0.01);
    }

    [Fact]
    public void The_same_seed_gives_the_same_run()
    {
        var network = Network(9, TimeSpread.Exponential(Load), TimeSpread.Exponential(Unload), 0.3);
        Assert.Equal(HaulRun.Watch(network, 1, 0, 1e6, 3, 5), HaulRun.Watch(network, 1, 0, 1e6, 3, 5));
        Assert.NotEqual(HaulRun.Watch(network, 1, 0, 1e6, 3, 5), HaulRun.Watch(network, 1, 0, 1e6, 3, 6));
    }

    [Fact]
    public void Nothing_is_allocated_while_it_runs()
    {
        var engine = new HaulEngine(Network(9, TimeSpread.Exponential(Load), TimeSpread.Exponential(Unload), 0.3));
        engine.Reset(1, 0);
        engine.Run(1e6, long.MaxValue);
        var before = GC.GetAllocatedBytesForCurrentThread();
        engine.Run(1e7, long.MaxValue);
        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);
    }

    [Fact]
    public void Networks_that_cannot_run_give_no_result()
    {
        Assert.Null(HaulRun.Watch(Network(0, TimeSpread.Constant(1), TimeSpread.Constant(1), 0), 1, 0, 10, 1, 1));
        Assert.Null(HaulRun.Watch(Network(2, TimeSpread.Constant(double.NaN), TimeSpread.Constant(1), 0), 1, 0, 10, 1, 1));
        Assert.Null(HaulRun.Watch(new HaulNetwork([], [new HaulGroup(1, [new HaulStop(-1, TimeSpread.Constant(1), TimeSpread.Constant(1))])]), 0, 0, 10, 1, 1));
    }

    // The network has two stations; each of the other figures alone is one that cannot be watched.
    [Theory]
    [InlineData(-1, 0.0, 10.0)]
    [InlineData(2, 0.0, 10.0)]
    [InlineData(1, -1.0, 10.0)]
    [InlineData(1, double.NaN, 10.0)]
    [InlineData(1, 0.0, 0.0)]
    [InlineData(1, 0.0, double.PositiveInfinity)]
    public void A_station_or_a_time_that_is_none_gives_no_result(int station, double warmUp, double watched) =>
        Assert.Null(HaulRun.Watch(Network(2, TimeSpread.Constant(1), TimeSpread.Constant(1), 0), station, warmUp, watched, 1, 1));

    [Fact]
    public void A_round_that_takes_no_time_ends_at_the_bound_of_events()
    {
        var engine = new HaulEngine(new HaulNetwork(
            [new HaulStation(1)], [new HaulGroup(1, [new HaulStop(0, TimeSpread.Constant(0), TimeSpread.Constant(0))])]));
        engine.Reset(1, 0);
        Assert.False(engine.Run(10, 1000));
    }

    private static HaulNetwork Network(int trucks, TimeSpread load, TimeSpread unload, double travelVariation) => new(
        [new HaulStation(1), new HaulStation(1)],
        [
            new HaulGroup(trucks,
            [
                new HaulStop(0, load, TimeSpread.Lognormal(1200, travelVariation)),
                new HaulStop(1, unload, TimeSpread.Lognormal(1080, travelVariation)),
            ]),
        ]);

    private static ClosedNetworkState Exact(int trucks, double unload) =>
        ClosedNetwork.MeanValues(trucks, Si(38, "min"), [Load, unload])!.Value;

    private static IReadOnlyList<StationTally> Watch(HaulNetwork network, int station, double time) =>
        HaulRun.Watch(network, station, 50_000, time, Replications, 20261125)!;

    private static (double Mean, double Half) Interval(IReadOnlyList<StationTally> seen, Func<StationTally, double> read)
    {
        var values = seen.Select(read).ToList();
        var mean = values.Average();
        var deviation = Math.Sqrt(values.Sum(value => (value - mean) * (value - mean)) / (values.Count - 1));
        return (mean, Student * deviation / Math.Sqrt(values.Count));
    }
}
