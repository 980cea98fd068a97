using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using System.Text;

namespace Laygate.FuzzTests.Fuzzing;

/// <summary>What one input did that must never be.</summary>
/// <param name="Input">The input.</param>
/// <param name="What">What happened.</param>
internal sealed record Complaint(FuzzInput Input, string What);

/// <summary>Figures of one target.</summary>
internal sealed class Tally
{
    /// <summary>Inputs that were taken.</summary>
    public int Accepted { get; set; }

    /// <summary>Inputs that were refused.</summary>
    public int Refused { get; set; }

    /// <summary>Inputs that did what must never be.</summary>
    public int Complaints { get; set; }

    /// <summary>The most that one input allocated, bytes.</summary>
    public long MostAllocated { get; set; }

    /// <summary>Time, s, that the threads spent on its inputs, added up.</summary>
    public double Seconds { get; set; }

    /// <summary>All inputs.</summary>
    public int Inputs => Accepted + Refused + Complaints;
}

/// <summary>Hands inputs to their targets, one number after the other, and counts.</summary>
/// <param name="maker">Makes the inputs.</param>
internal sealed class FuzzRun(InputMaker maker)
{
    private readonly ConcurrentDictionary<string, Tally> tallies = new(StringComparer.Ordinal);
    private readonly ConcurrentBag<Complaint> complaints = [];

    /// <summary>Figures by target.</summary>
    public IEnumerable<KeyValuePair<string, Tally>> Tallies => tallies.OrderBy(tally => tally.Key, StringComparer.Ordinal);

    /// <summary>What must never be, in the order of the inputs.</summary>
    public IReadOnlyList<Complaint> Complaints => [.. complaints.OrderBy(complaint => complaint.Input.Index)];

    /// <summary>Tries inputs.</summary>
    /// <param name="first">Number of the first.</param>
    /// <param name="count">How many at most.</param>
    /// <param name="workers">Threads.</param>
    /// <param name="goesOn">Whether to begin another one.</param>
    /// <param name="only">Name of the only target that is tried; null for all.</param>
    public void Try(long first, long count, int workers, Func<bool> goesOn, string? only = null)
    {
        var next = first - 1;
        Parallel.For(0, workers, worker =>
        {
            // What is tried stands on the disk: an input that ends the process, or never ends, is known afterwards.
            using var journal = new Journal(worker);
            long index;
            while (goesOn() && (index = Interlocked.Increment(ref next)) < first + count)
            {
                var input = maker.Make(index);
                if (only is null || input.Target.Name == only)
                {
                    journal.Write(input);
                    Try(input);
                }
            }
        });
    }

    /// <summary>Tries one input.</summary>
    public void Try(FuzzInput input)
    {
        var tally = tallies.GetOrAdd(input.Target.Name, _ => new Tally());
        var (before, since) = (GC.GetAllocatedBytesForCurrentThread(), Stopwatch.GetTimestamp());
        var (answer, wrong) = Judged(input);
        var allocated = GC.GetAllocatedBytesForCurrentThread() - before;
        if (wrong is null && allocated > input.Target.MostAllocated)
        {
            wrong = string.Create(CultureInfo.InvariantCulture, $"{allocated >> 20} MB allocated for an input of {input.Bytes.Length} bytes");
        }

        lock (tally)
        {
            tally.Seconds += Stopwatch.GetElapsedTime(since).TotalSeconds;
            tally.MostAllocated = Math.Max(tally.MostAllocated, allocated);
            tally.Accepted += wrong is null && answer == Answer.Accepted ? 1 : 0;
            tally.Refused += wrong is null && answer == Answer.Refused ? 1 : 0;
            tally.Complaints += wrong is null ? 0 : 1;
        }

        if (wrong is not null)
        {
            complaints.Add(new Complaint(input, wrong));
        }
    }

    private static (Answer? Answer, string? Wrong) Judged(FuzzInput input)
    {
        try
        {
            return (input.Target.Try(input.Bytes), null);
        }
        catch (ComplaintException complaint)
        {
            return (null, complaint.Message);
        }
        catch (Exception error) when (error is not OutOfMemoryException)
        {
            return (null, $"unhandled: {error}");
        }
    }

    /// <summary>Says which input a worker tries.</summary>
    private sealed class Journal(int worker) : IDisposable
    {
        private readonly FileStream file = new(Path.Combine(Folder(), string.Create(CultureInfo.InvariantCulture, $"trying-{worker}.txt")), FileMode.Create, FileAccess.Write, FileShare.ReadWrite, bufferSize: 1);

        public void Write(FuzzInput input)
        {
            file.Position = 0;
            file.Write(Encoding.UTF8.GetBytes(string.Create(CultureInfo.InvariantCulture, $"{input.Index} {input.Target.Name}").PadRight(60) + "\n"));
        }

        public void Dispose() => file.Dispose();

        private static string Folder() => Directory.CreateDirectory(Path.Combine(SourceTree.Root, "artifacts", "fuzz")).FullName;
    }
}
