namespace Laygate.Cli.Checking;

/// <summary>The only place that knows the entry points of Validation.</summary>
internal sealed class ValidationPipeline : ICheckPipeline
{
    /// <summary>Whether this build contains the pipeline. The tests of the built program that need one are skipped without it.</summary>
    public const bool Present = false;

    /// <inheritdoc/>
    public CheckSession Open(CheckRequest request) =>
        throw new NotSupportedException("This build has no pipeline yet.");
}
