namespace Laygate.Model.Plans;

/// <summary>A test.</summary>
public sealed record Test
{
    /// <summary>Id.</summary>
    public required string Id { get; init; }

    /// <summary>What it examines.</summary>
    public TestKind? Kind { get; init; }

    /// <summary>Id of the course.</summary>
    public string? Course { get; init; }

    /// <summary>Where.</summary>
    public string? Where { get; init; }

    /// <summary>When.</summary>
    public string? When { get; init; }

    /// <summary>By whom.</summary>
    public string? By { get; init; }

    /// <summary>How many or how often.</summary>
    public string? HowMany { get; init; }

    /// <summary>Criterion.</summary>
    public string? Criterion { get; init; }
}

/// <summary>A step that waits for a criterion.</summary>
public sealed record HoldPoint
{
    /// <summary>Id.</summary>
    public required string Id { get; init; }

    /// <summary>The step that waits.</summary>
    public string? Before { get; init; }

    /// <summary>Criterion.</summary>
    public string? Criterion { get; init; }

    /// <summary>Evidence.</summary>
    public string? Evidence { get; init; }

    /// <summary>Owner on this shift.</summary>
    public string? Owner { get; init; }

    /// <summary>Who releases.</summary>
    public string? ReleasedBy { get; init; }
}

/// <summary>An action held ready for an event.</summary>
public sealed record Contingency
{
    /// <summary>Id.</summary>
    public required string Id { get; init; }

    /// <summary>Event.</summary>
    public ContingencyEvent? Event { get; init; }

    /// <summary>When the action begins, for example a length of stop.</summary>
    public string? When { get; init; }

    /// <summary>Action.</summary>
    public string? Action { get; init; }

    /// <summary>Who decides.</summary>
    public string? DecidedBy { get; init; }

    /// <summary>Place or spare that is used.</summary>
    public string? Spare { get; init; }
}
