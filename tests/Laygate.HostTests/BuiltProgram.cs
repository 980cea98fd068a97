using System.Diagnostics;
using System.Text;

namespace Laygate.HostTests;

/// <summary>
/// Runs the built program as a process; <c>LAYGATE_PROGRAM</c> names another one, for example the native one. A usual test run asks a process that stays
/// (<see cref="WarmProgram"/>) where a test is not about the process.
/// </summary>
internal static class BuiltProgram
{
    public sealed record Result(int Code, string Out, string Error);

    private static bool StartsEachTime => FullRun.IsAsked || Environment.GetEnvironmentVariable("LAYGATE_PROGRAM") is { Length: > 0 };

    /// <summary>Runs it to its end; a run that hangs is killed and fails the test.</summary>
    public static Result Run(byte[]? input, string folder, params string[] arguments) =>
        StartsEachTime ? RunProcess(input, folder, arguments) : WarmProgram.Run(input ?? [], folder, arguments);

    /// <summary>The same, always in a process of its own.</summary>
    public static Result RunProcess(byte[]? input, string folder, params string[] arguments)
    {
        using var process = new Process { StartInfo = Start(folder, arguments) };
        process.Start();
        var output = process.StandardOutput.ReadToEndAsync();
        var error = process.StandardError.ReadToEndAsync();
        Feed(process, input ?? []);
        if (!process.WaitForExit(Patience.Longest))
        {
            process.Kill(entireProcessTree: true);
            Assert.Fail($"laygate {string.Join(' ', arguments)} does not end");
        }

        process.WaitForExit();
        return new Result(process.ExitCode, output.GetAwaiter().GetResult(), error.GetAwaiter().GetResult());
    }

    private static void Feed(Process process, byte[] input)
    {
        try
        {
            process.StandardInput.BaseStream.Write(input);
            process.StandardInput.Close();
        }
        catch (IOException)
        {
            // The program ended before it read its input; its code tells whether that was right.
        }
    }

    /// <summary>A shell script that runs it, so that documented commands can be run as they stand.</summary>
    public static string Wrapper() => Environment.GetEnvironmentVariable("LAYGATE_PROGRAM") is { Length: > 0 } program
        ? $"#!/bin/sh\nexec '{program}' \"$@\"\n"
        : $"#!/bin/sh\nexec '{Environment.GetEnvironmentVariable("DOTNET_HOST_PATH") ?? "dotnet"}' '{Library()}' \"$@\"\n";

    private static ProcessStartInfo Start(string folder, string[] arguments)
    {
        var start = new ProcessStartInfo
        {
            UseShellExecute = false,
            WorkingDirectory = folder,
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            StandardOutputEncoding = Encoding.UTF8,
            StandardErrorEncoding = Encoding.UTF8,
        };
        start.Environment["LAYGATE_TRACE"] = string.Empty;
        if (Environment.GetEnvironmentVariable("LAYGATE_PROGRAM") is { Length: > 0 } program)
        {
            start.FileName = program;
        }
        else
        {
            start.FileName = Environment.GetEnvironmentVariable("DOTNET_HOST_PATH") is { Length: > 0 } host ? host : "dotnet";
            start.ArgumentList.Add(Library());
        }

        foreach (var argument in arguments)
        {
            start.ArgumentList.Add(argument);
        }

        return start;
    }

    // artifacts/bin/Laygate.HostTests/<configuration>/ -> artifacts/bin/Laygate.Cli/<configuration>/laygate.dll
    private static string Library()
    {
        var here = new DirectoryInfo(AppContext.BaseDirectory.TrimEnd(Path.DirectorySeparatorChar));
        var library = Path.Combine(here.Parent!.Parent!.FullName, "Laygate.Cli", here.Name, "laygate.dll");
        Assert.True(File.Exists(library), $"{library} is not built");
        return library;
    }
}
