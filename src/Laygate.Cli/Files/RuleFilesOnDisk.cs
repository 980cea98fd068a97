using Laygate.Reading;
using Laygate.Reading.RuleFiles;

namespace Laygate.Cli.Files;

/// <summary>Rule files of one's own on the disk.</summary>
internal sealed class RuleFilesOnDisk : IRuleFiles
{
    /// <inheritdoc/>
    public IRuleFolder? Folder(string path) => Directory.Exists(path) ? new RuleFolderOnDisk(path) : null;

    /// <inheritdoc/>
    byte[]? IRuleFiles.File(string path) => File.Exists(path) ? File.ReadAllBytes(path) : null;

    private sealed class RuleFolderOnDisk(string path) : IRuleFolder
    {
        // Running cases asks for the list thousands of times.
        private readonly Lazy<IReadOnlyList<string>> files = new(() =>
            [.. Directory.EnumerateFiles(path, "*", SearchOption.AllDirectories).Select(file => Path.GetRelativePath(path, file).Replace('\\', '/'))]);

        public string Name => path;

        public IReadOnlyList<string> Files => files.Value;

        public byte[] Read(string file) => File.ReadAllBytes(Path.Combine(path, file));
    }
}
