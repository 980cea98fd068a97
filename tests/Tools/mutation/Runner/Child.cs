using System.Diagnostics;

namespace Laygate.Mutation;

/// <summary>A process that runs tests; it is ended where it computes without end.</summary>
internal sealed class Child : IDisposable
{
    private readonly Process process;

    public Child(params string[] arguments)
    {
        var start = new ProcessStartInfo(Environment.ProcessPath!, arguments) { RedirectStandardInput = true, RedirectStandardOutput = true, RedirectStandardError = true };
        if (!Path.GetFileNameWithoutExtension(Environment.ProcessPath!).StartsWith("Laygate", StringComparison.Ordinal))
        {
            start.ArgumentList.Insert(0, typeof(Child).Assembly.Location);
        }

        process = Process.Start(start)!;
        process.ErrorDataReceived += (_, _) => { };
        process.BeginErrorReadLine();
    }

    public void Send(string line)
    {
        process.StandardInput.WriteLine(line);
        process.StandardInput.Flush();
    }

    /// <summary>
    /// The last word of the child: its answer, "timeout T" where test T took more processor time than <paramref name="ceiling"/> allows or stood still for minutes,
    /// or "crash T".
    /// </summary>
    public string Answer(Func<int, TimeSpan> ceiling)
    {
        var running = 0;
        var started = Spent();
        while (true)
        {
            var reading = process.StandardOutput.ReadLineAsync();
            var waited = Stopwatch.StartNew();
            while (!reading.Wait(200))
            {
                if (Spent() - started > ceiling(running) || waited.Elapsed > TimeSpan.FromMinutes(10))
                {
                    return $"timeout {running}";
                }
            }

            if (reading.Result is not { } line)
            {
                return $"crash {running}";
            }

            if (line.StartsWith("missing ", StringComparison.Ordinal))
            {
                Console.Error.WriteLine(line);
                continue;
            }

            if (!line.StartsWith("run ", StringComparison.Ordinal))
            {
                return line;
            }

            running = int.Parse(line.AsSpan(4), System.Globalization.CultureInfo.InvariantCulture);
            started = Spent();
        }
    }

    public void Dispose()
    {
        if (!process.HasExited)
        {
            process.Kill();
        }

        process.Dispose();
    }

    private TimeSpan Spent()
    {
        try
        {
            process.Refresh();
            return process.HasExited ? TimeSpan.Zero : process.TotalProcessorTime;
        }
        catch (InvalidOperationException)
        {
            return TimeSpan.Zero;
        }
    }
}
