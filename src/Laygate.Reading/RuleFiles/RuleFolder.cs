namespace Laygate.Reading.RuleFiles;

/// <summary>The files of a folder with rules, handed in by the host: names relative to the folder, divided by <c>/</c>.</summary>
public interface IRuleFolder
{
    /// <summary>Name of the folder as given, for messages.</summary>
    string Name { get; }

    /// <summary>All files in it and below it, in any order.</summary>
    IReadOnlyList<string> Files { get; }

    /// <summary>Reads a file.</summary>
    /// <param name="file">One of <see cref="Files"/>.</param>
    byte[] Read(string file);

    /// <summary>How a file is shown in messages.</summary>
    /// <param name="file">One of <see cref="Files"/>.</param>
    string Shown(string file) => Name.Length == 0 ? file : $"{Name}/{file}";
}

/// <summary>Files held in memory, by name.</summary>
/// <param name="Name">Name of the folder.</param>
/// <param name="Contents">The files.</param>
public sealed record RuleFolderInMemory(string Name, IReadOnlyDictionary<string, byte[]> Contents) : IRuleFolder
{
    /// <inheritdoc/>
    public IReadOnlyList<string> Files => [.. Contents.Keys];

    /// <inheritdoc/>
    public byte[] Read(string file) => Contents[file];
}
