using Laygate.Model.Measures;

namespace Laygate.Model.Plans;

/// <summary>Where the job lies.</summary>
public sealed record Location
{
    /// <summary>Name of the place.</summary>
    public string? Name { get; init; }

    /// <summary>Latitude, north positive.</summary>
    public Measure<Angle>? Latitude { get; init; }

    /// <summary>Longitude, east positive.</summary>
    public Measure<Angle>? Longitude { get; init; }

    /// <summary>Height above sea level.</summary>
    public Measure<Length>? Altitude { get; init; }

    /// <summary>ISO 3166 code of the country or its part, such as <c>DE</c> or <c>US-WA</c>, or <c>none</c>.</summary>
    public string? Jurisdiction { get; init; }
}

/// <summary>Use, traffic, closure and conditions of the site.</summary>
public sealed record Site
{
    /// <summary>What the pavement is used for.</summary>
    public SiteUse? Use { get; init; }

    /// <summary>Traffic beside the works.</summary>
    public TrafficAlongside? Traffic { get; init; }

    /// <summary>Speed limit of that traffic during the works.</summary>
    public Measure<Speed>? TrafficSpeed { get; init; }

    /// <summary>Speed limit once the surface is open.</summary>
    public Measure<Speed>? OpenSpeed { get; init; }

    /// <summary>The closure.</summary>
    public Closure? Closure { get; init; }

    /// <summary>Conditions that are stated yes or no; a condition that is not stated is unknown, never no.</summary>
    public SiteConditions Conditions { get; init; } = new();

    /// <summary>Room between the works and the traffic beside them.</summary>
    public TrafficSpace? Space { get; init; }

    /// <summary>Height of the highest body or conveyor when it is raised.</summary>
    public Measure<Length>? RaisedHeight { get; init; }

    /// <summary>Least distance that rollers keep from a drop or step.</summary>
    public Measure<Length>? RollerToEdge { get; init; }

    /// <summary>Class of the high-visibility clothing.</summary>
    public int? ClothingClass { get; init; }

    /// <summary>Air in an enclosed place.</summary>
    public EnclosedAir? Air { get; init; }

    /// <summary>Vibration on the one who bears most.</summary>
    public BodyVibration? Vibration { get; init; }

    /// <summary>First aid for burns.</summary>
    public FirstAid? FirstAid { get; init; }

    /// <summary>Light by place and task.</summary>
    public IReadOnlyList<Light> Lights { get; init; } = [];

    /// <summary>What people breathe.</summary>
    public IReadOnlyList<AirExposure> Exposures { get; init; } = [];

    /// <summary>Overhead lines near the works or the haul route.</summary>
    public IReadOnlyList<OverheadLine> OverheadLines { get; init; } = [];
}

/// <summary>The time and width for which the place is closed.</summary>
public sealed record Closure
{
    /// <summary>How it is closed.</summary>
    public ClosureKind? Kind { get; init; }

    /// <summary>Start.</summary>
    public Moment? From { get; init; }

    /// <summary>End; the surface must be ready for traffic.</summary>
    public Moment? To { get; init; }

    /// <summary>Width that is closed to traffic.</summary>
    public Measure<Length>? Width { get; init; }

    /// <summary>Narrowest lane that stays open.</summary>
    public Measure<Length>? OpenLane { get; init; }
}

/// <summary>An overhead line.</summary>
public sealed record OverheadLine
{
    /// <summary>Id.</summary>
    public required string Id { get; init; }

    /// <summary>Station where it crosses or is nearest.</summary>
    public Measure<Length>? At { get; init; }

    /// <summary>Voltage.</summary>
    public Measure<ElectricPotential>? Voltage { get; init; }

    /// <summary>Height of the lowest conductor above the surface.</summary>
    public Measure<Length>? Height { get; init; }

    /// <summary>Level distance from its outermost conductor to the nearest place where bodies are raised; 0 beneath it.</summary>
    public Measure<Length>? Away { get; init; }

    /// <summary>Owner of the line.</summary>
    public string? Owner { get; init; }
}

/// <summary>A local date and time as stated, with its offset where one was stated.</summary>
/// <param name="Local">Local date and time.</param>
/// <param name="Offset">Offset from UTC; null when the plan leaves it to the shift.</param>
public sealed record Moment(DateTime Local, TimeSpan? Offset);

/// <summary>One working period; it may cross midnight or a clock change.</summary>
public sealed record Shift
{
    /// <summary>Date on which the shift starts.</summary>
    public DateOnly? Date { get; init; }

    /// <summary>Local time at which laying starts.</summary>
    public TimeOnly? Start { get; init; }

    /// <summary>Local time at which laying ends; earlier than the start means the next day.</summary>
    public TimeOnly? End { get; init; }

    /// <summary>Offset from UTC at the start of the shift.</summary>
    public TimeSpan? Zone { get; init; }

    /// <summary>Offset from UTC at the end, when the clocks change during the shift.</summary>
    public TimeSpan? ZoneAtEnd { get; init; }

