using Laygate.Reporting.Terminal;
using Spectre.Console;

namespace Laygate.Cli.Output;

/// <summary>Writes styled lines. Without colour the text goes out as it is, and the colour library, which costs some milliseconds, is never started.</summary>
internal static class TerminalWriter
{
    /// <summary>Writes lines.</summary>
    public static void Write(TextWriter writer, bool colour, IReadOnlyList<TerminalLine> lines)
    {
        if (colour)
        {
            WriteColoured(writer, lines);
        }
        else
        {
            foreach (var line in lines)
            {
                writer.WriteLine(line.Text);
            }
        }

        writer.Flush();
    }

    private static void WriteColoured(TextWriter writer, IReadOnlyList<TerminalLine> lines)
    {
        var console = AnsiConsole.Create(new AnsiConsoleSettings
        {
            // On Windows detection also switches the escapes on; elsewhere the caller has already decided.
            Ansi = OperatingSystem.IsWindows() ? AnsiSupport.Detect : AnsiSupport.Yes,
            ColorSystem = ColorSystemSupport.Standard,
            Interactive = InteractionSupport.No,
            Out = new AnsiConsoleOutput(writer),
        });

        // Lines are already broken to the width; Text writes plan text as text, never as markup.
        console.Profile.Width = int.MaxValue;
        foreach (var line in lines)
        {
            foreach (var span in line.Spans)
            {
                console.Write(new Text(span.Text, StyleOf(span.Style)));
            }

            console.WriteLine();
        }
    }

    private static Style StyleOf(TextStyle style) => style switch
    {
        TextStyle.Heading => new Style(decoration: Decoration.Bold),
        TextStyle.Quiet => new Style(decoration: Decoration.Dim),
        TextStyle.Fail => new Style(Color.Red, decoration: Decoration.Bold),
        TextStyle.Warn => new Style(Color.Yellow, decoration: Decoration.Bold),
        TextStyle.Pass => new Style(Color.Green),
        TextStyle.Undecided => new Style(Color.Aqua),
        _ => Style.Plain,
    };
}
