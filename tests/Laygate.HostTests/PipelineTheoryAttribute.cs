using Laygate.Cli.Checking;

namespace Laygate.HostTests;

/// <summary>A theory that runs the built program with its rule book; skipped, and counted as skipped, while the build has none.</summary>
[AttributeUsage(AttributeTargets.Method)]
internal sealed class PipelineTheoryAttribute : TheoryAttribute
{
    public PipelineTheoryAttribute()
    {
        if (!ValidationPipeline.Present)
        {
            Skip = "This build has no rule pipeline yet.";
        }
    }
}
