namespace Laygate.Register;

/// <summary>What is kept of a submission, byte for byte.</summary>
public enum ContentKind
{
    /// <summary>The plan.</summary>
    Text,

    /// <summary>A file that came with it.</summary>
    File,

    /// <summary>The archive in which they came.</summary>
    Archive,

    /// <summary>A file of the record of a shift.</summary>
    Record,

    /// <summary>A report, as JSON.</summary>
    Report,

    /// <summary>The plots of a report, packed.</summary>
    Pictures,

    /// <summary>A document that was printed at a screening, packed.</summary>
    Document,
}

/// <summary>One of the contents of a submission.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Of">Number of the screening or of the record that it belongs to; 0 for what was handed in with the plan.</param>
/// <param name="Place">Its place among the files; 0 where there is one.</param>
/// <param name="Name">Its name.</param>
/// <param name="Bytes">Its bytes, unpacked.</param>
public sealed record KeptContent(ContentKind Kind, int Of, int Place, string Name, byte[] Bytes);

/// <summary>A content whose names are replaced.</summary>
/// <param name="Content">What it was.</param>
/// <param name="Bytes">What stands in its place, unpacked.</param>
public sealed record ReplacedContent(KeptContent Content, byte[] Bytes);

/// <summary>What becomes of the contents of a submission.</summary>
/// <param name="Contents">Those that change.</param>
/// <param name="Names">Names that were found.</param>
/// <param name="Words">Replaces names in a text that was taken from the plan, such as its title.</param>
public sealed record ReplacedContents(IReadOnlyList<ReplacedContent> Contents, IReadOnlyList<string> Names, Func<string, string> Words);

/// <summary>Replaces names of people in what is kept of a submission. The register knows no form of plans or reports; whoever does, does this.</summary>
public interface INameReplacer
{
    /// <summary>Replaces the names in all contents of a submission, and each plain hash of one that changes.</summary>
    /// <param name="contents">All that is kept of it.</param>
    ReplacedContents Replace(IReadOnlyList<KeptContent> contents);
}
