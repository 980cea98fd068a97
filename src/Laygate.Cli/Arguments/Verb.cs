using System.CommandLine;
using Laygate.Cli.Checking;
using Laygate.Cli.Output;

namespace Laygate.Cli.Arguments;

/// <summary>What a command works with.</summary>
/// <param name="Pipeline">Opens rule books and checks plans.</param>
/// <param name="Streams">Input and output.</param>
/// <param name="Version">Version of the program.</param>
internal sealed record Host(ICheckPipeline Pipeline, Streams Streams, string Version);

/// <summary>A command of the program. A new one is a class of its own and one line in <see cref="Verbs.All"/>.</summary>
internal abstract class Verb(string name) : Command(name)
{
    /// <summary>One line for the help of the program.</summary>
    public abstract string Summary { get; }

    /// <summary>Help in plain words.</summary>
    public abstract string Help { get; }

    /// <summary>Turns arguments that were parsed without errors into the work to do; it returns the exit code.</summary>
    /// <exception cref="ArgumentProblem">A value cannot be used.</exception>
    public abstract Func<Host, int> Read(ParseResult parsed, TimeProvider clock);
}

/// <summary>The commands of the program.</summary>
internal static class Verbs
{
    /// <summary>All commands, in the order of the help.</summary>
    public static IReadOnlyList<Verb> All() => [new CheckCommand(), new SheetCommand(), new VerifyCommand()];
}
