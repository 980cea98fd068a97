namespace Laygate.Reading.Yaml;

/// <summary>Why a text cannot be taken as it stands, and where.</summary>
/// <param name="Message">What is wrong, in one plain sentence or two.</param>
/// <param name="Position">Where the text is that must change.</param>
/// <param name="Hint">What to do about it; null where the message says it already.</param>
public sealed record ReadingProblem(string Message, TextSpan Position, string? Hint = null)
{
    /// <summary>For how many problems that are not listed it stands; 0 for a problem of its own.</summary>
    internal int Unlisted { get; init; }
}

/// <summary>What a file holds: its documents, or what keeps them from being read.</summary>
/// <param name="Documents">The documents that could be read, in file order.</param>
/// <param name="Problems">All problems found, in file order. With one problem or more the documents are not to be relied on.</param>
public sealed record ReadingResult(IReadOnlyList<YamlDocument> Documents, IReadOnlyList<ReadingProblem> Problems)
{
    /// <summary>Whether the file could be read without a problem.</summary>
    public bool IsSound => Problems.Count == 0;
}
