using BenchmarkDotNet.Attributes;
using Laygate.Engineering.Supply.Simulation;

namespace Laygate.Benchmarks;

/// <summary>The speed goals of the haul simulation: 3 million truck cycles a second on one core, 500 shifts in 50 ms.</summary>
[MemoryDiagnoser]
public class SimulationBenchmarks
{
    /// <summary>Rounds of the closed cycle in one run: 9 trucks, 9.12 rounds an hour.</summary>
    public const double Time = 1_000_000 / 9.12 * 3600;

    private static readonly HaulNetwork Cycle = new(
        [new HaulStation(1), new HaulStation(1)],
        [
            new HaulGroup(9,
            [
                new HaulStop(0, TimeSpread.Exponential(240), TimeSpread.Lognormal(1200, 0.3)),
                new HaulStop(1, TimeSpread.Exponential(300), TimeSpread.Lognormal(1080, 0.3)),
            ]),
        ]);

    private static readonly ShiftModel Shift = TwoCourses();

    /// <summary>A million rounds of nine trucks, all times sampled.</summary>
    [Benchmark]
    public long MillionCycles() => HaulRun.Watch(Cycle, 1, 0, Time, 1, 1)![0].Departures;

    /// <summary>500 shifts with two courses, 24 trucks and 103 loads, on all cores.</summary>
    [Benchmark]
    public double FiveHundredShifts() => ShiftSimulator.Run(Shift, 1)!.StopChance.Expected;

    /// <summary>The same on one core.</summary>
    [Benchmark]
    public double FiveHundredShiftsOnOneCore() => ShiftSimulator.Run(Shift, 1, parallel: false)!.StopChance.Expected;

    /// <summary>The list of loads in order.</summary>
    [Benchmark]
    public int ListOfLoads() => ShiftSimulator.Loads(Shift)!.Count;

    private static ShiftModel TwoCourses() => new()
    {
        Duration = 410 * 60,
        Speed = 2.6 / 60,
        Stretches = [new ShiftStretch(1050, [8 * 0.085 * 2460, 8 * 0.025 * 2380])],
        Buffers = [new ShiftBuffer("lower", "binder", 50e3, 8e3, 18.5e3, null), new ShiftBuffer("upper", "surface", 28e3, 5e3, 10.75e3, 12e3)],
        Lines = [new ShiftLine("a", "binder", 75, 300e3, 400e3), new ShiftLine("b", "surface", 25, 80e3, 120e3)],
        Trucks = [Group("big", 0, 15, 25e3, 300, 27, 24, 5), Group("small", 1, 9, 16e3, 240, 38, 35, 2)],
        Unloading = new ShiftUnloading(true, 250, TimeSpread.Lognormal(60, 0.2), 45, InParts: false),
    };

    private static ShiftTrucks Group(string id, int line, int count, double payload, double loading, double outward, double back, int before) => new(
        id,
        line,
        count,
        payload,
        TimeSpread.Lognormal(loading, 0.2),
        TimeSpread.Lognormal(outward * 60, 0.15).Plus(240),
        TimeSpread.Lognormal(back * 60, 0.15).Plus(300),
        before);
}
