using System.Reflection;
using Laygate.Cli.Arguments;
using Laygate.Cli.Checking;
using Laygate.Cli.Output;
using Laygate.Cli.Verbs;
using Laygate.Reporting.Text;

namespace Laygate.Cli;

/// <summary>The program without its process: arguments in, exit code out.</summary>
internal sealed class App(ICheckPipeline pipeline, Streams streams, TimeProvider clock, bool trace)
{
    /// <summary>Version of the program.</summary>
    public static string Version { get; } =
        typeof(App).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion ?? "0";

    /// <summary>Address of the project, which the build takes from <c>RepositoryUrl</c>; null while it has none.</summary>
    public static string? Address { get; } =
        Configured("RepositoryUrl");

    /// <summary>Address below which the pages of the rules stand, which the build takes from <c>RulePagesUrl</c>; null while there is none.</summary>
    public static string? RulePages { get; } = Configured("RulePagesUrl");

    private static string? Configured(string key) =>
        typeof(App).Assembly.GetCustomAttributes<AssemblyMetadataAttribute>().FirstOrDefault(metadata => string.Equals(metadata.Key, key, StringComparison.Ordinal))?.Value;

    /// <summary>Runs one command.</summary>
    /// <returns>The exit code.</returns>
    public int Run(IReadOnlyList<string> arguments)
    {
        try
        {
            return Do(new CommandLine(clock).Read(arguments));
        }
        catch (ArgumentProblem problem)
        {
            streams.Error.WriteLine("laygate: " + PlainText.Show(problem.Message));
            return ExitCodes.Unreadable;
        }
#pragma warning disable CA1031 // The last line of defence: whatever went wrong becomes one line and exit code 3.
        catch (Exception error)
#pragma warning restore CA1031
        {
            streams.Error.WriteLine(trace
                ? error.ToString()
                : $"laygate: an error of the program itself ({error.GetType().Name}). Please report it; LAYGATE_TRACE=1 shows where it happened.");
            return ExitCodes.OwnError;
        }
    }

    private int Do(Request request)
    {
        switch (request)
        {
            case Request.Check check:
                return new CheckRun(pipeline, streams, Version).Run(check.Arguments);
            case Request.Do verb:
                return verb.Run(new Host(pipeline, streams, clock, Version));
            case Request.Help help:
                Print(help.Text);
                return ExitCodes.Clean;
            default:
                Print(VersionText.Of(Version));
                return ExitCodes.Clean;
        }
    }

    private void Print(string text)
    {
        streams.Out.Write(Streams.Utf8.GetBytes(text));
        streams.Out.Flush();
    }
}

/// <summary>What a command works with.</summary>
/// <param name="Pipeline">The checks.</param>
/// <param name="Streams">Input and output.</param>
/// <param name="Clock">The clock.</param>
/// <param name="Version">Version of the program.</param>
internal sealed record Host(ICheckPipeline Pipeline, Streams Streams, TimeProvider Clock, string Version);
