using System.Diagnostics;
using System.Diagnostics.Metrics;

namespace Laygate.Service;

/// <summary>What the service measures. No attribute carries anything from a plan.</summary>
internal sealed class Telemetry : IDisposable
{
    /// <summary>Name of the meter and of the source of traces.</summary>
    public const string Name = "Laygate";

    private readonly Meter meter = new(Name);
    private readonly ActivitySource source = new(Name);
    private readonly Histogram<double> duration;
    private readonly Counter<long> screenings;

    public Telemetry()
    {
        duration = meter.CreateHistogram<double>("laygate.check.duration", "s", "Time to check one file.");
        screenings = meter.CreateCounter<long>("laygate.screenings", "{screening}", "Screenings by how they ended.");
    }

    /// <summary>Measures one check until it is disposed.</summary>
    public IDisposable Check(string kind) => new Measured(this, kind);

    /// <summary>Counts a screening.</summary>
    public void Screened(string how) => screenings.Add(1, new KeyValuePair<string, object?>("result", how));

    public void Dispose()
    {
        meter.Dispose();
        source.Dispose();
    }

    private sealed class Measured(Telemetry owner, string kind) : IDisposable
    {
        private readonly long start = Stopwatch.GetTimestamp();
        private readonly Activity? activity = owner.source.StartActivity("check");

        public void Dispose()
        {
            owner.duration.Record(Stopwatch.GetElapsedTime(start).TotalSeconds, new KeyValuePair<string, object?>("kind", kind));
            activity?.Dispose();
        }
    }
}
