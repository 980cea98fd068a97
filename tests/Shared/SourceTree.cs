namespace Laygate.Tests;

/// <summary>Where the repository lies whose tests run.</summary>
internal static class SourceTree
{
    /// <summary>The folder that holds <c>Laygate.slnx</c>.</summary>
    public static string Root { get; } = FindRoot();

    private static string FindRoot()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Laygate.slnx")))
        {
            folder = folder.Parent;
        }

        return folder?.FullName ?? throw new InvalidOperationException("The tests run inside the repository.");
    }
}
