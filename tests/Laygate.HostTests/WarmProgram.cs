using System.Collections.Concurrent;
using System.Diagnostics;
using System.Text;
using Laygate.Cli;
using Laygate.Cli.Checking;
using Laygate.Cli.Output;

namespace Laygate.HostTests;

/// <summary>
/// The program in a process that stays, one call after the other, each in a folder of its own: a usual test run starts it some hundred times, and starting takes
/// longer than most calls. The full run starts the program as it ships each time.
/// </summary>
internal sealed class WarmProgram : IDisposable
{
    private static readonly ConcurrentBag<WarmProgram> Idle = [];
    private readonly Process process;
    private readonly BinaryWriter to;
    private readonly BinaryReader from;

    private WarmProgram()
    {
        var start = new ProcessStartInfo(Environment.GetEnvironmentVariable("DOTNET_HOST_PATH") is { Length: > 0 } host ? host : "dotnet", [typeof(WarmProgram).Assembly.Location])
        {
            UseShellExecute = false,
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
        };
        start.Environment["LAYGATE_TRACE"] = string.Empty;
        process = Process.Start(start)!;
        to = new BinaryWriter(process.StandardInput.BaseStream, Encoding.UTF8);
        from = new BinaryReader(process.StandardOutput.BaseStream, Encoding.UTF8);
    }

    // For whoever runs the tests one at a time and must see what they reach: tests/Tools/mutation.
    private static bool IsHere => Environment.GetEnvironmentVariable("LAYGATE_IN_PROCESS") is { Length: > 0 };

    /// <summary>Runs it to its end; a run that hangs is killed and fails the test.</summary>
    public static BuiltProgram.Result Run(byte[] input, string folder, string[] arguments)
    {
        if (IsHere)
        {
            return RunHere(input, folder, arguments);
        }

        var program = Idle.TryTake(out var idle) ? idle : new WarmProgram();
        try
        {
            var answer = Task.Run(() => program.Ask(input, folder, arguments));
            Assert.True(answer.Wait(Patience.Longest), $"laygate {string.Join(' ', arguments)} does not end");
            Idle.Add(program);
            return answer.Result;
        }
        catch
        {
            program.Dispose();
            throw;
        }
    }

    /// <summary>Ends the process.</summary>
    public void Dispose()
    {
        if (!process.HasExited)
        {
            process.Kill(entireProcessTree: true);
        }

        process.Dispose();
    }

    private static BuiltProgram.Result RunHere(byte[] input, string folder, string[] arguments)
    {
        Environment.CurrentDirectory = folder;
        try
        {
            return Run(input, arguments);
        }
        finally
        {
            Environment.CurrentDirectory = Path.GetTempPath();
        }
    }

    private static int Main()
    {
        using var calls = new BinaryReader(Console.OpenStandardInput(), Encoding.UTF8);
        using var answers = new BinaryWriter(Console.OpenStandardOutput(), Encoding.UTF8);
        while (true)
        {
            try
            {
                Environment.CurrentDirectory = calls.ReadString();
            }
            catch (EndOfStreamException)
            {
                // The tests are over.
                return 0;
            }

            string[] arguments = [.. Enumerable.Range(0, calls.ReadInt32()).Select(_ => calls.ReadString())];
            Answer(answers, calls.ReadBytes(calls.ReadInt32()), arguments);
            Environment.CurrentDirectory = Path.GetTempPath();
        }
    }

    private static void Answer(BinaryWriter answers, byte[] input, string[] arguments)
    {
        var result = Run(input, arguments);
        answers.Write(result.Code);
        answers.Write(result.Out);
        answers.Write(result.Error);
        answers.Flush();
    }

    private static BuiltProgram.Result Run(byte[] input, string[] arguments)
    {
        using var output = new MemoryStream();
        using var error = new StringWriter { NewLine = "\n" };
        var code = new App(new PlanPipeline(), new Streams { Input = () => new MemoryStream(input), Out = output, Error = error }, TimeProvider.System, trace: false).Run(arguments);
        return new BuiltProgram.Result(code, Encoding.UTF8.GetString(output.ToArray()), error.ToString());
    }

    private BuiltProgram.Result Ask(byte[] input, string folder, string[] arguments)
    {
        to.Write(folder);
        to.Write(arguments.Length);
        foreach (var argument in arguments)
        {
            to.Write(argument);
        }

        to.Write(input.Length);
        to.Write(input);
        to.Flush();
        return new BuiltProgram.Result(from.ReadInt32(), from.ReadString(), from.ReadString());
    }
}
