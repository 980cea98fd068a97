using Laygate.Reading.Yaml;

namespace Laygate.Reading.Plans;

/// <summary>What one mapping collects.</summary>
internal sealed class MappingContext
{
    /// <summary>Everything that is wrong, in the order in which it was met.</summary>
    public List<ReadingProblem> Problems { get; } = [];

    /// <summary>Those of them that say what is wrong inside a measure, a date or a time.</summary>
    public List<ReadingProblem> ValueProblems { get; } = [];

    /// <summary>Every key that was asked for, list entries as <c>[]</c>; a test compares them with the schema. Null when nobody asks.</summary>
    public ISet<string>? KeysRead { get; init; }

    /// <summary>Takes a problem inside a measure, a date or a time.</summary>
    public void AddValue(ReadingProblem problem)
    {
        Problems.Add(problem);
        ValueProblems.Add(problem);
    }
}
