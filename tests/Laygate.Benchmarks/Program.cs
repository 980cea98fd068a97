using System.Diagnostics;
using System.Globalization;
using BenchmarkDotNet.Running;

namespace Laygate.Benchmarks;

/// <summary>
/// Runs BenchmarkDotNet with its own arguments; <c>--quick</c> instead times each benchmark with a stopwatch; <c>--quick ledger</c> only
/// those of the ledger of a shift. It takes seconds.
/// </summary>
internal static class Program
{
    private static int Main(string[] args)
    {
        if (args is ["--quick", ..])
        {
            Quick(onlyLedger: args is [_, "ledger"]);
            return 0;
        }

        return BenchmarkSwitcher.FromAssembly(typeof(Program).Assembly).Run(args) is null ? 1 : 0;
    }

    private static void Quick(bool onlyLedger)
    {
        var ledger = new LedgerBenchmarks();
        IEnumerable<(string, Func<double>)> shift = [("Ledger: 10,000 rows read", ledger.Read), ("Ledger: 4 rows read", ledger.ReadOneRow), ("Ledger: of 10,000 rows", ledger.Ledger)];
        var haul = new SimulationBenchmarks();
        IEnumerable<(string, Func<double>)> simulation =
        [
            (nameof(haul.MillionCycles), () => haul.MillionCycles()),
            (nameof(haul.FiveHundredShifts), haul.FiveHundredShifts),
            (nameof(haul.FiveHundredShiftsOnOneCore), haul.FiveHundredShiftsOnOneCore),
            (nameof(haul.ListOfLoads), () => haul.ListOfLoads()),
        ];
        foreach (var (name, run) in onlyLedger ? shift : new CoolingCases().All.Concat(simulation).Concat(shift))
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
