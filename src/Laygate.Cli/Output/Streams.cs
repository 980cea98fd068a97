using System.Text;
using Laygate.Cli.Arguments;

namespace Laygate.Cli.Output;

/// <summary>What the program reads from and writes to. Results go to <see cref="Out"/>, messages to <see cref="Error"/>.</summary>
internal sealed record Streams
{
    /// <summary>Columns where no terminal tells.</summary>
    public const int UsualWidth = 80;

    /// <summary>UTF-8 without a mark at the start.</summary>
    public static Encoding Utf8 { get; } = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);

    /// <summary>Standard input.</summary>
    public required Func<Stream> Input { get; init; }

    /// <summary>Standard output.</summary>
    public required Stream Out { get; init; }

    /// <summary>Standard error.</summary>
    public required TextWriter Error { get; init; }

    /// <summary>Columns of standard output.</summary>
    public int Width { get; init; } = UsualWidth;

    /// <summary>Whether results are coloured.</summary>
    public bool Colour { get; init; }

    /// <summary>Whether messages are coloured.</summary>
    public bool ErrorColour { get; init; }

    /// <summary>Whether messages go to a terminal.</summary>
    public bool ErrorTerminal { get; init; }

    /// <summary>Whether somebody sits at standard input, so that questions can be asked.</summary>
    public bool InputTerminal { get; init; }

    /// <summary>The streams of this process.</summary>
    public static Streams OfProcess()
    {
        SetEncoding();
        var plain = Environment.GetEnvironmentVariable("NO_COLOR") is { Length: > 0 }
            || Environment.GetEnvironmentVariable("TERM") is "dumb";
        return new Streams
        {
            Input = () => StandardHandle.IsOfTheCaller(StandardHandle.Input) ? Console.OpenStandardInput() : throw new ArgumentProblem("Standard input is closed: nothing can be read from it."),
            Out = GuardedStream.Of(StandardHandle.Output, Console.OpenStandardOutput, () => throw new ArgumentProblem("The result cannot be written to standard output: check that it is open and that there is room where it goes.")),
            // Nobody is left to be told when messages cannot be written.
            Error = new StreamWriter(GuardedStream.Of(StandardHandle.Error, Console.OpenStandardError, () => { }), Utf8) { AutoFlush = true },
            Width = Console.IsOutputRedirected ? UsualWidth : TerminalWidth(),
            Colour = !plain && !Console.IsOutputRedirected,
            ErrorColour = !plain && !Console.IsErrorRedirected,
            ErrorTerminal = !Console.IsErrorRedirected,
            InputTerminal = StandardHandle.IsOfTheCaller(StandardHandle.Input) && !Console.IsInputRedirected && !Console.IsErrorRedirected,
        };
    }

    // A terminal needs to be told; what is closed or no terminal does not mind.
    private static void SetEncoding()
    {
        try
        {
            Console.OutputEncoding = Utf8;
        }
        catch (IOException)
        {
            return;
        }
    }

    private static int TerminalWidth()
    {
        try
        {
            return Console.WindowWidth > 0 ? Console.WindowWidth : UsualWidth;
        }
        catch (IOException)
        {
            return UsualWidth;
        }
    }
}
