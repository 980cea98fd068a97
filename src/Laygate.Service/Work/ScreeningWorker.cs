using Laygate.Register;
using Laygate.Service.Checking;
using Laygate.Service.Settings;
using Laygate.Service.Telling;
using Microsoft.Extensions.Options;

namespace Laygate.Service.Work;

/// <summary>Wakes a worker when a submission has come to this process; others are found by looking every second.</summary>
internal sealed class Bell : IDisposable
{
    private readonly SemaphoreSlim signal = new(0);

    public void Ring()
    {
        if (signal.CurrentCount == 0)
        {
            signal.Release();
        }
    }

    public Task WaitAsync(TimeSpan atMost, CancellationToken cancel) => signal.WaitAsync(atMost, cancel);

    public void Dispose() => signal.Dispose();
}

/// <summary>Screens submissions in the background. When the process stops, what is unfinished is handed back at once.</summary>
internal sealed class ScreeningWorker(
    Screenings queue, Screening screening, CheckPool pool, Bell bell, Telemetry telemetry, IOptions<ServiceSettings> options, ILogger<ScreeningWorker> log) : BackgroundService
{
    private static readonly TimeSpan Pause = TimeSpan.FromSeconds(1);

    private readonly ServiceSettings settings = options.Value;

    protected override Task ExecuteAsync(CancellationToken stoppingToken) =>
        Task.WhenAll(Enumerable.Range(1, settings.Workers).Select(number => Task.Run(() => WorkAsync($"{Environment.MachineName}/{Environment.ProcessId}/{number}", stoppingToken), CancellationToken.None)));

    private async Task WorkAsync(string name, CancellationToken stop)
    {
        while (!stop.IsCancellationRequested)
        {
            try
            {
                await pool.WaitForRoomAsync(TimeSpan.FromSeconds(settings.ScreeningPatience), stop);
                if (await queue.ClaimAsync(name, stop) is { } claim)
                {
                    await ScreenAsync(claim, stop);
                }
                else
                {
                    await bell.WaitAsync(Pause, stop);
                }
            }
            catch (OperationCanceledException) when (stop.IsCancellationRequested)
            {
                return;
            }
#pragma warning disable CA1031 // The database may be away for a while; the worker must outlive that.
            catch (Exception error)
#pragma warning restore CA1031
            {
                Log.QueueUnreachable(log, error.GetType().Name);
                await Task.Delay(Pause, stop).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
            }
        }
    }

    private async Task ScreenAsync(Claim claim, CancellationToken stop)
    {
        using var limit = CancellationTokenSource.CreateLinkedTokenSource(stop);
        limit.CancelAfter(TimeSpan.FromSeconds(settings.ScreeningSeconds));
        var work = Task.Factory.StartNew(() => Run(claim, limit.Token), CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default);
        try
        {
            await RenewUntilAsync(claim, work, limit);
            var stored = await queue.CompleteAsync(claim, await work, CancellationToken.None);
            telemetry.Screened(stored ? "stored" : "superseded");
            Log.Screened(log, claim.SubmissionId, claim.Screening, claim.Attempt, stored);
        }
        catch (OperationCanceledException) when (stop.IsCancellationRequested)
        {
            await queue.HandBackAsync(claim, CancellationToken.None);
            telemetry.Screened("handed-back");
        }
        catch (Exception error) when (!RegisterDatabase.IsAway(error))
        {
            telemetry.Screened("failed");
            Log.Failed(log, claim.SubmissionId, claim.Attempt, error.GetType().Name);
            var reason = error is OperationCanceledException
                ? FormattableString.Invariant($"The screening took longer than {settings.ScreeningSeconds} s.")
                : $"An error of the program ({error.GetType().Name}).";
            await queue.FailAsync(claim, reason, CancellationToken.None);
        }
    }

    private ScreeningResult Run(Claim claim, CancellationToken cancel)
    {
        using var measured = telemetry.Check("screening");
        var result = screening.Run(claim, cancel);
        return claim.Before is { } before ? result with { Changes = RescreenChanges.Between(before, result.Json) } : result;
    }

    // A lease that is lost ends the work: someone else does it now.
    private async Task RenewUntilAsync(Claim claim, Task work, CancellationTokenSource limit)
    {
        var beat = TimeSpan.FromSeconds(settings.LeaseSeconds / 3);
        while (await Task.WhenAny(work, Task.Delay(beat, limit.Token)) != work)
        {
            limit.Token.ThrowIfCancellationRequested();
            if (!await queue.RenewAsync(claim, limit.Token))
            {
                await limit.CancelAsync();
                throw new InvalidOperationException("The lease was lost.");
            }
        }
    }
}
