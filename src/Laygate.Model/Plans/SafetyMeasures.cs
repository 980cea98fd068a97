namespace Laygate.Model.Plans;

/// <summary>A safety, health or environment measure.</summary>
public sealed record SafetyMeasure
{
    /// <summary>Id.</summary>
    public required string Id { get; init; }

    /// <summary>Kind.</summary>
    public MeasureKind? Kind { get; init; }

    /// <summary>What is done.</summary>
    public string? What { get; init; }

    /// <summary>Where.</summary>
    public string? Where { get; init; }

    /// <summary>Who answers for it.</summary>
    public string? Who { get; init; }

    /// <summary>When.</summary>
    public string? When { get; init; }

    /// <summary>How it is checked.</summary>
    public string? Checked { get; init; }

    /// <summary>Document that it refers to.</summary>
    public string? Reference { get; init; }
}
