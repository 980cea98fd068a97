using Laygate.Register;
using Laygate.Service.Settings;
using Microsoft.Extensions.Options;

namespace Laygate.Service.Work;

/// <summary>Replaces names that are due, at the start and once a day.</summary>
internal sealed class RetentionWorker(Retention retention, IOptions<ServiceSettings> options, TimeProvider clock, ILogger<RetentionWorker> log) : BackgroundService
{
    private static readonly TimeSpan Pause = TimeSpan.FromDays(1);

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        if (options.Value is not { Workers: > 0, Retention: { Years: > 0 } settings })
        {
            return;
        }

        using var timer = new PeriodicTimer(Pause, clock);
        do
        {
            await ReplaceAsync(settings.Rule, stoppingToken);
        }
        while (await timer.WaitForNextTickAsync(stoppingToken));
    }

    private async Task ReplaceAsync(RetentionRule rule, CancellationToken stop)
    {
        try
        {
            var (series, keys) = await retention.ReplaceAsync(rule, stop);
            if (series + keys > 0)
            {
                Log.Replaced(log, series, keys);
            }
        }
        catch (Exception error) when (RegisterDatabase.IsOfDatabase(error))
        {
            Log.NotReplaced(log, error.GetType().Name);
        }
    }
}
