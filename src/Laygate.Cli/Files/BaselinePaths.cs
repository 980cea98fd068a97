namespace Laygate.Cli.Files;

/// <summary>How a baseline names plans: by the way from its own folder, so that it holds wherever the repository is checked out.</summary>
internal static class BaselinePaths
{
    /// <summary>The name of a plan in a baseline.</summary>
    /// <param name="baseline">The baseline's file.</param>
    /// <param name="plan">The plan's file.</param>
    public static string Of(string baseline, string plan) =>
        Path.GetRelativePath(Path.GetDirectoryName(Path.GetFullPath(baseline)) ?? ".", Path.GetFullPath(plan)).Replace('\\', '/');
}
