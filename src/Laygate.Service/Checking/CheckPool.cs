using Laygate.Service.Settings;
using Microsoft.Extensions.Options;

namespace Laygate.Service.Checking;

/// <summary>There is no room for another check now.</summary>
internal sealed class BusyException() : Exception("All places for checks are taken.");

/// <summary>A check took longer than it may.</summary>
internal sealed class TooLongException(double seconds) : Exception(
    FormattableString.Invariant($"The check took longer than {seconds} s. Submit the plan instead: submissions are screened in the background with more time."));

/// <summary>
/// Bounds what requests may compute: so many at a time, so many waiting, so long. Whoever asks gets an answer in that time;
/// a computation that does not stop by then keeps its place until it does, so that no more than the places ever run.
/// </summary>
internal sealed class CheckPool(IOptions<ServiceSettings> options, Telemetry telemetry) : IDisposable
{
    private static readonly TimeSpan Glance = TimeSpan.FromMilliseconds(50);

    private readonly ServiceSettings settings = options.Value;
    private readonly SemaphoreSlim slots = new(options.Value.CheckSlots);
    private int inside;

    /// <summary>Runs a check on a thread of its own.</summary>
    /// <exception cref="BusyException">No place is free, and too many wait already.</exception>
    /// <exception cref="TooLongException">It took too long.</exception>
    public async Task<T> RunAsync<T>(Func<CancellationToken, T> check, CancellationToken cancel)
    {
        if (Interlocked.Increment(ref inside) > settings.CheckSlots + settings.CheckQueue)
        {
            Interlocked.Decrement(ref inside);
            throw new BusyException();
        }

        // The source lives as long as the computation, which may outlive the answer.
        var limit = CancellationTokenSource.CreateLinkedTokenSource(cancel);
        limit.CancelAfter(TimeSpan.FromSeconds(settings.CheckSeconds));
        var token = limit.Token;
        var work = InSlotAsync(check, limit);
        try
        {
            return await work.WaitAsync(token);
        }
        catch (OperationCanceledException) when (!cancel.IsCancellationRequested)
        {
            throw new TooLongException(settings.CheckSeconds);
        }
    }

    /// <summary>Waits until a place is free, so that work in the background does not slow people who wait for an answer.</summary>
    /// <param name="atMost">Longest wait: where all places are always taken, the background still goes on.</param>
    /// <param name="cancel">Calls the wait off.</param>
    public async Task WaitForRoomAsync(TimeSpan atMost, CancellationToken cancel)
    {
        for (var waited = TimeSpan.Zero; waited < atMost && Volatile.Read(ref inside) >= settings.CheckSlots; waited += Glance)
        {
            await Task.Delay(Glance, cancel);
        }
    }

    public void Dispose() => slots.Dispose();

    private async Task<T> InSlotAsync<T>(Func<CancellationToken, T> check, CancellationTokenSource limit)
    {
        var token = limit.Token;
        try
        {
            await slots.WaitAsync(token);
            try
            {
                using var measured = telemetry.Check("request");
                return await Task.Factory.StartNew(() => check(token), CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default);
            }
            finally
            {
                slots.Release();
            }
        }
        finally
        {
            Interlocked.Decrement(ref inside);
            limit.Dispose();
        }
    }
}
