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
    private int queue = -1;

    public Telemetry()
    {
        duration = meter.CreateHistogram<double>("laygate.check.duration", "s", "Time to check one file.");
        meter.CreateObservableGauge("laygate.queue", Queue, "{submission}", "Submissions that are not screened yet, in the whole register.");
        screenings = meter.CreateCounter<long>("laygate.screenings", "{screening}", "Screenings by how they ended.");
    }

    /// <summary>Measures one check until it is disposed.</summary>
    public IDisposable Check(string kind) => new Measured(this, kind);

    /// <summary>Counts a screening.</summary>
    public void Screened(string how) => screenings.Add(1, new KeyValuePair<string, object?>("result", how));

    /// <summary>Says how many submissions are not screened yet; null: not known now.</summary>
    public void Queued(int? count) => Volatile.Write(ref queue, count ?? -1);

    // What is not known is not measured.
    private IEnumerable<Measurement<int>> Queue() => Volatile.Read(ref queue) is >= 0 and var count ? [new Measurement<int>(count)] : [];

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
