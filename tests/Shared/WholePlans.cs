namespace Laygate.Tests;

/// <summary>The examples as files that stand alone: the first one uses files of parts, and stands written out beside the tests.</summary>
internal static class WholePlans
{
    /// <summary>The path of an example.</summary>
    public static string PathOf(string name) => Path.Combine(SourceTree.Root, name is "quay-road-hot-on-hot.yaml" ? "tests/Shared/Plans" : "examples", name);
}
