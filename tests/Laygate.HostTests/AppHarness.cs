using System.Text;
using Laygate.Cli;
using Laygate.Cli.Output;

namespace Laygate.HostTests;

/// <summary>Runs the program inside the test, in a folder of its own, with what it wrote.</summary>
internal sealed class AppHarness : IDisposable
{
    private static readonly DateTimeOffset Noon = new(2031, 5, 4, 12, 0, 0, TimeSpan.Zero);

    public string Folder { get; } = Directory.CreateTempSubdirectory("laygate-test-").FullName;

    public FakePipeline Pipeline { get; init; } = new();

    public string Out { get; private set; } = string.Empty;

    public string Error { get; private set; } = string.Empty;

    public string Input { get; init; } = string.Empty;

    public bool Colour { get; init; }

    public bool Trace { get; init; }

    public string Plan(string name, string text)
    {
        var path = Path.Combine(Folder, name);
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        File.WriteAllText(path, text);
        return path;
    }

    public int Run(params string[] arguments)
    {
        using var output = new MemoryStream();
        using var error = new StringWriter { NewLine = "\n" };
        var streams = new Streams
        {
            Input = () => new MemoryStream(Encoding.UTF8.GetBytes(Input)),
            Out = output,
            Error = error,
            Colour = Colour,
        };
        var code = new App(Pipeline, streams, new FixedClock(), Trace).Run(arguments);
        Out = Encoding.UTF8.GetString(output.ToArray());
        Error = error.ToString();
        return code;
    }

    public void Dispose() => Directory.Delete(Folder, recursive: true);

    private sealed class FixedClock : TimeProvider
    {
        public override TimeZoneInfo LocalTimeZone => TimeZoneInfo.Utc;

        public override DateTimeOffset GetUtcNow() => Noon;
    }
}
