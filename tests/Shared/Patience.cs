namespace Laygate.Tests;

/// <summary>
/// How long a test waits for what must come: far longer than it ever takes, so that a busy machine decides nothing. A wait ends as soon
/// as the state is there; only what hangs costs the whole time.
/// </summary>
internal static class Patience
{
    /// <summary>The longest wait.</summary>
    public static readonly TimeSpan Longest = TimeSpan.FromMinutes(15);

    /// <summary>The longest wait, ms.</summary>
    public const int Milliseconds = 15 * 60 * 1000;

    /// <summary>Looks again and again until something holds.</summary>
    /// <param name="holds">Whether it holds.</param>
    /// <param name="what">What is waited for, for the message.</param>
    public static Task UntilAsync(Func<bool> holds, string what) => UntilAsync(() => Task.FromResult(holds()), what);

    /// <summary>Looks again and again until something holds.</summary>
    /// <param name="holds">Whether it holds.</param>
    /// <param name="what">What is waited for, for the message.</param>
    public static async Task UntilAsync(Func<Task<bool>> holds, string what)
    {
        var since = Environment.TickCount64;
        while (!await holds())
        {
            Assert.True(Environment.TickCount64 - since < Milliseconds, $"This never came: {what}.");
            await Task.Delay(50);
        }
    }
}
