namespace Laygate.Reading.Yaml;

/// <summary>
/// How much a file may ask of the reader. Far above any real plan; they keep a hostile file from using up memory or time.
/// </summary>
public static class ReadingLimits
{
    /// <summary>Largest file, in bytes.</summary>
    public const int Bytes = 1024 * 1024;

    /// <summary>Deepest nesting of lists and maps, aliases expanded.</summary>
    public const int Depth = 64;

    /// <summary>Most aliases in a file.</summary>
    public const int Aliases = 100;

    /// <summary>Most keys, values, lists and maps in a file, aliases expanded.</summary>
    public const int Nodes = 50_000;

    /// <summary>Most problems that are listed for a file.</summary>
    public const int Problems = 100;
}
