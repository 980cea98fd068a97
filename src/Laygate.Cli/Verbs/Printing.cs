using Laygate.Cli.Output;
using Laygate.Reporting.Terminal;
using Laygate.Rules.Results;

namespace Laygate.Cli.Verbs;

/// <summary>What commands write.</summary>
internal static class Printing
{
    /// <summary>Writes lines to standard output.</summary>
    public static void Lines(this Streams streams, IReadOnlyList<TerminalLine> lines)
    {
        using var writer = new StreamWriter(streams.Out, Streams.Utf8, bufferSize: 16 << 10, leaveOpen: true) { NewLine = "\n" };
        TerminalWriter.Write(writer, streams.Colour, lines);
    }

    /// <summary>Writes text to standard output as it is.</summary>
    public static void Text(this Streams streams, string text)
    {
        streams.Out.Write(Streams.Utf8.GetBytes(text));
        streams.Out.Flush();
    }

    /// <summary>Writes problems to standard error.</summary>
    /// <returns>The exit code for what could not be read.</returns>
    public static int Refuse(this Streams streams, IReadOnlyList<Problem> problems)
    {
        TerminalWriter.Write(streams.Error, streams.ErrorColour, ProblemLines.Lines(problems));
        return ExitCodes.Unreadable;
    }
}
