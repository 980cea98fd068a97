using Laygate.Register;

namespace Laygate.Service.Work;

/// <summary>Counts the queue every few seconds for the metrics, on each replica, whether it works or only answers.</summary>
internal sealed class QueueWatch(Screenings queue, Telemetry telemetry, TimeProvider clock) : BackgroundService
{
    private static readonly TimeSpan Pause = TimeSpan.FromSeconds(5);

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        using var timer = new PeriodicTimer(Pause, clock);
        do
        {
            telemetry.Queued(await CountAsync(stoppingToken));
        }
        while (await timer.WaitForNextTickAsync(stoppingToken));
    }

    private async Task<int?> CountAsync(CancellationToken stop)
    {
        try
        {
            return await queue.UnfinishedAsync(stop);
        }
        catch (Exception error) when (RegisterDatabase.IsOfDatabase(error))
        {
            return null;
        }
    }
}
