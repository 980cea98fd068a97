namespace Laygate.Cli.Checking;

/// <summary>Work that is done side by side and handed on in its order.</summary>
internal static class InOrder
{
    /// <summary>Pieces that may be begun and not handed on, for each processor: enough that a slow one does not let the others wait at once, few enough that memory does not grow with their number.</summary>
    private const int Ahead = 3;

    /// <summary>Pieces of work that are under way or done and not handed on, at most.</summary>
    public static int Window { get; } = Ahead * Environment.ProcessorCount;

    /// <summary>Does pieces of work, and hands each result on before the one behind it. A single piece is done on the spot.</summary>
    /// <param name="count">How many.</param>
    /// <param name="work">Does one, given its number from 0; called from several threads.</param>
    /// <param name="handOn">Takes the results in order, one at a time, on the thread of the caller.</param>
    /// <remarks>What either throws is thrown on, at its place in the order; nothing is begun after it.</remarks>
    public static void Run<T>(int count, Func<int, T> work, Action<int, T> handOn)
    {
        if (count == 1)
        {
            handOn(0, work(0));
            return;
        }

        var begun = new Queue<Task<T>>(Window);
        for (var (next, done) = (0, 0); done < count; done++)
        {
            for (; next < count && begun.Count < Window; next++)
            {
                var number = next;
                begun.Enqueue(Task.Run(() => work(number)));
            }

            handOn(done, begun.Dequeue().GetAwaiter().GetResult());
        }
    }
}
