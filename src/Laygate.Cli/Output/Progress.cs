using System.Globalization;

namespace Laygate.Cli.Output;

/// <summary>One line on the terminal that says how many plans are done; nothing where messages go to a file.</summary>
internal sealed class Progress : IDisposable
{
    private const int Bar = 24;
    private readonly Streams streams;
    private readonly int total;
    private readonly Lock sync = new();
    private int done;
    private bool over;

    /// <summary>Begins the line.</summary>
    /// <param name="streams">Where messages go.</param>
    /// <param name="total">Plans in all; with one there is nothing to show.</param>
    public Progress(Streams streams, int total)
    {
        this.streams = streams;
        this.total = total;
        Show();
    }

    private bool IsShown => streams.ErrorTerminal && total > 1 && !over;

    /// <summary>One more plan is done.</summary>
    public void Step()
    {
        lock (sync)
        {
            done++;
            Show();
        }
    }

    /// <summary>Takes the line away while something else is written, for results and messages may go to the same terminal.</summary>
    public void Aside(Action write)
    {
        if (!IsShown)
        {
            write();
            return;
        }

        lock (sync)
        {
            Hide();
            write();
            Show();
        }
    }

    /// <summary>Takes the line away.</summary>
    public void Dispose()
    {
        lock (sync)
        {
            Hide();
            over = true;
        }
    }

    private void Hide()
    {
        if (IsShown)
        {
            streams.Error.Write("\r" + new string(' ', Bar + 32) + "\r");
        }
    }

    private void Show()
    {
        if (IsShown)
        {
            var filled = Bar * done / total;
            streams.Error.Write(string.Create(CultureInfo.InvariantCulture, $"\r[{new string('#', filled)}{new string('.', Bar - filled)}] {done} of {total} plans"));
            streams.Error.Flush();
        }
    }
}
