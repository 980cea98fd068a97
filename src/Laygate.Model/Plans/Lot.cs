using Laygate.Model.Measures;

namespace Laygate.Model.Plans;

/// <summary>A lot of acceptance of a job: so much of one course as is accepted together, over one shift or several.</summary>
public sealed record Lot
{
    /// <summary>Its id.</summary>
    public required string Id { get; init; }

    /// <summary>Id of its course.</summary>
    public required string Course { get; init; }

    /// <summary>Id of the test for which the course is divided so; null where it is for all of them.</summary>
    public string? Test { get; init; }

    /// <summary>Id of the shift in which it begins.</summary>
    public required string BeginsIn { get; init; }

    /// <summary>Id of the shift with which it ends at the latest; null where it ends when it is full.</summary>
    public string? EndsIn { get; init; }

    /// <summary>Mass or length at which it is full; null where only the shift ends it.</summary>
    public IMeasure? Size { get; init; }

    /// <summary>Mass or length of the parts from each of which one sample is taken.</summary>
    public IMeasure? Sublot { get; init; }

    /// <summary>Tests that it needs.</summary>
    public int? Tests { get; init; }
}
