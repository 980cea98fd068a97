using Laygate.Checking.Verification;

namespace Laygate.ConformanceTests.Verification;

/// <summary>The shipped cases of the verification manual.</summary>
internal static class VerificationFiles
{
    public static string Root { get; } = SourceTree.Root;

    public static string Folder => Path.Combine(Root, "docs", "verification");

    /// <summary>Names of all case files below the folder, with forward slashes, in ordinal order.</summary>
    public static IReadOnlyList<string> Names { get; } =
    [
        .. Directory.EnumerateFiles(Folder, "*.yaml", SearchOption.AllDirectories)
            .Select(path => Path.GetRelativePath(Folder, path).Replace('\\', '/')).Order(StringComparer.Ordinal),
    ];

    public static VerificationRunner Runner() => new();

    public static VerificationFile Read(string name) => new(name, File.ReadAllBytes(Path.Combine(Folder, name)));
}
