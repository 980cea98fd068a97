using System.Collections.Concurrent;
using Laygate.Reading.Parts;
using Laygate.Reading.RuleFiles;

namespace Laygate.Cli.Files;

/// <summary>
/// Files that plans use, on the disk. The folder that a plan belongs to is the nearest one above it that holds <c>laygate.yaml</c> or <c>.git</c>, else
/// its own; nothing outside it is read, and nothing behind a link.
/// </summary>
/// <param name="revision">Git revision at which the files are read; null: as they are.</param>
internal sealed class PartFilesOnDisk(string? revision = null) : IPartFiles
{
    private readonly Lazy<Revisions> revisions = new(() => new Revisions());
    private readonly ConcurrentDictionary<string, IReadOnlyList<NamedFile>> common = new(StringComparer.Ordinal);

    /// <inheritdoc/>
    public PartText Read(string from, string name)
    {
        var folder = FolderOf(from);
        var root = RootOf(folder);
        if (Path.IsPathRooted(name))
        {
            return new PartText(name, null, "A path that begins at the root of a disk belongs to one machine only.");
        }

        var path = Path.GetFullPath(Path.Combine(folder, name));
        var shown = Shown(path);
        if (Refusal(root, path) is { } refusal)
        {
            return new PartText(shown, null, refusal);
        }

        return revision is null ? Now(shown, path)
            : revisions.Value.Show(revision, path) is { } bytes ? new PartText(shown, bytes) : new PartText(shown, null, $"There was no such file at {revision}.");
    }

    /// <inheritdoc/>
    public IReadOnlyList<NamedFile> Common(string plan) => common.GetOrAdd(RootOf(FolderOf(plan)), root =>
    {
        var path = Path.Combine(root, SettingsFile.Name);
        var shown = Shown(path);
        var text = revision is null ? Now(shown, path).Bytes : revisions.Value.Show(revision, path);
        return text is null ? [] : SettingsFile.Read(shown, text).Settings?.Uses ?? [];
    });

    private static string FolderOf(string file) =>
        file is "-" ? Directory.GetCurrentDirectory() : Path.GetDirectoryName(Path.GetFullPath(file)) ?? Directory.GetCurrentDirectory();

    private static string Shown(string path) => Path.GetRelativePath(Directory.GetCurrentDirectory(), path).Replace('\\', '/');

    private static PartText Now(string shown, string path)
    {
        var file = new FileInfo(path);
        var refusal = !file.Exists ? "There is no such file." : file.Length > PlanFiles.LongestRead ? "It is too large to be read." : null;
        return refusal is null ? new PartText(shown, File.ReadAllBytes(path)) : new PartText(shown, null, refusal);
    }

    private static string? Refusal(string root, string path)
    {
        if (!path.StartsWith(root + Path.DirectorySeparatorChar, StringComparison.Ordinal))
        {
            return $"It lies outside the folder that the plan belongs to ({Path.GetRelativePath(Directory.GetCurrentDirectory(), root)}).";
        }

        for (var part = path; part.Length > root.Length; part = Path.GetDirectoryName(part)!)
        {
            if (new FileInfo(part).LinkTarget is not null)
            {
                return "The way to it leads through a link.";
            }
        }

        return null;
    }

    /// <summary>The folder that a plan belongs to.</summary>
    /// <param name="folder">Folder of the plan, as a full path.</param>
    public static string RootOf(string folder)
    {
        for (var at = folder; at is not null; at = Path.GetDirectoryName(at))
        {
            if (File.Exists(Path.Combine(at, SettingsFile.Name)) || Path.Exists(Path.Combine(at, ".git")))
            {
                return at;
            }
        }

        return folder;
    }
}
