using Laygate.Cli.Checking;
using Laygate.Cli.Output;

namespace Laygate.Cli;

internal static class Program
{
    private static int Main(string[] arguments)
    {
        if (arguments.Contains("--quick", StringComparer.Ordinal))
        {
            StartMemory.Begin();
        }

        return new App(
            new PlanPipeline(),
            Streams.OfProcess(),
            TimeProvider.System,
            Environment.GetEnvironmentVariable("LAYGATE_TRACE") is { Length: > 0 }).Run(arguments);
    }
}
