using System.Diagnostics;
using System.Globalization;
using BenchmarkDotNet.Running;

namespace Laygate.Benchmarks;

/// <summary>
/// Runs BenchmarkDotNet with its own arguments; <c>--quick</c> instead times each benchmark of the cooling model and of the
/// haul simulation with a stopwatch, which takes seconds.
/// </summary>
internal static class Program
{
    private static int Main(string[] args)
    {
        if (args is ["--quick", ..])
        {
            Quick();
            return 0;
        }

        return BenchmarkSwitcher.FromAssembly(typeof(Program).Assembly).Run(args) is null ? 1 : 0;
    }

    private static void Quick()
    {
        var haul = new SimulationBenchmarks();
        IEnumerable<(string, Func<double>)> simulation =
        [
            (nameof(haul.MillionCycles), () => haul.MillionCycles()),
            (nameof(haul.FiveHundredShifts), haul.FiveHundredShifts),
            (nameof(haul.FiveHundredShiftsOnOneCore), haul.FiveHundredShiftsOnOneCore),
            (nameof(haul.ListOfLoads), () => haul.ListOfLoads()),
        ];
        foreach (var (name, run) in new CoolingCases().All.Concat(simulation))
        {
            var best = Best(run);
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{name,-48} {best,9:0.000} ms"));
        }
    }

    /// <summary>Shortest of many runs in ms: what the machine can do when nothing else runs.</summary>
    private static double Best(Func<double> run)
    {
        var best = double.PositiveInfinity;
        var until = Stopwatch.StartNew();
        for (var i = 0; i < 5 || until.ElapsedMilliseconds < 2000; i++)
        {
            var watch = Stopwatch.StartNew();
            run();
            best = Math.Min(best, watch.Elapsed.TotalMilliseconds);
        }

        return best;
    }
}
