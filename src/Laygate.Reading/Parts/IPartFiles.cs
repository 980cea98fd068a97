using Laygate.Rules.Results;

namespace Laygate.Reading.Parts;

/// <summary>What a host can reach of files that a plan uses; nothing outside the folder that the plan belongs to.</summary>
public interface IPartFiles
{
    /// <summary>Reads a file that another one names.</summary>
    /// <param name="from">The file that names it, as it is shown.</param>
    /// <param name="name">The name as written there.</param>
    PartText Read(string from, string name);

    /// <summary>Files that a plan may use although it does not name them: those that the settings of its repository name.</summary>
    /// <param name="plan">File of the plan, as it is shown.</param>
    IReadOnlyList<NamedFile> Common(string plan) => [];
}

/// <summary>The name of a file where it is written.</summary>
/// <param name="Name">The name.</param>
/// <param name="At">Where it stands, with its file.</param>
public sealed record NamedFile(string Name, Position At);

/// <summary>A file of parts, or why it cannot be had.</summary>
/// <param name="File">The file as it is to be shown; the same file has the same name, however it was named.</param>
/// <param name="Bytes">Its bytes; null when it cannot be had.</param>
/// <param name="Refusal">Why not, as a sentence; null when it can.</param>
public sealed record PartText(string File, byte[]? Bytes, string? Refusal = null);

/// <summary>A host that gives plans no other files: what they use is refused.</summary>
public sealed class NoPartFiles : IPartFiles
{
    /// <inheritdoc/>
    public PartText Read(string from, string name) => new(name, null, "Other files cannot be used here.");
}
