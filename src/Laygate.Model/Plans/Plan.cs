namespace Laygate.Model.Plans;

/// <summary>A job plan as stated: nothing is added, absence is null. Every element that a finding may name has an id.</summary>
public sealed record Plan
{
    /// <summary>Version of the plan format; this program reads version 1.</summary>
    public required int Format { get; init; }

    /// <summary>Who and what the plan is.</summary>
    public required Identity Identity { get; init; }

    /// <summary>Where the job lies.</summary>
    public Location? Location { get; init; }

    /// <summary>Use, traffic, closure and conditions of the site.</summary>
    public Site? Site { get; init; }

    /// <summary>The working period.</summary>
    public Shift? Shift { get; init; }

    /// <summary>Weather as planned: an envelope, hours, or both.</summary>
    public Weather? Weather { get; init; }

    /// <summary>What is laid upon.</summary>
    public Existing? Existing { get; init; }

    /// <summary>Mixes that the courses are made of.</summary>
    public IReadOnlyList<Mix> Mixes { get; init; } = [];

    /// <summary>Courses from bottom to top; at least one.</summary>
    public required IReadOnlyList<Course> Courses { get; init; }

    /// <summary>Strips laid end to end.</summary>
    public IReadOnlyList<Run> Runs { get; init; } = [];

    /// <summary>Plants, trucks and feeder.</summary>
    public Supply? Supply { get; init; }

    /// <summary>Paving machines.</summary>
    public IReadOnlyList<Paver> Pavers { get; init; } = [];

    /// <summary>Phases and rollers.</summary>
    public Rolling? Rolling { get; init; }

    /// <summary>Bond coats below courses.</summary>
    public IReadOnlyList<BondCoat> BondCoats { get; init; } = [];

    /// <summary>Joints.</summary>
    public IReadOnlyList<Joint> Joints { get; init; } = [];

    /// <summary>What is done for the skid resistance of the fresh surface.</summary>
    public EarlyFriction? EarlyFriction { get; init; }

    /// <summary>When traffic may use the surface.</summary>
    public Opening? Opening { get; init; }

    /// <summary>Tests.</summary>
    public IReadOnlyList<Test> Tests { get; init; } = [];

    /// <summary>Steps that wait for a criterion.</summary>
    public IReadOnlyList<HoldPoint> HoldPoints { get; init; } = [];

    /// <summary>Actions held ready for events.</summary>
    public IReadOnlyList<Contingency> Contingencies { get; init; } = [];

    /// <summary>Safety, health and environment measures.</summary>
    public IReadOnlyList<SafetyMeasure> Measures { get; init; } = [];

    /// <summary>Documents and governing codes.</summary>
    public IReadOnlyList<Document> Documents { get; init; } = [];
}

/// <summary>Who and what the plan is.</summary>
public sealed record Identity
{
    /// <summary>Id of the plan; lower case with hyphens.</summary>
    public required string Id { get; init; }

    /// <summary>What the plan must already know.</summary>
    public required Stage Stage { get; init; }

    /// <summary>Title in words.</summary>
    public string? Title { get; init; }

    /// <summary>Revision of the plan.</summary>
    public string? Revision { get; init; }

    /// <summary>Date of the revision.</summary>
    public DateOnly? Date { get; init; }

    /// <summary>Revision that this one replaces.</summary>
    public string? Supersedes { get; init; }

    /// <summary>Contract number or name.</summary>
    public string? Contract { get; init; }

    /// <summary>Client.</summary>
    public string? Client { get; init; }

    /// <summary>Contractor.</summary>
    public string? Contractor { get; init; }

    /// <summary>Language of the crew, as an ISO 639-1 code.</summary>
    public string? Language { get; init; }

    /// <summary>Who prepared the plan.</summary>
    public Signature? Prepared { get; init; }

    /// <summary>Who checked it.</summary>
    public Signature? Checked { get; init; }

    /// <summary>Who approves it.</summary>
    public Signature? Approved { get; init; }

    /// <summary>Whom to call, by role.</summary>
    public IReadOnlyList<Person> People { get; init; } = [];
}

/// <summary>A name under the plan.</summary>
/// <param name="Name">Name.</param>
/// <param name="Role">Role.</param>
/// <param name="Date">Date of the signature.</param>
public sealed record Signature(string? Name, string? Role, DateOnly? Date);

/// <summary>A person on the shift.</summary>
/// <param name="Id">Id.</param>
/// <param name="Role">Role, for example shift manager.</param>
/// <param name="Name">Name.</param>
/// <param name="Call">How the person is reached.</param>
/// <param name="Deputy">Who stands in.</param>
public sealed record Person(string Id, string? Role, string? Name, string? Call, string? Deputy);

/// <summary>A document that governs or supports the plan.</summary>
/// <param name="Id">Id.</param>
/// <param name="Kind">Part that it plays.</param>
/// <param name="Title">Title.</param>
/// <param name="Edition">Edition or date.</param>
public sealed record Document(string Id, DocumentKind? Kind, string? Title, string? Edition)
{
    /// <summary>First day on which the edition holds.</summary>
    public DateOnly? ValidFrom { get; init; }

    /// <summary>Last day on which the edition holds.</summary>
    public DateOnly? ValidTo { get; init; }

    /// <summary>Day on which somebody saw that the edition is in force and that no end is announced before the shift.</summary>
    public DateOnly? SeenInForce { get; init; }
}
