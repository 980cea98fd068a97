using Laygate.Cli.Checking;
using Laygate.Cli.Output;

namespace Laygate.Cli;

internal static class Program
{
    private static int Main(string[] arguments)
    {
        StartMemory.Begin(isShort: arguments.Contains("--quick", StringComparer.Ordinal));
        return new App(
            new ValidationPipeline(),
            Streams.OfProcess(),
            TimeProvider.System,
            Environment.GetEnvironmentVariable("LAYGATE_TRACE") is { Length: > 0 }).Run(arguments);
    }
}
