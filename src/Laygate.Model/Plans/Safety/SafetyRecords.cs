using Laygate.Model.Measures;

namespace Laygate.Model.Plans;

#pragma warning disable CS1591 // The members are the words themselves; what they mean stands in the plan schema.

/// <summary>What stands between the works and the traffic.</summary>
public enum Separation { RestraintSystem, LargeBeacon, Cone, GuideWall, SmallBeacon, GuideSill, GuideKerb }

/// <summary>Task for which a place is lit.</summary>
public enum LightTask { Access, Passing, Work, Fine, Tunnel, TunnelHeading, FirstAid }

/// <summary>What people breathe.</summary>
public enum Agent { BitumenVapourAndAerosol, AsphaltFumeTotal, AsphaltFumeBenzeneSoluble, RespirableSilica, DieselElementalCarbon }

/// <summary>A step of first aid for burns, the harmful ones included so that they can be judged.</summary>
public enum FirstAidStep
{
    CoolWithWater, LeaveBinderOn, RemoveRings, KeepWarm, CallAmbulance, SayBitumenBurn, SendBurnCard, FlushEyes, RingedLimbIsUrgent, CoverLoosely,
    PullBinderOff, PullStuckClothingOff, SolventOnSkin, Ointment, Ice,
}

#pragma warning restore CS1591

/// <summary>Room between the works and the traffic beside them.</summary>
public sealed record TrafficSpace
{
    /// <summary>What separates works and traffic.</summary>
    public Separation? Separation { get; init; }

    /// <summary>Clearance from the working space to the traffic.</summary>
    public Measure<Length>? Side { get; init; }

    /// <summary>Width in which a person stands or walks beside the machine.</summary>
    public Measure<Length>? Standing { get; init; }

    /// <summary>Whether that person only leans from or stands close to a machine: milling, or making a centre joint.</summary>
    public bool? Leaning { get; init; }

    /// <summary>Whether the open lane is for cars and light vehicles only.</summary>
    public bool? LightTrafficOnly { get; init; }

    /// <summary>Sideways shift of the traffic at the taper.</summary>
    public Measure<Length>? TaperShift { get; init; }

    /// <summary>Length of the taper.</summary>
    public Measure<Length>? Taper { get; init; }

    /// <summary>Length between the taper and the works that stays empty.</summary>
    public Measure<Length>? Buffer { get; init; }

    /// <summary>Gap between the cones beside the works.</summary>
    public Measure<Length>? ConeGap { get; init; }

    /// <summary>Clear width of the way for people on foot.</summary>
    public Measure<Length>? Footway { get; init; }
}

/// <summary>Air in an enclosed place.</summary>
/// <param name="Oxygen">Lowest share of oxygen.</param>
/// <param name="Speed">Lowest speed of the air along the place.</param>
public sealed record EnclosedAir(Measure<Ratio>? Oxygen, Measure<Speed>? Speed);

/// <summary>Vibration on one person, as the mean over eight hours.</summary>
/// <param name="HandArm">On hand and arm.</param>
/// <param name="WholeBody">On the whole body.</param>
/// <param name="Evidence">Where the figures come from.</param>
public sealed record BodyVibration(Measure<Acceleration>? HandArm, Measure<Acceleration>? WholeBody, string? Evidence);

/// <summary>First aid for burns by hot mix or binder.</summary>
public sealed record FirstAid
{
    /// <summary>Steps that the plan names.</summary>
    public IReadOnlyList<FirstAidStep> Steps { get; init; } = [];

    /// <summary>How long a burn is cooled with water.</summary>
    public Measure<Duration>? Cooling { get; init; }

    /// <summary>How long an eye is flushed.</summary>
    public Measure<Duration>? EyeFlushing { get; init; }
}

/// <summary>Light at one place for one task.</summary>
/// <param name="Id">Id.</param>
/// <param name="Task">Task.</param>
/// <param name="Level">Light on the surface.</param>
/// <param name="NearLane">Whether the place lies within 15 ft (4.6 m) of an open lane.</param>
public sealed record Light(string Id, LightTask? Task, Measure<Illuminance>? Level, bool? NearLane);

/// <summary>What a person breathes over a shift, as measured or expected.</summary>
/// <param name="Id">Id.</param>
/// <param name="Agent">What is breathed.</param>
/// <param name="Level">Mean over the averaging time of its limit.</param>
/// <param name="Evidence">Where the figure comes from, in words.</param>
public sealed record AirExposure(string Id, Agent? Agent, Measure<MassConcentration>? Level, string? Evidence);
