using Laygate.Reading.Yaml;
using Laygate.Rules.Results;

namespace Laygate.Reading.Imports;

/// <summary>A value that was imported.</summary>
/// <param name="Key">Key of the plan.</param>
/// <param name="Text">Its value as a plan writes it.</param>
public sealed record ImportedValue(string Key, string Text)
{
    /// <summary>Ids, where the key takes several.</summary>
    public IReadOnlyList<string> Ids { get; init; } = [];

    /// <summary>Where it stands in the file from outside.</summary>
    public TextSpan Span { get; init; } = TextSpan.FileStart;
}

/// <summary>An entry of a list of a plan that was imported, in the order of the keys of the plan.</summary>
/// <param name="Values">Its values.</param>
public sealed record ImportedEntry(IReadOnlyList<ImportedValue> Values)
{
    /// <summary>The text of a key; null where it is not stated.</summary>
    /// <param name="key">The key.</param>
    public string? this[string key] => Values.FirstOrDefault(value => string.Equals(value.Key, key, StringComparison.Ordinal))?.Text;
}

/// <summary>What was imported from a file, or why nothing was: a file with one bad row gives nothing.</summary>
/// <param name="Kind">What: weather, trucks, plants or loads.</param>
/// <param name="File">The file, as it is shown.</param>
/// <param name="Hash">SHA-256 of its bytes, hexadecimal.</param>
/// <param name="Entries">Entries of the list of the plan; none where there are problems. Loads are entries with the keys of their columns.</param>
/// <param name="Problems">Why nothing was imported.</param>
/// <param name="Notes">What was seen and changes nothing.</param>
public sealed record Import(string Kind, string File, string Hash, IReadOnlyList<ImportedEntry> Entries, IReadOnlyList<Problem> Problems, IReadOnlyList<Problem> Notes)
{
    /// <summary>Keys of the group around the list that the file states, such as the height of the wind.</summary>
    public IReadOnlyList<ImportedValue> Around { get; init; } = [];
}
