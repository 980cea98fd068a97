using Laygate.Model.Plans;

namespace Laygate.Rules.Results;

/// <summary>A key of a plan, for lists and pages.</summary>
/// <param name="Path">Where it stands, from the top of the plan: <c>courses.thickness</c>, also where lists lie on the way.</param>
/// <param name="Meaning">What it means.</param>
/// <param name="Value">What stands behind it, as a noun: <c>length</c>, <c>kind of mix</c>, <c>list of groups</c>.</param>
/// <param name="IsRequired">Whether it must be there wherever the group around it is.</param>
/// <param name="Example">An example; null for a group.</param>
public sealed record PlanKey(string Path, string Meaning, string Value, bool IsRequired, string? Example)
{
    /// <summary>The words that it may be; empty where any value may stand.</summary>
    public IReadOnlyList<KeyWord> Words { get; init; } = [];

    /// <summary>Address of the element to which findings assign it, with <c>ID</c> for the id of an entry: <c>course:ID</c>; empty where no finding is about it.</summary>
    public required string Address { get; init; }

    /// <summary>The key within that element, with dots.</summary>
    public required string Within { get; init; }

    /// <summary>What its numbers measure, as rules name it; empty where no range is usual.</summary>
    public string Sort { get; init; } = string.Empty;

    /// <summary>The rules in force that ask for it, by id.</summary>
    public IReadOnlyList<KeyReader> Rules { get; init; } = [];
}

/// <summary>A word of a closed list.</summary>
/// <param name="Word">The word.</param>
/// <param name="Meaning">What it means.</param>
public sealed record KeyWord(string Word, string Meaning);

/// <summary>A rule that asks for a key.</summary>
/// <param name="Rule">Its id.</param>
/// <param name="Title">Its title.</param>
/// <param name="FromStage">Stage from which it speaks.</param>
public sealed record KeyReader(string Rule, string Title, Stage FromStage);
