using Laygate.Model.Measures;

namespace Laygate.Model.Plans;

/// <summary>What is done for the skid resistance of the fresh surface.</summary>
public sealed record EarlyFriction
{
    /// <summary>Whether grit is spread.</summary>
    public bool? Grit { get; init; }

    /// <summary>Size of the grit, for example <c>1/3 mm</c>.</summary>
    public string? GritSize { get; init; }

    /// <summary>Rate.</summary>
    public Measure<AreaDensity>? Rate { get; init; }

    /// <summary>Minutes behind the last screed at which the last grit is spread.</summary>
    public Measure<Duration>? GritBy { get; init; }

    /// <summary>Warning signs for a slippery surface.</summary>
    public bool? Signs { get; init; }

    /// <summary>Temporary speed limit.</summary>
    public Measure<Speed>? TemporaryLimit { get; init; }
}

/// <summary>When traffic may use the surface.</summary>
public sealed record Opening
{
    /// <summary>Planned time of opening.</summary>
    public Moment? At { get; init; }

    /// <summary>Planned time from the last metre laid to opening.</summary>
    public Measure<Duration>? After { get; init; }

    /// <summary>Temperature below which it is opened.</summary>
    public PlacedTemperature? Below { get; init; }

    /// <summary>Who opens.</summary>
    public string? ReleasedBy { get; init; }
}
