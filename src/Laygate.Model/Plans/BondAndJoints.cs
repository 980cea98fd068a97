using Laygate.Model.Measures;

namespace Laygate.Model.Plans;

/// <summary>Tack between courses.</summary>
public sealed record BondCoat
{
    /// <summary>Id.</summary>
    public required string Id { get; init; }

    /// <summary>Id of the course above it.</summary>
    public required string Below { get; init; }

    /// <summary>Whether a coat is applied; a plan may state that there is none.</summary>
    public bool? Applied { get; init; }

    /// <summary>Why no coat is applied.</summary>
    public string? Reason { get; init; }

    /// <summary>Binder.</summary>
    public BondBinder? Binder { get; init; }

    /// <summary>Rate as mass per area.</summary>
    public Measure<AreaDensity>? MassRate { get; init; }

    /// <summary>Rate as volume per area.</summary>
    public Measure<FilmThickness>? VolumeRate { get; init; }

    /// <summary>What the rate counts.</summary>
    public RateBasis? Basis { get; init; }

    /// <summary>Binder that stays, as a share of what is sprayed.</summary>
    public Measure<Ratio>? Residue { get; init; }

    /// <summary>When it is sprayed.</summary>
    public Moment? Sprayed { get; init; }

    /// <summary>Whether it has broken before laying.</summary>
    public bool? Broken { get; init; }

    /// <summary>Whether traffic uses it before laying.</summary>
    public bool? Trafficked { get; init; }
}

/// <summary>A joint.</summary>
public sealed record Joint
{
    /// <summary>Id.</summary>
    public required string Id { get; init; }

    /// <summary>Direction.</summary>
    public JointKind? Kind { get; init; }

    /// <summary>Id of the uppermost course it cuts.</summary>
    public string? Course { get; init; }

    /// <summary>Id of the run at whose side or end it lies.</summary>
    public string? Run { get; init; }

    /// <summary>Id of the run on the other side of a longitudinal joint.</summary>
    public string? Beside { get; init; }

    /// <summary>Where it lies, in words.</summary>
    public string? Where { get; init; }

    /// <summary>Distance to the nearest parallel joint of the course below.</summary>
    public Measure<Length>? OffsetBelow { get; init; }

    /// <summary>Time at one point between the paver that makes the edge and the one that lays against it.</summary>
    public Measure<Duration>? Delay { get; init; }

    /// <summary>How the face is made.</summary>
    public JointForm? Form { get; init; }

    /// <summary>Over what height it is treated.</summary>
    public JointHeight? Height { get; init; }

    /// <summary>Where a longitudinal joint lies in the finished surface.</summary>
    public JointLine? Line { get; init; }

    /// <summary>Length of the thin end that is cut off before laying goes on.</summary>
    public Measure<Length>? Removed { get; init; }

    /// <summary>Whether the face is cleaned and coated.</summary>
    public bool? Coated { get; init; }
}
