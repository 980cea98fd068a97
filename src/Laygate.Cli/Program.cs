using Laygate.Cli.Checking;
using Laygate.Cli.Output;

namespace Laygate.Cli;

internal static class Program
{
    private static int Main(string[] arguments)
    {
        var pipeline = new PlanPipeline();
        if (arguments is ["check", ..])
        {
            StartMemory.Begin(isShort: arguments.Contains("--quick", StringComparer.Ordinal));
            pipeline.Begin();
        }

        return new App(
            pipeline,
            Streams.OfProcess(),
            TimeProvider.System,
            Environment.GetEnvironmentVariable("LAYGATE_TRACE") is { Length: > 0 }).Run(arguments);
    }
}
