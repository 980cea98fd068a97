using Laygate.Register;
using Laygate.Service.Settings;
using Microsoft.Extensions.Options;

namespace Laygate.Service.Telling;

/// <summary>Sends what is due, one notice a time.</summary>
internal sealed class NoticeSender(OutgoingNotices queue, WebhookSender webhooks, MailSender mails, ILogger<NoticeSender> log)
{
    /// <summary>Sends one notice that is due.</summary>
    /// <param name="cancel">Ends it; the notice is handed back.</param>
    /// <returns>Whether there was one.</returns>
    public async Task<bool> SendOneAsync(CancellationToken cancel)
    {
        if (await queue.ClaimAsync(cancel) is not { } notice)
        {
            return false;
        }

        await SendAsync(notice, cancel);
        return true;
    }

    /// <summary>Sends a notice and writes down what became of it.</summary>
    public async Task SendAsync(NoticeClaim notice, CancellationToken cancel)
    {
        Delivery delivery;
        try
        {
            delivery = notice.To.Channel == Channel.Mail ? await mails.SendAsync(notice, cancel) : await webhooks.SendAsync(notice, cancel);
        }
        catch (OperationCanceledException) when (cancel.IsCancellationRequested)
        {
            await queue.HandBackAsync(notice, CancellationToken.None);
            return;
        }

        // Whoever is told of is no reason to lose this: it is written down also while the process stops.
        _ = delivery switch
        {
            { Why: null } => await queue.SentAsync(notice, CancellationToken.None),
            { Gone: true } => await queue.GoneAsync(notice, delivery.Why, CancellationToken.None),
            _ => await queue.FailAsync(notice, delivery.Why, delivery.ForGood, CancellationToken.None),
        };
        Log.Told(log, notice.Id, notice.Attempt, delivery.Why ?? "taken");
    }
}

/// <summary>Sends notices while the service runs. A receiver that is slow or down holds up neither the service nor other receivers.</summary>
internal sealed class NoticeWorker(OutgoingNotices queue, NoticeSender sender, IOptions<ServiceSettings> options, TimeProvider clock, ILogger<NoticeWorker> log) : BackgroundService
{
    // Notices on their way at the same time, each to another receiver.
    private const int Slots = 8;

    private static readonly TimeSpan Pause = TimeSpan.FromSeconds(1);
    private static readonly TimeSpan Tidying = TimeSpan.FromHours(1);

    private readonly SemaphoreSlim slots = new(Slots);
    private DateTimeOffset tidied;

    public override void Dispose()
    {
        slots.Dispose();
        base.Dispose();
    }

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        if (options.Value.Workers == 0)
        {
            return;
        }

        while (!stoppingToken.IsCancellationRequested)
        {
            try
            {
                await GoAsync(stoppingToken);
            }
            catch (OperationCanceledException) when (stoppingToken.IsCancellationRequested)
            {
                break;
            }
#pragma warning disable CA1031 // The database may be away for a while; the worker must outlive that.
            catch (Exception error)
#pragma warning restore CA1031
            {
                Log.NoticesUnreachable(log, error.GetType().Name);
                await Task.Delay(Pause, stoppingToken).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
            }
        }

        // What is under way is called off and hands itself back.
        for (var slot = 0; slot < Slots; slot++)
        {
            await slots.WaitAsync(CancellationToken.None);
        }
    }

    private async Task GoAsync(CancellationToken stop)
    {
        if (clock.GetUtcNow() - tidied >= Tidying)
        {
            await queue.ForgetAsync(stop);
            tidied = clock.GetUtcNow();
        }

        await slots.WaitAsync(stop);
        NoticeClaim? claim = null;
        try
        {
            claim = await queue.ClaimAsync(stop);
        }
        finally
        {
            if (claim is null)
            {
                slots.Release();
            }
        }

        if (claim is null)
        {
            await Task.Delay(Pause, stop);
            return;
        }

        _ = SendAsync(claim, stop);
    }

    private async Task SendAsync(NoticeClaim claim, CancellationToken stop)
    {
        try
        {
            await sender.SendAsync(claim, stop);
        }
#pragma warning disable CA1031 // The lease ends, and the notice is sent again under the same id.
        catch (Exception error)
#pragma warning restore CA1031
        {
            Log.NoticesUnreachable(log, error.GetType().Name);
        }
        finally
        {
            slots.Release();
        }
    }
}
