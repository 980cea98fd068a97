using Laygate.Reading.Yaml;

namespace Laygate.Reading.Plans;

/// <summary>What one mapping collects.</summary>
internal sealed class MappingContext
{
    /// <summary>What is wrong inside a measure, a date, a time or a count, in the order in which it was met.</summary>
    public List<ReadingProblem> Problems { get; } = [];

    /// <summary>Whether something has not the shape that the schema asks for.</summary>
    public bool IsMisshapen { get; set; }

    /// <summary>Every key that was asked for, list entries as <c>[]</c>; a test compares them with the schema. Null when nobody asks.</summary>
    public ISet<string>? KeysRead { get; init; }
}