    /// <summary>Time lost before the first metre: set-up and heating of the screed.</summary>
    public Measure<Duration>? SetUp { get; init; }
}

/// <summary>Weather as planned.</summary>
public sealed record Weather
{
    /// <summary>Where the figures come from.</summary>
    public string? Source { get; init; }

    /// <summary>When the forecast was last looked at.</summary>
    public Moment? LastLook { get; init; }

    /// <summary>Height above ground at which the wind is stated; 10 m for most stations.</summary>
    public Measure<Length>? WindHeight { get; init; }

    /// <summary>Terrain between the station and the mat.</summary>
    public Exposure? Exposure { get; init; }

    /// <summary>Wind at the mat as a share of the stated wind, where it is known.</summary>
    public Measure<Ratio>? WindAtMat { get; init; }

    /// <summary>The worst weather in which the plan is meant to work.</summary>
    public WeatherEnvelope? Envelope { get; init; }

    /// <summary>Hour by hour.</summary>
    public IReadOnlyList<WeatherHour> Hours { get; init; } = [];
}

/// <summary>The worst weather in which the plan is meant to work.</summary>
public sealed record WeatherEnvelope
{
    /// <summary>Lowest air temperature.</summary>
    public Measure<Temperature>? AirLowest { get; init; }

    /// <summary>Highest air temperature.</summary>
    public Measure<Temperature>? AirHighest { get; init; }

    /// <summary>Lowest temperature of the surface that is laid upon.</summary>
    public Measure<Temperature>? BaseLowest { get; init; }

    /// <summary>Temperatures below the surface that is laid upon while it is at its lowest.</summary>
    public IReadOnlyList<DepthTemperature> BaseAtDepth { get; init; } = [];

    /// <summary>Highest temperature of the surface that is laid upon.</summary>
    public Measure<Temperature>? BaseHighest { get; init; }

    /// <summary>Highest wind.</summary>
    public Measure<Speed>? WindHighest { get; init; }

    /// <summary>Highest dew point.</summary>
    public Measure<Temperature>? DewPointHighest { get; init; }

    /// <summary>Highest chance of rain.</summary>
    public Measure<Ratio>? RainChanceHighest { get; init; }
}

/// <summary>A temperature below the surface that is laid upon.</summary>
/// <param name="Depth">Depth below the surface.</param>
/// <param name="Temperature">Temperature there.</param>
public sealed record DepthTemperature(Measure<Length>? Depth, Measure<Temperature>? Temperature);

/// <summary>Weather at the start of one hour.</summary>
public sealed record WeatherHour
{
    /// <summary>Start of the hour.</summary>
    public required Moment At { get; init; }

    /// <summary>Air temperature.</summary>
    public Measure<Temperature>? Air { get; init; }

    /// <summary>Temperature of the surface that is laid upon.</summary>
    public Measure<Temperature>? Base { get; init; }

    /// <summary>Temperatures below the surface that is laid upon.</summary>
    public IReadOnlyList<DepthTemperature> BaseAtDepth { get; init; } = [];

    /// <summary>Wind at the stated height.</summary>
    public Measure<Speed>? Wind { get; init; }

    /// <summary>Cloud in eighths of the sky, 0 to 8.</summary>
    public int? CloudEighths { get; init; }

    /// <summary>Dew point.</summary>
    public Measure<Temperature>? DewPoint { get; init; }

    /// <summary>Chance of rain.</summary>
    public Measure<Ratio>? RainChance { get; init; }

    /// <summary>Sun on a level surface.</summary>
    public Measure<Irradiance>? Sun { get; init; }
}

/// <summary>What is laid upon.</summary>
public sealed record Existing
{
    /// <summary>Kind of surface.</summary>
    public ExistingSurface? Surface { get; init; }

    /// <summary>State of the surface at laying.</summary>
    public Moisture? Condition { get; init; }

    /// <summary>Swept and clean.</summary>
    public bool? Clean { get; init; }

    /// <summary>Milling.</summary>
    public Milling? Milling { get; init; }

    /// <summary>Layers below the surface, from top to bottom.</summary>
    public IReadOnlyList<ExistingLayer> Layers { get; init; } = [];
}

/// <summary>Milling of the existing surface.</summary>
/// <param name="Depth">Depth.</param>
/// <param name="Texture">Texture in words.</param>
/// <param name="LeftAboveInterface">Thickness left above the next interface; 0 when milled to it.</param>
public sealed record Milling(Measure<Length>? Depth, string? Texture, Measure<Length>? LeftAboveInterface)
{
    /// <summary>Day on which it is milled; decides whether milling belongs to this shift.</summary>
    public DateOnly? Done { get; init; }
}

/// <summary>An existing layer.</summary>
/// <param name="Id">Id.</param>
/// <param name="Material">Material.</param>
/// <param name="Thickness">Thickness.</param>
public sealed record ExistingLayer(string Id, LayerMaterial? Material, Measure<Length>? Thickness);
