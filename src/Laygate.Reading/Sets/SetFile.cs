using Laygate.Reading.Yaml;

namespace Laygate.Reading.Sets;

/// <summary>A file of a set, exactly as it came.</summary>
/// <param name="Name">Its name in the set, folders divided by <c>/</c>; never used as a path of a disk.</param>
/// <param name="Bytes">Its bytes.</param>
public sealed record SetFile(string Name, byte[] Bytes);

/// <summary>How much a set of files may hold. All figures are our judgement: far above a plan with the parts of a firm, far below what would hurt.</summary>
public static class SetLimits
{
    /// <summary>Most files of a set.</summary>
    public const int Files = 60;

    /// <summary>Largest file, in bytes; the reader takes no larger one.</summary>
    public const int FileBytes = ReadingLimits.Bytes;

    /// <summary>Most bytes of a set, as it is sent and again unpacked.</summary>
    public const int Bytes = 4 << 20;

    /// <summary>How many times its packed size a file of an archive may have, beyond its first 64 KiB; text packs to a tenth or a thirtieth.</summary>
    public const int Ratio = 100;

    /// <summary>Longest name of a file, in characters.</summary>
    public const int Name = 255;

    /// <summary>Most entries of an archive, those for folders included.</summary>
    internal const int Entries = 4 * Files;

    /// <summary>Bytes up to which nothing is said of how well a file packs.</summary>
    internal const int SmallFile = 64 << 10;
}
