using System.CommandLine;

namespace Laygate.Cli.Arguments;

/// <summary>A command of the program. Its first word is its name; it reads its own options and says what is to be done.</summary>
internal abstract class Verb(string name, string help) : Command(name)
{
    /// <summary>Help in plain words.</summary>
    public string Help { get; } = help;

    /// <summary>Turns the values of a command line that was parsed without errors into a request.</summary>
    /// <exception cref="ArgumentProblem">A value cannot be used.</exception>
    public abstract Request Read(ParseResult parsed, TimeProvider clock);
}
