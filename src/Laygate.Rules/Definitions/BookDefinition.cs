namespace Laygate.Rules.Definitions;

/// <summary>A rule book as data: the general rules and their bibliography, before any specification is laid over them.</summary>
public sealed record BookDefinition
{
    /// <summary>Name of the general layer.</summary>
    public string Name { get; init; } = "general-practice";

    /// <summary>Title of the general layer.</summary>
    public string Title { get; init; } = "General practice";

    /// <summary>Edition: version of the rule book.</summary>
    public required string Edition { get; init; }

    /// <summary>The general rules.</summary>
    public required IReadOnlyList<RuleDefinition> Rules { get; init; }

    /// <summary>The bibliography.</summary>
    public required IReadOnlyList<Source> Sources { get; init; }
}
