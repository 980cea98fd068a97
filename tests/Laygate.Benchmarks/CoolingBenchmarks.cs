using BenchmarkDotNet.Attributes;

namespace Laygate.Benchmarks;

/// <summary>The speed goals of the cooling model, at the settings that check uses.</summary>
[MemoryDiagnoser]
public class CoolingBenchmarks
{
    private readonly CoolingCases cases = new();

    /// <summary>40 mm on three layers to a mean of 80 °C.</summary>
    [Benchmark]
    public double FortyMillimetresToMean80() => cases.FortyMillimetresToMean80();

    /// <summary>The same with a specific heat that changes with temperature.</summary>
    [Benchmark]
    public double FortyMillimetresVaryingHeat() => cases.FortyMillimetresVaryingHeat();

    /// <summary>A pair laid at each of 12 hours, each followed for 12 h of hourly weather.</summary>
    [Benchmark]
    public double PairAtTwelveLayingTimes() => cases.PairAtTwelveLayingTimes();

    /// <summary>300 solves of the 40 mm case on one core.</summary>
    [Benchmark]
    public double ThreeHundredSolves() => cases.ThreeHundredSolves();

    /// <summary>300 samples of the 40 mm case over six ranges, two workers.</summary>
    [Benchmark]
    public double ThreeHundredSamples() => cases.ThreeHundredSamples();

    /// <summary>The same with one worker.</summary>
    [Benchmark]
    public double ThreeHundredSamplesOneWorker() => cases.ThreeHundredSamplesOneWorker();
}
